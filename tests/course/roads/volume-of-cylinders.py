"""Cylinders counted as columns of grains that stand inside the circle, scaled to pi as 3.14.

The count is that of the true circle; the ratio 3.14 to the true pi is put in at the end, so a diameter taken for a
radius, a square left out or a hole added shows.
"""

from __future__ import annotations

import math
from fractions import Fraction

GRAINS = 400


def _column(radius, high):
    """The volume as printed with 3.14 for pi: grains in one layer, counted row by row, then layer by layer."""
    grain = radius / GRAINS
    rows = (2 * math.sqrt(radius**2 - ((row + 0.5) * grain) ** 2) for row in range(-GRAINS, GRAINS))
    layer = sum(rows) * grain
    bottom = Fraction(round(layer / math.pi * 4), 4) * Fraction("3.14")
    assert math.isclose(float(bottom), layer, rel_tol=2e-3)
    return sum([bottom] * int(high))


def volume_from_radius(r, h):
    return _column(float(r), h)


def which_line_is_volume(d, h, choices):
    def worth(written):
        parts = written.replace("²", " × again").replace("^2", " × again").split(" × ")
        return math.prod(Fraction(parts[n - 1] if part == "again" else part) for n, part in enumerate(parts))

    return [choice for choice in choices if worth(choice) == _column(float(d) / 2, h)]


def volume_from_diameter(d, h):
    return _column(float(d) / 2, h)


def wider_or_higher(r, s, h):
    return _column(float(s), h) / _column(float(r), h)


def how_high_it_stands(r, v):
    """Layers poured in, one after the other, until the given volume is there."""
    high = 1
    while _column(float(r), high) < v:
        high += 1
    return [high] if _column(float(r), high) == v else []


def a_thick_pipe(r, s, h):
    return _column(float(s), h) - _column(float(r), h)
