"""Expressions as printed, by the precedence of Python."""

from __future__ import annotations

import re
from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def plus_and_times(maths):
    return _worked(maths)


def divide_and_times(maths):
    return _worked(maths)


def four_operations(maths):
    return _worked(maths)


def which_first(ask):
    return re.search(r"\((.*?)\)", ask)[1]


def same_or_not(maths):
    sol, wren = (eval(one, {"F": Fraction}) for one in maths)
    return sol == wren


def rolls_and_a_jar(ask):
    jar, rolls, each = (int(one) for one in re.findall(r"\d+", ask))
    return jar + sum(each for _ in range(rolls))
