"""Opposites by folding a line of Python numbers at zero, distances by counting steps."""

from __future__ import annotations

import re

LINE = list(range(-100, 101))


def _folded(n):
    return LINE[len(LINE) - 1 - LINE.index(int(n))]


def _steps(n):
    return abs(LINE.index(int(n)) - LINE.index(0))


def opposite_of(n):
    return _folded(n)


def between_bars(n):
    return len(LINE[slice(*sorted((LINE.index(int(n)), LINE.index(0))))])


def there_and_back(ask, n):
    for _ in range(ask.count("opposite")):
        n = _folded(n)
    return str(n).replace("-", "−")


def greater_or_farther(ask, choices):
    numbers = [int(choice.replace("−", "-")) for choice in choices]
    best = max(numbers, key=LINE.index) if "greater" in ask else max(numbers, key=_steps)
    return choices[numbers.index(best)]


def two_numbers(n):
    return tuple(one for one in LINE if _steps(one) == n)


def farthest_off(ask):
    shown = re.search(r"are (.*?): above", ask)[1].replace("−", "-")
    return max(_steps(one) for one in re.findall(r"-?\d+", shown))
