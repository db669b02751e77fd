"""Division by taking away, and stories acted out."""

from __future__ import annotations

from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def divide_exactly(maths):
    return _worked(maths)


def zero_in_the_middle(maths):
    return _worked(maths)


def _groups(n, b):
    groups = 0
    while n >= b:
        n, groups = n - b, groups + 1
    return groups, n


def with_remainder(n, b):
    groups, left = _groups(n, b)
    return f"{groups} R {left}"


def seats_on_the_tram(n, b):
    return next(trams for trams in range(1000) if trams * b >= n)


def what_is_left(n, b):
    return _groups(n, b)[1]


def which_number_answers(n, b, words):
    groups, left = _groups(n, b)
    if "full bunches" in words["story"]:
        return groups
    return left if "left over" in words["story"] else len(range(0, int(n), int(b)))


def share_exactly(n, b):
    return [litres for litres in (Fraction(k, 100) for k in range(10_000)) if litres * b == n]
