"""Terms and coefficients, by sympy on the expression as printed."""

from __future__ import annotations

import re

import sympy


def _read(shown):
    return sympy.sympify(re.sub(r"(?<=[\da-z)])(?=[a-z(])", "*", shown.replace("−", "-")))


def _of(ask):
    return _read(re.search(r"\bin (.*?)[?.]", ask)[1])


def read_the_coefficient(ask):
    return int(_of(ask).coeff("y"))


def no_number_in_front(ask):
    return int(_of(ask).coeff("y"))


def both_coefficients(ask):
    expression = _of(ask)
    return int(expression.coeff("x")), int(expression.coeff("y"))


def three_terms(choices):
    return [choice for choice in choices if len(_read(choice).as_ordered_terms()) == 3]


def product_or_sum(choices):
    found = []
    for choice in choices:
        with sympy.evaluate(False):
            expression = _read(choice)
        if (
            expression.is_Mul
            and len(expression.args) == 2
            and any(factor.is_Add for factor in expression.args)
        ):
            found.append(choice)
    return found


def what_each_number_says(a, b, words):
    def paid(n):
        return b + sum([a] * n)

    grows = paid(6) - paid(5)
    return f"the price for each {words['per']}" if grows == a else f"what is paid once {words['start']}"
