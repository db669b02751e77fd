"""Stories lived hour by hour until what is asked for has come about."""

from __future__ import annotations

import re
from fractions import Fraction


def _numbers(text):
    return [int(one) for one in re.findall(r"\d+", text.replace(",", ""))]


def _first_equal(one, other):
    """The first whole step at which two amounts, each as (start, growth), are equal."""
    return [n for n in range(1, 300) if one[0] + n * one[1] == other[0] + n * other[1]]


def go_on_with_the_table(a, b, c, d):
    first, second, weeks = b, d, 0
    while first != second:
        first, second, weeks = first + a, second + c, weeks + 1
        assert weeks < 100
    return weeks


def which_equation_fits(ask, choices):
    """Only the right equation is false for some x exactly as the two prices differ: compare for many x."""
    start, each, other = _numbers(ask)

    def gap(choice, x):
        text = re.sub(r"(\d)\s*x", r"\1*x", choice.strip("`").replace("−", "-"))
        left, right = (eval(side, {"x": x}) for side in text.split("="))
        return left - right

    return [
        choice
        for choice in choices
        if all(abs(gap(choice, x)) == abs(sum([each] * x, start) - sum([other] * x)) for x in range(20))
    ]


def meet_on_the_way(ask):
    """Both go on in small steps until nothing is left between them."""
    apart, fast, slow = _numbers(ask)
    time = Fraction(0)
    while apart > 0:
        apart, time = apart - Fraction(fast, 4) - Fraction(slow, 4), time + Fraction(1, 4)
    assert apart == 0
    return time


def cheaper_for_so_many(ask):
    start_a, each_a, start_b, each_b, count = _numbers(ask)
    plan_a, plan_b = sum([each_a] * count, start_a), sum([each_b] * count, start_b)
    return "plan A" if plan_a < plan_b else "plan B"


def when_both_cost_the_same(ask):
    start, each, other = _numbers(ask)
    return _first_equal((start, each), (0, other))


def water_in_the_mix(ask):
    """Of each twentieth of the mix, whole or in part, so much belongs to the first kind."""
    whole, percent = _numbers(ask)
    return sum(Fraction(whole, 100) for part in range(100) if part >= percent)


def catching_up(ask):
    slow, later, fast = _numbers(ask)
    first, second, time = Fraction(slow * later), Fraction(0), 0
    while second < first:
        first, second, time = first + slow, second + fast, time + 1
    assert second == first
    return time
