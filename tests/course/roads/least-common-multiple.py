"""Common multiples by going up one by one until it fits."""

from __future__ import annotations

import math
import re
from itertools import count

MORE_AND_MORE = ("ring together", "boxes of", "for a lap")


def _numbers(ask):
    return [int(shown) for shown in re.findall(r"\d+", ask)]


def _first_shared(numbers):
    return next(n for n in count(1) if all(n % one == 0 for one in numbers))


def in_both_lists(ask):
    n, *both = _numbers(ask)
    return all(n in range(one, n + 1, one) for one in both)


def least_of_two(ask):
    return _first_shared(_numbers(ask))


def factor_or_multiple(ask):
    more = any(phrase in ask for phrase in MORE_AND_MORE)
    return "least common multiple" if more else "greatest common factor"


def together_again(ask):
    one, other = (int(shown) for shown in re.findall(r"every (\d+)", ask))
    first, second = one, other
    while first != second:
        if first < second:
            first += one
        else:
            second += other
    return first


def packs_of_rolls(a, b):
    return next(packs for packs in count(1) if packs * int(a) % int(b) == 0)


def least_of_three(ask):
    return math.lcm(*_numbers(ask))
