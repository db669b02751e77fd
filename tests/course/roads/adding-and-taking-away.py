"""Adding and taking away, by Python on the question as printed."""

from __future__ import annotations

import re
from fractions import Fraction


def _worked(maths):
    """The first piece of maths of the question, worked out as Python reads it."""
    return eval(maths[0], {"F": Fraction})


def add_two(maths):
    return _worked(maths)


def take_away(maths):
    return _worked(maths)


def what_is_missing(ask):
    all_jars, full = (int(one) for one in re.findall(r"\d+", ask))
    return [empty for empty in range(all_jars + 1) if full + empty == all_jars]
