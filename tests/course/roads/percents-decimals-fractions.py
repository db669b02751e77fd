"""Percents by filling a hundred: so many for each one, counted up, or decimals read digit by digit."""

from __future__ import annotations

import re
from fractions import Fraction


def _of_a_hundred(part, whole):
    """How many it is of every hundred, if `part` are of `whole`: the same group again until there are a hundred."""
    groups = Fraction(100) / whole
    return Fraction(part) * groups


def _percent(many):
    text = f"{float(many):.10g}"
    return f"{text}%"


def the_grid(n):
    white = [square for square in range(100) if square >= n]
    return f"{len(white)}%"


def decimal_to_percent(ask):
    whole, digits = re.search(r"Write (\d+)\.?(\d*)", ask).groups()
    hundredths = int(whole) * 100 + int(digits.ljust(2, "0"))
    assert len(digits) <= 2
    return Fraction(hundredths, 100)


def percent_to_decimal(ask):
    """Move the point two places to the left, in the text."""
    whole, _, digits = re.search(r"Write ([\d.]+)%", ask)[1].partition(".")
    whole = whole.zfill(3)
    return Fraction(f"{whole[:-2]}.{whole[-2:]}{digits}")


def fraction_to_percent(a, b):
    return _of_a_hundred(a, b) / 100


def percent_to_fraction(ask):
    (many,) = (int(n) for n in re.findall(r"\d+", ask))
    return Fraction(sum([1] * many), sum([1] * 100))


def how_many_are_free(ask):
    whole, taken = (int(n) for n in re.findall(r"\d+", ask))
    free = len(range(taken, whole))
    return _percent(_of_a_hundred(free, whole))
