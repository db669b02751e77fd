"""Negative exponents as dividing again and again, starting from one."""

from __future__ import annotations

import re
from fractions import Fraction

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")


def _divided(start, by, times):
    worth = Fraction(start)
    for _ in range(int(times)):
        worth /= by
    return worth


def _worth(written, x=Fraction(3)):
    """What a choice is worth, raised digits and all, with a number put in for x."""
    text = re.sub(r"([⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)", lambda hit: f"**({hit[1].translate(RAISED)})", written)
    text = re.sub(r"\^\(?(-?\d+)\)?", r"**(\1)", text.replace("−", "-").replace("×", "*"))
    text = re.sub(r"(\d)\s*x", r"\1*x", text)
    text = re.sub(r"(?<![\d*(-])(\d+)(?![\d)])", r"Fraction(\1)", text)
    return eval(text, {"x": x, "Fraction": Fraction})


def as_a_fraction(a, n):
    return _divided(1, a, n)


def same_as(a, n, choices):
    return [choice for choice in choices if _worth(choice) == _divided(1, a, n)]


def one_power_below_the_bar(a, m, n):
    wanted = _divided(_divided(1, a, m), a, n)
    return [trial for trial in range(-100, 100) if Fraction(a) ** trial == wanted]


def a_number_in_front(a, n, choices):
    return [choice for choice in choices if _worth(choice) == _divided(a, 3, n)]


def behind_dark_glass(a, n, s):
    return _divided(s, a, n)


def up_and_down(a, m, n):
    up = 1
    for _ in range(int(m)):
        up *= int(a)
    return _divided(up, a, n)
