"""Fractions as Python's own, compared by value; pieces counted one by one."""

from __future__ import annotations

import re
from fractions import Fraction as F


def _greatest(choices):
    return max((choice for choice in choices if "/" in choice), key=F)


def same_number_of_pieces(choices):
    return _greatest(choices)


def same_pieces(ask):
    part = F(re.search(r"compare (\d+/\d+)", ask)[1])
    size = F(1, int(re.search(r"(\d+) in a whole", ask)[1]))
    return [n for n in range(100) if n * size == part]


def same_gap(choices):
    return _greatest(choices)


def best_share(ask):
    return max(F(int(part), int(all_)) for part, all_ in re.findall(r"(\d+) of (\d+)", ask))


def smallest_top(ask):
    parts, wanted = re.search(r"into (\d+) equal .* than (\d+/\d+)", ask).groups()
    return next(n for n in range(100) if F(n, int(parts)) > F(wanted))


def order_by_letters(ask):
    one, other = (F(shown) for shown in re.findall(r"\d+/\d+", ask))
    return "less" if one < other else "equal" if one == other else "greater"
