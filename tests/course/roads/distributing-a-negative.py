"""Expressions as told, with many numbers put in for the letter."""

from __future__ import annotations

import re

TRIALS = (-7, 0, 1, 4, 11)


def _same(choices, worth):
    def value(choice, x):
        written = re.sub(r"(?<=\d)x", "*x", choice.replace("−", "-").replace(" ", ""))
        return eval(written, {"x": x})

    return [choice for choice in choices if all(value(choice, x) == worth(x) for x in TRIALS)]


def negative_in_front(a, b):
    return lambda x: 0 - sum(x - b for _ in range(int(a)))


def bracket_taken_away(b, c, choices):
    return _same(choices, lambda x: c - (x + b))


def two_brackets(a, b, c, d):
    return lambda m: sum(m for _ in range(int(a))) - b - (sum(m for _ in range(int(c))) + d)


def number_less_product(a, b, c):
    return lambda x: c - sum(x + b for _ in range(int(a)))


def money_left(a, b, c, choices):
    def left(price):
        money = c
        for _ in range(int(a)):
            money -= price - b
        return money

    return _same(choices, left)


def difference_of_products(a, b, c, d):
    return lambda n: sum(n + b for _ in range(int(a))) - sum(n + d for _ in range(int(c)))
