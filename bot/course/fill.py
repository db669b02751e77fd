"""Numbers put into an author's texts, and maths shown as people read it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from typing import Any, TypeAlias, TypeVar

from bot.course.item import grouped
from bot.course.prepared import Case, Slot, Text
from bot.course.words import Worth, as_tree, is_true, settled, work_out
from bot.maths.show import plain
from bot.maths.tree import (
    Call,
    Equation,
    Inequality,
    Letter,
    Listing,
    Mixed,
    Number,
    Pi,
    Point,
    Ratio,
    Root,
    TheAnswer,
    Tree,
    every,
    letters_in,
    number,
    rebuilt,
    remembered,
    substitute,
)
from bot.maths.value import SHOWN_AS, Undefined, value

Found = TypeVar("Found")
_Found: TypeAlias = dict[tuple[object, ...], Any]
"""By the question and the letters' marks."""


@dataclass(frozen=True, slots=True)
class Known:
    """What the maths of a template came to, by tree and by the numbers of the letters that stand in it.

    Trees are told apart by identity: those that are known are kept, so that no other can take their place.
    """

    trees: dict[int, tuple[Tree, tuple[str, ...], _Found]] = field(default_factory=dict)
    numbers: dict[tuple[str, object], Tree] = field(default_factory=dict)
    """The trees that write the letters' numbers."""
    answers: dict[int, Tree] = field(default_factory=dict)


@dataclass(frozen=True)
class Draw:
    """What one draw gave: numbers for letters, words for slots, and which letters are shown as decimals.

    `known` may be shared by draws of one template, for a proof that draws hundreds of times.
    """

    letters: Mapping[str, Worth]
    words: Mapping[str, str]
    decimals: frozenset[str]
    plurals: Mapping[str, str]
    answer: Tree | None = None
    answer_text: str = ""
    row_texts: Mapping[str, Text] = field(default_factory=dict)
    """Drawn words that hold maths themselves, taken apart."""
    known: Known = field(default_factory=Known, compare=False, repr=False)

    def once(self, question: str, work: Callable[[Tree], Found], tree: Tree) -> Found:
        """What `work` makes of the tree, done once for the same numbers of the letters that stand in it.

        A formula holds one or two letters of many, so that another draw has often met its numbers already.
        """
        kept = self.known.trees.get(id(tree))
        if kept is None:
            kept = self.known.trees[id(tree)] = tree, _names_in(tree), {}
        _, names, found = kept
        key = (question, *map(self.marks.get, names))
        if key not in found:
            found[key] = work(tree)
        answer: Found = found[key]
        return answer

    @cached_property
    def marks(self) -> Mapping[str, object]:
        """What tells one number of a letter from another, and one answer from another."""
        marks = {name: mark_of(worth) for name, worth in self.letters.items()}
        if self.answer is not None:
            self.known.answers[id(self.answer)] = self.answer  # kept, like a tree
            marks["answer"] = (id(self.answer), self.answer_text)
        return marks

    @cached_property
    def _numbers(self) -> Mapping[str, Tree]:
        numbers = {name: self._number(name, worth) for name, worth in self.letters.items()}
        return numbers if self.answer is None else {**numbers, "answer": self.answer}

    def _number(self, name: str, worth: Worth) -> Tree:
        key = (name, self.marks[name])
        kept = self.known.numbers.get(key)
        if kept is None:
            kept = self.known.numbers[key] = as_tree(worth, decimal=name in self.decimals)
        return kept

    def tree(self, tree: Tree) -> Tree:
        """The tree with the numbers in; letters that weren't drawn stay."""
        return substitute(self._worked_out(settled(tree, self.letters), tree), self._numbers)

    def _worked_out(self, tree: Tree, written: Tree) -> Tree:
        """Each `value(p q)` as its number: a decimal where its letters are shown so, and tidied like any number."""
        if type(tree) is Letter or type(tree) is Number or not _has_value(tree):
            return tree
        if isinstance(tree, Call) and tree.name == "value" and len(tree.parts) == 1:
            try:
                worth = work_out(tree.parts[0], self.letters)
            except Undefined:  # it holds the answer, or a letter that stays one
                return tree
            if isinstance(worth, Fraction):
                return number(worth, decimal=not self.decimals.isdisjoint(letters_of(written)))
        return rebuilt(tree, lambda below: self._worked_out(below, below))

    def show(self, tree: Tree) -> str:
        """The tree as people read it, thousands apart."""
        if self.answer_text and type(tree) is TheAnswer:
            return self.answer_text
        return self.once("show", self._show, tree)

    def _show(self, tree: Tree) -> str:
        return grouped(self.bare(tree))

    def bare(self, tree: Tree) -> str:
        """As `show`, thousands not apart: for keys and figures, which programs read."""
        return self.once("bare", self._bare, tree)

    def _bare(self, tree: Tree) -> str:
        return plain(self.tree(tree))

    def text(self, text: Text, marks: bool = True, apart: bool = True) -> str:
        """A text with numbers and words in; maths stands in backticks unless `marks` is off.

        Thousands stand apart, but not where a program reads the text.
        """
        show = self.show if apart else self.bare
        mark = "`" if marks else ""
        parts: list[str] = []
        for part in text:
            if isinstance(part, str):
                parts.append(part)
            elif isinstance(part, Slot):
                parts.append(self._slot(part, marks, apart))
            else:
                parts.append(f"{mark}{show(part)}{mark}")
        return "".join(parts)

    def word(self, name: str, marks: bool = False, apart: bool = True) -> str:
        """A drawn word, numbers in where it holds maths."""
        word = self.words.get(name, name.replace("_", " "))
        return self.text(self.row_texts[word], marks, apart) if word in self.row_texts else word

    def _slot(self, slot: Slot, marks: bool, apart: bool) -> str:
        word = self.word(slot.word, marks, apart)
        if slot.count is None or work_out(slot.count, self.letters) == 1:
            return word
        return self.plurals.get(word, word + "s")

    def worth(self, tree: Tree) -> Worth:
        """The number, or list of numbers, that the tree stands for. Raises Undefined."""
        return self.once("worth", self._worth, tree)

    def _worth(self, tree: Tree) -> Worth:
        # An answer such as 2:3 has no value of its own, so it is bound only where it is named.
        if self.answer is not None and "answer" in _names_in(tree):
            return work_out(tree, {**self.letters, "answer": value(self.answer)})
        return work_out(tree, self.letters)

    def essence(self, tree: Tree) -> object:
        """What decides whether two answers are the same thing: see `same_thing`. Raises Undefined."""
        return self.once("essence", self._essence, tree)

    def _essence(self, tree: Tree) -> object:
        return _essence(tree, self)

    def holds(self, when: Tree) -> bool:
        """Whether conditions are true of these numbers. Raises Undefined."""
        return self.once("holds", self._holds, when)

    def _holds(self, when: Tree) -> bool:
        return is_true(when, self.letters)

    def case(self, cases: tuple[Case, ...]) -> Tree | Text | None:
        """What the first case that holds gives; None if none does."""
        for case in cases:
            if case.when is None or self.holds(case.when):
                return case.gives
        return None


