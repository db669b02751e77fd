"""Tables written out as lists with one entry for each animal, loaf or person, and counted again."""

from __future__ import annotations

import re
from fractions import Fraction


def _everybody(a, b, c, d):
    """One pair for each: which row, which column."""
    cells = {("upper", "first"): a, ("upper", "second"): b, ("lower", "first"): c, ("lower", "second"): d}
    return [cell for cell, count in cells.items() for _ in range(int(count))]


def _share(people, group, wanted):
    """Of those in the group, which part is wanted: group and wanted are names of a row or a column."""
    inside = [one for one in people if group in one]
    return Fraction(sum(wanted in one for one in inside), len(inside))


def _numbers(text):
    return [int(one) for one in re.findall(r"\d+", text)]


def a_missing_cell(a, b, c, d):
    """From the edges only: whoever is in the row, taken out one by one if in the first column."""
    row, missing = int(a + b), 0
    for seat in range(row):
        missing += seat >= a
    return missing


def which_share(a, b, c, d, choices):
    share = _share(_everybody(a, b, c, d), "first", "upper")
    return [choice for choice in choices if Fraction(choice) == share]


def percent_of_a_row(a, b, c, d):
    return _share(_everybody(a, b, c, d), "upper", "first")


def the_larger_share(a, b, c, d):
    people = _everybody(a, b, c, d)
    upper, lower = (_share(people, row, "first") for row in ("upper", "lower"))
    return "the upper row" if upper > lower else "the lower row"


def do_they_go_together(a, b, c, d):
    """No link if everybody alike would fill the table the same way: row sum times column sum over all."""
    total = a + b + c + d
    return Fraction((a + b) * (a + c), total) != a


def make_a_table(ask):
    total, first, second, both = _numbers(ask)
    people = [(n < first, first - both <= n < first - both + second) for n in range(total)]
    assert sum(one and other for one, other in people) == both
    return sum(not one and not other for one, other in people)


def share_from_a_story(ask):
    m, p, k, q = _numbers(ask)
    return _share(_everybody(p, m - p, q, k - q), "first", "upper")
