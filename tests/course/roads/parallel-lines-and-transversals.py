"""Angles measured on lines laid out with coordinates, and triangles built from their corners.

A level line has the direction 0 degrees; the line across has the direction of the known angle. Every other angle is
then measured between directions, never by the rules of the lesson.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

# From which direction to which an angle opens, at a crossing of a level line with one of direction d.
PLACES = {
    "upper right": lambda d: (0, d),
    "upper left": lambda d: (d, 180),
    "lower left": lambda d: (180, 180 + d),
    "lower right": lambda d: (180 + d, 360),
}
LETTERS = {"A": "upper left", "B": "upper right", "C": "lower left", "D": "lower right"}


def _opening(place, direction):
    start, end = PLACES[place](direction)
    return end - start


def _direction(place, size):
    """The whole direction of the line across for which this angle has this size."""
    (found,) = [d for d in range(1, 180) if _opening(place, d) == size]
    return found


def _numbers(text):
    return [int(one) for one in re.findall(r"\d+", text)]


def at_the_second_line(ask, words):
    (size,) = _numbers(ask)
    return f"{_opening(LETTERS[words['which']], _direction('upper right', size))} degrees"


def inside_on_one_side(ask):
    (size,) = _numbers(ask)
    return _opening("upper right", _direction("lower right", size))


def parallel_or_not(ask):
    """The line across lies still; the two others are parallel if both have the same direction."""
    first, second = _numbers(ask)
    if "same place" in ask:
        return _direction("upper right", first) == _direction("upper right", second)
    above = "lower left" if "different sides" in ask else "lower right"
    return _direction(above, first) == _direction("upper right", second)


def the_same_shape(ask):
    p, q, _, r = _numbers(ask)
    return sorted([p, q, 180 - p - q]) == sorted([p, r, 180 - p - r])


def a_rope_in_the_tent(ask):
    """The triangle laid out with its lower side level; the angle measured where the line meets the right side."""
    left, top = (math.radians(one) for one in _numbers(ask))
    lean = math.tan(left)
    # The right side comes down from the top; turning by the angle at the top from the left side gives its direction.
    peak = (1.0, lean)
    down = left + math.pi + top
    run = -peak[1] / math.tan(down)
    low = (peak[0] + run, 0.0)
    half = ((peak[0] + low[0]) / 2, peak[1] / 2)
    level, upward = math.pi, math.atan2(peak[1] - half[1], peak[0] - half[0])
    return round(math.degrees(level - upward))


def equal_angles_with_x(ask):
    a, b, c = _numbers(ask)
    return [x for x in range(1, 100) if a * x == b * x + c]


def how_wide_below(ask):
    """Similar triangles by corners: the left side upright, the line across shifted until it meets the lower corner."""
    across, short, more = _numbers(ask)
    slant = Fraction(across, short)
    return sum([slant] * (short + more))
