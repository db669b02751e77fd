"""Equations as printed, solved by the line through two trials, and a steady change acted out step by step."""

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


def added_or_taken(maths):
    return _root(maths[0], "x")


def what_leaves_it_alone(a, c, choices):
    x = next(x for x in range(-200, 201) if -a * x == c)
    right_side = {
        f"divide both sides by −{a}": c / -a,
        f"divide both sides by {a}": c / a,
        f"add {a} to both sides": c + a,
    }
    return [choice for choice in choices if right_side[choice] == x]


def negative_times(maths):
    return _root(maths[0], "y")


def divided_by_a_negative(maths):
    return _root(maths[0], "n")


def fraction_times(maths):
    return _root(maths[0], "x")


def steady_change(r, c):
    steps, level = 0, Fraction(0)
    while level != c:
        level, steps = level + r, steps + 1
    return steps
