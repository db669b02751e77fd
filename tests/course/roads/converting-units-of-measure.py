"""Units changed with a table of their own sizes (OpenStax Prealgebra 2e, section 7.5), given in one base unit each."""

from __future__ import annotations

import re
from fractions import Fraction

SIZE = {
    "millimetres": Fraction(1, 1000),
    "centimetres": Fraction(1, 100),
    "metres": Fraction(1),
    "kilometres": Fraction(1000),
    "grams": Fraction(1),
    "kilograms": Fraction(1000),
    "millilitres": Fraction(1, 1000),
    "litres": Fraction(1),
    "inches": Fraction(1),
    "feet": Fraction(12),
    "yards": Fraction(36),
    "ounces": Fraction(1),
    "pounds": Fraction(16),
    "quarts": Fraction(1),
    "gallons": Fraction(4),
    "seconds": Fraction(1),
    "minutes": Fraction(60),
    "hours": Fraction(3600),
    "days": Fraction(86400),
}


def _number(text):
    return Fraction(text.replace(",", ""))


def more_or_fewer(ask, choices):
    number, old, new = re.search(r"changes ([\d,.]+) (\w+) into (\w+)", ask).groups()
    wanted = _number(number) * SIZE[old] / SIZE[new]
    found = []
    for choice in choices:
        one, sign, other = choice.split()
        worth = _number(one) * _number(other) if sign == "×" else _number(one) / _number(other)
        found += [choice] if worth == wanted else []
    return found


def into_smaller(ask):
    new, number, old = re.search(r"many (\w+) are ([\d,.]+) (\w+)", ask).groups()
    return _number(number) * SIZE[old] / SIZE[new]


def into_larger(ask):
    number, old = re.search(r"([\d,]+) (\w+)", ask).groups()
    (new,) = re.findall(r"many (\w+)", ask)
    return _number(number) * SIZE[old] / SIZE[new]


def large_and_small(ask):
    new, number, old, more = re.search(r"many (\w+) are (\d+) (\w+) and (\d+)", ask).groups()
    return _number(number) * SIZE[old] / SIZE[new] + _number(more)


def parts_of_an_hour(ask):
    (hours,) = re.findall(r"\d+\.\d+", ask)
    return _number(hours) * SIZE["hours"] / SIZE["minutes"]


def which_is_longer(ask, choices):
    one, other = re.findall(r"(\d+ \w+)", ask)
    sizes = [_number(text.split()[0]) * SIZE[text.split()[1]] for text in (one, other)]
    if sizes[0] == sizes[1]:
        return "both the same"
    return one if sizes[0] > sizes[1] else other


def fill_the_jars(ask):
    have, unit, each, small = re.search(r"has ([\d.]+) (\w+) of .*?(\d+) (\w+)\.", ask).groups()
    left, jars = _number(have) * SIZE[unit], 0
    while left >= _number(each) * SIZE[small]:
        left, jars = left - _number(each) * SIZE[small], jars + 1
    return jars
