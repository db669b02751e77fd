"""Properties tried out on numbers."""

from __future__ import annotations

import re
from fractions import Fraction as F

import sympy


def _sides(line, n):
    text = re.sub(r"\bn\b", str(n), line.replace("−", "-").replace("×", "*").replace("÷", "/"))
    return [sympy.parse_expr(side) for side in text.split(" = ")]


def not_for_all(choices):
    return [
        line
        for line in choices
        if any(left != right for left, right in (_sides(line, n) for n in (1, 3, 17)))
    ]


def back_to_zero(a):
    return [n for n in range(-60, 61) if int(a) + n == 0]


def which_line_shows(ask, choices):
    name = re.search(r"the (\w+) property", ask)[1]

    def named(line):
        left, right = line.split(" = ")
        if right == "0":
            return "inverse"
        if "(" in right:
            return "associative"
        return "commutative" if right.split(" + ") == left.split(" + ")[::-1] else "identity"

    return [line for line in choices if named(line) == name]


def minus_brackets(a, b, c):
    left = list(range(int(a)))
    taken = list(range(int(b)))[int(c) :]
    return len(left[len(taken) :])


def divided_brackets(a, b, c):
    groups, left = 0, int(a)
    while left > 0:
        left -= F(b, c)
        groups += 1
    return groups


def shelves_and_boxes(a, b, c):
    return sum(1 for _ in range(int(a)) for _ in range(int(b)) for _ in range(int(c)))
