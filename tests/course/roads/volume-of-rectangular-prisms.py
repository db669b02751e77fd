"""Boxes filled cube by cube, or halves of cubes by halves of cubes."""

from __future__ import annotations

from fractions import Fraction
from itertools import product


def _cubes(*edges):
    return sum(1 for _ in product(*(range(int(edge)) for edge in edges)))


def fill_with_cubes(a, b, h):
    return _cubes(a, b, h)


def which_line(a, b, h, choices):
    return [
        choice for choice in choices if eval(choice.replace("×", "*").replace(",", ""), {}) == _cubes(a, b, h)
    ]


def fraction_edge(d, n, b, h):
    """Cut each unit of length into d slices: every slice holds a d-th of a cube."""
    return Fraction(_cubes(n, b, h), int(d))


def small_cubes(n, a, b, h):
    return f"{_cubes(n * a, n * b, n * h):,} cubes"


def two_steps(a, b, c, h, k):
    """A cube belongs to the shape if it stands low enough for its place."""
    return sum(
        z < h or x < c for x, _, z in product(range(int(a)), range(int(b)), range(int(h + k))) if z < h + k
    )


def how_deep(a, b, v):
    layers, filled = 0, 0
    while filled < v:
        filled += _cubes(a, b, 1)
        layers += 1
    return layers
