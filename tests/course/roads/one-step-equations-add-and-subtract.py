"""One-step equations, by trying numbers, by sympy on the equation as printed, and by acting the story out."""

from __future__ import annotations

import re
from fractions import Fraction

import sympy


def _solved(ask, letter):
    """The one solution of the equation in the question."""
    left, right = re.search(r"Solve (.*)\.$", ask)[1].replace("−", "-").split("=")
    unknown = sympy.Symbol(letter)
    (found,) = sympy.solve(
        sympy.nsimplify(sympy.sympify(left), rational=True)
        - sympy.nsimplify(sympy.sympify(right), rational=True),
        unknown,
    )
    return Fraction(int(found.p), int(found.q))


def plus_a_number(ask):
    return _solved(ask, "x")


def minus_a_number(ask):
    return _solved(ask, "n")


def letter_on_the_right(ask):
    return _solved(ask, "y")


def which_move(ask):
    sign, number = re.search(r"x ([+−]) (\d+) =", ask).groups()
    return f"take {number} away from both sides" if sign == "+" else f"add {number} to both sides"


def which_equation(b, c, words, choices):
    fewer = words["story"] in ("gives away", "sells")
    (start,) = [x for x in range(500) if (x - b if fewer else x + b) == c]
    fits = {
        f"x + {b} = {c}": start + b == c,
        f"x − {b} = {c}": start - b == c,
        f"{b} − x = {c}": b - start == c,
    }
    return [choice for choice in choices if fits[choice]]


def honey_before(maths, c, d):
    used, left = (eval(piece, {"F": Fraction}) for piece in maths[:2])
    before = left + used
    assert before - used == Fraction(int(c), int(d))
    return before
