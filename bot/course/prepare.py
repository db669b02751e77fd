"""A template made ready for drawing: its maths read once, its letters put in the order in which they are drawn.

All that can be said about a template before anything is drawn is said here, as faults.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias

from bot.course.explain import explain
from bot.course.faults import Fault, nearest
from bot.course.lesson import Template, Written
from bot.course.recipes import split_commas
from bot.maths.read import Unreadable, read
from bot.maths.tree import (
    Call,
    Divide,
    Equation,
    Letter,
    Listing,
    Many,
    Number,
    OneOf,
    Point,
    Span,
    Tree,
    every,
    letters_in,
)
from bot.maths.value import Undefined, value


@dataclass(frozen=True, slots=True)
class Slot:
    """`{who}`, or `{sack for n}`: a word of the item, in the plural where the number isn't one."""

    word: str
    count: Tree | None = None


Text: TypeAlias = "tuple[str | Slot | Tree, ...]"
"""A text taken apart: words, slots for drawn words, and maths."""


@dataclass(frozen=True, slots=True)
class Case:
    """One way an answer may turn out: a formula, or words; `when` is None for the last, which always holds."""

    when: Tree | None
    gives: Tree | Text


@dataclass(frozen=True, slots=True)
class Prepared:
    """A template with its maths read."""

    template: Template
    order: tuple[tuple[str, Tree], ...]
    decimals: frozenset[str]
    """Letters whose numbers are shown as decimals, because the author drew them so."""
    where: Tree | None
    answer: tuple[Case, ...]
    accept: Text | None
    given: Text | None
    unit: Text
    row_letters: frozenset[str]
    """Letters that come with a drawn row of words, such as p in {place: thousands, p: 1000}."""
    missteps: tuple[tuple[str, tuple[Case, ...]], ...]
    choices: tuple[tuple[Case, ...], ...]
    ask: Text
    hints: tuple[Text, ...]
    steps: tuple[tuple[Tree | Text, Text], ...]
    checks: tuple[Text, ...]


WORD_FORMS = frozenset(("choice", "yes-no", "words"))
LETTER_FORMS = frozenset(
    (
        "expression",
        "expression-any",
        "factored",
        "equation",
        "equation-solution",
        "solutions-set",
        "inequality",
        "choice",
        "scientific",
        "prime-factors",
    )
)
_PARTS = re.compile(r"`([^`]*)`|\{(\w+)(?: for ([^}]+))?\}")
_LOOSE_MATHS = re.compile(r"(?<![\w`])[a-zA-Z\d]+ ?[=×÷^+] ?[a-zA-Z\d]+(?![\w`])")
AS_IT_STANDS = re.compile(r"\d+ R \d+|[$][\d.,]+|\d+ h \d+ min|\d+:\d\d [ap]m")
"""Between backticks, but no formula: shown as it stands."""
_WORDY = re.compile(r"[A-Za-z{}][A-Za-z{}' -]*")


def prepare(template: Template, file: str, missteps: Iterable[str]) -> tuple[Prepared | None, list[Fault]]:
    """Make a template ready; None where its maths can't be read. The faults are those of the whole template."""
    work = _Preparer(template, file)
    prepared = work.prepare()
    if not work.faults and prepared is not None:
        work.look_over(prepared, tuple(missteps))
    return (None if work.faults and prepared is None else prepared), work.faults


@lru_cache(maxsize=50_000)
def read_once(text: str, door: str = "formula") -> Tree:
    """Read maths, keeping what was read: lessons say the same things over and over."""
    return read(text, door)


