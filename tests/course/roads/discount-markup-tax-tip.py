"""Prices in whole cents, changed percent by percent: a hundredth of the price is put on or taken away each time."""

from __future__ import annotations

import re
from fractions import Fraction


def _changed(price, percent):
    """The price after so many hundredths of it were put on (or, below zero, taken off)."""
    hundredth, step = Fraction(price) / 100, 1 if percent > 0 else -1
    new = Fraction(price)
    for _ in range(abs(int(percent))):
        new += step * hundredth
    return new


def percent_off(p, d):
    return _changed(p, -d)


def in_one_step(ask, choices):
    price, percent = (int(one) for one in re.findall(r"\d+", ask))
    wanted = _changed(price, percent)

    def worth(written):
        parts = re.sub(r"\d+(\.\d+)?", lambda hit: f"Fraction('{hit[0]}')", written.replace("−", "-"))
        return eval(parts.replace("×", "*"), {"Fraction": Fraction})

    return [choice for choice in choices if worth(choice) == wanted]


def with_tax(p, t):
    return _changed(p, t)


def tip_and_share(p, n, t):
    cents = 100 * _changed(p, t)
    return [Fraction(each, 100) for each in range(1, 10000) if each * n == cents]


def up_and_then_down(p, a, b):
    last = _changed(_changed(p, a), -b)
    return "the same" if last == p else "lower" if last < p else "higher"


def markup_then_discount(p, m, d):
    return _changed(_changed(p, m), -d)