def mark_of(worth: Worth) -> object:
    """A number, or a list of them, as whole numbers that hash quickly: 3, (3, 4) for 3/4, a tuple of these."""
    if isinstance(worth, tuple):
        return ("list", *map(mark_of, worth))
    return worth.numerator if worth.denominator == 1 else (worth.numerator, worth.denominator)


letters_of = remembered(letters_in)
"""As `letters_in`, of a template's own trees."""


@remembered
def _names_in(tree: Tree) -> tuple[str, ...]:
    """The letters whose numbers decide what becomes of the tree, and `answer` where it names that."""
    named = any(isinstance(one, TheAnswer) for one in every(tree))
    return (*sorted(letters_in(tree)), *(("answer",) if named else ()))


@remembered
def _has_value(tree: Tree) -> bool:
    return any(isinstance(one, Call) and one.name == "value" for one in every(tree))


# How an answer is stored ---------------------------------------------------------------------------------


def key_text(form: str, places: int | None, tree: Tree, draw: Draw) -> str:
    """The answer as its form writes it, fit to be typed: `3/4`, `2 1/2`, `12.50`, `x = 4`, `2, 3, 5`.

    Raises Undefined where the formula has no value.
    """
    match tree:
        case Equation((Letter() as letter, right)) if form == "equation-solution" and not letters_of(
            right
        ) - set(draw.letters):
            return f"{letter.name} = {key_text('number', None, right, draw)}"
    if form in _AS_SHOWN:
        return draw.bare(tree)
    match tree:
        case Ratio(parts):
            return ":".join(_number_text("number", None, _one(part, draw), False) for part in parts)
        case Point(parts):
            return (
                "("
                + ", ".join(
                    _number_text("number", None, _one(part, draw), _is_decimal(part, draw)) for part in parts
                )
                + ")"
            )
        case Inequality():
            return draw.bare(tree)
    if _has_pi_or_root(tree):
        return draw.bare(tree)
    worth = draw.worth(tree)
    if isinstance(worth, tuple):
        return ", ".join(_number_text("number", None, one, _is_decimal(tree, draw)) for one in worth)
    return _number_text(form, places, worth, _is_decimal(tree, draw))


