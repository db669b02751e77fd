"""Rates found by cutting both amounts into equal small parts and counting; the long bar by Python's fractions."""

from __future__ import annotations

import re
from fractions import Fraction


def _each(much, of):
    """How much goes with one: `of` is cut into unit parts, one part is found, a whole one put together again."""
    of = Fraction(of)
    one_part = Fraction(much) / of.numerator
    return sum([one_part] * of.denominator)


def _fractions(text):
    return [Fraction(one) for one in re.findall(r"\d+/\d+", text)]


def which_division(ask, choices):
    much, of = _fractions(ask)
    wanted = _each(much, of)

    def worth(choice):
        first, second = _fractions(choice)
        return first / second if "÷" in choice else first * second

    return [choice for choice in choices if worth(choice) == wanted]


def per_hour(ask):
    return _each(*_fractions(ask))


def long_bar(a, b, c, d):
    return Fraction(int(a), int(b)) / Fraction(int(c), int(d))


def minutes_to_hour(a, b, m):
    """Minute by minute."""
    return sum(Fraction(int(a), int(b) * int(m)) for _ in range(60))


def how_much_with_one(ask, choices):
    wanted = _each(*_fractions(ask))
    return [choice for choice in choices if sum(Fraction(one) for one in choice.split()) == wanted]


def several_batches(ask, n):
    return sum(_each(*_fractions(ask)) for _ in range(int(n)))
