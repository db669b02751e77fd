"""Sums shared into equal heaps by trying, and products compared number by number."""

from __future__ import annotations

import re
from fractions import Fraction


def _worth(written, **letters):
    text = re.sub(
        r"(?<=[\d)])\s*(?=[a-z(])", "*", written.replace("−", "-").replace("×", "*").replace(",", "")
    )
    return eval(
        re.sub(r"\d+(\.\d+)?", lambda hit: f"Fraction('{hit[0]}')", text), {"Fraction": Fraction, **letters}
    )


def _greatest(*numbers):
    return max(one for one in range(1, min(numbers) + 1) if all(n % one == 0 for n in numbers))


def greatest_to_pull_out(a, b):
    return _greatest(int(a), int(b))


def as_a_product(a, b):
    return lambda x: a * x + b


def nothing_left_inside(ask, choices):
    printed = re.search(r"\d+x − \d+", ask)[0]

    def fits(choice):
        same = all(_worth(choice, x=x) == _worth(printed, x=x) for x in (0, 1, 7))
        inside = [int(one) for one in re.findall(r"\d+", choice.partition("(")[2])]
        return same and _greatest(*inside) == 1

    return [choice for choice in choices if fits(choice)]


def one_factor_for_both(ask, choices):
    printed = re.search(r"becomes (.*?)\. Which", ask)[1]
    return [choice for choice in choices if _worth(choice) * 40 == _worth(printed, p=40)]


def side_of_the_garden(a, b, g):
    return lambda x: Fraction(a * x + b, g)


def tidy_up_then_factor(a, b, c, d):
    return lambda x: a * x + b + c * x - d
