"""What to expect, by going through the throws fifty at a time."""

from __future__ import annotations

from fractions import Fraction


def one_to_try_first(s, n):
    expected = Fraction(0)
    while n > 0:
        n, expected = n - 50, expected + Fraction(s, 2)
    return expected
