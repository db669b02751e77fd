"""Products of mixed numbers by adding pieces and by counting small squares, never by one top times another."""

from __future__ import annotations

import itertools
from fractions import Fraction


def _area(long, wide):
    """Counts the small squares of a rectangle, each one part wide and one part high."""
    long, wide = Fraction(long), Fraction(wide)
    squares = sum(1 for _ in itertools.product(range(long.numerator), range(wide.numerator)))
    return Fraction(squares, long.denominator * wide.denominator)


def _mixed(text):
    return sum(Fraction(part) for part in text.split())


def as_one_fraction(w, k, b):
    """Parts counted one by one, for each whole and for what is over."""
    return len([part for whole in range(int(w)) for part in range(int(b))]) + k


def whole_times_mixed(n, w, k, b):
    return sum([w + Fraction(int(k), int(b))] * int(n))


def mixed_times_mixed(v, k, b, w, m, d):
    return _area(v + Fraction(k, b), w + Fraction(m, d))


def about_how_much(v, k, b, w, m, d):
    found = _area(v + Fraction(k, b), w + Fraction(m, d))
    low, high = v * w + 1, (v + 1) * (w + 1)
    assert low < found < high
    return f"between {low} and {high}"


def which_area(w, v, t, choices):
    area = _area(w + Fraction(1, 2), v + Fraction(1, t))
    return [choice for choice in choices if _mixed(choice) == area]


def paint_for_a_wall(v, k, b, w, j, d, s):
    return _area(v + Fraction(k, b), w + Fraction(j, d)) - s
