"""What the maths language is made of: one frozen type a thing that can be written.

A tree keeps how something was written (brackets, a times sign or none, places after the point), because
a teacher grades the form as well as the value.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields
from fractions import Fraction
from functools import cache
from operator import is_
from typing import Any, TypeAlias, TypeVar

Found = TypeVar("Found")

MOST_REMEMBERED = 20_000
"""Trees of which an answer is kept; a course has some thousands of its own."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written: `12`, `12.50` (two places), `0.1(6)` (places 2, of which one repeats)."""

    value: Fraction
    places: int = 0
    repeats: int = 0


@dataclass(frozen=True, slots=True)
class Mixed:
    """`2 1/2`: a whole number and a fraction beside it."""

    whole: int
    top: int
    bottom: int


@dataclass(frozen=True, slots=True)
class Letter:
    name: str


@dataclass(frozen=True, slots=True)
class Pi:
    pass


@dataclass(frozen=True, slots=True)
class TheAnswer:
    """The word `answer` (or `it`) of a lesson: the item's own answer."""


@dataclass(frozen=True, slots=True)
class Percent:
    of: Tree


@dataclass(frozen=True, slots=True)
class Negative:
    of: Tree


@dataclass(frozen=True, slots=True)
class Positive:
    of: Tree


@dataclass(frozen=True, slots=True)
class Add:
    left: Tree
    right: Tree


@dataclass(frozen=True, slots=True)
class Subtract:
    left: Tree
    right: Tree


@dataclass(frozen=True, slots=True)
class PlusMinus:
    """`3 ± 2`, or `± 2` with nothing on the left."""

    left: Tree | None
    right: Tree


@dataclass(frozen=True, slots=True)
class Multiply:
    """A product; `beside` when it was written without a sign, as in `3 x`."""

    left: Tree
    right: Tree
    beside: bool = False


@dataclass(frozen=True, slots=True)
class Divide:
    """A quotient; `bar` when it was written with a slash without spaces, which is a fraction bar."""

    left: Tree
    right: Tree
    bar: bool = False


@dataclass(frozen=True, slots=True)
class Power:
    base: Tree
    exponent: Tree


@dataclass(frozen=True, slots=True)
class Root:
    of: Tree
    degree: int = 2


@dataclass(frozen=True, slots=True)
class Call:
    """A word with brackets: `gcd(a, b)`, `abs(a - b)`, `mixed(r)`."""

    name: str
    parts: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """Brackets, as written."""

    of: Tree


@dataclass(frozen=True, slots=True)
class Equation:
    """Two or more sides with equals signs between them."""

    sides: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Inequality:
    """Sides and the signs between them, `<`, `≤`, `>` or `≥`: one sign fewer than sides."""

    sides: tuple[Tree, ...]
    signs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Ratio:
    parts: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Listing:
    """Things with commas between them."""

    parts: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Point:
    parts: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Span:
    """Only in lessons: `2..9 step 1 except 5`."""

    low: Tree
    high: Tree
    step: Tree | None
    but: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Many:
    """Only in lessons: `6 of 2..15`, a list of numbers drawn."""

    count: Tree
    span: Span


@dataclass(frozen=True, slots=True)
class OneOf:
    """Only in lessons: `1/2, 2/3, 3/4`, one of which is drawn."""

    parts: tuple[Tree, ...]


@dataclass(frozen=True, slots=True)
class Compare:
    """Only in lessons: sides and the signs between them, `=` and `≠` among them."""

    sides: tuple[Tree, ...]
    signs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class IsWhole:
    """Only in lessons: `r is whole`, `r is not whole`."""

    of: Tree
    negated: bool


@dataclass(frozen=True, slots=True)
class Conditions:
    """Only in lessons: conditions that must all hold."""

    parts: tuple[Compare | IsWhole, ...]


Tree: TypeAlias = (
    Number
    | Mixed
    | Letter
    | Pi
    | TheAnswer
    | Percent
    | Negative
    | Positive
    | Add
    | Subtract
    | PlusMinus
    | Multiply
    | Divide
    | Power
    | Root
    | Call
    | Group
    | Equation
    | Inequality
    | Ratio
    | Listing
    | Point
    | Span
    | Many
    | OneOf
    | Compare
    | IsWhole
    | Conditions
)


