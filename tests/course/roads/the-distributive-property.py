"""Brackets as so many groups added up, for a number in place of the letter."""

from __future__ import annotations

import re


def _groups(many, group):
    """So many equal groups, added one by one."""
    return sum([group] * int(many))


def plus_in_brackets(a, b):
    return lambda x: _groups(a, x + b)


def in_your_head(a, n, choices):
    def worth(written):
        return eval(re.sub(r"×", "*", written).replace("−", "-"), {})

    return [choice for choice in choices if worth(choice) == _groups(a, n)]


def two_letters_or_one(a, b, c):
    return lambda x: _groups(a, _groups(c, x) - b)


def same_for_every_number(a, b, c):
    return all(_groups(a, n + b) == _groups(a, n) + c for n in range(-5, 20))


def two_pens_and_a_path(a, b):
    def area(w):
        return sum(w + b for _row in range(int(a)))

    return area


def brackets_and_a_number(a, b, c, d):
    return lambda x: d + _groups(a, _groups(c, x) + b)
