"""Stories told forwards with every number that could be meant, until the total of the story comes out."""

from __future__ import annotations

import re
from fractions import Fraction


def _bill(fee, price, times):
    total = fee
    for _ in range(int(times)):
        total += price
    return total


def which_equation(c, a, t, choices):
    """The equation that holds for the number of the story, and for two other bills of the same prices."""
    (times,) = [times for times in range(1, 60) if _bill(c, a, times) == t]

    def left(written, worth):
        side = written.split(" = ")[0].replace("x", f"*{worth}").replace(") *", ")*")
        return eval(re.sub(r"^\*", "", side))

    return [
        one
        for one in choices
        if all(left(one, times + more) == _bill(c, a, times + more) for more in range(3))
    ]


def how_long_was_it(c, a, t):
    return [times for times in range(1, 60) if _bill(c, a, times) == t]


def the_larger_part(d, t):
    return [max(one, t - one) for one in range(1, int(t) // 2 + 1) if abs(t - 2 * one) == d]


def before_the_sale(r, q, choices):
    def paid(written):
        price = Fraction(written.removeprefix("$").replace(",", ""))
        return price - sum(Fraction(r, 100) for _ in range(int(price))) - (price - int(price)) * r / 100

    return [one for one in choices if paid(one) == q]


def tickets_and_snacks(n, a, t):
    return [snack for snack in range(1, 60) if sum([a + snack] * int(n)) == t]


def as_long_as_it_lasts(c, a, t):
    return max(times for times in range(1, 200) if _bill(c, a, times) <= t)
