"""Names of shapes from their parts: sets of sides, the longest of three angles, corners laid out and measured."""

from __future__ import annotations

import math
import re
from collections import Counter

# What a family asks for, as pairs of parallel sides, right angles and equal sides at least.
ASKS = {
    "parallelogram": (2, 0, 0),
    "rectangle": (2, 4, 0),
    "rhombus": (2, 0, 4),
    "square": (2, 4, 4),
    "trapezoid": (1, 0, 0),
}


def _kind(plural):
    return {"rhombuses": "rhombus"}.get(plural, plural.removesuffix("s"))


def by_the_angles(ask):
    one, two, three = sorted(int(n) for n in re.findall(r"\d+", ask))
    # Sides by the law of sines; then the squares on them tell the kind.
    short, middle, long = (math.sin(math.radians(angle)) ** 2 for angle in (one, two, three))
    if math.isclose(short + middle, long):
        return "right"
    return "acute" if short + middle > long else "obtuse"


def by_the_sides(ask):
    most = max(Counter(re.findall(r"\d+", ask)).values())
    return {3: "equilateral", 2: "isosceles", 1: "scalene"}[most]


def on_one_corner(a, n):
    """A rhombus with this angle is a square if its diagonals are equally long."""
    long, short = (2 * a * trigonometric(math.radians(n / 2)) for trigonometric in (math.cos, math.sin))
    return math.isclose(long, short)


def sure_of_the_family(words):
    has, wants = ASKS[_kind(words["one"])], ASKS[words["other"].split()[-1]]
    return all(there >= asked for there, asked in zip(has, wants, strict=True))


def pairs_in_the_box(a, b, words):
    return sum([ASKS[_kind(words["other"])][0]] * int(a)) + sum([ASKS["trapezoid"][0]] * int(b))


def wire_triangle(ask):
    whole, bottom = (int(n) for n in re.findall(r"\d+", ask))
    return [side for side in range(1, whole) if side + side + bottom == whole]
