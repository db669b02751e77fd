"""Angles by counting degrees round a point, and crossing lines by the directions of their arms."""

from __future__ import annotations

import re

HALF_TURN, QUARTER_TURN = 180, 90


def _numbers(ask):
    return [int(one) for one in re.findall(r"\d+", ask)]


def _rest(whole, *known):
    """The angles of whole degrees that fill up what the known ones leave."""
    return [rest for rest in range(1, whole) if rest + sum(known) == whole]


def the_supplement(ask):
    return _rest(HALF_TURN, *_numbers(ask))


def the_complement(ask):
    return _rest(QUARTER_TURN, *_numbers(ask))


def where_two_lines_cross(ask, words):
    """The four arms of the crossing, in degrees from the right: each angle lies between two of them."""
    (size,) = _numbers(ask)
    arms = [0, size, HALF_TURN, HALF_TURN + size, 2 * HALF_TURN]
    place = "ABC".index(words["which"]) + 1
    return f"{arms[place + 1] - arms[place]} degrees"


def which_equation(ask, n, choices):
    whole = 2 * QUARTER_TURN if "supplementary" in ask else QUARTER_TURN

    def holds(choice):
        left, right = choice.replace("−", "-").split(" = ")
        (x,) = _rest(whole, int(n))
        return eval(left, {}, {"x": x}) == eval(right, {}, {})

    return [choice for choice in choices if holds(choice)]


def paths_by_the_canal(ask):
    return _rest(HALF_TURN, *_numbers(ask))


def so_many_of_x(a, b):
    return [x for x in range(1, HALF_TURN) if sum([x] * int(a)) + sum([x] * int(b)) == HALF_TURN]
