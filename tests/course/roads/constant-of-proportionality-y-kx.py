"""Proportion by adding one pair again and again, and by trying each candidate on what is printed."""

from __future__ import annotations

import re
from fractions import Fraction


def find_k(a, b, c):
    table = [(a, c * a), (b, c * b)]
    halves = (Fraction(one, 2) for one in range(1, 100))
    return [one for one in halves if all(one * x == y for x, y in table)]


def which_equation(ask, choices):
    amount, price = (int(one) for one in re.findall(r"\d+", ask))

    def fits(choice, x, y):
        left, right = (re.sub(r"(\d)\s*([xy])", r"\1*\2", side) for side in choice.split("="))
        return eval(left, {"x": x, "y": y}) == eval(right, {"x": x, "y": y})

    # Twice as much costs twice as much.
    pairs = [(amount, price), (2 * amount, 2 * price), (0, 0)]
    return [choice for choice in choices if all(fits(choice, *pair) for pair in pairs)]


def read_the_graph(k, n):
    return sum([Fraction(k)] * int(n))


def on_the_line(ask):
    x, y, k = (int(one) for one in re.findall(r"\d+", ask))
    return sum([k] * x) == y


def how_long_for_that(k, c):
    done, time = 0, 0
    while done < c:
        done, time = done + k, time + 1
    assert done == c
    return time


def two_offers(a, k, e, n):
    first = Fraction((k + e) * a, a)
    return sum(first - k for _ in range(int(n)))
