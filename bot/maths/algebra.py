"""Equivalence and solving: our own normal forms first, SymPy behind what they do not cover.

The only module that imports SymPy, and only when it is needed. What goes in is a tree, never text.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from bot.maths.exact import Beyond, Quotient, Sum, normal_form, times
from bot.maths.tree import (
    Add,
    Call,
    Divide,
    Group,
    Letter,
    Mixed,
    Multiply,
    Negative,
    Number,
    Percent,
    Pi,
    Positive,
    Power,
    Root,
    Subtract,
    Tree,
    every,
    letters_in,
    number,
    substitute,
)
from bot.maths.value import Undefined

MOST_NODES_FOR_SYMPY = 60


def equivalent(one: Tree, other: Tree) -> bool:
    """Whether two expressions have the same value for all values of their letters; proven, not sampled.

    False also where one of them is undefined or too big to work out.
    """
    try:
        return normal_form(one).same_as(normal_form(other))
    except Undefined:
        return False
    except Beyond:
        return _agree_everywhere(one, other) and _sympy_equal(one, other)


_POINTS = ((2, 3, 5), (-3, 7, 11), (Fraction(1, 2), Fraction(2, 3), Fraction(-5, 4)))


def _agree_everywhere(one: Tree, other: Tree) -> bool:
    """Whether the values agree, exactly, for all numbers that are tried for the letters, and some could be tried.

    A difference proves that the expressions are not equal. What agrees is worth the time of loading SymPy for
    a proof that they are.
    """
    letters = sorted(letters_in(one) | letters_in(other))
    if len(letters) > 6:
        return False
    agreed = 0
    for point in _POINTS:
        numbers = {name: Group(number(Fraction(point[i % 3]) + i // 3)) for i, name in enumerate(letters)}
        try:
            first = normal_form(substitute(one, dict(numbers)))
            second = normal_form(substitute(other, dict(numbers)))
        except (Undefined, Beyond):
            continue
        if not first.same_as(second):
            return False
        agreed += 1
    return agreed > 0


def load_sympy() -> None:
    """Load SymPy, which takes a quarter of a second once: in the background, so that no reply waits for it."""
    import sympy  # noqa: F401


def _sympy_equal(one: Tree, other: Tree) -> bool:
    if sum(1 for _ in every(one)) + sum(1 for _ in every(other)) > MOST_NODES_FOR_SYMPY:
        return False
    import sympy

    try:
        difference = to_sympy(one) - to_sympy(other)
        return bool(sympy.simplify(difference) == 0)
    except (Undefined, TypeError, ValueError, ZeroDivisionError):
        return False


def to_sympy(tree: Tree) -> Any:
    """The tree as a SymPy expression; letters are real numbers."""
    import sympy

    def go(tree: Tree) -> Any:
        match tree:
            case Number(value=number):
                return sympy.Rational(number.numerator, number.denominator)
            case Mixed(whole=whole, top=top, bottom=bottom):
                return whole + sympy.Rational(top, bottom)
            case Letter(name=name):
                return sympy.Symbol(name, real=True)
            case Pi():
                return sympy.pi
            case Group(of=inner) | Positive(of=inner):
                return go(inner)
            case Negative(of=inner):
                return -go(inner)
            case Percent(of=inner):
                return go(inner) / 100
            case Add(left=left, right=right):
                return go(left) + go(right)
            case Subtract(left=left, right=right):
                return go(left) - go(right)
            case Multiply(left=left, right=right):
                return go(left) * go(right)
            case Divide(left=left, right=right):
                bottom = go(right)
                if bottom == 0:
                    raise Undefined("zero-bottom")
                return go(left) / bottom
            case Power(base=base, exponent=exponent):
                above = go(exponent)
                if above.is_number and abs(above) > 40:
                    raise Undefined("too-big")
                return go(base) ** above
            case Root(of=inner, degree=degree):
                return sympy.root(go(inner), degree)
            case Call(name="sqrt", parts=(part,)):
                return sympy.sqrt(go(part))
            case Call(name="abs", parts=(part,)):
                return sympy.Abs(go(part))
        raise Undefined("no-number", type(tree).__name__)

    return go(tree)


# Sums in one letter -----------------------------------------------------------------------------------


def coefficients(terms: Sum, letter: str) -> list[Fraction] | None:
    """The numbers before 1, x, x², ... of a sum in one letter; None if anything else occurs.

    A sum with negative powers is lifted first: 3/x − 6 gives those of 3 − 6x.
    """
    lowest = 0
    for term in terms:
        for atom, n in term:
            if atom != letter or n != int(n):
                return None
            lowest = min(lowest, int(n))
    found: dict[int, Fraction] = {}
    for term, c in terms.items():
        power = (int(term[0][1]) if term else 0) - lowest
        if power > 60:
            return None
        found[power] = Fraction(c)
    if not found:
        return []
    return [found.get(n, Fraction(0)) for n in range(max(found) + 1)]


def without_root(numbers: list[Fraction], root: Fraction) -> tuple[list[Fraction], bool]:
    """Divide a sum in x by (x − root) as often as it goes; whether it went at all."""
    went = False
    while len(numbers) > 1:
        quotient: list[Fraction] = []
        carry = Fraction(0)
        for c in reversed(numbers):
            carry = carry * root + c
            quotient.append(carry)
        if quotient.pop() != 0:
            break
        numbers, went = quotient[::-1], True
    return numbers, went


def has_just_roots(terms: Sum, letter: str, roots: frozenset[Fraction]) -> bool:
    """Whether the sum is 0 for these numbers and, among real numbers, for no others."""
    numbers = coefficients(terms, letter)
    if not numbers:
        return False
    for root in roots:
        numbers, went = without_root(numbers, root)
        if not went:
            return False
    if len(numbers) == 1:
        return True
    if len(numbers) == 3:
        c, b, a = numbers
        return b * b - 4 * a * c < 0
    return False


def proportional(one: Sum, other: Sum) -> bool:
    """Whether one sum is a number times the other: the same equation once it is set equal to 0."""
    if not one or not other or one.keys() != other.keys():
        return False
    term = next(iter(one))
    return all(c * other[term] == other[t] * one[term] for t, c in one.items())


def lifted(terms: Sum) -> Sum:
    """The sum times the smallest term that leaves no negative powers, and without a common letter below."""
    lowest: dict[str, Any] = {}
    for term in terms:
        for atom, n in term:
            if n < lowest.get(atom, 0):
                lowest[atom] = n
    if not lowest:
        return terms
    return times(terms, {tuple(sorted((atom, -n) for atom, n in lowest.items())): 1})


# Intervals: where a linear inequality holds -------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Interval:
    """Numbers between two ends; None is no end. `low_in` tells whether the end itself belongs."""

    low: Fraction | None
    low_in: bool
    high: Fraction | None
    high_in: bool

    def and_also(self, other: Interval) -> Interval:
        """What both have in common."""
        low, low_in = self.low, self.low_in
        if other.low is not None and (low is None or other.low > low):
            low, low_in = other.low, other.low_in
        elif other.low is not None and other.low == low:
            low_in = low_in and other.low_in
        high, high_in = self.high, self.high_in
        if other.high is not None and (high is None or other.high < high):
            high, high_in = other.high, other.high_in
        elif other.high is not None and other.high == high:
            high_in = high_in and other.high_in
        if (
            low is not None
            and high is not None
            and (low > high or (low == high and not (low_in and high_in)))
        ):
            return NOTHING
        return Interval(low, low_in, high, high_in)


EVERYTHING = Interval(None, False, None, False)
NOTHING = Interval(Fraction(0), False, Fraction(0), False)

TURNED = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}


def where(left: Quotient, sign: str, right: Quotient, letter: str) -> Interval | None:
    """Where `left sign right` holds, if it is linear in the letter; None if it is not."""
    from bot.maths.exact import ONE, plus

    if left.bottom is not ONE or right.bottom is not ONE:
        return None
    for term in (*left.top, *right.top):
        if any(n < 0 for _, n in term):
            return None
    numbers = coefficients(plus(left.top, right.top, -1), letter)
    if numbers is None or len(numbers) > 2:
        return None
    if len(numbers) < 2:
        c = numbers[0] if numbers else Fraction(0)
        return EVERYTHING if _SIGNS[sign](c) else NOTHING
    b, a = numbers
    end = -b / a
    if a < 0:
        sign = TURNED[sign]
    closed = sign in "≤≥"
    return Interval(None, False, end, closed) if sign in "<≤" else Interval(end, closed, None, False)


_SIGNS: dict[str, Callable[[Fraction], bool]] = {
    "<": lambda c: c < 0,
    "≤": lambda c: c <= 0,
    ">": lambda c: c > 0,
    "≥": lambda c: c >= 0,
}
