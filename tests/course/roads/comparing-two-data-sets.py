"""Medians, means and deviations by Python's statistics; overlaps counted along the scale."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def gap_in_spreads(m, n, d):
    """Half spreads laid off from the lower centre until the higher one is reached."""
    at, halves = Fraction(m), 0
    while at < n:
        at, halves = at + Fraction(d) / 2, halves + 1
    assert at == n
    return Fraction(halves, 2)


def higher_in_the_middle(ask, choices):
    lists = [[int(one) for one in found.split(", ")] for found in re.findall(r"\d+(?:, \d+)+", ask)]
    middles = [statistics.median(values) for values in lists]
    return [choice for choice, middle in zip(choices, middles, strict=True) if middle == max(middles)]


def where_boxes_overlap(b, d, q, s):
    return sum(1 for at in range(100) if b <= at < d and q <= at < s)


def much_or_hardly_any(n, m, s):
    """Values evenly spread with that mean deviation: what share of one group lies within the other."""
    low, high = ([centre + s * step / 5 for step in range(-10, 11)] for centre in (m, n))
    inside = sum(1 for value in low if min(high) <= value <= max(high))
    return "much" if inside > len(low) / 2 else "hardly at all"


def where_is_the_other_mean(m, d, k):
    return [n for n in range(int(m), 300) if Fraction(n - m) / d == k]


def two_samples_worked_out(ask):
    values = [int(one) for one in re.findall(r"\d+", ask)]
    first, second = values[:4], values[4:8]
    spreads = [
        statistics.mean(abs(Fraction(one) - statistics.mean(group)) for one in group)
        for group in (first, second)
    ]
    assert spreads[0] == spreads[1]
    return Fraction(statistics.mean(first) - statistics.mean(second)) / spreads[0]
