"""Enlargements by laying the small figure or way end to end, so many times; areas by counting unit squares."""

from __future__ import annotations

import re
from fractions import Fraction


def _written(point):
    return f"({point[0]}, {point[1]})".replace("-", "−")


def _points(text):
    found = re.findall(r"\((-?\d+), (-?\d+)\)", text.replace("−", "-"))
    return [(int(x), int(y)) for x, y in found]


def _again(start, step, times):
    """Where you come to from a start by making one way so many times."""
    x, y = start
    for _ in range(int(times)):
        x, y = x + step[0], y + step[1]
    return (x, y)


def missing_side(a, b, c):
    """Equal cross products: tried."""
    return [side for side in range(1, 500) if side * a == b * c]


def enlarge_a_point(ask, k):
    return _written(_again((0, 0), _points(ask)[0], k))


def which_is_similar(a, b, choices):
    def sides(written):
        return [int(one) for one in re.findall(r"\d+", written)]

    return [one for one in choices if Fraction(*sides(one)) == Fraction(a, b)]


def height_by_shadow(h, s, t):
    return [high for high in range(1, 500) if Fraction(high, t) == Fraction(h, s)]


def area_after(p, k):
    squares = [(x, y) for x in range(int(k)) for y in range(int(k))]
    return f"{sum(int(p) for _ in squares):,}"


def from_another_centre(ask, k):
    corner, centre = _points(ask)
    return _written(_again(centre, (corner[0] - centre[0], corner[1] - centre[1]), k))
