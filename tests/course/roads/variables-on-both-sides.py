"""Equations as printed, solved by the line through two trials; the two prices raised step by step until they meet."""

from __future__ import annotations

import re
from fractions import Fraction


def _side(side, worth):
    text = re.sub(r"(\d)\s*(?=[(xy])", r"\1*", side.replace("−", "-").replace(",", ""))
    return eval(text, {"x": Fraction(worth), "y": Fraction(worth)})


def _gap(equation, worth):
    left, right = equation.split("=")
    return _side(left, worth) - _side(right, worth)


def _root(equation):
    at_zero, at_one = _gap(equation, 0), _gap(equation, 1)
    root = Fraction(at_zero, at_zero - at_one)
    assert _gap(equation, root) == 0
    return root


def _printed(ask):
    return re.search(r"Solve (.*?)\.", ask)[1]


def a_good_first_move(ask, choices):
    """The same root, and no letter left on the right."""
    wanted = _root(re.search(r"sides of (.*?), so", ask)[1])
    return [one for one in choices if "x" not in one.split("=")[1] and _root(one) == wanted]


def one_number_only(ask):
    return _root(_printed(ask))


def numbers_on_both_sides(ask):
    return _root(_printed(ask))


def more_on_the_right(ask):
    return _root(_printed(ask))


def same_price(a, b, c, d):
    first, other, times = b, d, 0
    while first < other:
        first, other, times = first + a, other + c, times + 1
    assert first == other
    return times


def brackets_first(ask):
    return _root(_printed(ask))
