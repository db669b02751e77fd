"""Middle, most frequent and spread with the standard library's statistics, and by striking out from both ends."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def _numbers(maths):
    """The first list of numbers printed in the question."""
    return [Fraction(part) for part in re.findall(r"[\d.]+", maths[0])]


def _struck_out(numbers):
    """The middle: the least and the greatest are struck out until one or two are left."""
    left = list(numbers)
    while len(left) > 2:
        left.remove(min(left))
        left.remove(max(left))
    return sum(left) / len(left)


def median_of_five(a, b, c, d, e):
    return _struck_out([a, b, c, d, e])


def find_the_range(maths):
    numbers = _numbers(maths)
    steps, place = 0, min(numbers)
    while place < max(numbers):
        place, steps = place + 1, steps + 1
    return steps


def median_of_six(maths):
    return statistics.median(_numbers(maths))


def which_is_which(ask, s, a, b, c, e):
    data = [s, a, a, a, b, c, c, e, e]
    if "mode" in ask:
        return str(statistics.mode(data))
    return str(statistics.median(data) if "median" in ask else max(data) - min(data))


def one_far_off(a, b, c, d, e):
    walks = [a, b, c, d, e]
    near = {
        name: sum(abs(found - walk) <= 5 for walk in walks)
        for name, found in (
            ("the mean", statistics.mean(walks)),
            ("the median", statistics.median(walks)),
            ("the range", max(walks) - min(walks)),
        )
    }
    return max(near, key=near.__getitem__)


def one_number_missing(a, b, c, d, r):
    known = [a, b, c, d]
    return [high for high in range(1, 200) if high > max(known) and high - min(known) == r]
