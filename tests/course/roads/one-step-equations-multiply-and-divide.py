"""Equations with a product or a quotient, by sympy on the equation as printed and by acting the story out."""

from __future__ import annotations

import re
from fractions import Fraction

import sympy


def _solved(equation, letter):
    left, right = (
        sympy.sympify(re.sub(rf"(?<=\d){letter}", f"*{letter}", side), rational=True)
        for side in equation.split("=")
    )
    (found,) = sympy.solve(left - right, sympy.Symbol(letter))
    return Fraction(int(found.p), int(found.q))


def _equation(ask):
    return re.search(r"Solve (.*?)\.", ask)[1]


def times_a_number(ask):
    return _solved(_equation(ask), "x")


def divided_by_a_number(ask):
    return _solved(_equation(ask), "y")


def answer_is_a_fraction(ask):
    return _solved(_equation(ask), "n")


def what_undoes_it(a, c, choices):
    x = next(x for x in range(1, 1000) if Fraction(x, int(a)) == c)
    both = {
        f"multiply both sides by {a}": c * a,
        f"divide both sides by {a}": c / a,
        f"take {a} away from both sides": c - a,
    }
    return [choice for choice in choices if both[choice] == x]


def which_equation_fits(a, c, words, choices):
    several = words["one"] in ("buys", "fills")
    x = next(x for x in range(1, 1000) if (x * a if several else Fraction(x, int(a))) == c)
    return [choice for choice in choices if _solved(choice, "x") == x and ("+" not in choice)]


def dough_before_sharing(a, c, d):
    return sum([Fraction(int(c), int(d))] * int(a))
