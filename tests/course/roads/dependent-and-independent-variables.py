"""Tables carried on column by column, and rules tried on the points."""

from __future__ import annotations

import re

PLAY = {  # what is chosen in the story, and what follows from it
    "loaves": "the price",
    "gets shorter": "the length of the candle",
    "into a tub": "the water in the tub",
    "boxes": "the weight on the cart",
    "seconds": "the distance",
}


def go_on_with_the_table(a, b, n):
    x, y = 1, a + b
    while x < n:
        x, y = x + 1, y + a
    return y


def which_follows(ask, choices):
    follows = next(second for sign, second in PLAY.items() if sign in ask)
    return [choice for choice in choices if choice == follows]


def two_rows_of_numbers(a, c, t):
    upper = lower = 0
    while upper != t:
        upper, lower = upper + a, lower + c
    return lower


def it_gets_less(a, b):
    def left(x):
        amount = b
        for _ in range(abs(x)):
            amount += -a if x > 0 else a
        return amount

    return left


def which_equation_has_the_points(ask, choices):
    points = [tuple(map(int, pair)) for pair in re.findall(r"\((\d+), (\d+)\)", ask)]

    def fits(choice):
        right = re.sub(r"(\d+)x", r"\1*x", choice.partition("=")[2].replace(" ", ""))
        return all(eval(right, {"x": x}) == y for x, y in points)

    return [choice for choice in choices if fits(choice)]


def how_far_for_the_money(a, b, t):
    return [n for n in range(1, 200) if b + sum(a for _ in range(n)) == t]
