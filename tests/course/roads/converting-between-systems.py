"""Units by laying them side by side, by counting squares and by stepping through the time."""

from __future__ import annotations

import re
from fractions import Fraction


def _fits(rate, amount):
    """How often the rate fits into the amount, whole times and the rest of one."""
    times, rest = divmod(Fraction(amount), Fraction(rate))
    return times + rest / Fraction(rate)


def which_line_changes_it(n, r, choices):
    def worth(choice):
        first, sign, second = re.fullmatch(r"([\d.]+) ([÷×−]) ([\d.]+)", choice).groups()
        one, two = Fraction(first), Fraction(second)
        return {"÷": one / two, "×": one * two, "−": one - two}[sign]

    return [choice for choice in choices if worth(choice) == _fits(r, n)]


def to_the_smaller_unit(n, r):
    return sum((Fraction(r) for _ in range(int(n))), Fraction(0))


def to_the_larger_unit(t, r):
    return _fits(r, t)


def square_units(n, k, choices):
    squares = sum(1 for _ in range(int(n)) for _row in range(int(k)) for _column in range(int(k)))
    return [choice for choice in choices if int(choice.replace(",", "")) == squares]


def metres_per_second(v):
    seconds = sum(60 for _minute in range(60))
    return Fraction(v) * 1000 / seconds


def flow_of_water(n, r, k):
    amount = Fraction(0)
    for _ in range(int(k)):
        amount += sum((Fraction(r) for _one in range(int(n))), Fraction(0))
    return amount
