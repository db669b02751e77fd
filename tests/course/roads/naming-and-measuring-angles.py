"""Angles, by turning step by step."""

from __future__ import annotations

import re

FULL_TURN = 360


def _numbers(ask):
    return [int(one) for one in re.findall(r"\d+", ask)]


def read_the_protractor(n):
    return f"{len(range(int(n)))} degrees"


def which_kind(ask):
    (degrees,) = _numbers(ask)
    quarter = FULL_TURN // 4
    return "right" if degrees == quarter else "acute" if degrees in range(quarter) else "obtuse"


def side_by_side(ask):
    one, other = _numbers(ask)
    return len([*range(one), *range(other)])


def the_other_part(ask):
    whole, part = _numbers(ask)
    return [rest for rest in range(FULL_TURN) if part + rest == whole]


def minute_hand(ask):
    (minutes,) = _numbers(ask)
    return minutes * FULL_TURN / 60


def last_slice(ask):
    one, other = _numbers(ask)
    return [third for third in range(1, FULL_TURN) if one + other + third == FULL_TURN]
