"""Histograms filled again with single values, and the values counted."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def _numbers(text):
    return [int(one.replace(",", "")) for one in re.findall(r"\d[\d,]*(?<!,)", text)]


def _filled(heights, width=10):
    """A value in the middle of its group for each that the bar counts."""
    return [width * k + width // 2 for k, height in enumerate(heights) for _ in range(int(height))]


def how_many_values(a, b, c, d, e):
    return len(_filled([a, b, c, d, e]))


def which_group(n, choices):
    def holds(choice):
        low, high = _numbers(choice)
        return int(n) in range(low, high + 1)

    return [choice for choice in choices if holds(choice)]


def this_long_or_longer(a, b, c, d, e, w, n):
    return sum(value >= n for value in _filled([a, b, c, d, e], int(w)))


def name_the_shape(ask):
    values = _filled(_numbers(ask.split("heights")[1].split(",  from")[0])[:5])
    lean = statistics.mean(values) - statistics.median(values)
    mirrored = sorted(50 - value for value in values)
    if mirrored == sorted(values):
        return "about the same on both sides"
    third = sum((value - statistics.mean(values)) ** 3 for value in values)
    assert lean * third >= 0
    return f"a tail to the {'right' if third > 0 else 'left'}"


def part_of_all(a, b, c, d):
    values = _filled([a, b, c, d])
    return Fraction(sum(10 <= value < 20 for value in values), len(values))


def typical_number(ask):
    return statistics.median(_numbers(ask)[:5])
