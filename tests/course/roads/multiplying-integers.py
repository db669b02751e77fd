"""Products as steps along the number line, and the sign as a turn about zero for each minus sign."""

from __future__ import annotations

import re


def _steps(times, size):
    """So many steps of that size; a negative count takes them back from zero."""
    place = 0
    for _ in range(abs(int(times))):
        place = place + size if times > 0 else place - size
    return place


def _whole_numbers(text):
    return [int(n) for n in re.findall(r"-?\d+", text.replace("−", "-"))]


def one_minus_sign(p, q):
    return _steps(p, q)


def next_in_the_pattern(ask):
    lines = _whole_numbers(ask)
    first, second, third, first_factor = lines[2], lines[5], lines[8], lines[9]
    grows = second - first
    assert third - second == grows
    return str(sum([grows] * -first_factor))


def two_minus_signs(maths):
    one, other = re.findall(r"-?\d+", maths[0].replace("F", "").replace("'", ""))
    return _steps(int(one), int(other))


def sign_of_the_product(a, b, c, d):
    product = _steps(a, _steps(b, _steps(c, d)))
    return "zero" if product == 0 else "positive" if product > 0 else "negative"


def pond_and_clock(ask):
    size, _now, time = _whole_numbers(ask)
    change = size if "rises" in ask else -size
    return _steps(-time if "ago" in ask else time, change)


def factor_and_power(a, b, n):
    power = 1
    for _ in range(int(n)):
        power = _steps(b, power)
    return _steps(a, power)
