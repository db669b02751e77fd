"""Words of the maths language that only lessons may use, worked out: `gcd(a, b)`, `round(n, 100)`, `median(D)`."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import TypeAlias

from bot.maths.tree import Call, Letter, Listing, Number, Tree, every, number, rebuilt, remembered
from bot.maths.value import Undefined, holds, value

Worth: TypeAlias = Fraction | tuple[Fraction, ...]
"""What a letter stands for: a number, or a list of numbers for a capital letter."""


def _whole(one: Fraction) -> int:
    if one.denominator != 1:
        raise Undefined("not-exact")
    return int(one)


def _rounded(one: Fraction, place: Fraction) -> Fraction:
    if place == 0:
        raise Undefined("zero-bottom")
    half_up = math.floor(abs(one) / place + Fraction(1, 2)) * place
    return half_up if one >= 0 else -half_up


def _digit(one: Fraction, place: Fraction) -> Fraction:
    if place == 0:
        raise Undefined("zero-bottom")
    return Fraction(math.floor(abs(one) / place) % 10)


def _rest(one: Fraction, other: Fraction) -> Fraction:
    if other == 0:
        raise Undefined("zero-bottom")
    return one % other


def _factors(one: Fraction) -> tuple[Fraction, ...]:
    size = _whole(one)
    if not 0 < size <= 1_000_000:
        raise Undefined("too-big")
    low = [k for k in range(1, math.isqrt(size) + 1) if size % k == 0]
    return tuple(Fraction(k) for k in dict.fromkeys(low + [size // k for k in reversed(low)]))


def _primes(one: Fraction) -> tuple[Fraction, ...]:
    size, found, k = _whole(one), [], 2
    if not 1 < size <= 1_000_000:
        raise Undefined("too-big")
    while k * k <= size:
        while size % k == 0:
            found.append(Fraction(k))
            size //= k
        k += 1
    return (*found, Fraction(size)) if size > 1 else tuple(found)


def _together(parts: tuple[Worth, ...]) -> tuple[Fraction, ...]:
    found: list[Fraction] = []
    for part in parts:
        found += part if isinstance(part, tuple) else (part,)
    if not found:
        raise Undefined("no-number")
    return tuple(found)


_OF_NUMBERS: Mapping[str, Callable[..., Worth]] = {
    "floor": lambda a: Fraction(math.floor(a)),
    "ceiling": lambda a: Fraction(math.ceil(a)),
    "round": _rounded,
    "digit": _digit,
    "rest": _rest,
    "factors": _factors,
    "primes": _primes,
}
_OF_LISTS: Mapping[str, Callable[[tuple[Fraction, ...]], Worth]] = {
    "min": min,
    "max": max,
    "sum": lambda ones: sum(ones, Fraction(0)),
    "sorted": lambda ones: tuple(sorted(ones)),
}
_SIZES = {"round": 2, "digit": 2, "rest": 2}
OURS = frozenset((*_OF_NUMBERS, *_OF_LISTS))
"""Words beyond those that `maths.value` works out."""

WORDS: Mapping[str, str] = {
    "value(a d)": "worked out",
    "mixed(r)": "shown as a mixed number",
    "decimal(r)": "shown as a decimal",
    "percent(r)": "shown as a percent",
    "money(p)": "shown as dollars and cents",
    "gcd(a, b)": "greatest common factor",
    "lcm(a, b)": "least common multiple",
    "abs(a)": "absolute value",
    "floor(a)": "rounded down to a whole number",
    "ceiling(a)": "rounded up to a whole number",
    "round(n, 100)": "rounded half up to hundreds; round(p, 0.1) to tenths",
    "digit(n, 100)": "the digit in the hundreds place",
    "rest(a, b)": "what is left when b is taken from a as often as it goes",
    "factors(n)": "all factors in order, a list",
    "primes(n)": "the prime factors in order, a list",
    "min(a, b)": "the smallest",
    "max(a, b)": "the greatest",
    "sum(D)": "all added",
    "mean(D)": "the mean",
    "median(D)": "the middle one",
    "range(D)": "greatest less smallest",
    "count(D)": "how many",
    "sorted(D)": "in order, a list",
}
"""Every word with what it means, for the writer's handbook."""


def work_out(tree: Tree, letters: Mapping[str, Worth]) -> Worth:
    """Work a formula out with the letters' numbers in. Raises Undefined where it has no value."""
    match tree:
        case Letter(name) if name in letters:
            return letters[name]
        case Listing(parts):
            return _together(tuple(work_out(part, letters) for part in parts))
        case Call(name, parts) if name in OURS:
            return _call(name, tuple(work_out(part, letters) for part in parts))
    return value(settled(tree, letters), letters)


def work_out_number(tree: Tree, letters: Mapping[str, Worth]) -> Fraction:
    """As `work_out`, where a single number is wanted. Raises Undefined for a list."""
    worth = work_out(tree, letters)
    if isinstance(worth, tuple):
        raise Undefined("no-number")
    return worth


def is_true(tree: Tree, letters: Mapping[str, Worth]) -> bool:
    """Whether conditions hold. Raises Undefined."""
    return holds(settled(tree, letters), letters)


def settled(tree: Tree, letters: Mapping[str, Worth]) -> Tree:
    """The tree with each of our words replaced by its number or list."""
    if type(tree) is Letter or type(tree) is Number or not _has_ours(tree):
        return tree
    match tree:
        case Call(name, parts) if name in OURS:
            return as_tree(work_out(tree, letters))
        case Call(name, parts):
            return Call(name, tuple(settled(part, letters) for part in parts))
    return rebuilt(tree, lambda below: settled(below, letters))


def as_tree(worth: Worth, decimal: bool = False) -> Tree:
    """A tree that writes a number or a list of numbers."""
    if isinstance(worth, tuple):
        return Listing(tuple(number(one, decimal) for one in worth))
    return number(worth, decimal)


@remembered
def _has_ours(tree: Tree) -> bool:
    return any(isinstance(one, Call) and one.name in OURS for one in every(tree))


def _call(name: str, parts: tuple[Worth, ...]) -> Worth:
    if name in _OF_LISTS:
        return _OF_LISTS[name](_together(parts))
    if len(parts) != _SIZES.get(name, 1) or any(isinstance(part, tuple) for part in parts):
        raise Undefined("no-number", name)
    return _OF_NUMBERS[name](*parts)
