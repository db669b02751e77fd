"""Roots by trying all numbers and multiplying, never by a root."""

from __future__ import annotations

import math
import re
from fractions import Fraction


def _root(number, times=2):
    (one,) = [one for one in range(3000) if math.prod([one] * times) == number]
    return one


def root_and_more(b, c):
    return _root(c) + b


def tiles_in_a_row(n, c):
    return sum([_root(c)] * int(n))


def root_of_a_fraction(c, d, choices):
    return [one for one in choices if Fraction(one) * Fraction(one) == Fraction(c, d)]


def two_kinds_of_roots(c, d):
    return _root(c, 3) + _root(d)


def all_solutions(b, c, choices):
    wanted = {number for number in range(-200, 201) if number * number + b == c}
    return [
        one
        for one in choices
        if {Fraction(found) for found in re.findall(r"-?[\d.]+", one.replace("−", "-"))} == wanted
    ]


def how_many_numbers(b, c):
    return str(len([number for number in range(-200, 201) if number * number + b == c]))


def edge_of_a_cube(a, b, c):
    return [number for number in range(-50, 51) if a * number * number * number + b == c]
