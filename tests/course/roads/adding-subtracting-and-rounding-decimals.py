"""Sums by Python's decimals, rounding by its own rule of halves up."""

from __future__ import annotations

import re
from decimal import ROUND_HALF_UP, Decimal

PLACE = {"tenth": Decimal("0.1"), "hundredth": Decimal("0.01")}


def _decimals(text):
    return [Decimal(shown) for shown in re.findall(r"\d+(?:\.\d+)?", text)]


def _shown(one):
    return f"{one.normalize():f}"


def which_can_it_be(ask):
    return _shown(sum(_decimals(ask)))


def under_one_another(ask):
    return sum(_decimals(ask))


def from_a_whole(ask):
    first, second = _decimals(ask)
    return first - second


def round_it(ask):
    place = PLACE[re.search(r"nearest (\w+)", ask)[1]]
    return _shown(_decimals(ask)[0].quantize(place, ROUND_HALF_UP))


def change_at_the_market(ask):
    one, other, paid = (Decimal(shown) for shown in re.findall(r"\$(\d+(?:\.\d\d)?)", ask))
    cents = int(paid * 100) - int(one * 100) - int(other * 100)
    return Decimal(cents) / 100


def three_lengths(ask):
    whole, *cut = _decimals(ask)
    return (whole - sum(cut)).quantize(PLACE["tenth"], ROUND_HALF_UP)
