"""How often a piece goes in: both lengths cut into marks of one size, then pieces laid down until the rest is less."""

from __future__ import annotations

import math
from fractions import Fraction


def _goes_in(whole, piece):
    """So often the piece fits: in marks of a common size, counted piece by piece, the rest as a part of a piece."""
    whole, piece = Fraction(whole), Fraction(piece)
    mark = math.lcm(whole.denominator, piece.denominator)
    left, step, times = int(whole * mark), int(piece * mark), 0
    while left >= step:
        left, times = left - step, times + 1
    return times + Fraction(left, step)


def _mixed(text):
    return sum(Fraction(part) for part in text.split())


def fraction_by_fraction(a, b, c, d):
    return _goes_in(Fraction(a, b), Fraction(c, d))


def same_as_which_product(a, b, c, d, choices):
    def worth(written):
        one, other = written.split(" × ")
        return Fraction(one) * Fraction(other)

    return [choice for choice in choices if worth(choice) == _goes_in(Fraction(a, b), Fraction(c, d))]


def loaves_from_dough(maths):
    whole, piece = maths
    return _goes_in(eval(whole, {"F": Fraction}), eval(piece, {"F": Fraction}))


def mixed_by_mixed(v, k, b, w, m, d):
    return _goes_in(v + Fraction(k, b), w + Fraction(m, d))


def how_many_fit(w, m, d, n, choices):
    return [choice for choice in choices if _mixed(choice) == _goes_in(n, w + Fraction(m, d))]


def side_of_a_rectangle(r, c, d):
    return _goes_in(r, Fraction(c, d))
