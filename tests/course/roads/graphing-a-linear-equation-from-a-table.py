"""Equations as printed, with every point of a large grid tried; points of a picture by the straight line they make."""

from __future__ import annotations

import re
from fractions import Fraction


def _side(side, x, y):
    text = side.replace("−", "-").replace("×", "*").replace(",", "")
    text = re.sub(r"(\d)\s*(?=[(xy])", r"\1*", text)
    return eval(text, {"x": Fraction(x), "y": Fraction(y)})


def _fits(equation, x, y):
    left, right = equation.split("=")
    return _side(left, x, y) == _side(right, x, y)


def _printed(ask):
    return re.search(r"([-−0-9xy +]* = [-−0-9xy +]*\d?x?)", ask)[1]


def _points(text):
    found = re.findall(r"\(([-−]?\d+), ([-−]?\d+)\)", text)
    return [(int(x.replace("−", "-")), int(y.replace("−", "-"))) for x, y in found]


def one_more_column(ask, s):
    return [y for y in range(-80, 81) if _fits(_printed(ask), s, y)]


def a_point_on_the_line(ask, choices):
    return [one for one in choices if _fits(_printed(ask), *_points(one)[0])]


def level_or_upright(ask, choices):
    """The equation that the point fits, and one further along the way."""
    x, y = _points(ask)[0]
    m, n = (x, y + 3) if "upright" in ask else (x - 3, y)
    return [one for one in choices if _fits(one, x, y) and _fits(one, m, n)]


def where_it_meets_an_axis(ask):
    return [f"({x}, 0)".replace("-", "−") for x in range(-60, 61) if _fits(_printed(ask), x, 0)]


def one_slip_in_four(choices):
    """The point without which the other three have equal quotients of up and across."""

    def straight(points):
        (a, b), (c, d), (e, f) = points
        return (d - b) * (e - a) == (f - b) * (c - a)

    spots = {choice: _points(choice)[0] for choice in choices}
    return [
        odd
        for odd in choices
        if straight([spots[one] for one in choices if one != odd])
        and not straight([spots[odd], *[spots[one] for one in choices if one != odd][:2]])
    ]


def burning_down(m, b):
    left, times = b, 0
    while left > 0:
        left, times = left - m, times + 1
    assert left == 0
    return times


def between_line_and_axes(a, b, c):
    """The corners found by trying, the area by the corners walked around."""
    corners = [(0, 0)]
    corners += [(x, 0) for x in range(1, 60) if a * x == c]
    corners += [(0, y) for y in range(1, 60) if b * y == c]
    twice = sum(x * n - m * y for (x, y), (m, n) in zip(corners, corners[1:] + corners[:1], strict=True))
    return Fraction(abs(twice), 2)
