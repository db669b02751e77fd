"""Rates by adding equal steps: an hour, a thing, a coin at a time."""

from __future__ import annotations

import re
from fractions import Fraction


def _rate_that_fills(total, many):
    """The whole number of cents (or of units) that, added so many times, makes the total."""
    return next(rate for rate in range(1, 100_000) if sum([rate] * int(many)) == total)


def for_one(t, n):
    return _rate_that_fills(t, n)


def which_division(p, n, choices):
    def worth(written):
        numbers = re.sub(r"\d+", lambda found: f"F({found[0]})", written)
        return eval(numbers.replace("÷", "/").replace("−", "-"), {"F": Fraction})

    return [choice for choice in choices if worth(choice) * n == p]


def price_of_one(t, n):
    return Fraction(_rate_that_fills(round(t * 100), n), 100)


def better_buy(ask, choices):
    packs = re.findall(r"(\d+) for \$(\d+(?:\.\d+)?)", ask)
    # One cent for cent and pack for pack: the larger number of things for the same money is the better buy.
    (n, s), (m, t) = ((int(many), round(Fraction(price) * 100)) for many, price in packs)
    return choices[0] if n * t > m * s else choices[1]


def on_at_the_same_rate(t, a, n):
    return sum([_rate_that_fills(t, a)] * int(n))


def how_long_does_it_take(t, a, d):
    hours, gone = 0, Fraction(0)
    while gone < d:
        gone, hours = gone + Fraction(t, a), hours + 1
    assert gone == d
    return hours
