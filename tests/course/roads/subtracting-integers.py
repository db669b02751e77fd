"""Differences by walking on a line: a difference is what has to be added to come back."""

from __future__ import annotations

LINE = range(-120, 121)


def _added(start, end):
    """The number of steps, with their sign, from start to end: counted, not subtracted."""
    right = sum(1 for place in LINE if start <= place < end)
    left = sum(1 for place in LINE if end <= place < start)
    return right or -left


def as_a_sum(a, b, choices):
    def worth(written):
        return sum(int(part.strip("() ").replace("−", "-")) for part in written.split(" + "))

    return [choice for choice in choices if worth(choice) == _added(b, a)]


def take_away_a_negative(a, b):
    return _added(-b, a)


def take_away_a_positive(a, b):
    return _added(b, a)


def how_far_apart_are_they(a, b):
    return str(len([place for place in LINE if a <= place < b]))


def night_and_day(a, b):
    return _added(a, b)


def three_in_a_row(a, b, c):
    return [end for end in LINE if end + c + b == a]
