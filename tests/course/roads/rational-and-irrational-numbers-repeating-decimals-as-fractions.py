"""Repeating decimals as sums of their pieces by SymPy, roots by sympy.sqrt, lengths by trying whole numbers."""

from __future__ import annotations

import re
from fractions import Fraction

import sympy


def _worth(text):
    """A decimal as printed, such as 0.8(3): the limit of the pieces, each a power of ten smaller."""
    head, places, block = re.search(r"(\d+)\.(\d*)(?:\((\d+)\))?", text).groups()
    start = sympy.Rational(f"{head}.{places or 0}")
    if not block:
        return start
    k = sympy.Symbol("k")
    piece = int(block) * sympy.Rational(1, 10) ** (len(places) + len(block) * k)
    return start + sympy.summation(piece, (k, 1, sympy.oo))


def _fraction(text):
    worth = _worth(text)
    return Fraction(int(worth.p), int(worth.q))


def rational_root_or_not(n):
    return bool(sympy.sqrt(int(n)).is_rational)


def tails_away(ask):
    return 99 * _fraction(ask)


def one_digit_repeats(ask):
    return _fraction(ask)


def which_is_irrational(choices):
    def rational(choice):
        root = re.fullmatch(r"√\(?(\d+)\)?|sqrt\((\d+)\)", choice)
        return bool(sympy.sqrt(int(root[1] or root[2])).is_rational) if root else True

    return [one for one in choices if not rational(one)]


def two_digits_repeat(ask):
    return _fraction(ask)


def length_of_the_whole(ask, p):
    """The only whole number that is, shared out by long division, the printed decimal."""
    printed = _fraction(re.search(r"exactly (\S+)", ask)[1])
    return [whole for whole in range(1, 200) if Fraction(whole, int(p)) == printed]


def only_the_last_repeats(ask):
    return _fraction(ask)
