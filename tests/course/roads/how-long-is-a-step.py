"""A row of slips, and steps laid end to end."""

from __future__ import annotations

import statistics


def which_stand_in_the_middle():
    places = list(range(1, 21))
    return statistics.median_low(places), statistics.median_high(places)


def half_a_metre_each():
    steps, way = 0, 0
    while way < 1000 * 100:
        way, steps = way + 50, steps + 1
    return steps
