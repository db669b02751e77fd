"""Mixed numbers, counted in the smallest pieces that fit everything."""

from __future__ import annotations

import math
import re
from fractions import Fraction


def _mixed(text):
    """Every number of a text: 4 2/3, 5/6 or 7."""
    return [
        sum(Fraction(part) for part in found.split())
        for found in re.findall(r"\d+ \d+/\d+|\d+/\d+|\d+", text)
    ]


def _in_pieces(amounts):
    """How many pieces each amount has, and how many pieces make a whole."""
    whole = math.lcm(*(amount.denominator for amount in amounts))
    return [int(amount * whole) for amount in amounts], whole


def whole_minus_fraction(ask):
    (n, part), whole = _in_pieces(_mixed(ask))
    return Fraction(n - part, whole)


def open_a_whole(r, b, w, choices):
    values = {choice: sum(Fraction(part) for part in choice.split(" + ")) for choice in choices}
    return [choice for choice in choices if values[choice] == r and choice.startswith(f"{w - 1} ")]


def add_and_hand_on(ask):
    (one, other), whole = _in_pieces(_mixed(ask))
    return Fraction(len(range(one)) + len(range(other)), whole)


def take_with_renaming(ask):
    (one, other), whole = _in_pieces(_mixed(ask))
    return Fraction(one - other, whole)


def enough_flour(ask):
    needed, *found = _mixed(ask.replace("two", "").replace("one of", ""))
    (pieces, *rest), _ = _in_pieces([needed, *found])
    return sum(rest) >= pieces


def rope_left(ask):
    (rope, one, other), whole = _in_pieces(_mixed(ask))
    return Fraction(rope - one - other, whole)