_AS_SHOWN = frozenset(("expression", "expression-any", "factored", "equation", "scientific", "prime-factors"))


def _one(tree: Tree, draw: Draw) -> Fraction:
    worth = draw.worth(tree)
    if isinstance(worth, tuple):
        raise Undefined("no-number")
    return worth


def _is_decimal(tree: Tree, draw: Draw) -> bool:
    return not draw.decimals.isdisjoint(letters_of(tree)) or _has_places(tree)


@remembered
def _has_pi_or_root(tree: Tree) -> bool:
    return any(isinstance(one, (Pi, Root)) for one in every(tree))


@remembered
def _has_places(tree: Tree) -> bool:
    return any(isinstance(one, Number) and one.places for one in every(tree))


def _number_text(form: str, places: int | None, number_: Fraction, decimal: bool) -> str:
    match form:
        case "mixed":
            return plain(Call("mixed", (number(number_),)))
        case "percent":
            return plain(Call("percent", (number(number_),)))
        case "decimal":
            return plain(Call("decimal", (number(number_),)))
        case "money":
            return _rounded(number_, 2)
        case "decimal-rounded":
            return _rounded(number_, places or 0)
    return plain(number(number_, decimal))


def _rounded(number_: Fraction, places: int) -> str:
    """Rounded half up, zeros at the end kept."""
    scale = 10**places
    size = (abs(number_) * scale * 2 + 1) // 2
    digits = str(size).rjust(places + 1, "0")
    sign = "−" if number_ < 0 and size else ""
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


def same_thing(one: Tree, other: Tree, draw: Draw) -> bool:
    """Whether two answers are the same: equal numbers, equal lists, or equal for three trials of a letter.

    Quick rather than certain, which is enough to throw a draw away; the proof asks the checker itself.
    """
    return draw.essence(one) == draw.essence(other)


def same_numbers(one: Tree, other: Tree) -> bool:
    """As `same_thing`, for maths whose numbers are in."""
    try:
        return value(one) == value(other)
    except Undefined:
        pass  # a letter, or more than one number
    try:
        return same_thing(one, other, Draw({}, {}, frozenset(), {}))
    except Undefined:
        return False


_TRIALS = (Fraction(7, 3), Fraction(-11, 5), Fraction(29, 7))


def _essence(tree: Tree, draw: Draw) -> object:
    match tree:
        case Equation((Letter(), right)):
            return draw.essence(right)
        case Equation(sides) | Listing(sides) | Point(sides):
            return tuple(draw.essence(side) for side in sides)
        case Inequality(sides, signs):
            return tuple(draw.essence(side) for side in sides), signs
        case Ratio((top, bottom)):
            return _one(top, draw) / _one(bottom, draw) if _one(bottom, draw) else (0, 0)
        case Mixed():
            return value(tree)
    free = sorted(letters_of(tree) - draw.letters.keys())
    if not free:
        try:
            return draw.worth(tree)
        except Undefined as undefined:
            if undefined.kind == "zero-bottom":
                raise
            return draw.bare(tree)
    found = []
    for trial in _TRIALS:
        letters = {**draw.letters, **{name: trial + place for place, name in enumerate(free)}}
        try:
            found.append(work_out(tree, letters))
        except Undefined:
            return draw.bare(tree)
    return tuple(found)


def is_formula(tree: Tree) -> bool:
    """Whether a choice is a number to be worked out, and not a point, a ratio, an equation or the like."""
    return not isinstance(tree, (Equation, Inequality, Ratio, Point, Listing)) and not (
        isinstance(tree, Call) and tree.name in SHOWN_AS
    )
