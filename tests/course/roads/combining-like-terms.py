"""Terms as so many equal lengths laid end to end, tried out on numbers."""

from __future__ import annotations

import itertools
import re


def _many(count, worth):
    return sum(itertools.repeat(worth, int(count)))


def trays_and_rolls(a, b, c):
    return lambda x: _many(a, x) + b + _many(c, x)


def one_taken_away(a, b):
    return lambda y: _many(a, y) - y + _many(b, y)


def which_are_alike(choices):
    def letters(term):
        return re.sub(r"[\d ]", "", term)

    def alike(choice):
        one, other = choice.split(" and ")
        return letters(one) == letters(other)

    return [choice for choice in choices if alike(choice)]


def rope_around_the_market(a, b):
    def around(x):
        way = 0
        for _half in range(2):
            way += _many(a, x) + b
        return way

    return around


def equal_for_every_number(a, b, c, d, e, s):
    def first(x):
        return _many(a, x) + b + _many(c, x)

    def second(x):
        return _many(d, x) + e

    assert first(s) == second(s)
    return all(first(x) == second(x) for x in range(-4, 30))


def brackets_then_like_terms(a, b, c, d):
    return lambda x: _many(a, x + b) + _many(c, x) - d
