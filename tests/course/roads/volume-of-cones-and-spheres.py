"""Cones and balls cut into thin level slices, their circles added up and scaled to pi as 3.14.

The slices give the true volume; the ratio 3.14 to the true pi is put in at the end, so a missed third, a square for a
cube or a diameter for a radius shows.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

SLICES = 3000


def _sliced(height, radius_at):
    """Sum of thin discs, as printed with 3.14 for pi: to a 1200th of the number that multiplies pi."""
    thin = height / SLICES
    volume = sum(math.pi * radius_at((slice_ + 0.5) * thin) ** 2 * thin for slice_ in range(SLICES))
    share = Fraction(round(volume / math.pi * 1200), 1200).limit_denominator(24)
    assert math.isclose(float(share) * math.pi, volume, rel_tol=1e-4)
    return share * Fraction("3.14")


def _cone(radius, height):
    return _sliced(height, lambda down: radius * down / height)


def _ball(radius, share=1):
    """A ball, or the part of it from its bottom up to this share of its height."""
    return _sliced(2 * radius * share, lambda up: math.sqrt(max(0.0, radius**2 - (radius - up) ** 2)))


def cone_from_radius(r, h):
    return _cone(float(r), float(h))


def cups_into_a_jug(r, h, g):
    jug = _sliced(float(g), lambda up: float(r))
    return jug / _cone(float(r), float(h))


def balls_from_radius(n, r):
    return sum([_ball(float(r))] * int(n))


def which_line_ball(ask, choices):
    across = int(re.search(r"is (\d+) cm", ask.replace("`", ""))[1])

    def worth(written):
        text = written.replace("²", "^2").replace("³", "^3").replace("×", "*").replace("^", "**")
        return eval(re.sub(r"[\d.]+", lambda found: f"F('{found[0]}')", text), {"F": Fraction})

    slices = (math.sqrt((across / 2) ** 2 - (n + 0.5 - 500) ** 2 * (across / 1000) ** 2) for n in range(1000))
    true = sum(math.pi * radius**2 * across / 1000 for radius in slices) / math.pi * 3.14
    return [choice for choice in choices if math.isclose(worth(choice), true, rel_tol=1e-4)]


def how_high_the_cone(r, v):
    return [high for high in range(1, 40) if _cone(float(r), float(high)) == v]


def cone_with_a_cap(r, h):
    return _cone(float(r), float(h)) + _ball(float(r), share=0.5)
