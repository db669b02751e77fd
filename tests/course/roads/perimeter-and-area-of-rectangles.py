"""Rectangles, by walking around and by counting squares."""

from __future__ import annotations

import itertools


def _around(a, b):
    return sum((a, b, a, b))


def _squares(a, b):
    return sum(1 for _ in itertools.product(range(int(a)), range(int(b))))


def around_the_garden(a, b):
    return _around(a, b)


def fence_or_grass(a, b, words):
    edge = words["job"].split()[0] in ("fencing", "sewing", "putting")
    return f"{a} + {b} + {a} + {b}" if edge else f"{a} × {b}"


def floor_area(a, b):
    return _squares(a, b)


def missing_width(a, n):
    return [width for width in range(1, 200) if _squares(a, width) == n]


def missing_length_from_fence(p, b):
    return [length for length in range(1, 200) if _around(length, b) == p]


def tiles_for_the_bakery(a, b, c, d):
    floor = set(itertools.product(range(int(a)), range(int(b))))
    oven = set(itertools.product(range(int(c)), range(int(d))))
    return len(floor - oven)