class _Preparer:
    def __init__(self, template: Template, file: str) -> None:
        self.template, self.file = template, file
        self.recipe = template.recipe
        self.faults: list[Fault] = []
        self.row_letters = frozenset(name for rows in self.recipe.words for name in rows[0] if len(name) == 1)

    def fault(
        self, kind: str, at: Written, what: str, fix: str = "", mark: str = "", label: str = ""
    ) -> None:
        where = f"template {self.template.name}" + (f", {label}" if label else "")
        self.faults.append(Fault(kind, self.file, at.line, what, fix, where, at.text, mark))

    # Reading -------------------------------------------------------------------------------------------

    def tree(self, text: str, at: Written, door: str = "formula", label: str = "") -> Tree | None:
        try:
            return read_once(text, door)
        except Unreadable as trouble:
            told = explain(text, door, trouble)
            self.fault(told.kind, at, told.what, told.fix, told.mark, label)
            return None

    def text(self, written: Written, label: str = "") -> Text:
        """A text taken apart; what can't be read becomes a fault and is left out."""
        if written.text.count("`") % 2:
            self.fault(
                "backtick-missing",
                written,
                "A backtick is missing: they come in pairs.",
                "Put one before and one after the maths.",
                "`",
                label,
            )
            return ()
        parts: list[str | Slot | Tree] = []
        at = 0
        for found in _PARTS.finditer(written.text):
            parts.append(written.text[at : found.start()])
            at = found.end()
            if found[2]:
                count = self.tree(found[3], written, label=label) if found[3] else None
                parts.append(Slot(found[2], count))
            else:
                parts += self._maths(found[1], written, label)
        parts.append(written.text[at:])
        for words in parts:
            loose = _LOOSE_MATHS.search(words) if isinstance(words, str) else None
            if loose:
                self.fault(
                    "maths-without-backticks",
                    written,
                    f"'{loose[0]}' looks like maths outside backticks.",
                    f"Write `{loose[0]}`",
                    loose[0],
                    label,
                )
        return tuple(part for part in parts if part != "")

    def _maths(self, text: str, written: Written, label: str) -> list[str | Slot | Tree]:
        if AS_IT_STANDS.fullmatch(text):
            return [f"`{text}`"]
        tree = self.tree(text, written, label=label)
        return [] if tree is None else [tree]

    def cases(self, written: Written, label: str) -> tuple[Case, ...]:
        """`yes if n/9 is whole, otherwise no`, or a plain formula or word."""
        cases: list[Case] = []
        pieces: list[list[str]] = []
        for piece in split_commas(written.text):
            gives, has_if, when = piece.partition(" if ")
            if has_if:
                pieces.append([gives, when])
            elif piece.startswith("otherwise "):
                pieces.append([piece.removeprefix("otherwise "), ""])
            elif pieces and pieces[-1][1]:
                pieces[-1][1] += f", {piece}"
            else:
                pieces = [[written.text, ""]]
                break
        for gives, when in pieces:
            condition = self.tree(when, written, "conditions", label) if when else None
            found = self._gives(gives, written, label)
            if found is not None:
                cases.append(Case(condition, found))
        return tuple(cases)

    def _gives(self, gives: str, written: Written, label: str) -> Tree | Text | None:
        form = self.recipe.form
        if "`" in gives or "{" in gives:
            return self.text(Written(gives, written.line), label)
        if form in ("remainder", "time"):
            return self._worded_numbers(gives, written, label)
        if form in WORD_FORMS or gives in ("none", "all"):
            try:
                return read_once(gives)
            except Unreadable:
                if _WORDY.fullmatch(gives):
                    return (gives,)
        return self.tree(gives, written, label=label)

    def _worded_numbers(self, gives: str, written: Written, label: str) -> Text | None:
        """`q R r` and `a h b min`: formulas with words between that are no letters."""
        pattern = r"( R )" if self.recipe.form == "remainder" else r"( h ?| min\b|:| am\b| pm\b)"
        parts: list[str | Slot | Tree] = []
        for place, piece in enumerate(re.split(pattern, gives)):
            if place % 2:
                parts.append(piece)
            elif piece.strip():
                tree = self.tree(piece, written, label=label)
                if tree is None:
                    return None
                parts.append(Call("value", (tree,)))
        return tuple(parts)

    # The whole template --------------------------------------------------------------------------------

    def prepare(self) -> Prepared | None:
        recipe, template = self.recipe, self.template
        drawn = {
            name: self.tree(written.text, written, "varies", f"draw {name}")
            for name, written in recipe.draw.items()
        }
        trees = {name: tree for name, tree in drawn.items() if tree is not None}
        order = self._order(trees) if len(trees) == len(recipe.draw) else None
        where = self.tree(recipe.where.text, recipe.where, "conditions", "where") if recipe.where else None
        prepared = Prepared(
            template=template,
            order=order or (),
            decimals=frozenset(_decimal_letters(order or ())),
            where=where,
            answer=self.cases(recipe.answer, "answer"),
            accept=self._shown(recipe.accept, "accept"),
            given=self._shown(recipe.given, "given"),
            unit=self.text(recipe.unit, "unit") if recipe.unit else (),
            row_letters=self.row_letters,
            missteps=tuple(
                (name, self.cases(written, f"misstep {name}")) for name, written in recipe.missteps.items()
            ),
            choices=tuple(self.cases(written, "choices") for written in recipe.choices),
            ask=self.text(template.ask, "question"),
            hints=tuple(self.text(hint, f"hint {n}") for n, hint in enumerate(template.hints, 1)),
            steps=tuple(self._step(n, *step) for n, step in enumerate(template.steps, 1)),
            checks=tuple(self.text(check, "check") for check in template.checks),
        )
        return None if self.faults else prepared

    def _shown(self, written: Written | None, label: str) -> Text | None:
        if written is None:
            return None
        tree = self.tree(written.text, written, label=label)
        return None if tree is None else (tree,)

    def _step(self, n: int, write: Written, because: Written) -> tuple[Tree | Text, Text]:
        label = f"step {n}"
        line: Tree | Text = ()
        if write.text:
            # A line may end as the form writes its answer: `answer` for 7 R 2, money or time stays a text.
            line = self.tree(write.text, write, label=label) or ()
        return line, self.text(because, label)

    def _order(self, trees: Mapping[str, Tree]) -> tuple[tuple[str, Tree], ...] | None:
        """The letters, each after those it is made from."""
        placed: dict[str, Tree] = {}
        waiting = dict(trees)
        good = True
        for name, tree in trees.items():
            for letter in sorted(letters_in(tree) - trees.keys() - self.row_letters):
                self.fault(
                    "never-drawn",
                    self.recipe.draw[name],
                    f"{letter} is never drawn.",
                    _times_hint(letter) or f"Add a line for {letter} under draw.",
                    letter,
                    f"draw {name}",
                )
                good = False
        while waiting and good:
            ready = [
                name for name, tree in waiting.items() if letters_in(tree) <= placed.keys() | self.row_letters
            ]
            if not ready:
                names = " and ".join(sorted(waiting))
                first = next(iter(waiting))
                self.fault(
                    "circle",
                    self.recipe.draw[first],
                    f"{names} need each other, so none can be drawn first.",
                    "Give one of them a range of its own.",
                    "",
                    f"draw {first}",
                )
                return None
            for name in ready:
                placed[name] = waiting.pop(name)
        return tuple(placed.items()) if good else None

    # What can be said before anything is drawn ------------------------------------------------------------

    def look_over(self, prepared: Prepared, missteps: Sequence[str]) -> None:
        drawn = {name for name, _ in prepared.order} | self.row_letters
        self._draws_vary(prepared)
        self._unknown_stays_a_letter(prepared, drawn)
        self._letters_known(prepared, drawn)
        self._words_known(prepared)
        self._all_used(prepared)
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
                        _times_hint(letter)
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
                    _times_hint(letter) or f"Add a line for {letter} under draw.",
                    letter,
                    "where",
                )
        if numbers_only:
            self._letters_in_texts(prepared, drawn)

    def _letters_in_texts(self, prepared: Prepared, drawn: set[str]) -> None:
        """A letter in a hint or step that neither was drawn nor stands in the question or an equation of a step."""
        named = _free(prepared.ask, drawn)
        for step in prepared.steps:
            named |= _free(step[0] if isinstance(step[0], tuple) else (step[0],), drawn) if step[0] else set()
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

    def _all_used(self, prepared: Prepared) -> None:
        used: set[str] = set()
        for _, tree in prepared.order:
            used |= letters_in(tree)
        used |= {
            part.name
            for text in (prepared.ask, *prepared.hints)
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
        used |= set(re.findall(r"(?<![A-Za-z])[A-Za-z](?![A-Za-z])", str(self.recipe.figure or "")))
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


def _times_hint(letter: str) -> str:
    return "For times write × or a space: `f n`." if letter in ("x", "X") else ""


def _decimal_letters(order: Sequence[tuple[str, Tree]]) -> Iterator[str]:
    """Letters drawn as decimals, and those worked out from them without a fraction bar."""
    found: set[str] = set()
    for name, tree in order:
        parts = list(every(tree))
        has_places = any(isinstance(one, Number) and one.places for one in parts)
        inherits = any(isinstance(one, Letter) and one.name in found for one in parts)
        has_bar = any(isinstance(one, Divide) and one.bar for one in parts)
        if (has_places or inherits) and not has_bar and not isinstance(tree, (Listing, Point)):
            found.add(name)
            yield name
