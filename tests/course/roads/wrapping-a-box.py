"""The one box with given edges, square by square."""

from __future__ import annotations

from itertools import product


def check_with_a_given_box():
    faces = [(20, 10), (20, 5), (10, 5)] * 2
    return sum(1 for long, wide in faces for _ in product(range(long), range(wide)))
