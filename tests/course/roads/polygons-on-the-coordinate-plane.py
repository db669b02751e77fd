"""Ways walked step by step, shapes by their vectors, areas by the shoelace rule."""

from __future__ import annotations

import re
from fractions import Fraction


def _points(text):
    found = re.findall(r"\((-?\d+), (-?\d+)\)", text.replace("−", "-"))
    return [(int(x), int(y)) for x, y in found]


def _steps(one, other):
    """Unit steps from one point to another along the grid."""
    (x, y), count = one, 0
    while (x, y) != other:
        x += (other[0] > x) - (other[0] < x)
        y += (other[1] > y) - (other[1] < y)
        count += 1
    return count


def _closed(points):
    return list(zip(points, points[1:] + points[:1], strict=True))


def level_or_upright(p, q, r, s):
    return _steps((p, q), (r, s))


def fourth_corner(ask, choices):
    first, second, third = _points(ask)
    (x, y) = (first[0] + third[0] - second[0], first[1] + third[1] - second[1])
    return [choice for choice in choices if _points(choice) == [(x, y)]]


def around_a_rectangle(ask):
    return sum(_steps(*side) for side in _closed(_points(ask)))


def which_shape(ask):
    sides = [(b[0] - a[0], b[1] - a[1]) for a, b in _closed(_points(ask))]
    turns = [one[0] * two[1] - one[1] * two[0] for one, two in zip(sides, sides[2:] + sides[:2], strict=True)]
    if any(turns):
        return "trapezoid"
    dot = sides[0][0] * sides[1][0] + sides[0][1] * sides[1][1]
    return "parallelogram" if dot else "rectangle"


def on_the_map(ask, m):
    return sum(m for _ in range(_steps(*_points(ask))))


def corner_triangle(ask):
    return Fraction(abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in _closed(_points(ask)))), 2)
