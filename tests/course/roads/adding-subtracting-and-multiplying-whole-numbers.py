"""Column arithmetic, by Python on the question as printed."""

from __future__ import annotations

import re
from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def add_in_columns(maths):
    return _worked(maths)


def take_in_columns(maths):
    return _worked(maths)


def multiply_two_digits(maths):
    return _worked(maths)


def which_estimate(a, b):
    return f"{round(int(a), -1) * round(int(b), -1):,}"


def does_it_fit(ask):
    room, one, other = (int(found.replace(",", "")) for found in re.findall(r"[\d,]*\d", ask))
    return one + other <= room


def market_money(ask):
    purse, boxes, price = (int(found.replace(",", "")) for found in re.findall(r"[\d,]*\d", ask))
    for _ in range(boxes):
        purse -= price
    return purse
