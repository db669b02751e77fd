"""Fractions, by the fractions library on what the picture and the story say."""

from __future__ import annotations

import re
from fractions import Fraction


def name_the_point(a, b):
    return sum([Fraction(1, int(b))] * int(a))


def share_loaves(ask):
    people, loaves = (int(one) for one in re.findall(r"\d+", ask))
    return str(sum([Fraction(1, people)] * loaves))


def shaded_part(ask):
    one, other = (int(found) for found in re.findall(r"\d+", ask))
    return Fraction(one, len(range(one)) + len(range(other)))


def beyond_one(w, k, b):
    return w + Fraction(int(k), int(b))


def which_is_the_division(ask):
    what, among = re.findall(r"\d+", ask)
    return f"{what} ÷ {among}"


def pies_for_a_crew(ask):
    people, pies = (int(found) for found in re.findall(r"\d+", ask))
    whole, rest = divmod(pies, people)
    return whole + Fraction(rest, people)
