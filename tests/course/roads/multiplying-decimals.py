"""Products of decimals, by the decimal library on the question as printed."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction


def _numbers(ask):
    return [Decimal(one.replace(",", "")) for one in re.findall(r"\d[\d,]*\.?\d*", ask.rstrip("."))]


def times_a_power_of_ten(ask):
    number, power = _numbers(ask)
    return Fraction(number.scaleb(power.adjusted()))


def where_the_point_goes(ask, choices):
    p, q = _numbers(ask)[-2:]
    return [choice for choice in choices if Decimal(choice) == p * q]


def tenths_times_tenths(ask):
    p, q = _numbers(ask)
    return Fraction(p * q)


def more_or_less_than_before(ask):
    n, p, _ = _numbers(ask)
    return p * n > n


def price_by_weight(ask):
    price, weight = _numbers(ask)
    cents = int(price * 100)
    halves = int(weight * 2)
    return Fraction(sum(cents for _ in range(halves)), 200)


def rug_area(ask):
    width, height = (int(one * 10) for one in _numbers(ask))
    small_squares = sum(1 for _ in range(width) for _ in range(height))
    return Fraction(small_squares, 100)
