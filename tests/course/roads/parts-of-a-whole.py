"""Parts of a whole, by fractions."""

from __future__ import annotations

import re
from fractions import Fraction


def part_of_a_number(b, n):
    return Fraction(1, int(b)) * n


def which_is_more(choices):
    return max(choices, key=Fraction)


def several_parts(ask):
    top, bottom, rolls = (int(one) for one in re.findall(r"\d+", ask))
    return Fraction(top, bottom) * rolls
