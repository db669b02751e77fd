"""What hangs where on the number line."""

from __future__ import annotations

import math

SLIPS = range(-10, 11)


def neighbours_of_seven_halves():
    return math.floor(-7 / 2), math.ceil(-7 / 2)


def farthest_from_zero():
    farthest = max(abs(slip) for slip in SLIPS)
    return tuple(slip for slip in SLIPS if abs(slip) == farthest)
