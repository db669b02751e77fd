"""A template made ready for drawing: its maths read once, its letters put in the order in which they are drawn.

All that can be said about a template before anything is drawn is said here, as faults.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache

from bot.course.explain import explain
from bot.course.faults import Fault
from bot.course.lesson import Template, Written
from bot.course.prepared import WORD_FORMS, Case, Prepared, Slot, Text, times_hint
from bot.course.recipes import split_commas
from bot.course.soundness import unsound
from bot.maths.read import Unreadable, read
from bot.maths.tree import (
    Call,
    Divide,
    Letter,
    Listing,
    Number,
    Point,
    Tree,
    every,
    letters_in,
)
from bot.maths.value import Undefined, value

_PARTS = re.compile(r"`([^`]*)`|\{(\w+)(?: for ([^}]+))?\}")
_LOOSE_MATHS = re.compile(r"(?<![\w`])[a-zA-Z\d]+ ?[=×÷^+] ?[a-zA-Z\d]+(?![\w`])")
AS_IT_STANDS = re.compile(r"\d+ R \d+|[$][\d.,]+|\d+ h \d+ min|\d+:\d\d [ap]m")
"""Between backticks, but no formula: shown as it stands."""
_WORDY = re.compile(r"[A-Za-z{}][A-Za-z{}' -]*")


def prepare(template: Template, file: str, missteps: Iterable[str]) -> tuple[Prepared | None, list[Fault]]:
    """Make a template ready; None where its maths can't be read. The faults are those of the whole template."""
    work = Preparer(template, file)
    prepared = work.prepare()
    if not work.faults and prepared is not None:
        work.faults += unsound(prepared, file, tuple(missteps))
    return (None if work.faults and prepared is None else prepared), work.faults


_THOUSANDS = re.compile(r"(?<![\d.,])\d{1,3}(?:,\d{3})+(?![\d,])")


@lru_cache(maxsize=50_000)
def read_once(text: str, door: str = "formula") -> Tree:
    """Read maths, keeping what was read: lessons say the same things over and over.

    Where a lesson sets thousands apart, 150,000 is one number; a list has a space after its commas.
    """
    if door == "formula" and "," in text:
        text = _THOUSANDS.sub(lambda found: found[0].replace(",", ""), text)
    return read(text, door)


class Preparer:
    def __init__(self, template: Template, file: str) -> None:
        self.template, self.file = template, file
        self.recipe = template.recipe
        self.faults: list[Fault] = []
        self.row_texts: dict[str, Text] = {}
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
            if when and gives.startswith("otherwise "):
                self.fault(
                    "otherwise-if",
                    written,
                    "`otherwise` is the last case and stands without an `if`.",
                    f"Write `{gives.removeprefix('otherwise ')} if {when}`; the last case alone is `otherwise …`.",
                    f"{gives} if",
                    label,
                )
                return ()
            condition = self._condition(when, written, label) if when else None
            found = self._gives(gives, written, label)
            if found is not None:
                cases.append(Case(condition, found))
        return tuple(cases)

    def _condition(self, when: str, written: Written, label: str) -> Tree | None:
        try:
            return read_once(when, "conditions")
        except Unreadable as trouble:
            told = explain(when, "conditions", trouble)
            fix = f"{told.fix} Cases are written: 2 if n > 5, 3 if n = 5, otherwise 4."
            self.fault(told.kind, written, told.what, fix, when, label)
            return None

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
        self._rows()
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
            row_texts=self.row_texts,
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

    def _rows(self) -> None:
        """In rows of words a name of one letter holds numbers, a longer one words."""
        at = Written("", self.template.line)
        for rows in self.recipe.words:
            for name in rows[0]:
                bad = next((row[name] for row in rows if not _is_number(row[name])), None)
                if len(name) == 1 and bad is not None:
                    what = f"{name} has a name of one letter, so it stands for a number; '{bad}' is none."
                    self.fault("row-word", at, what, "Give words a name of several letters.", "", "words")
                elif len(name) > 1 and bad is None:
                    what = f"{name} holds numbers, but a name of several letters stands for words."
                    fix = f"Give it one letter, and write `{name[0]}` where it is used."
                    self.fault("row-number", at, what, fix, "", "words")
                for row in rows if len(name) > 1 else ():
                    self._row_word(row[name], at)

    def _row_word(self, word: str, at: Written) -> None:
        """A word of a row may hold maths in backticks, filled like any; a drawn letter outside them is a slip."""
        if "{" in word:
            what = f"The word '{word}' holds a slot; a drawn word can't draw another."
            self.fault("row-slot", at, what, "Make another column of the row.", "", "words")
        elif "`" in word:
            self.row_texts[word] = self.text(Written(word, at.line), "words")
        else:
            letters = {*self.recipe.draw, *self.row_letters} - {"a", "A", "I"}
            found = next(
                (one for one in re.findall(r"(?<![\w'’])\w(?![\w'’])", word) if one in letters), None
            )
            if found is not None and found != word:
                what = f"In the word '{word}' the letter {found} would stay a letter."
                self.fault("row-letter", at, what, f"Put it between backticks: `{found}`.", "", "words")

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
                    times_hint(letter) or f"Add a line for {letter} under draw.",
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


def _is_number(text: str) -> bool:
    try:
        value(read_once(text))
    except (Unreadable, Undefined):
        return False
    return True


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
