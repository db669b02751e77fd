"""Numbers on both sides of zero, by walking along a line of Python numbers."""

from __future__ import annotations

LINE = list(range(-60, 61))


def _walk(start, steps):
    return LINE[LINE.index(int(start)) + int(steps)]


def write_it(ask, n):
    below = any(word in ask for word in ("under", "below", "owes"))
    return min(n, -n) if below else n


def which_is_greater(a, b):
    return str(LINE[max(LINE.index(a), LINE.index(b))]).replace("-", "−")


def warmer_or_colder(a, d, words):
    return _walk(a, d if words["change"] == "warmer" else -d)


def put_in_order(a, b, d):
    return tuple(one for one in LINE if one in (a, b, d))


def how_far_apart(a, b):
    return len(LINE[LINE.index(-a) : LINE.index(b)])


def two_moves(a, b, c):
    return _walk(_walk(a, -b), c)
