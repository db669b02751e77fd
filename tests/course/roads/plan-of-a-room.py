"""The given room, quarter by quarter: each square centimetre of the plan is a square of half a metre."""

from __future__ import annotations

from fractions import Fraction
from itertools import product


def check_with_a_given_room(a, b, c, d):
    room = set(product(range(int(a)), range(int(b))))
    free = room - set(product(range(int(c)), range(int(d))))
    return sum((Fraction(1, 2) * Fraction(1, 2) for _ in free), Fraction(0))
