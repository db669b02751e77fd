"""Moves done step by step, mirrors as the point whose middle way lies on the mirror, foldings tried with every line."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction


def _points(text):
    found = re.findall(r"\((-?\d+), (-?\d+)\)", text.replace("−", "-"))
    return [(int(x), int(y)) for x, y in found]


def _walk(point, moves):
    """One unit step after another, each named by its word."""
    steps = {"right": (1, 0), "left": (-1, 0), "up": (0, 1), "down": (0, -1)}
    x, y = point
    for count, way in moves:
        for _ in range(int(count)):
            x, y = x + steps[way][0], y + steps[way][1]
    return (x, y)


def _moves(text):
    return re.findall(r"(\d+)(?: steps| cm)? (right|left|up|down)", text)


def _mirrored(point, axis):
    """The point of the grid on the other side: level with it or straight below, its middle way on the axis."""
    (moving, kept) = (0, 1) if axis == "y" else (1, 0)
    for spot in itertools.product(range(-30, 31), repeat=2):
        if spot[kept] == point[kept] and spot[moving] + point[moving] == 0:
            return spot
    raise AssertionError


def _written(point):
    return f"({point[0]}, {point[1]})".replace("-", "−")


def slide_a_point(ask):
    return _written(_walk(_points(ask)[0], _moves(ask)))


def mirror_a_corner(ask, choices):
    axis = re.search(r"the ([xy])-axis", ask)[1]
    image = _mirrored(_points(ask)[-1], axis)
    return [choice for choice in choices if _points(choice) == [image]]


def where_it_began(ask):
    spots = itertools.product(range(-25, 26), repeat=2)
    return [_written(spot) for spot in spots if _walk(spot, _moves(ask)) == _points(ask)[0]]


def lines_of_symmetry(ask):
    """Lines through the middle that map the set of corners to itself: level, upright and the two diagonals."""
    corners = _points(ask)
    middle = [Fraction(sum(one[n] for one in corners), 4) for n in (0, 1)]
    around = {(x - middle[0], y - middle[1]) for x, y in corners}
    flips = (
        lambda x, y: (x, -y),
        lambda x, y: (-x, y),
        lambda x, y: (y, x),
        lambda x, y: (-y, -x),
    )
    return str(sum({flip(*one) for one in around} == around for flip in flips))


def what_stays(ask):
    sides = [int(one) for one in re.search(r"sides of (\d+), (\d+) and (\d+)", ask).groups()]
    return str(sum(sides))


def mirror_then_slide(ask):
    return _written(_walk(_mirrored(_points(ask)[0], "y"), _moves(ask)))
