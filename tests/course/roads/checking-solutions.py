"""Numbers put in one by one, and solutions by sympy."""

from __future__ import annotations

import re

import sympy

x = sympy.Symbol("x")


def _side(text, letter="x"):
    text = re.sub(r"(?<=\d)(?=[a-z])", "*", text.replace("−", "-"))
    return sympy.parse_expr(text, local_dict={letter: x})


def _solutions(equation, letter="x"):
    left, right = equation.split(" = ")
    return sympy.solve(sympy.Eq(_side(left, letter), _side(right, letter)), x)


def is_it_a_solution(ask):
    tried, equation = re.search(r"x = (\d+) a solution of (.*)\?", ask).groups()
    return int(tried) in _solutions(equation)


def makes_it_true(ask, choices):
    (solution,) = _solutions(re.search(r"makes (.*) true", ask)[1])
    return [choice for choice in choices if choice == str(solution)]


def both_sides_equal(ask):
    return [int(one) for one in _solutions(ask.partition(". ")[0], "n")]


def true_or_not(ask):
    tried, left, right = re.search(r"x = (\d+) make (.*) < (\d+) true", ask).groups()
    return bool(_side(left).subs(x, int(tried)) < int(right))


def how_many_fit(ask):
    last, left, right = re.search(r"to (\d+) make (.*) > (\d+) true", ask).groups()
    return sum(1 for n in range(1, int(last) + 1) if _side(left).subs(x, n) > int(right))


def sacks_on_the_cart(a, b, c):
    load, count = int(b), 0
    while load + int(a) <= int(c):
        load += int(a)
        count += 1
    return count
