"""Adding integers, by walking on a line of Python numbers and by cancelling counters."""

from __future__ import annotations

LINE = list(range(-1000, 1001))


def _walk(start, steps):
    return LINE[LINE.index(int(start)) + int(steps)]


def walk_right(a, b):
    return _walk(-a, b)


def walk_left(a, b):
    return _walk(-a, -b)


def counters_worth(p, m):
    counters = [1] * int(p) + [-1] * int(m)
    while 1 in counters and -1 in counters:
        counters.remove(1)
        counters.remove(-1)
    return str(sum(counters)).replace("-", "−")


def larger_sizes(a, b):
    return _walk(a, -b)


def which_sign(a, b):
    end = _walk(-a, b)
    return "zero" if end == 0 else "positive" if end in range(1, 2000) else "negative"


def card_game(a, b, c):
    return _walk(_walk(-a, b), -c)
