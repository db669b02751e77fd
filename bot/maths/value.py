"""The exact value of a tree with its letters bound; no floating point anywhere."""

from __future__ import annotations

import math
import operator
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any, TypeAlias

from bot.maths.tree import (
    Add,
    Call,
    Compare,
    Conditions,
    Divide,
    Equation,
    Group,
    Inequality,
    IsWhole,
    Letter,
    Listing,
    Mixed,
    Multiply,
    Negative,
    Number,
    Percent,
    Positive,
    Power,
    Root,
    Subtract,
    TheAnswer,
    Tree,
)

MOST_BITS = 20_000
"""About 6,000 digits: no number of a lesson or an answer comes near."""

Bound: TypeAlias = Fraction | tuple[Fraction, ...]
"""What a letter may stand for: a number, or for a capital letter a list of numbers."""

Exact: TypeAlias = int | Fraction
"""A number on the way: whole ones as int, which Python works out ten times as fast as a Fraction."""

SHOWN_AS = frozenset(("value", "mixed", "decimal", "percent", "money"))
"""Words that change how a number is shown, not what it is."""


class Undefined(ArithmeticError):
    """There is no such number: `kind` is zero-bottom, unbound, not-exact, too-big or no-number."""

    def __init__(self, kind: str, what: str = "") -> None:
        super().__init__(kind, what)
        self.kind = kind
        self.what = what


def value(tree: Tree, letters: Mapping[str, Bound] | None = None) -> Fraction:
    """The number that the tree stands for.

    `letters` binds letters to numbers, or capital letters to lists; `answer` binds the word *answer*.
    Raises Undefined when a bottom is 0, a letter is not bound, a root is not exact, a power is too big,
    or the tree is no number at all (a list, an equation).
    """
    return fraction(_value(tree, letters or {}))


_SMALL = {n: Fraction(n) for n in range(-100, 1001)}


def fraction(number: Exact) -> Fraction:
    """The same number as a Fraction; small whole ones aren't made anew."""
    if isinstance(number, int):
        return _SMALL.get(number) or Fraction(number)
    return number


def exact(number: Fraction) -> Exact:
    """The same number, as an int where it is whole."""
    return number.numerator if number.denominator == 1 else number


def _value(tree: Tree, letters: Mapping[str, Bound]) -> Exact:
    how = _VALUE_OF.get(type(tree))
    if how is None:
        raise Undefined("no-number", type(tree).__name__)
    return how(tree, letters)


def _quotient(tree: Divide, letters: Mapping[str, Bound]) -> Exact:
    bottom = _value(tree.right, letters)
    if bottom == 0:
        raise Undefined("zero-bottom")
    return _divided(_value(tree.left, letters), bottom)


def _divided(top: Exact, bottom: Exact) -> Exact:
    return exact(Fraction(top, bottom))  # two ints divided with a slash would be a float


def _mixed(tree: Mixed, letters: Mapping[str, Bound]) -> Exact:
    if tree.bottom == 0:
        raise Undefined("zero-bottom")
    return tree.whole + Fraction(tree.top, tree.bottom)


_VALUE_OF: Mapping[type, Callable[[Any, Mapping[str, Bound]], Exact]] = {
    Number: lambda tree, letters: exact(tree.value),
    Letter: lambda tree, letters: _bound(tree.name, letters),
    Add: lambda tree, letters: _value(tree.left, letters) + _value(tree.right, letters),
    Subtract: lambda tree, letters: _value(tree.left, letters) - _value(tree.right, letters),
    Multiply: lambda tree, letters: _value(tree.left, letters) * _value(tree.right, letters),
    Divide: _quotient,
    Negative: lambda tree, letters: -_value(tree.of, letters),
    Group: lambda tree, letters: _value(tree.of, letters),
    Positive: lambda tree, letters: _value(tree.of, letters),
    Mixed: _mixed,
    Percent: lambda tree, letters: _divided(_value(tree.of, letters), 100),
    Power: lambda tree, letters: power(value(tree.base, letters), value(tree.exponent, letters)),
    Root: lambda tree, letters: _exact_root(value(tree.of, letters), tree.degree),
    Call: lambda tree, letters: _call(tree.name, tree.parts, letters),
    TheAnswer: lambda tree, letters: _bound("answer", letters),
}
"""How each kind of tree gets its number; a look-up, since this runs a million times in a proof of the course."""


