"""Percents and wholes by trying them out one after the other."""

from __future__ import annotations

import re
from fractions import Fraction

WHOLES = range(1, 3001)


def _percent(part, whole):
    return [Fraction(p, 100) for p in range(1, 701) if p * whole == 100 * part]


def _whole(part, percent):
    return [whole for whole in WHOLES if percent * whole == 100 * part]


def what_percent(n, t):
    return _percent(t, n)


def which_equation_fits_it(t, p, choices):
    (whole,) = _whole(t, p)

    def holds(choice):
        numbers = re.sub(r"\d+(\.\d+)?", lambda found: f"F('{found[0]}')", choice)
        product = re.sub(r"(?<=\))n", "*n", numbers.replace(" n", "n") if choice[0] != "n" else numbers)
        left, right = product.replace("×", "*").split("=")
        return eval(left, {"F": Fraction, "n": whole}) == eval(right, {"F": Fraction, "n": whole})

    return [choice for choice in choices if holds(choice)]


def find_the_whole(t, p):
    return _whole(t, p)


def more_than_the_whole(n, t, choices):
    (share,) = _percent(t, n)
    return [choice for choice in choices if Fraction(choice.rstrip("%")) / 100 == share]


def club_members(t, r):
    return _percent(t, t + r)


def part_taken_off(p, r):
    return [whole for whole in WHOLES if whole - Fraction(p, 100) * whole == r]
