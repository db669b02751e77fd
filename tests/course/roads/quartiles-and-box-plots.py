"""Quartiles with the standard library: the medians of the two halves, checked against its own cut points."""

from __future__ import annotations

import re
import statistics


def _numbers(maths):
    return [int(n) for n in re.findall(r"\d+", maths)]


def _quartiles(values):
    """Lower quartile, median, upper quartile. For seven values the library's exclusive method says the same."""
    ordered = sorted(values)
    half = len(ordered) // 2
    cuts = (
        statistics.median(ordered[:half]),
        statistics.median(ordered),
        statistics.median(ordered[-half:]),
    )
    if len(ordered) % 4 == 3:
        assert list(cuts) == statistics.quantiles(ordered, n=4, method="exclusive")
    return cuts


def lower_quartile_of_seven(maths):
    return _quartiles(_numbers(maths[0]))[0]


def read_the_median(a, b, m, d, h):
    """Seven values with these five marks: two in each half besides the quartile."""
    return str(_quartiles([a, b, b, m, d, d, h])[1])


def the_middle_half(maths):
    lowest, low, middle, high, highest = (_numbers(one)[-1] for one in maths)
    lower, _median, upper = _quartiles([lowest, low, low, middle, high, high, highest])
    return len(range(lower, upper))


def upper_quartile_of_eight(maths):
    return _quartiles(_numbers(maths[0]))[2]


def how_many_in_the_box(n, a, b, m, d, h):
    """So many values that fit the marks, a quarter in each part; then those in the box are counted."""
    each = int(n) // 4
    parts = ((a, b), (b, m), (m, d), (d, h))
    values = [(low + high) / 2 for low, high in parts for _ in range(each)]
    return str(sum(b < value < d for value in values))


def two_boxes(maths):
    marks = [_numbers(one)[-1] for one in maths]
    boxes = []
    for lowest, low, middle, high, highest in (marks[:5], marks[5:]):
        lower, _median, upper = _quartiles([lowest, low, low, middle, high, high, highest])
        boxes.append(upper - lower)
    return boxes[0] - boxes[1]