@cache
def _names_of(kind: type[Any]) -> tuple[str, ...]:
    """The fields of a node type that may hold trees."""
    if kind in (Number, Mixed, Letter, Pi, TheAnswer):
        return ()
    return tuple(field.name for field in fields(kind))


_NOT_TREES = frozenset((str, int, bool, Fraction, type(None)))
"""What else the fields hold; compared by the very type, since asking whether something is a Fraction is slow."""


def children(tree: Tree) -> Iterator[Tree]:
    """The trees directly below this one, in the order in which they are written."""
    for name in _names_of(type(tree)):  # type: ignore[arg-type]
        part: Any = getattr(tree, name)
        if isinstance(part, tuple):
            for one in part:
                if type(one) not in _NOT_TREES:
                    yield one
        elif type(part) not in _NOT_TREES:
            yield part


def every(tree: Tree) -> Iterator[Tree]:
    """This tree and all below it."""
    waiting = [tree]
    while waiting:
        one = waiting.pop()
        yield one
        waiting.extend(children(one))


def letters_in(tree: Tree) -> frozenset[str]:
    """The names of the letters that occur."""
    found: set[str] = set()
    waiting = [tree]
    while waiting:
        one = waiting.pop()
        if type(one) is Letter:
            found.add(one.name)
        else:
            waiting.extend(children(one))
    return frozenset(found)


def remembered(ask: Callable[[Tree], Found]) -> Callable[[Tree], Found]:
    """The same question of a tree, answered once for each: a template asks it of its own trees in every draw.

    Trees are told apart by identity, since hashing a tree takes as long as most questions; one that is remembered
    is kept, so that no other can take its place in memory.
    """
    known: dict[int, tuple[Tree, Found]] = {}

    def answer(tree: Tree) -> Found:
        kept = known.get(id(tree))
        if kept is None:
            if len(known) >= MOST_REMEMBERED:
                known.clear()
            kept = known[id(tree)] = tree, ask(tree)
        return kept[1]

    return answer


def depth(tree: Tree) -> int:
    """How many trees stand inside each other at most; 1 for a letter."""
    deepest, waiting = 1, [(tree, 1)]
    while waiting:
        one, level = waiting.pop()
        deepest = max(deepest, level)
        waiting.extend((below, level + 1) for below in children(one))
    return deepest


def number(value: Fraction | int, decimal: bool = False) -> Tree:
    """A tree that writes this number: a whole number, a fraction with a bar, or on wish an ending decimal."""
    top, bottom = value.numerator, value.denominator
    one: Tree
    if bottom == 1:
        one = Number(Fraction(abs(top)))
    elif decimal and (places := ending_places(Fraction(value))) is not None:
        one = Number(abs(Fraction(value)), places)
    else:
        one = Divide(Number(Fraction(abs(top))), Number(Fraction(bottom)), bar=True)
    return Negative(one) if top < 0 else one


def ending_places(value: Fraction) -> int | None:
    """How many places the decimal of this number has; None if it never ends."""
    bottom, twos, fives = value.denominator, 0, 0
    while bottom % 2 == 0:
        bottom, twos = bottom // 2, twos + 1
    while bottom % 5 == 0:
        bottom, fives = bottom // 5, fives + 1
    return max(twos, fives) if bottom == 1 else None


def substitute(tree: Tree, letters: Mapping[str, Tree]) -> Tree:
    """The same tree with letters replaced by trees, for instance by drawn numbers; others stay letters."""
    kind = type(tree)
    if kind is Letter:
        return letters.get(tree.name, tree)  # type: ignore[union-attr]
    if kind is TheAnswer:
        return letters.get("answer", tree)
    if kind is Number:
        return tree
    return rebuilt(tree, lambda below: substitute(below, letters))


def rebuilt(tree: Tree, change: Callable[[Tree], Tree]) -> Tree:
    """The same kind of tree, each tree directly below it changed; the tree itself where nothing changes."""
    parts: list[Any] = []
    same = True
    for name in _names_of(type(tree)):  # type: ignore[arg-type]
        new = part = getattr(tree, name)
        kind = type(part)
        if kind is tuple:
            new = tuple([one if type(one) in _NOT_TREES else change(one) for one in part])
            same = same and all(map(is_, part, new))
        elif kind not in _NOT_TREES:
            new = change(part)
            same = same and new is part
        parts.append(new)
    return tree if same else type(tree)(*parts)
