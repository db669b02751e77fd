"""Distances by math.hypot and math.dist, legs by trying whole lengths, areas by the corners walked around."""

from __future__ import annotations

import math
import re


def _points(text):
    found = re.findall(r"\((-?\d+), (-?\d+)\)", text.replace("−", "-"))
    return [(int(x), int(y)) for x, y in found]


def _leg(longest, leg):
    """The whole length that makes the triangle right."""
    return next(x for x in range(1, 300) if math.hypot(x, leg) == longest)


def square_on_a_leg(a, c):
    """Square centimetres counted row by row in the large square, less those of the small one."""
    return sum(int(c) for _ in range(int(c))) - sum(int(a) for _ in range(int(a)))


def which_way_to_the_leg(a, c, choices):
    """The equation that the true leg fits."""
    leg = math.sqrt(c * c - a * a)

    def fits(choice):
        left, right = choice.replace("−", "-").replace("^", "**").replace("²", "**2").split("=")
        return math.isclose(eval(left, {"x": leg}), eval(right), rel_tol=1e-9)

    return [one for one in choices if fits(one)]


def how_high_it_reaches(a, c):
    return _leg(int(c), int(a))


def distance_on_a_grid(ask):
    return int(math.dist(*_points(ask)))


def which_root_is_it(ask, choices):
    def worth(choice):
        root = re.fullmatch(r"√\(?(\d+)\)?|sqrt\((\d+)\)", choice)
        return math.sqrt(int(root[1] or root[2])) if root else float(choice)

    return [one for one in choices if math.isclose(worth(one), math.dist(*_points(ask)), rel_tol=1e-9)]


def gable_of_a_roof(ask):
    side, base = (int(one) for one in re.search(r"sides of (\d+) .* base is (\d+)", ask).groups())
    corners = [(0, 0), (base, 0), (base // 2, _leg(side, base // 2))]
    turned = corners[1:] + corners[:1]
    return sum(x * n - m * y for (x, y), (m, n) in zip(corners, turned, strict=True)) / 2
