"""Fractions as Python's own, read from the question; pieces counted one by one."""

from __future__ import annotations

import re
from fractions import Fraction as F


def _numbers(ask):
    """Fractions and mixed numbers of a question, in order."""
    return [sum(F(part) for part in shown.split()) for shown in re.findall(r"(?:\d+ )?\d+/\d+", ask)]


def up_to_one(ask, choices):
    return [choice for choice in choices if F(choice) + _numbers(ask)[0] == 1]


def add_pieces(ask):
    return sum(_numbers(ask))


def what_is_left(ask):
    first, second = _numbers(ask)
    return first - second


def how_many_parts(ask):
    piece, whole = _numbers(ask)
    count = 0
    while whole > 0:
        whole -= piece
        count += 1
    return count


def add_mixed(ask):
    return sum(_numbers(ask))


def take_mixed(ask):
    first, second = _numbers(ask)
    return first - second
