"""Ratios of all pairs compared two by two, by cross products; prices acted out."""

from __future__ import annotations

import re
from itertools import combinations


def _proportional(pairs):
    return all(x * v == u * y for (x, y), (u, v) in combinations(pairs, 2))


def check_the_table(a, b, c, k, d):
    return _proportional([(a, k * a), (b, k * b), (c, k * c + d)])


def price_for_more(a, r, n):
    return [x for x in range(1, 400) if _proportional([(a, r), (n, x)])]


def look_at_the_points(ask, choices):
    pairs = [(int(x), int(y)) for x, y in re.findall(r"\((\d+), (\d+)\)", ask)]
    (x, y), (u, v), (s, t) = pairs
    straight = (v - y) * (s - u) == (t - v) * (u - x)
    begin = "in" if _proportional(pairs) else "the line" if straight else "the points"
    return [choice for choice in choices if choice.startswith(begin)]


def story_in_proportion(a, b, words):
    """What each story counts, for 1, 2 and 4 of the first amount."""
    rules = {
        "A club takes": lambda n: a + b * n,
        "A shop sells pens in packs of": lambda n: b * n,
        "A candle is": lambda n: a - b * n,
        "A tap runs for": lambda n: b * n,
        "A puppy weighs": lambda n: a + b * n,
        "A baker needs": lambda n: b * n,
    }
    return _proportional([(n, rules[words["one"]](n)) for n in (1, 2, 4)])


def before_the_first_hour(m, p, q):
    price, left = p, m
    while left:
        price, left = price - (q - p), left - 1
    return price


def put_it_right(a, b, c, g, k, d):
    pairs = [(a, k * a), (b, k * b), (c, k * c + d), (g, k * g)]
    return [
        y
        for spoilt in range(4)
        if _proportional(pairs[:spoilt] + pairs[spoilt + 1 :])
        for y in range(1, 2000)
        if _proportional([*pairs[:spoilt], (pairs[spoilt][0], y), *pairs[spoilt + 1 :]])
    ]
