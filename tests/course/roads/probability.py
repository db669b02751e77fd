"""Chances by listing every equally likely outcome and counting."""

from __future__ import annotations

import re
from fractions import Fraction


def _share(outcomes, wanted):
    return Fraction(sum(1 for one in outcomes if wanted(one)), len(outcomes))


def _things(*counts):
    return [kind for kind, count in enumerate(counts) for _ in range(int(count))]


def from_a_bag(a, b):
    return _share(_things(a, b), lambda kind: kind == 0)


def how_likely_is_it(n, r):
    chance = _share(_things(r, n - r), lambda kind: kind == 0)
    if chance in (0, 1):
        return "certain" if chance else "impossible"
    if chance == Fraction(1, 2):
        return "as likely as not"
    return "more likely than not" if chance > 1 - chance else "less likely than not"


def spinner_with_sizes(a, b, c, choices):
    chance = _share(_things(a, b, c), lambda kind: kind == 0)
    return [choice for choice in choices if Fraction(choice) == chance]


def not_that_one(a, b, c):
    return _share(_things(a, b, c), lambda kind: kind != 0)


def after_a_run(n, k, c, choices):
    """Among all longer runs that begin as told, the share that goes on with the same number."""
    chance = _share(range(1, int(n) + 1), lambda face: face == c)

    def worth(choice):
        first, times = Fraction(choice.split()[0]), re.search(r"(\d+) factors", choice)
        return first ** int(times[1]) if times else first

    return [choice for choice in choices if worth(choice) == chance]


def cards_with_multiples(n, m):
    return _share(range(1, int(n) + 1), lambda card: card % m == 0)
