"""Triangles walked around: the turns at the three corners make one full turn, whatever the triangle."""

from __future__ import annotations


def _closes(*inside):
    """Whether a walk that turns by the outside angle at each corner ends as it began."""
    return sum(180 - angle for angle in inside) == 360 and min(inside) > 0


def third_angle(a, b):
    return [x for x in range(1, 180) if _closes(a, b, x)]


def can_it_be(a, b, c):
    return _closes(a, b, c)


def beside_the_corner(a, b):
    """What is left of the full turn after the turns at the two other corners."""
    return f"{360 - (180 - a) - (180 - b)} degrees"


def two_equal_sides(a):
    return [x for x in range(1, 90) if _closes(a, x, x)]


def lean_on_a_wall(a):
    return [x for x in range(1, 90) if _closes(90, a, x)]


def with_a_letter(n, p):
    return [x for x in range(1, 180) if _closes(x, n * x, p)]
