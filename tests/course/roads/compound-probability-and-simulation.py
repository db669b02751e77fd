"""Equal outcomes written out and counted: draws with itertools, chances as marked cells of a table."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction


def _share(outcomes, wanted):
    outcomes = list(outcomes)
    return Fraction(sum(1 for one in outcomes if wanted(one)), len(outcomes))


def _line(text):
    """A line of choices such as 2/5 × 3/4, worked out."""
    return eval(re.sub(r"(\d+)/(\d+)", r"Fraction(\1, \2)", text.replace("×", "*")), {"Fraction": Fraction})


def both_happen(p, q, r, s):
    cells = itertools.product(range(int(q)), range(int(s)))
    return _share(cells, lambda cell: cell[0] < p and cell[1] < r)


def first_one_then_other(a, b, choices):
    bag = ["one"] * int(a) + ["other"] * int(b)
    chance = _share(itertools.permutations(bag, 2), lambda pair: pair == ("one", "other"))
    return [one for one in choices if _line(one) == chance]


def two_of_a_kind(a, b):
    bag = ["one"] * int(a) + ["other"] * int(b)
    return _share(itertools.permutations(bag, 2), lambda pair: pair == ("one", "one"))


def once_at_least(p, q, choices):
    cells = itertools.product(range(int(q)), repeat=2)
    chance = _share(cells, lambda cell: min(cell) < p)
    return [one for one in choices if Fraction(one) == chance]


def which_numbers_stand_for_it(p, choices):
    def numbers(choice):
        ends = [int(one) for one in re.findall(r"\d+", choice)]
        return ends if len(ends) == 1 else list(range(ends[0], ends[1] + 1))

    return [one for one in choices if _share(range(100), numbers(one).__contains__) == Fraction(p, 100)]


def from_trials_to_the_season(n, w, m):
    """The only count that is to the season as the count of the simulation is to its trials."""
    return [count for count in range(int(m) + 1) if Fraction(count, int(m)) == Fraction(int(w), int(n))]


def rainy_weekends(p, a, b, c, d, e, f, g, h, k, l):
    weekends = [(a, b), (c, d), (e, f), (g, h), (k, l)]
    return _share(weekends, lambda days: any(number < p for number in days))
