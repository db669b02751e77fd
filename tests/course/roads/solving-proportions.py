"""Proportions as printed, by trying numbers until the cross products agree; machines run minute by minute."""

from __future__ import annotations

import re
from fractions import Fraction


def _root(equation, letter):
    """The number that makes both ratios equal: tried in steps of one over each of the others."""
    (a, b), (c, d) = (side.strip().split("/") for side in equation.split("="))
    for bottom in {int(one) for one in (a, b, c, d) if one != letter}:
        for top in range(1, 2000):
            tried = Fraction(top, bottom)
            p, q, r, s = (tried if one == letter else int(one) for one in (a, b, c, d))
            if p * s == r * q:
                return tried
    raise AssertionError(equation)


def scale_it(ask):
    return _root(re.search(r"Solve (.*?)\.", ask)[1], "x")


def which_proportion(a, r, n, choices):
    each = Fraction(int(r), int(a))
    right = sum([each] * int(n))
    return [choice for choice in choices if _root(choice, "x") == right]


def unknown_below(ask, choices):
    (equation,) = re.findall(r"in (.*?)\?", ask)
    found = _root(equation, "x")
    return [choice for choice in choices if Fraction(choice.replace(",", "")) == found]


def same_recipe(a, r, n):
    return sum([Fraction(int(r), int(a))] * int(n))


def not_even_factor(ask):
    return _root(re.search(r"Solve (.*?)\.", ask)[1], "y")


def machine_hours(a, b, n):
    return sum(Fraction(int(a), int(b)) for _ in range(60 * int(n)))
