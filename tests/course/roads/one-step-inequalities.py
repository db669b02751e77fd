"""Inequalities tried on number after number: the answer is the one that is true for the same numbers."""

from __future__ import annotations

import operator
import re
from fractions import Fraction

SIGNS = {"<": operator.lt, ">": operator.gt, "≤": operator.le, "≥": operator.ge}
FIELD = [Fraction(n, 2) for n in range(-160, 161)]


def _holds(line, letter):
    left, sign, right = re.fullmatch(r"(.+?) ([<>≤≥]) (.+)", line.replace("−", "-")).groups()
    left = re.sub(rf"(\d)({letter})", r"\1*\2", left)
    return [SIGNS[sign](eval(left, {letter: x}), Fraction(right)) for x in FIELD]


def _same(truth, letter):
    """The line letter-sign-number with the same solutions."""
    changes = [k for k in range(1, len(truth)) if truth[k] != truth[k - 1]]
    (k,) = changes
    for end in (FIELD[k - 1], FIELD[k]):
        for sign in SIGNS:
            line = f"{letter} {sign} {end}"
            if end.denominator == 1 and _holds(line, letter) == truth:
                return line.replace("-", "−")
    raise AssertionError(truth)


def _line(ask):
    return re.search(r"(?:Solve|fit|solve) (.*?)[.?]", ask)[1]


def does_it_turn(ask):
    line = _line(ask)
    return "<" not in _same(_holds(line, "x"), "x")


def plus_or_minus(ask):
    return _same(_holds(_line(ask), "x"), "x")


def times_negative(ask):
    return _same(_holds(_line(ask), "y"), "y")


def draw_the_answer(ask):
    _, sign, end = _same(_holds(_line(ask), "x"), "x").split()
    circle = "a filled" if sign in "≤≥" else "an open"
    return f"{circle} circle at {end}, thick to the {'left' if sign in '<≤' else 'right'}"


def how_many_can_go(p, c):
    bought = 0
    while c >= p:
        c, bought = c - p, bought + 1
    return bought


def colder_and_colder(ask, a, c):
    """Hour after hour, and the halves between: when is it true?"""
    below = operator.le if "at or below" in ask else operator.lt
    truth = [below(a * t, c) for t in FIELD]
    return _same(truth, "t")
