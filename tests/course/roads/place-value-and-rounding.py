"""Places and rounding, by digits as text and by the decimal library."""

from __future__ import annotations

import re
from decimal import ROUND_HALF_UP, Decimal

PLACES = ["ones", "tens", "hundreds", "thousands", "ten thousands", "hundred thousands", "millions"]
NEAREST = {"ten": "1E1", "hundred": "1E2", "thousand": "1E3"}


def _nearest(n, place):
    return int(Decimal(int(n)).quantize(Decimal(NEAREST[place]), ROUND_HALF_UP))


def digit_worth(ask):
    digit, shown = re.findall(r"[\d,]*\d", ask)
    digits = shown.replace(",", "")
    assert digits.count(digit) == 1
    return int(digit) * 10 ** (len(digits) - 1 - digits.index(digit))


def digit_in_place(n, words):
    return str(int(n))[::-1][PLACES.index(words["place"])]


def round_to_place(n, words):
    return _nearest(n, words["place"])


def which_rounds_to(r, choices):
    return [choice for choice in choices if _nearest(choice.replace(",", ""), "hundred") == r]


def sacks_of_flour(n, m):
    return _nearest(n, "thousand") + _nearest(m, "thousand")


def largest_that_rounds(r):
    return max(n for n in range(int(r) - 200, int(r) + 200) if _nearest(n, "hundred") == r)
