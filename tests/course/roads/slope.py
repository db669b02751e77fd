"""Slopes by walking: one line through both points is found by SymPy's geometry, or by trying all slopes."""

from __future__ import annotations

import re
from fractions import Fraction

import sympy


def _points(text):
    found = re.findall(r"\((-?\d+), (-?\d+)\)", text.replace("−", "-"))
    return [sympy.Point(int(x), int(y)) for x, y in found]


def _of_line(one, other):
    found = sympy.Line(one, other).slope
    return Fraction(int(found.p), int(found.q))


def slope_on_a_grid(a, b, c, d):
    return _of_line(*(sympy.Point(int(x), int(y)) for x, y in ((a, b), (c, d))))


def how_steep(p, q, choices):
    """The slope with which a way of `p` ahead leads to the height `q`."""
    return [one for one in choices if Fraction(one) * p == q]


def through_two_points(ask):
    return _of_line(*_points(ask))


def change_each_time(a, b, e, f):
    """The first and the last column: the only change that leads from one to the other step by step."""

    def arrived(change):
        height = b
        for _ in range(int(e - a)):
            height += change
        return height

    return [change for change in range(-200, 201) if arrived(change) == f]


def level_or_upright(ask):
    line = sympy.Line(*_points(ask))
    return "it has none" if line.slope is sympy.oo else {0: "zero", 1: "one"}[int(line.slope)]


def point_further_on(p, q, a, b, c):
    line = sympy.Line(sympy.Point(int(a), int(b)), slope=sympy.Rational(int(q), int(p)))
    x, y = sympy.symbols("x y")
    return sympy.solve(line.equation(x, y).subs(x, int(c)), y)
