"""Surfaces counted on cubes: a small square is outside if no cube lies behind it. Pyramids from their net's corners."""

from __future__ import annotations

import functools
from fractions import Fraction
from itertools import product


@functools.cache
def _surface(a, b, h):
    cubes = set(product(range(int(a)), range(int(b)), range(int(h))))
    sides = [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]
    return sum((x + u, y + v, z + w) not in cubes for x, y, z in cubes for u, v, w in sides)


def _shoelace(corners):
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in pairs)) / 2


def surface_of_a_box(a, b, h):
    return _surface(a, b, h)


def surface_of_a_cube(a, choices):
    """Twice as long in small squares with edges of a half: each of these is a quarter."""
    wanted = Fraction(_surface(2 * a, 2 * a, 2 * a), 4)
    return [choice for choice in choices if Fraction(choice.replace(",", "")) == wanted]


def line_for_the_net(a, b, h, choices):
    def worth(choice):
        return eval(choice.replace("×", "*").replace(",", ""), {})

    return [choice for choice in choices if worth(choice) == _surface(a, b, h)]


def open_box(a, b, h):
    return _surface(a, b, h) - sum(1 for _ in product(range(int(a)), range(int(b))))


def pyramid(a, s):
    """The net is a star with eight corners."""
    a, s = Fraction(a), Fraction(s)
    half = a / 2
    star = [(0, 0), (half, -s), (a, 0), (a + s, half), (a, a), (half, a + s), (0, a), (-s, half)]
    return _shoelace(star)


def cans_of_paint(a, b, h, c):
    left, cans = _surface(a, b, h), 0
    while left > 0:
        left, cans = left - c, cans + 1
    return cans
