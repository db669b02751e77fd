"""Roots by Python's math.isqrt and by decimal.Decimal to thirty places, rounded there."""

from __future__ import annotations

import math
import re
from decimal import ROUND_HALF_UP, Decimal, getcontext

getcontext().prec = 30


def _root(n):
    return Decimal(int(n)).sqrt()


def _number(ask):
    return int(re.search(r"(?:√\(?|area of )(\d[\d,]*)", ask)[1].replace(",", ""))


def the_smaller_neighbour(n):
    return math.isqrt(int(n))


def the_nearest_whole(n, choices):
    return min(choices, key=lambda choice: abs(Decimal(choice) - _root(n)))


def less_or_greater(n, d):
    return "less" if _root(n) < Decimal(d.numerator) / d.denominator else "greater"


def between_tenths(n):
    """The tenths counted from zero until the next one would be too large."""
    tenths = math.isqrt(100 * int(n))
    return f"{tenths // 10}.{tenths % 10}" if tenths % 10 else str(tenths // 10)


def side_of_a_square(ask):
    return str(_root(_number(ask)).quantize(Decimal("0.1"), ROUND_HALF_UP))


def tiles_along_a_wall(n, l):
    """Laid one after the other until the next one would stick out."""
    side, laid = _root(n), 0
    while (laid + 1) * side <= int(l):
        laid += 1
    return laid
