"""Pairs tried one by one in both printed equations; the number of common points by SymPy."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction

import sympy

X, Y = sympy.symbols("x y")


def _side(written):
    text = written.replace("−", "-").replace("×", "*").strip()
    return sympy.sympify(re.sub(r"(?<=[\d)])\s*(?=[a-z(])", "*", text))


def _equations(text):
    """The printed equations, as differences that have to be zero."""
    plain = text.replace("`", "")
    found = re.findall(r"((?:x \+ |\d+)?y) = ([−\dx +]*\d*x(?: [+−] \d+)?|\d+)", plain)
    return [_side(left) - _side(right) for left, right in found]


def _fits(equation, x, y):
    return equation.subs({X: x, Y: y}) == 0


def fits_both(ask):
    x, y = (int(one.replace("−", "-")) for one in re.search(r"\((−?\d+), (−?\d+)\)", ask).groups())
    equations = _equations(ask)
    assert len(equations) == 2
    return all(_fits(equation, x, y) for equation in equations)


def where_they_meet(a, b, c, d):
    spots = itertools.product(range(-6, 7), repeat=2)
    met = [(x, y) for x, y in spots if a * x + b == y and c * x + d == y]
    return [f"({x}, {y})".replace("-", "−") for x, y in met]


def how_many_points(ask):
    equations = _equations(ask)
    assert len(equations) == 2
    found = sympy.linsolve(equations, [X, Y])
    if not found:
        return "no point"
    return "every point" if next(iter(found)).free_symbols else "one point"


def set_them_equal(ask, choices):
    """The equation whose solution is the x of the point that fits both lines."""
    ((x, _),) = sympy.linsolve(_equations(ask), [X, Y])
    sides = {choice: choice.strip("`").split("=") for choice in choices}
    return [choice for choice, (left, right) in sides.items() if (_side(left) - _side(right)).subs(X, x) == 0]


def how_high_they_meet(ask):
    """Where the gap between the lines, which changes evenly, has shrunk to nothing."""
    first, second = (sympy.solve(equation, Y)[0] for equation in _equations(ask))
    met = [x for x in range(-60, 61) if first.subs(X, x) == second.subs(X, x)]
    return [Fraction(int(first.subs(X, x))) for x in met]


def in_place_of_y(ask):
    equations = _equations(ask)
    assert len(equations) == 2
    spots = ((x, y) for x in range(1, 40) for y in range(1, 200))
    one, other = (sympy.lambdify((X, Y), equation) for equation in equations)
    return [f"({x}, {y})" for x, y in spots if one(x, y) == 0 and other(x, y) == 0]


def two_kinds_of_tickets(ask):
    count, total, dear, cheap = (int(one) for one in re.findall(r"\d+", ask.replace(",", "")))
    return [first for first in range(count + 1) if first * dear + (count - first) * cheap == total]
