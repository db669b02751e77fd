"""Equations as printed, solved by the line through two trials, and stories acted out."""

from __future__ import annotations

import re
from fractions import Fraction


def _side(side, letter, worth):
    product = re.sub(rf"(?<=\))\s*{letter}", f"*{letter}", side)
    return eval(product, {"F": Fraction, letter: Fraction(worth)})


def _root(equation, letter):
    """Left minus right is a straight line: two trials tell where it is zero."""
    left, right = equation.split("=")
    at_zero, at_one = (_side(left, letter, x) - _side(right, letter, x) for x in (0, 1))
    return at_zero / (at_zero - at_one)


def first_move(a, b, s, choices):
    def both_sides(choice):
        """What the two sides of a x + b = c are worth after the move."""
        left, right = Fraction(a * s + b), Fraction(a * s + b)
        number = int(re.search(r"\d+", choice)[0])
        if choice.startswith("take"):
            return left - number, right - number
        if choice.startswith("add"):
            return left + number, right + number
        return left / number, right / number

    return [choice for choice in choices if both_sides(choice)[0] == a * s]


def times_and_plus(maths):
    return _root(maths[0], "x")


def with_minus_signs(maths):
    return _root(maths[0], "y")


def shared_and_more(maths):
    return _root(maths[0], "n")


def which_equation_tells_it(a, b, c, choices):
    x, total = 0, b
    while total < c:
        x, total = x + 1, total + a

    def holds(choice):
        fractions = re.sub(r"\d+", lambda found: f"F('{found[0]}')", choice)
        return _root(fractions, "x") == x

    return [choice for choice in choices if holds(choice)]


def how_long_it_lasts(a, b, c):
    times = 0
    while b > c:
        b, times = b - a, times + 1
    return times
