"""A string laid around: each centimetre across brings 3.14 cm of string."""

from __future__ import annotations

from fractions import Fraction


def guess_the_string(d):
    return sum([Fraction("3.14")] * int(d))
