"""Lines walked step by step, equations as printed tried with numbers, slopes as differences of tried values."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction


def _height(equation, x):
    """The y of an equation as printed, such as y = 3 − 2x, y = (−1/2)x + 4 or y = x^2 + 1."""
    side = equation.split("=")[1].replace("−", "-").replace("^", "**").replace("²", "**2")
    side = re.sub(r"(\d+)/(\d+)", r"Fraction(\1, \2)", side)
    side = re.sub(r"(?<=[\d)])\s*(?=x)", "*", side)
    return eval(side, {"x": Fraction(x), "Fraction": Fraction})


def _equation(text):
    return re.search(r"y = [-−0-9x/ +()]*[0-9x]", text)[0]


def read_the_form(ask):
    found = _equation(ask)
    start = _height(found, 0)
    return _height(found, 1) - start if "is the slope" in ask else start


def equation_of_the_picture(b, c, choices):
    """The equation that both marked points fit."""
    return [one for one in choices if _height(one, 0) == b and _height(one, 1) == c]


def which_is_no_line(choices):
    def bends(choice):
        heights = [_height(choice, x) for x in range(-3, 4)]
        return len({after - before for before, after in itertools.pairwise(heights)}) > 1

    return [one for one in choices if bends(one)]


def start_below_zero(m, b, s):
    """Counted on from below zero, one step after the other."""
    at = -b
    for _ in range(int(s)):
        at += m
    return at


def one_step_of_the_slope(ask, q):
    """The height at q to the right, as the equation gives it."""
    return f"({q}, {_height(_equation(ask), q)})".replace("-", "−")


def steps_alike(a, p, n):
    """Steps laid one behind the other until the whole way across is reached."""
    across = up = 0
    while across < n:
        across, up = across + a, up + p
    assert across == n
    return up


def back_to_the_start(m, s, c):
    while s > 0:
        s, c = s - 1, c - m
    return c


def growing_evenly(a, b, c, n):
    """The point over n that makes one straight line with the two that are known."""
    return [y for y in range(1, 300) if (c - b) * n == (y - b) * a]
