"""Lengths laid off centimetre by centimetre, and a floor counted in squares of the plan."""

from __future__ import annotations

from fractions import Fraction
from itertools import accumulate, repeat


def _laid_off(times, each):
    each = Fraction(each)
    return Fraction(sum([each.numerator] * int(times)), each.denominator)


def how_far_is_it(d, k):
    return _laid_off(d, k)


def onto_the_paper(n, k, choices):
    paper, left = 0, n
    while left > 0:
        left, paper = left - k, paper + 1

    def worth(written):
        return eval(written.replace("×", "*").replace("÷", "/").replace("−", "-"), {})

    return [choice for choice in choices if worth(choice) == paper]


def made_larger(a, b, m):
    """Each small piece, a half of a cm of the old height, grows as a half of a cm of the old width did."""
    half = Fraction(b, 2 * a)
    return _laid_off(2 * m, half)


def one_to_so_many(d, n):
    return Fraction(1, 100) * _laid_off(d, n)


def floor_of_the_room(a, b, k):
    square = sum(1 for _x in range(int(k)) for _y in range(int(k)))
    return sum(square for _x in range(int(a)) for _y in range(int(b)))


def at_another_scale(a, k, h):
    way = _laid_off(a, k)
    return [cm for cm, far in enumerate(accumulate(repeat(Fraction(h), 499)), 1) if far == way]
