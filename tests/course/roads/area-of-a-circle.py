"""Areas of circles, by cutting into thin strips and adding, and scaling the sum to pi as 3.14.

The strips give the true area; the ratio 3.14 to the true pi is put in at the end, so a diameter taken for a radius, a
missed half or a missed hole shows.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

STRIPS = 4000


def _strips(radius):
    """The area of a circle as printed with 3.14 for pi: level strips added up, to a hundredth of the radius squared."""
    high = radius / STRIPS
    area = sum(4 * high * math.sqrt(radius**2 - ((strip + 0.5) * high) ** 2) for strip in range(STRIPS))
    exact = Fraction(round(area / math.pi * 4), 4) * Fraction("3.14")
    assert math.isclose(float(exact), area, rel_tol=2e-3)
    return exact


def area_from_radius(r):
    return _strips(float(r))


def which_line_is_area(d, choices):
    def worth(written):
        plain = written.replace("²", " × again").replace("^2", " × again")
        parts = plain.split(" × ")
        return math.prod(Fraction(parts[n - 1] if part == "again" else part) for n, part in enumerate(parts))

    return [choice for choice in choices if worth(choice) == _strips(float(d) / 2)]


def half_round(d):
    return _strips(float(d) / 2) / 2


def times_as_much(r, s):
    return _strips(float(s)) / _strips(float(r))


def from_the_way_around(ask):
    around = Fraction(re.search(r"is ([\d.,]+) \w+ around", ask)[1].replace(",", ""))
    return _strips(float(around / Fraction("3.14")) / 2)


def path_around(r, s):
    return _strips(float(s)) - _strips(float(r))
