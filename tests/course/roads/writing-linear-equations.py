"""Rules found by trying every whole slope and start on the pairs that are printed."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction


def _fitting(pairs):
    """Slope and start of the one rule with whole numbers that meets every pair."""
    tries = itertools.product(range(-30, 31), range(-90, 91))
    return [(m, b) for m, b in tries if all(m * x + b == y for x, y in pairs)]


def _written(rule):
    """The one rule as it is written with the letters x and y."""
    ((m, b),) = rule
    return f"y = {m}x {'+' if b > 0 else '-'} {abs(b)}".replace("-", "−")


def _table(first, step, value):
    return [(first + n * step, value(first + n * step)) for n in range(4)]


def _side(choice, x):
    """What the right side of a printed rule is worth at x."""
    right = choice.partition("=")[2].replace("−", "-")
    return eval(re.sub(r"(\d)\s*x", r"\1*x", right), {"x": x})


def start_from_a_table(a, k, c):
    """Back along the table, one column after the other."""
    pairs = dict(_table(int(a), 1, lambda x: k * x + c))
    at, value = int(a), pairs[int(a)]
    while at:
        at, value = at - 1, value - (pairs[int(a) + 1] - pairs[int(a)])
    return value


def rule_from_a_graph(b, k, m, choices):
    marked = [(0, b), (k, m * k + b)]
    return [choice for choice in choices if all(_side(choice, x) == y for x, y in marked)]


def rule_in_words(ask, choices):
    start, lost = (int(one) for one in re.findall(r"\d+", ask)[:2])
    left = [start]
    for _ in range(6):
        left.append(left[-1] - lost)
    return [choice for choice in choices if all(_side(choice, n) == amount for n, amount in enumerate(left))]


def rule_from_a_table(a, k, c):
    return _written(_fitting(_table(int(a), 1, lambda x: k * x + c)))


def how_it_began(ask):
    p, u, q, v = (int(one) for one in re.findall(r"\d+", ask)[:4])
    return [b for b in range(100) if Fraction(v - b, q) == Fraction(u - b, p)]


def which_grows_faster(ask, b, d, m):
    k, c = _second(ask)
    table = _table(0, d, lambda x: m * x + b)
    (x, y), (later, higher) = table[0], table[-1]
    second = k * later + c - (k * x + c)
    return "the first" if higher - y > second else "the second"


def _second(ask):
    found = re.search(r"y = (\d+)x(?: \+ (\d+))?", ask)
    return int(found[1]), int(found[2] or 0)


def through_two_points(ask):
    text = ask.replace("−", "-")
    pairs = [(int(x), int(y)) for x, y in re.findall(r"\((-?\d+), (-?\d+)\)", text)]
    return _written(_fitting(pairs))
