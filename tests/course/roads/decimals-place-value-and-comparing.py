"""Decimals as Python's own decimals, read from the question's digits and compared by value."""

from __future__ import annotations

import re
from decimal import Decimal

PLACES = {"tenths": Decimal("0.1"), "hundredths": Decimal("0.01"), "thousandths": Decimal("0.001")}


def _decimals(ask):
    return [Decimal(shown) for shown in re.findall(r"\d+(?:\.\d+)?", ask)]


def _shown(one):
    return f"{one.normalize():f}"


def name_to_decimal(ask):
    count, place = re.search(r"Write (\d+) (\w+)", ask).groups()
    return sum([PLACES[place]] * int(count))


def how_many_parts(ask):
    place = re.search(r"How many (\w+)", ask)[1]
    whole, found = _decimals(ask)[-1], 0
    while whole > 0:
        whole -= PLACES[place]
        found += 1
    return found


def which_is_greater(choices):
    return max(choices, key=Decimal)


def in_order(ask):
    return " < ".join(_shown(one) for one in sorted(_decimals(ask)))


def fastest_run(choices):
    return sorted(choices, key=Decimal)[0]


def between(ask):
    low, high = _decimals(ask)[:2]
    return (low + high) / 2
