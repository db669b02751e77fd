"""The printed line tried on number after number; stories acted out until the limit is reached."""

from __future__ import annotations

import operator
import re
from fractions import Fraction

SIGNS = {"<": operator.lt, ">": operator.gt, "≤": operator.le, "≥": operator.ge}


def _holds(line, letter, number):
    left, sign, right = re.split(r"\s*([<>≤≥])\s*", line.replace("−", "-"))
    left = re.sub(rf"(\d)\s*{letter}", rf"\1*{letter}", left)
    return SIGNS[sign](eval(left, {letter: Fraction(number)}), int(right))


def _picture(line, letter):
    """End, whether it counts, and whether larger numbers fit, from trials a half apart."""
    trials = [Fraction(half, 2) for half in range(-200, 201)]
    fits = [_holds(line, letter, one) for one in trials]
    change = next(i for i in range(1, len(fits)) if fits[i] != fits[i - 1])
    up = fits[-1]
    # Ends are whole, so the last trial before the change or the first after it is the end itself.
    end = next(one for one in (trials[change - 1], trials[change]) if one.denominator == 1)
    return end, fits[trials.index(end)], up


def _solved(line, letter):
    end, counts, up = _picture(line, letter)
    sign = {(True, True): "≥", (False, True): ">", (True, False): "≤", (False, False): "<"}[(counts, up)]
    return f"{letter} {sign} {end}".replace("-", "−")


def _line(ask, before, after):
    return re.search(rf"{before} (.*?){after}", ask)[1]


def sign_stays(ask):
    return _solved(_line(ask, "Solve", r"\."), "x")


def sign_turns(ask):
    return _solved(_line(ask, "Solve", r"\."), "y")


def how_it_is_drawn(ask):
    end, counts, up = _picture(_line(ask, "fit", r"\?"), "x")
    circle, side = "a filled" if counts else "an open", "right" if up else "left"
    return f"{circle} circle at {end}, thick to the {side}".replace("-", "−")


def does_it_fit(ask, s):
    return _holds(_line(ask, "fit", r"\?"), "x", s)


def most_that_can_go(a, b, c):
    load, count = b, 0
    while load + a <= c:
        load, count = load + a, count + 1
    return count


def enough_in_the_end(a, b, c):
    there, steps = b, 0
    while there < c:
        there, steps = there + a, steps + 1
    return steps
