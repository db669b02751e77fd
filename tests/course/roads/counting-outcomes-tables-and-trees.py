"""All outcomes written out with itertools, and counted."""

from __future__ import annotations

import itertools
from fractions import Fraction


def _share(outcomes, wanted):
    outcomes = list(outcomes)
    return Fraction(sum(1 for one in outcomes if wanted(one)), len(outcomes))


def _ways(*counts):
    return len(set(itertools.product(*(range(int(count)) for count in counts))))


def how_many_ways(a, b):
    return _ways(a, b)


def three_choices(a, b, c):
    return str(_ways(a, b, c))


def sum_on_a_tree(a, b, d, e, f, s):
    return _share(itertools.product((a, b), (d, e, f)), lambda pair: sum(pair) > s)


def one_of_each(a, b, choices):
    bag = ["one"] * int(a) + ["two"] * int(b)
    chance = _share(itertools.product(bag, repeat=2), lambda pair: len(set(pair)) == 2)
    return [choice for choice in choices if Fraction(choice) == chance]


def both_of_them(n, m, j, k):
    cells = itertools.product(range(int(n)), range(int(m)))
    return _share(cells, lambda cell: cell[0] < j and cell[1] < k)


def sum_of_two_spins(n, s):
    return _share(itertools.product(range(1, int(n) + 1), repeat=2), lambda pair: sum(pair) == s)
