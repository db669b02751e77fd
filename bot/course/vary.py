"""Numbers drawn by chance, the same for the same seed in every run, on every machine and in every release."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import TypeAlias

from bot.course.words import Worth, is_true, work_out, work_out_number
from bot.maths.tree import Many, OneOf, Span, Tree, remembered
from bot.maths.value import Exact, Undefined, exact, fraction, value


class EmptyRange(ArithmeticError):
    """With the numbers drawn so far a range holds nothing; another draw may do."""


class Disagree(ArithmeticError):
    """A number that was given isn't what its formula makes of the others; another draw may do."""


class Chance:
    """A stream of chance made from a text. Python's own generators may change between releases; a hash doesn't."""

    def __init__(self, seed: str) -> None:
        self._numbers = self._stream(seed)

    @staticmethod
    def _stream(seed: str) -> Iterator[int]:
        block = 0
        while True:
            digest = hashlib.sha256(f"{seed}/{block}".encode()).digest()
            for at in range(0, 32, 8):
                yield int.from_bytes(digest[at : at + 8], "big")
            block += 1

    def below(self, n: int) -> int:
        """A whole number from 0 to n - 1; n is far below 2^64, so all are as good as equally likely."""
        return next(self._numbers) % n

    def shuffled(self, things: Sequence[str]) -> list[str]:
        """The things in an order made by chance."""
        left, found = list(things), []
        while left:
            found.append(left.pop(self.below(len(left))))
        return found


def vary(
    order: Sequence[tuple[str, Tree]],
    chance: Chance,
    begun: Mapping[str, Worth] | None = None,
    agreeing: bool = True,
) -> dict[str, Worth]:
    """Draw all letters; `begun` holds those that have their number already, which has to agree with its formula.

    Raises EmptyRange, Disagree or Undefined where these draws can't go on.
    """
    letters: dict[str, Worth] = dict(begun or {})
    for name, tree in order:
        if name not in letters:
            letters[name] = _one(tree, letters, chance)
        elif (
            agreeing
            and not isinstance(tree, (Span, OneOf, Many))
            and _one(tree, letters, chance) != letters[name]
        ):
            raise Disagree(name)
    return letters


def kept(where: Tree | None, letters: Mapping[str, Worth]) -> bool:
    """Whether the author keeps this draw."""
    return where is None or is_true(where, letters)


def _one(tree: Tree, letters: Mapping[str, Worth], chance: Chance) -> Worth:
    match tree:
        case Span():
            return _from_span(tree, letters, chance)
        case OneOf(parts):
            return work_out(parts[chance.below(len(parts))], letters)
        case Many(count, span):
            size = work_out_number(count, letters)
            return tuple(_from_span(span, letters, chance) for _ in range(int(size)))
    return work_out(tree, letters)


def _from_span(span: Span, letters: Mapping[str, Worth], chance: Chance) -> Fraction:
    always = _same_places(span)
    low, step, count, out = _places(span, letters) if always is None else always
    chosen = chance.below(count - len(out))
    for place in out:
        if place <= chosen:
            chosen += 1
    return fraction(low + chosen * step)


Places: TypeAlias = tuple[Exact, Exact, int, list[int]]
"""A range as its first number, its step, how many numbers it has, and the places of those left out, in order."""


def _places(span: Span, letters: Mapping[str, Worth]) -> Places:
    low, high = _number(span.low, letters), _number(span.high, letters)
    step = _number(span.step, letters) if span.step is not None else 1
    if step <= 0 or high < low:
        raise EmptyRange
    count = int((high - low) // step) + 1
    # Numbers left out are few: stepping over them keeps the rest equally likely.
    left_out = {divmod(_number(one, letters) - low, step) for one in span.but}
    out = sorted(int(place) for place, beside in left_out if not beside and 0 <= place < count)
    if count - len(out) <= 0:
        raise EmptyRange
    return low, step, count, out


@remembered
def _same_places(span: Tree) -> Places | None:
    """The places of a range without letters, which is the same in every draw; None for others."""
    try:
        return _places(span, {}) if isinstance(span, Span) else None
    except (Undefined, EmptyRange):
        return None


def _number(tree: Tree, letters: Mapping[str, Worth]) -> Exact:
    constant = _constant(tree)
    return exact(work_out_number(tree, letters)) if constant is None else constant


@remembered
def _constant(tree: Tree) -> Exact | None:
    try:
        return exact(value(tree))
    except Undefined:
        return None
