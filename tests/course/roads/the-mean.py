"""The mean, by the statistics library, by dealing out and by trying values."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def _numbers(text):
    return [int(one) for one in re.findall(r"\d+", text)]


def mean_of_a_list(ask):
    return statistics.mean(_numbers(ask))


def dots_shared_out(D, choices):
    return str(statistics.mean(D))


def with_a_zero(ask):
    return statistics.mean(_numbers(ask.partition(":")[2]))


def one_value_grows(n, m, e):
    before = [m] * int(n)
    after = [m + e, *before[1:]]
    return str(statistics.mean(after) - statistics.mean(before))


def missing_value(ask):
    mean, *known = _numbers(ask)
    return [fourth for fourth in range(200) if statistics.mean([*known, fourth]) == mean]


def one_more_day(ask):
    days, mean, last, _ = _numbers(ask)
    return Fraction(statistics.mean([mean] * days + [last]))
