"""Long division digit by digit, remembering every remainder; and back from digits to a fraction with sympy."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import sympy


def _divide(top, bottom):
    """Whole part, digits that come once and digits that repeat, by remainders seen before."""
    whole, left = divmod(int(top), int(bottom))
    digits, seen = "", {}
    while left and left not in seen:
        seen[left] = len(digits)
        digit, left = divmod(left * 10, int(bottom))
        digits += str(digit)
    if not left:
        return whole, digits, ""
    return whole, digits[: seen[left]], digits[seen[left] :]


def _written(top, bottom):
    whole, once, again = _divide(top, bottom)
    if again:
        # The decimal is worth its fraction: sympy sums the endless block.
        tail = sympy.Rational(int(again), 10 ** len(again) - 1) / 10 ** len(once)
        worth = whole + sympy.Rational(int(once or 0), 10 ** len(once)) + tail
        assert worth == sympy.Rational(int(top), int(bottom))
        return f"{whole}.{once}({again})"
    return Fraction(Decimal(f"{whole}.{once or 0}"))


def it_ends(a, b):
    return _written(a, b)


def it_repeats(a, b):
    return _written(a, b)


def ends_or_goes_on(a, b):
    return "it repeats without end" if _divide(a, b)[2] else "it ends"


def cut_or_whole(ask, a, b):
    shown = Fraction(re.search(r"[\d.]*\d", ask)[0])
    difference = shown * int(b) - int(a)
    return "less" if difference < 0 else "greater" if difference > 0 else "equal"


def equal_pieces(a, b):
    return _written(a, b)


def far_behind_the_point(a, b, n):
    _, once, again = _divide(a, b)
    endless = once + again * 40
    return int(endless[int(n) - 1])
