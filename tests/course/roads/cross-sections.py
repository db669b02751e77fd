"""Cuts through solids whose corners stand in space, by SymPy's planes or by corners on edges."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction

import sympy


def _box(a, b, c):
    """The corners of a box and its edges: length, width and height along the axes."""
    corners = list(itertools.product((0, a), (0, b), (0, c)))
    return [
        (one, other)
        for one, other in itertools.combinations(corners, 2)
        if sum(x != y for x, y in zip(one, other, strict=True)) == 1
    ]


def _pyramid(side, high):
    """The edges of a pyramid over a square around the origin."""
    half = Fraction(side) / 2
    base = [(-half, -half, 0), (half, -half, 0), (half, half, 0), (-half, half, 0)]
    return [(base[n], base[(n + 1) % 4]) for n in range(4)] + [(one, (0, 0, high)) for one in base]


def _cut(edges, axis, at):
    """Where a plane across an axis meets the edges; each meeting place once."""
    found = set()
    for one, other in edges:
        low, high = sorted((one, other), key=lambda corner: corner[axis])
        if low[axis] <= at <= high[axis] and low[axis] != high[axis]:
            part = Fraction(at - low[axis]) / Fraction(high[axis] - low[axis])
            found.add(tuple(Fraction(x) + part * (Fraction(y) - x) for x, y in zip(low, high, strict=True)))
    return found


def _sides(corners):
    """How far a level or upright rectangle reaches along each axis, flat axes left out."""
    reach = [max(row) - min(row) for row in zip(*corners, strict=True)]
    return sorted(one for one in reach if one)


def cut_of_a_box(a, b, c, words, choices):
    axis, at = (2, Fraction(c) / 2) if words["cut"] == "level" else (0, Fraction(a) / 2)
    wanted = _sides(_cut(_box(a, b, c), axis, at))
    return [one for one in choices if sorted(Fraction(n) for n in re.findall(r"\d+", one)) == wanted]


def name_the_cut(a, h, words):
    edges = _pyramid(a, h) if words["shape"] == "pyramid" else _box(a, a, h)
    if words["cut"] == "level":
        corners = _cut(edges, 2, Fraction(h) / 2)
    else:
        corners = _cut(edges, 0, 0 if words["shape"] == "pyramid" else Fraction(a) / 2)
    if len(corners) == 3:
        return "triangle"
    return "square" if len(set(_sides(corners))) == 1 else "rectangle"


def around_the_cut(s, h):
    return 2 * sum(_sides(_cut(_pyramid(s, h), 2, Fraction(h) / 2)))


def fresh_face(a, b, c):
    wide, high = _sides(_cut(_box(a, b, c), 0, Fraction(a) / 3))
    return sum(1 for _ in itertools.product(range(int(wide)), range(int(high))))


def slice_of_a_prism(a, h, w):
    """Where a plane across the way it is long meets the three long edges."""
    ends = [(0, 0), (a, 0), (Fraction(a) / 3, h)]
    plane = sympy.Plane(sympy.Point3D(0, sympy.Rational(int(w), 2), 0), normal_vector=(0, 1, 0))
    met = []
    for x, z in ends:
        x, z = sympy.Rational(str(x)), sympy.Rational(str(z))
        edge = sympy.Line3D(sympy.Point3D(x, 0, z), sympy.Point3D(x, int(w), z))
        met.append(plane.intersection(edge)[0])
    triangle = sympy.Polygon(*(sympy.Point(point.x, point.z) for point in met))
    return Fraction(str(abs(triangle.area)))


def higher_up(ask):
    side, high, above = (int(one) for one in re.findall(r"\d+", ask))
    long, wide = _sides(_cut(_pyramid(side, high), 2, above))
    return long * wide
