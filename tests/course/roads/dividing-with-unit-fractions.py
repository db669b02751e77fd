"""Pieces counted out one by one with Fraction, and shares found by trying which one adds up."""

from __future__ import annotations

import re
from fractions import Fraction


def _fit(whole, piece):
    """How many pieces can be taken away until nothing is left."""
    left, taken = Fraction(whole), 0
    while left > 0:
        left, taken = left - piece, taken + 1
    assert left == 0
    return taken


def _share(part, people):
    """The share which, added up for all people, makes the part again."""
    tries = (Fraction(1, k) for k in range(1, 400))
    return [share for share in tries if sum([share] * int(people)) == part]


def how_many_fit(n, b):
    return _fit(n, Fraction(1, int(b)))


def share_of_a_part(n, b):
    return _share(Fraction(1, int(b)), n)


def larger_or_smaller(choices):
    def worth(written):
        numbers = re.sub(r"(\d+)(/\d+)?", lambda found: f"F('{found[0]}')", written)
        return eval(numbers.replace("×", "*").replace("÷", "/"), {"F": Fraction})

    return max(choices, key=worth)


def ribbons_and_bottles(n, b):
    return _fit(n, Fraction(1, int(b)))


def which_picture(b, n, choices):
    (share,) = _share(Fraction(1, int(b)), n)

    def worth(written):
        numbers = re.sub(r"(\d+)(/\d+)?", lambda found: f"F('{found[0]}')", written)
        return eval(numbers.replace("×", "*").replace("÷", "/"), {"F": Fraction})

    return [choice for choice in choices if worth(choice) == share]


def fit_and_share(n, b, c):
    pieces = _fit(n, Fraction(1, int(b)))
    return [each for each in range(1, pieces + 1) if each * c == pieces]
