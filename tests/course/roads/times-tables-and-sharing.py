"""Products by counting and sharing by dealing out."""

from __future__ import annotations

import re
from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def share(maths):
    return _worked(maths)


def fact(a, b):
    return len([(row, place) for row in range(int(a)) for place in range(int(b))])


def benches(ask):
    rows, seats = (int(one) for one in re.findall(r"\d+", ask))
    return sum(seats for _ in range(rows))
