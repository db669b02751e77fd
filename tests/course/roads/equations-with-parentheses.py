"""Bracket equations as printed, solved by the line through two trials; stories acted out dollar by dollar."""

from __future__ import annotations

import re
from fractions import Fraction


def _side(side, letter, worth):
    """A side as printed, such as 3(x + 2) or 4x - 8, with a number put in for the letter."""
    text = side.replace("−", "-").replace("×", "*").replace(",", "")
    text = re.sub(rf"(\d)\s*(?=[({letter}])", r"\1*", text)
    return eval(text, {letter: Fraction(worth)})


def _root(equation, letter):
    left, right = equation.split("=")
    at_zero, at_one = (_side(left, letter, x) - _side(right, letter, x) for x in (0, 1))
    return Fraction(at_zero, at_zero - at_one)


def _printed(ask):
    return re.search(r"Solve (.*?)\.", ask)[1]


def first_move(a, b, c, s, choices):
    def left_after(choice):
        number = int(re.search(r"\d+", choice)[0])
        before = Fraction(a * (s + b))
        if choice.startswith("take"):
            return before - number
        return before / number if choice.startswith("divide") else before * number

    return [choice for choice in choices if left_after(choice) == s + b]


def equal_groups(ask):
    return _root(_printed(ask), "x")


def without_brackets(ask, choices):
    wanted = _root(re.search(r"as (.*)\?", ask)[1], "x")
    return [choice for choice in choices if _root(choice, "x") == wanted]


def signs_in_front(ask):
    return _root(_printed(ask), "y")


def each_one_pays(a, b, c):
    return [price for price in range(1, 200) if sum(price + b for _ in range(int(a))) == c]


def not_even(ask):
    return _root(_printed(ask), "n")
