"""Percents by sharing into a hundred parts and counting them."""

from __future__ import annotations

import re
from fractions import Fraction


def _parts(percent, whole):
    one = Fraction(whole) / 100
    full, rest = divmod(Fraction(percent), 1)
    return sum((one for _ in range(int(full))), Fraction(0)) + rest * one


def friendly_percent(p, n):
    return _parts(p, n)


def which_way_to_it(p, n, choices):
    def worth(choice):
        first, *moves = re.findall(r"([÷×−]?) ?(\d+)", choice)
        value = Fraction(first[1])
        for sign, number in moves:
            value = {"÷": value / int(number), "×": value * int(number), "−": value - int(number)}[sign]
        return value

    return [choice for choice in choices if worth(choice) == _parts(p, n)]


def any_percent(p, n):
    return _parts(p, n)


def below_one_percent(p, n):
    return _parts(p, n)


def more_than_all(p, n):
    return n + _parts(p - 100, n)


def the_others(p, n):
    return _parts(100 - p, n)
