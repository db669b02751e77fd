"""Mean distances from the numbers as printed: their middle and their distances by the statistics module."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def _printed(text):
    return [Fraction(one) for one in re.findall(r"\d+", text)]


def _spread(numbers):
    middle = statistics.mean(numbers)
    return statistics.mean(max(one, middle) - min(one, middle) for one in numbers)


def distances_only(ask):
    middle, one = _printed(ask)
    return len(range(int(min(middle, one)), int(max(middle, one))))


def mean_given(ask):
    return _spread(_printed(ask)[:3])


def four_numbers(ask):
    return _spread(_printed(ask))


def which_is_less_even(ask, words):
    numbers = _printed(ask)
    one, other = _spread(numbers[:3]), _spread(numbers[3:])
    return words["one"] if one > other else words["other"]


def more_on_the_mean(n, e, k):
    """A list made up to fit: as many far below the mean as above, one on it for an odd count."""
    n, e = int(n), int(e)
    pairs = n // 2
    far = Fraction(k * n, 2 * pairs)
    numbers = [100 - far] * pairs + [100 + far] * pairs + [Fraction(100)] * (n % 2)
    assert len(numbers) == n and _spread(numbers) == k
    return _spread(numbers + [Fraction(100)] * e)
