"""Triangles built with a pair of compasses: two circles that cut in two points, or the area from the three sides."""

from __future__ import annotations

import re


def _stands(a, b, c):
    """Sixteen times the squared area, from the sides: above zero only for a real triangle (Heron's rule)."""
    around = a + b + c
    parts = (around - 2 * a, around - 2 * b, around - 2 * c)
    return all(part > 0 for part in parts)


def _circles_cut(a, b, c):
    """Circles of radius a and b around the ends of c: the square of the height of the point where they cut."""
    foot = (a * a - b * b + c * c) / (2 * c)
    return a * a - foot * foot > 0


def _thirds(a, b):
    fits = [c for c in range(1, int(a + b) + 5) if _circles_cut(a, b, c)]
    assert fits == [c for c in range(1, int(a + b) + 5) if _stands(a, b, c)]
    return fits


def do_they_meet(a, b, c):
    return _circles_cut(a, b, c)


def longest_third_side(a, b):
    return max(_thirds(a, b))


def shortest_third_side(a, b):
    return min(_thirds(a, b))


def none_one_or_many(ask):
    parts = [int(one) for one in re.findall(r"\d+", ask)]
    if "angles of" in ask:
        return "many" if sum(parts) == 180 else "none"
    return "one" if _stands(*parts) else "none"


def around_with_a_rope(p):
    p = int(p)
    return max(c for c in range(1, p) for a in range(1, p - c) if _stands(a, p - c - a, c))


def how_many_lengths(a, b):
    return len(_thirds(a, b))
