"""A diagonal by trying whole lengths."""

from __future__ import annotations

from itertools import count


def one_to_try_first(a, b):
    return next(x for x in count(1) if x * x >= a * a + b * b)
