"""Products of fractions, by adding again and again, by counting small parts and by the fractions library."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction


def whole_times_fraction(n, a, b):
    return sum([Fraction(int(a), int(b))] * int(n))


def _marked(b, d, a, c):
    """Small parts of a square of b rows and d columns: all of them, and those in the first a rows and c columns."""
    parts = list(itertools.product(range(int(b)), range(int(d))))
    return len(parts), sum(1 for row, column in parts if row < a and column < c)


def in_both(b, d, a, c):
    parts, both = _marked(b, d, a, c)
    return f"{both}/{parts}"


def fraction_times_fraction(maths):
    return eval(maths[0], {"F": Fraction})


def larger_or_smaller(n, a, b):
    new = n * Fraction(int(a), int(b))
    return "equal" if new == n else "less" if new < n else "greater"


def part_of_a_part(a, b, c, d):
    parts, both = _marked(b, d, a, c)
    return Fraction(both, parts)


def pages_of_a_book(ask):
    every, top, bottom, then, below = (int(one) for one in re.findall(r"\d+", ask))
    rest = every - len(range(every)[: every * top // bottom])
    return len(range(rest)[: rest * then // below])
