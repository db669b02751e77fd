"""The price of a pack, dealt out over its hundreds of grams."""

from __future__ import annotations

from fractions import Fraction


def a_pack_to_try_first(g, t):
    return next(Fraction(k, 100) for k in range(1, 1000) if Fraction(k, 100) * g == t * 100)
