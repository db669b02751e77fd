"""Journeys lived minute by minute along the corners of the graph."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction


def _numbers(text):
    return [int(one) for one in re.findall(r"\d+", text)]


def _minute_by_minute(corners):
    """How far from home at each minute, between corners evenly."""
    far = {}
    for (start, here), (end, there) in itertools.pairwise(corners):
        for minute in range(int(start), int(end) + 1):
            far[minute] = here + (there - here) * Fraction(minute - int(start), int(end - start))
    return far


def what_happens_there(a, b, c, e, f, g, h, u, words):
    ends = {"A": (0, e), "B": (a, f), "C": (b, g), "D": (c, h)}
    first, last = words["part"].split(" to ")
    far = _minute_by_minute([(minute, 100 * u * high) for minute, high in (ends[first], ends[last])])
    minutes = sorted(far)
    if len(set(far.values())) == 1:
        return "standing still"
    leaving = far[minutes[0]] < far[minutes[1]]
    return "walking away from home" if leaving else "walking towards home"


def how_long_was_the_rest(a, b, c, u):
    far = _minute_by_minute([(0, 0), (a, 100 * u), (b, 100 * u), (c, 0)])
    return sum(far[minute] == far[minute - 1] for minute in range(1, int(c) + 1))


def the_corner_from_words(ask):
    """The last minute at which the distance is still the greatest."""
    far_out, out, stay, back = _numbers(ask)
    far = _minute_by_minute([(0, 0), (out, far_out), (out + stay, far_out), (out + stay + back, 0)])
    last = max(minute for minute, distance in far.items() if distance == max(far.values()))
    return f"({last}, {far[last]})"


def speed_on_the_way_back(a, b, c, u):
    far = _minute_by_minute([(0, 0), (a, u), (b, u), (c, 0)])
    return far[int(c) - 1] - far[int(c)]


def fastest_part(a, b, c, p, q, r):
    """The first hour of each part: who makes most in it."""
    corners = [(0, 0), (a, p * a), (a + b, p * a + q * b), (a + b + c, p * a + q * b + r * c)]
    gains = {}
    for name, ((start, here), (end, there)) in zip(
        ("A to B", "B to C", "C to D"), itertools.pairwise(corners), strict=True
    ):
        far = _minute_by_minute([(start, here), (end, there)])
        gains[name] = far[int(start) + 1] - far[int(start)]
    return max(gains, key=gains.get)


def straight_or_bent(a, d, e):
    """Three neighbours lie on a line if the middle one is halfway between the outer two."""
    row = [a, a + d, a + 2 * d + e, a + 3 * d + 3 * e, a + 4 * d + 6 * e]
    bends = [
        (left + right) / Fraction(2) - middle
        for left, middle, right in zip(row, row[1:], row[2:], strict=False)
    ]
    if not any(bends):
        return "straight"
    return "steeper and steeper" if all(bend > 0 for bend in bends) else "flatter and flatter"


def the_whole_way(u, v, w):
    far = _minute_by_minute([(0, 0), (10, 100 * u), (20, 100 * v), (30, 100 * v), (40, 100 * w), (60, 0)])
    return sum(abs(far[minute] - far[minute - 1]) for minute in range(1, 61))
