"""Both sides as printed, tried with many numbers: where the gap is zero, always, never or once."""

from __future__ import annotations

import re
from fractions import Fraction


def _side(side, worth):
    text = re.sub(r"(\d)\s*(?=[(x])", r"\1*", side.replace("−", "-").replace(",", ""))
    return eval(text, {"x": Fraction(worth)})


def _solutions(equation):
    """The numbers tried that fit: none, one, or all of them."""
    left, right = equation.split("=")
    tried = range(-100, 101)
    fitting = [worth for worth in tried if _side(left, worth) == _side(right, worth)]
    return "every number" if len(fitting) == len(tried) else fitting


def letters_gone_or_not(ask):
    """With two numbers as trials: equal gaps that aren't zero never close."""
    left, right = re.search(r"solve (.*)\?", ask)[1].split("=")
    first, second = (_side(left, worth) - _side(right, worth) for worth in (0, 1))
    if first == second:
        return "every number" if first == 0 else "no solution"
    return "one solution"


def zero_or_nothing(ask):
    found = _solutions(re.search(r"Solve (.*?)\.", ask)[1])
    return found[0] if found else "none"


def make_it_always_true(ask):
    left = re.search(r"solves (.*?) =", ask)[1]
    times = int(re.search(r"= ([-−]?\d+)x", ask)[1].replace("−", "-"))
    return [k for k in range(-200, 201) if all(_side(left, x) == times * x + k for x in range(-5, 6))]


def two_offers_compared(a, b, c, g, choices):
    """Both bills go up step by step; they are equal once or never."""
    meets = [n for n in range(100) if a * n + b == c * n + g]
    kind = {0: "for no number", 1: "for one number", 100: "always"}[len(meets)]
    return [one for one in choices if one.startswith(kind)]


def solve_it_or_say_it(ask):
    found = _solutions(re.search(r"Solve (.*?)\.", ask)[1])
    if found == "every number":
        return "all"
    return found[0] if found else "none"
