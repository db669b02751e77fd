"""Sums as printed, worked out by fractions or by decimal places."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction


def _mixed(text):
    """-1 1/2 as printed: the sign belongs to all of it."""
    sign = -1 if "−" in text else 1
    return sign * sum(Fraction(part) for part in re.findall(r"\d+/\d+|\d+", text))


def decimals_both_ways(ask):
    start, move = re.search(r"Work out (\S+) \+ (\S+)\.$", ask).groups()
    return Fraction(Decimal(start.replace("−", "-")) + Decimal(move))


def which_is_it_equal_to(ask, choices):
    wanted = _mixed(re.search(r"number as (.*)\?", ask)[1])

    def worth(choice):
        return sum(
            Fraction(part.replace("−", "-").replace(" ", "")) for part in re.findall(r"−? ?[\d/]+", choice)
        )

    return [choice for choice in choices if worth(choice) == wanted]


def unlike_bottoms(maths):
    return eval(maths[0], {"F": Fraction})


def mixed_below_zero(ask):
    start, move = re.search(r"Work out (.*?) \+ (.*?)\. Type", ask).groups()
    return _mixed(start) + _mixed(move)


def group_the_partners(maths, choices):
    worth = eval(maths[0], {"F": Fraction})
    return [
        choice
        for choice in choices
        if Fraction(_mixed(choice) if "/" in choice else Fraction(choice.replace("−", "-"))) == worth
    ]


def tide_and_thermometer(a, b, c):
    tenths = round(a * 10)
    tenths += round(b * 10)
    tenths -= round(c * 10)
    return Fraction(tenths, 10)
