"""Equal ratios by Fraction, by cross-multiplying and by adding one small batch after the other."""

from __future__ import annotations

import re
from fractions import Fraction


def _partner(pair, first):
    """The number that stands to `first` as in the pair."""
    return Fraction(pair[1]) / Fraction(pair[0]) * first


def times_both(a, r, n):
    return _partner((a, r), n)


def divide_both(n, t, a):
    return _partner((n, t), a)


def which_table(a, r, choices):
    def cross(choice):
        x, y = (int(part) for part in re.findall(r"\d+", choice))
        return x * r == y * a

    return [choice for choice in choices if cross(choice)]


def by_way_of_another_column(a, t, n):
    return [pounds for pounds in range(1, 500) if pounds * a == t * n]


def tickets_and_dollars(a, t, n):
    cents = 0
    for _ in range(int(n)):
        cents += t * 100 / a
    return Fraction(cents, 100)


def find_the_other_row(t, a, n):
    one_of_them, filled = t / a, 0
    while filled * one_of_them < n:
        filled += 1
    return filled