def _bound(name: str, letters: Mapping[str, Bound]) -> Exact:
    bound = letters.get(name)
    if bound is None:
        raise Undefined("unbound", name)
    if isinstance(bound, tuple):
        raise Undefined("no-number", name)
    return exact(bound)


def power(base: Fraction, exponent: Fraction) -> Fraction:
    """A number to a power; a fraction above only where the root is exact. Raises Undefined."""
    if exponent.denominator != 1:
        if exponent.denominator > 12:
            raise Undefined("not-exact")
        return _exact_root(power(base, Fraction(exponent.numerator)), exponent.denominator)
    n = exponent.numerator
    if base == 0 and n < 0:
        raise Undefined("zero-bottom")
    size = max(base.numerator.bit_length(), base.denominator.bit_length())
    if size > 1 and abs(n) * size > MOST_BITS:
        raise Undefined("too-big")
    if abs(n) > MOST_BITS:
        n = n % 2 if base == -1 else 1  # base is 0, 1 or -1 here
    return base**n


def _exact_root(inner: Fraction, degree: int) -> Fraction:
    if inner < 0:
        if degree % 2 == 0:
            raise Undefined("not-exact")
        return -_exact_root(-inner, degree)
    top, bottom = whole_root(inner.numerator, degree), whole_root(inner.denominator, degree)
    if top is None or bottom is None:
        raise Undefined("not-exact")
    return Fraction(top, bottom)


def whole_root(n: int, degree: int) -> int | None:
    """The whole number whose power is n, if there is one. n is not negative."""
    if degree == 2:
        root = math.isqrt(n)
        return root if root * root == n else None
    low, high = 0, 1 << (n.bit_length() // degree + 1)
    while low < high:
        middle = (low + high) // 2
        if middle**degree < n:
            low = middle + 1
        else:
            high = middle
    return int(low) if low**degree == n else None


def numbers(parts: tuple[Tree, ...], letters: Mapping[str, Bound]) -> list[Fraction]:
    """The numbers of a list: of `(D)` with D bound to a list, or of `(3, 4, 8)`."""
    found: list[Fraction] = []
    for part in parts:
        bound = letters.get(part.name) if isinstance(part, Letter) else None
        if isinstance(bound, tuple):
            found.extend(bound)
        elif isinstance(part, Listing):
            found.extend(numbers(part.parts, letters))
        else:
            found.append(value(part, letters))
    return found


def _call(name: str, parts: tuple[Tree, ...], letters: Mapping[str, Bound]) -> Fraction:
    found = numbers(parts, letters)
    if not found:
        raise Undefined("no-number", name)
    if name in ("gcd", "lcm"):
        if any(one.denominator != 1 for one in found):
            raise Undefined("not-exact", name)
        whole = [int(one) for one in found]
        return Fraction(math.gcd(*whole) if name == "gcd" else math.lcm(*whole))
    if name == "mean":
        return sum(found, Fraction(0)) / len(found)
    if name == "median":
        found.sort()
        middle = len(found) // 2
        return found[middle] if len(found) % 2 else (found[middle - 1] + found[middle]) / 2
    if name == "range":
        return max(found) - min(found)
    if name == "count":
        return Fraction(len(found))
    if len(found) != 1:
        raise Undefined("no-number", name)
    if name == "abs":
        return abs(found[0])
    if name == "sqrt":
        return _exact_root(found[0], 2)
    if name in SHOWN_AS:
        return found[0]
    raise Undefined("unbound", name)


_SIGNS: Mapping[str, Callable[[Exact, Exact], bool]] = {
    "=": operator.eq,
    "≠": operator.ne,
    "<": operator.lt,
    "≤": operator.le,
    ">": operator.gt,
    "≥": operator.ge,
}


def _compares(one: Exact, sign: str, other: Exact) -> bool:
    return _SIGNS[sign](one, other)


def holds(tree: Tree, letters: Mapping[str, Bound] | None = None) -> bool:
    """Whether conditions, a comparison, an equation or an inequality are true. Raises Undefined."""
    letters = letters or {}
    match tree:
        case Conditions(parts=parts):
            return all(holds(part, letters) for part in parts)
        case IsWhole(of=inner, negated=negated):
            return (_value(inner, letters).denominator == 1) != negated
        case Equation(sides=sides):
            found = [_value(side, letters) for side in sides]
            return all(one == found[0] for one in found)
        case Compare(sides=sides, signs=signs) | Inequality(sides=sides, signs=signs):
            found = [_value(side, letters) for side in sides]
            return all(map(_compares, found, signs, found[1:]))
    raise Undefined("no-number", type(tree).__name__)
