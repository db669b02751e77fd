"""Ways around a circle, by walking it in many short straight steps and scaling the sum to pi as 3.14.

The walk gives the true length; the ratio 3.14 to the true pi is put in at the end, so a wrong radius, a missed
half or a missed straight side shows.
"""

from __future__ import annotations

import functools
import itertools
import math
import re
from fractions import Fraction

STEPS = 2000


@functools.cache
def _walk(radius, share=1):
    """The length of an arc, a share of the circle, as printed with 3.14 for pi: to a thousandth."""
    turn = 2 * math.pi * share
    points = [
        (radius * math.cos(turn * i / STEPS), radius * math.sin(turn * i / STEPS)) for i in range(STEPS + 1)
    ]
    length = sum(math.dist(one, other) for one, other in itertools.pairwise(points))
    exact = Fraction(length / math.pi).limit_denominator(4) * Fraction("3.14")
    assert math.isclose(float(exact), length, rel_tol=1e-3)
    return exact


def around_from_across(d):
    return _walk(float(d) / 2)


def which_line_is_around(r, choices):
    def worth(written):
        return math.prod(Fraction(part) for part in written.split(" × "))

    return [choice for choice in choices if worth(choice) == _walk(float(r))]


def from_the_radius(r):
    return _walk(float(r))


def back_to_the_radius(ask):
    around = Fraction(re.search(r"is ([\d.,]+)", ask)[1].replace(",", ""))
    return [Fraction(half, 2) for half in range(1, 200) if _walk(half / 2) == around]


def turns_of_a_wheel(d, n):
    return sum([_walk(float(d) / 2)] * int(n)) / 100


def around_a_half(d):
    return _walk(float(d) / 2, share=0.5) + Fraction(d)
