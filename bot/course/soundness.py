"""What can be said of a template before anything is drawn: letters, words, ranges and missteps that can't be right."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from bot.course import figures
from bot.course.faults import Fault, nearest
from bot.course.figures.reading import several
from bot.course.lesson import Written
from bot.course.prepared import LETTER_FORMS, Case, Prepared, Slot, Text, times_hint
from bot.maths.tree import Equation, Letter, Many, OneOf, Span, Tree, every, letters_in
from bot.maths.value import Undefined, value

_SINGLE = re.compile(r"(?<![A-Za-z])[A-Za-z](?![A-Za-z])")


def unsound(prepared: Prepared, file: str, missteps: Sequence[str]) -> list[Fault]:
    """Faults of a template whose maths could be read; `missteps` are all names of the course."""
    looker = _Looker(prepared, file)
    looker.look_over(prepared, missteps)
    return looker.faults


class _Looker:
    def __init__(self, prepared: Prepared, file: str) -> None:
        self.template, self.file = prepared.template, file
        self.recipe = self.template.recipe
        self.row_letters = prepared.row_letters
        self.faults: list[Fault] = []

    def fault(
        self, kind: str, at: Written, what: str, fix: str = "", mark: str = "", label: str = ""
    ) -> None:
        where = f"template {self.template.name}" + (f", {label}" if label else "")
        self.faults.append(Fault(kind, self.file, at.line, what, fix, where, at.text, mark))

    def look_over(self, prepared: Prepared, missteps: Sequence[str]) -> None:
        drawn = {name for name, _ in prepared.order} | self.row_letters
        self._draws_vary(prepared)
        self._unknown_stays_a_letter(prepared, drawn)
        self._letters_known(prepared, drawn)
        self._words_known(prepared)
        self._all_used(prepared)
        self._units_not_drawn(drawn)
        for name, written in self.recipe.missteps.items():
            if name not in missteps:
                self.fault(
                    "unknown-misstep",
                    written,
                    f"No misstep is called {name}.",
                    nearest(name, missteps) or "Add it under # Missteps with its sentence.",
                    name,
                )

    def _draws_vary(self, prepared: Prepared) -> None:
        for name, tree in prepared.order:
            at = Written(f"{name}: {self.recipe.draw[name].text}", self.recipe.draw[name].line)
            if isinstance(tree, Span) and not letters_in(tree):
                self._span_not_empty(name, tree, at)
            elif not isinstance(tree, (Span, OneOf, Many)) and not letters_in(tree):
                text = self.recipe.draw[name].text
                as_range = re.fullmatch(r"\s*(-?[\d.]+)\s*[-–]\s*([\d.]+)\s*", text)
                fix = (
                    f"A range is written `{as_range[1]}..{as_range[2]}`."
                    if as_range
                    else "Write a range like 2..9, or put the number itself where it is used."
                )
                self.fault("never-varies", at, f"{name} never varies.", fix, text)

    def _span_not_empty(self, name: str, span: Span, at: Written) -> None:
        try:
            low, high = value(span.low), value(span.high)
        except Undefined:
            return
        if low > high:
            three = "Two dots, not three?" if "..." in at.text else "The smaller number comes first."
            low_text, _, high_text = self.recipe.draw[name].text.partition("..")
            self.fault(
                "empty-range",
                at,
                f"The range from {low_text.strip()} to {high_text.strip()} is empty.",
                three,
                self.recipe.draw[name].text,
            )
        elif low == high:
            self.fault("never-varies", at, f"{name} never varies: the range holds one number.", "", at.text)

    def _unknown_stays_a_letter(self, prepared: Prepared, drawn: set[str]) -> None:
        for case in prepared.answer:
            if isinstance(case.gives, Equation) and isinstance(case.gives.sides[0], Letter):
                name = case.gives.sides[0].name
                if name in drawn:
                    self.fault(
                        "unknown-is-drawn",
                        self.recipe.draw[name],
                        f"The answer names {name}, so {name} must stay a letter.",
                        f"Draw `s` and answer `{name} = s`.",
                        "",
                        f"draw {name}",
                    )

    def _letters_known(self, prepared: Prepared, drawn: set[str]) -> None:
        shown = _free(prepared.ask, drawn) | _free(prepared.given or (), drawn)
        shown |= {"A", "B", "C", "D", "E"} if self.recipe.form == "choice" else set()
        shown |= set(_SINGLE.findall(str(self.recipe.figure or ""))) - drawn
        numbers_only = self.recipe.form not in LETTER_FORMS
        places = [("answer", self.recipe.answer, prepared.answer)]
        places += [
            (f"misstep {name}", self.recipe.missteps[name], cases) for name, cases in prepared.missteps
        ]
        for label, written, cases in places:
            for case in cases:
                free = _free_of_case(case, drawn)
                for letter in sorted(free if numbers_only else free - shown):
                    self.fault(
                        "never-drawn",
                        written,
                        f"{letter} is never drawn.",
                        times_hint(letter)
                        or f"Add a line for {letter} under draw"
                        + ("." if numbers_only else ", or use the letter of the question."),
                        letter,
                        label,
                    )
                when = letters_in(case.when) - drawn if case.when is not None else frozenset()
                for letter in sorted(when):
                    self.fault("never-drawn", written, f"{letter} is never drawn.", "", letter, label)
        if self.recipe.where and prepared.where is not None:
            for letter in sorted(letters_in(prepared.where) - drawn):
                self.fault(
                    "never-drawn",
                    self.recipe.where,
                    f"{letter} is never drawn.",
                    times_hint(letter) or f"Add a line for {letter} under draw.",
                    letter,
                    "where",
                )
        if numbers_only:
            self._letters_in_texts(prepared, drawn)

    def _letters_in_texts(self, prepared: Prepared, drawn: set[str]) -> None:
        """A letter in a hint or step that neither was drawn nor stands in the question or an equation of a step."""
        named = _free(prepared.ask, drawn)
        for step in prepared.steps:
            named |= _free(step[1], drawn) | _free(
                step[0] if isinstance(step[0], tuple) else (step[0],), drawn
            )
        for n, (hint, written) in enumerate(zip(prepared.hints, self.template.hints, strict=True), 1):
            for letter in sorted(_free(hint, drawn) - named):
                self.fault("never-drawn", written, f"{letter} is never drawn.", "", letter, f"hint {n}")

    def _words_known(self, prepared: Prepared) -> None:
        known = {name for rows in self.recipe.words for name in rows[0]}
        texts = [(prepared.ask, self.template.ask, "question")]
        texts += [(hint, at, "hint") for hint, at in zip(prepared.hints, self.template.hints, strict=True)]
        texts += [
            (step[1], at[1], "step") for step, at in zip(prepared.steps, self.template.steps, strict=True)
        ]
        for text, written, label in texts:
            for part in text:
                if isinstance(part, Slot) and part.count is None and part.word not in known:
                    self.fault(
                        "unknown-slot",
                        written,
                        f"No word is called {{{part.word}}} here.",
                        nearest(part.word, known) or "Add it under `words`.",
                        part.word,
                        label,
                    )

    def _units_not_drawn(self, drawn: set[str]) -> None:
        """In a figure's label a last letter that was drawn is a number, whatever unit it might have been."""
        figure = self.recipe.figure or {}
        kind = figures.KINDS.get(str(figure.get("figure")))
        for name, written in figure.items() if kind else ():
            field = kind.field(name) if kind else None
            if field is None or field.holds not in (figures.Holds.LABEL, figures.Holds.LABELS):
                continue
            for label in several(written):
                found = re.search(r"[\w)] ([mghsLt])$", label)
                if found and found[1] in drawn:
                    self.fault(
                        "unit-is-drawn",
                        Written(f"{name}: {label}", self.recipe.figure_line),
                        f"{found[1]} is drawn, so here it would be a number and no unit.",
                        "Draw another letter; or for a product write × between.",
                        label,
                        "figure",
                    )

    def _all_used(self, prepared: Prepared) -> None:
        used: set[str] = set()
        for _, tree in prepared.order:
            used |= letters_in(tree)
        used |= {
            part.name
            for text in (prepared.ask, *prepared.hints, *prepared.row_texts.values())
            for tree in text
            if not isinstance(tree, str)
            for part in _every(tree)
            if isinstance(part, Letter)
        }
        for case in prepared.answer:
            used |= _free_of_case(case, set()) | (letters_in(case.when) if case.when is not None else set())
        if self.template.by_button:  # the missteps are buttons, and so are seen
            for _, cases in prepared.missteps:
                used |= set().union(*(_free_of_case(case, set()) for case in cases))
        used |= set(_SINGLE.findall(str(self.recipe.figure or "")))
        for name, _ in prepared.order:
            if name not in used:
                self.fault(
                    "unused",
                    self.recipe.draw[name],
                    f"{name} is drawn, but neither question nor answer uses it.",
                    "Take the line out, or use the letter.",
                    "",
                    f"draw {name}",
                )


def _every(part: Slot | Tree) -> Iterator[Tree]:
    if isinstance(part, Slot):
        return every(part.count) if part.count is not None else iter(())
    return every(part)


def _free(text: Text, drawn: set[str]) -> set[str]:
    """The letters of a text that keep no number."""
    return {
        one.name
        for part in text
        if not isinstance(part, (str, Slot))
        for one in every(part)
        if isinstance(one, Letter) and one.name not in drawn
    }


def _free_of_case(case: Case, drawn: set[str]) -> set[str]:
    gives = case.gives
    if isinstance(gives, tuple):
        return _free(gives, drawn)
    if isinstance(gives, Equation) and isinstance(gives.sides[0], Letter):
        return set(letters_in(gives)) - drawn - {gives.sides[0].name}
    return set(letters_in(gives)) - drawn
