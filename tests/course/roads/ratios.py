"""Ratios, by reading the question as printed and by taking common divisors out one by one."""

from __future__ import annotations

import re
from fractions import Fraction


def _lowest(one, other):
    one, other = int(one), int(other)
    for k in range(min(one, other), 1, -1):
        while one % k == 0 and other % k == 0:
            one, other = one // k, other // k
    return f"{one}:{other}"


def in_this_order(ask, words):
    first, second = (re.search(rf"(\d+) {words[name]}", ask)[1] for name in ("other", "one"))
    return f"{first}:{second}"


def part_and_whole(ask, choices):
    one, other = (int(found) for found in re.findall(r"\d+", ask))
    return f"{one} : {len(range(one)) + len(range(other))}"


def in_lowest_terms(ask):
    return _lowest(*re.findall(r"\d+", ask))


def same_mix(ask, choices):
    p, q = re.search(r"(\d+) : (\d+)", ask).groups()
    return [
        choice for choice in choices if Fraction(*map(int, choice.split(" : "))) == Fraction(int(p), int(q))
    ]


def the_others(ask):
    everyone, some = (int(found) for found in re.findall(r"\d+", ask))
    return _lowest(some, everyone - some)


def two_units(ask):
    small_in = {"metre": 100, "foot": 12, "feet": 12, "hour": 60, "pound": 16}
    small, large, unit = re.search(r"ratio of (\d+) \w+ to (\d+) (\w+)", ask).groups()
    return _lowest(small, int(large) * small_in.get(unit, small_in.get(unit.rstrip("s"))))
