"""Conditions tried on number after number: the sign is the one that is true for just those that fit."""

from __future__ import annotations

import operator
import re

SIGNS = {"<": operator.lt, ">": operator.gt, "≤": operator.le, "≥": operator.ge}
# What people say, as what it means for a number that lies below, on or above the end.
SAYINGS = (
    (r"no more than|at most", (True, True, False)),
    (r"no less than|no fewer than|at least", (False, True, True)),
    (r"less than|under", (True, False, False)),
    (r"greater than|more than", (False, False, True)),
)


def _fits(text):
    """Which of below, on and above fits, by the first saying in the text."""
    found = [(re.search(saying, text), fits) for saying, fits in SAYINGS]
    return min(((hit.start(), fits) for hit, fits in found if hit))[1]


def _sign(fits):
    return next(
        sign for sign, holds in SIGNS.items() if tuple(holds(one, 0) for one in (-1, 0, 1)) == tuple(fits)
    )


def _place(number, end):
    return (number > end) - (number < end) + 1


def at_most_at_least(words, n):
    return f"x {_sign(_fits(words['say']))} {n}".replace("-", "−")


def read_the_line(words, n):
    return f"x {words['sign']} {n}".replace("-", "−")


def how_to_draw_it(words, n):
    below, on, _above = _fits(words["say"])
    circle = "a filled" if on else "an open"
    return f"{circle} circle at {n}, thick to the {'left' if below else 'right'}".replace("-", "−")


def put_into_signs(ask, n):
    fits = _fits(ask.replace("costs less if", ""))
    return f"b {_sign(fits)} {n}"


def may_it_go(ask):
    end, number = (int(one) for one in re.findall(r"\d+", ask))
    return _fits(ask)[_place(number, end)]


def last_whole_number(words, n):
    field = [one for one in range(-100, 101) if _fits(words["more"])[_place(one, n)]]
    return min(field) if words["end"] == "smallest" else max(field)
