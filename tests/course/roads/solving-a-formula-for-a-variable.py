"""Formulas solved by SymPy from the printed equation, and numbers found by trying until the formula comes out true."""

from __future__ import annotations

import re
from fractions import Fraction

import sympy


def _side(written):
    """A printed expression as SymPy reads it."""
    text = written.replace("−", "-").replace("×", "*")
    return sympy.sympify(re.sub(r"(?<=[\d)a-z])\s*(?=[a-z(])", "*", text.strip()))


def _solved(equation, letter):
    left, right = equation.replace("`", "").split("=")
    return sympy.solve(_side(left) - _side(right), sympy.Symbol(letter))


def _printed(ask, pattern):
    return re.search(pattern, ask)[0]


def _same(choices, solutions, letter):
    (solution,) = solutions
    found = [choice.strip("`") for choice in choices]
    return [
        choice
        for choice, plain in zip(choices, found, strict=True)
        if plain.startswith(f"{letter} =") and sympy.simplify(_side(plain.partition("=")[2]) - solution) == 0
    ]


def _numbers(text):
    return [Fraction(one) for one in re.findall(r"-?\d+(?:\.\d+)?", text.replace("−", "-").replace(",", ""))]


def time_from_the_way(ask, choices):
    return _same(choices, _solved(_printed(ask, r"d = \d+t"), "t"), "t")


def height_of_a_triangle(ask):
    """The triangle is half of a rectangle: rows of that rectangle until half of them make the area."""
    area, base, _ = _numbers(ask)
    return [high for high in range(1, 100) if sum([base] * high) / 2 == area]


def formula_for_the_number(ask, choices):
    return _same(choices, _solved(_printed(ask, r"c = \d+n \+ \d+"), "n"), "n")


def side_from_the_way_around(ask):
    around, side = _numbers(ask)[2:]
    return [other for other in range(1, 200) if side + other + side + other == around]


def solve_for_y(ask):
    (solution,) = _solved(re.search(r"Solve `?(.+?)`? for", ask)[1], "y")
    return lambda x: solution.subs("x", x)


def degrees_turned_around(ask):
    """Ten degrees Celsius are eighteen Fahrenheit, and water freezes at 0 and 32: walk in tenths."""
    shown = _numbers(ask)[0]
    tenths = [one for one in range(-300, 600) if 32 + one * Fraction(18, 100) == shown]
    return [Fraction(one, 10) for one in tenths]


def solve_and_share(ask):
    (solution,) = _solved(re.search(r"Solve `?(.+?)`? for", ask)[1], "y")
    return lambda x: solution.subs("x", x)
