"""Quotients by trying every integer: the one that makes the dividend when it is multiplied back, step by step."""

from __future__ import annotations

import re
import statistics

FIELD = range(-400, 401)


def _times(count, size):
    place = 0
    for _ in range(abs(count)):
        place = place + size if count > 0 else place - size
    return place


def _quotients(dividend, divisor):
    return [one for one in FIELD if _times(one, int(divisor)) == dividend]


def _whole_numbers(text):
    return [int(n) for n in re.findall(r"-?\d+", text.replace("−", "-"))]


def one_minus_sign(p, q):
    return _quotients(p, q)


def two_minus_signs(ask):
    return _quotients(*_whole_numbers(ask))


def zero_above_or_below(ask):
    found = _quotients(*_whole_numbers(ask))
    return str(found[0]) if len(found) == 1 else "not possible"


def same_number(ask):
    """Brought over one bottom by steps: equal if one top times the other bottom is the same both ways."""
    top, bottom, other_top, other_bottom = _whole_numbers(ask.replace("(", " ").replace(")", " "))
    assert other_top > 0
    return _times(top, other_bottom) == _times(-other_top, bottom)


def cold_mornings(maths):
    values = [int(re.sub(r"[^\d-]", "", piece)) for piece in maths]
    return statistics.mean(values)


def divide_then_times(a, b, c):
    (quotient,) = _quotients(a, b)
    return _times(quotient, c)
