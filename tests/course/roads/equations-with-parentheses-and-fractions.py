"""Equations as printed, solved by the line through two trials; bills shared out dollar by dollar."""

from __future__ import annotations

import re
from fractions import Fraction


def _side(side, worth):
    """A side as printed, such as (x + 3)/4 or (2/3)(y + 5), with a number put in for the letter."""
    text = side.replace("−", "-").replace("×", "*").replace(",", "")
    text = re.sub(r"([\d)])\s*(?=[(xy])", r"\1*", text)
    text = re.sub(r"\d+", lambda found: f"F({found[0]})", text)
    return eval(text, {"F": Fraction, "x": Fraction(worth), "y": Fraction(worth)})


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


def clear_the_fraction(ask, choices):
    """The same root, and no fraction."""
    wanted = _root(re.search(r"sides of (.*?) by", ask)[1])
    return [one for one in choices if "/" not in one and _root(one) == wanted]


def fraction_and_number(ask):
    return _root(_printed(ask))


def which_number_clears_both(a, b, choices):
    fitting = [one for one in choices if not int(one) % a and not int(one) % b]
    return min(fitting, key=int)


def shared_bill(n, c, b):
    """Every price tried, each friend paying one dollar after the other."""
    return [price for price in range(1, 400) if sum(c for _ in range(int(n))) == price + b]


def fraction_before_brackets(ask):
    return _root(_printed(ask))


def two_fractions(ask):
    return _root(_printed(ask))


def brackets_on_both_sides(ask):
    return _root(_printed(ask))
