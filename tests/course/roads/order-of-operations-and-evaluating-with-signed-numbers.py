"""Expressions as printed, by the precedence of Python, and letters by putting a negative number in."""

from __future__ import annotations

import re
from fractions import Fraction


def _worked(text, **letters):
    text = re.sub(r"(?<=\))\s*(?=[a-z(])", "*", text)
    for sign, power in {"⁴": "**4", "³": "**3", "²": "**2", "^": "**"}.items():
        text = text.replace(sign, power)
    return eval(text, {"F": Fraction, **letters})


def minus_before_a_power(a, n, b):
    power = 1
    for _ in range(int(n)):
        power *= a
    return b - power


def what_comes_next(maths, s, choices):
    worth = _worked(maths[0], n=-s)

    def plain(choice):
        numbers = re.sub(r"\d+", lambda found: f"F({found[0]})", choice)
        return numbers.replace("−", "-").replace("×", "*")

    return [choice for choice in choices if _worked(plain(choice)) == worth]


def over_a_bar(maths):
    return _worked(maths[0])


def level_in_the_lock(b, r, s):
    level = b
    for _ in range(int(s)):
        level += r
    return level


def square_and_letter(maths, s):
    return _worked(maths[0], x=s)


def brackets_below_zero(maths):
    return _worked(maths[0])
