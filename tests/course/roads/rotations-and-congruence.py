"""Turns as products of Gaussian numbers, and as the only grid point at the same distance and a right angle."""

from __future__ import annotations

import itertools
import re


def _points(text):
    found = re.findall(r"\((-?\d+), (-?\d+)\)", text.replace("−", "-"))
    return [complex(int(x), int(y)) for x, y in found]


def _written(point):
    return f"({int(point.real)}, {int(point.imag)})".replace("-", "−")


def _factor(text):
    """Multiplying by i is a quarter turn counterclockwise."""
    if "half" in text:
        return -1
    return 1j if "counterclockwise" in text else -1j


def turn_a_point(ask):
    return _written(_points(ask)[0] * _factor(ask))


def which_turn(ask, choices):
    """The turn that takes the one corner to the other."""
    before, after = _points(ask)
    return [one for one in choices if before * _factor(one) == after]


def where_it_was(ask):
    """Every point of the grid is tried."""
    spots = (complex(x, y) for x, y in itertools.product(range(-9, 10), repeat=2))
    return [_written(spot) for spot in spots if spot * _factor(ask) == _points(ask)[0]]


def sides_of_the_copy(ask):
    """The sides by their corners; the third length tried until the way around is right."""
    known = {frozenset(name): int(long) for name, long in re.findall(r"([A-C]{2}) of (\d+) cm", ask)}
    around = int(re.search(r"it is (\d+) cm", ask)[1])
    came_from = dict(zip("DEF", "ABC", strict=True))
    side = frozenset(came_from[corner] for corner in re.search(r"How long is (\w\w)", ask)[1])
    return [long for long in range(1, 40) if sum({**known, side: long}.values()) == around]


def not_congruent(choices):
    """The rule that changes a distance between points that are tried."""

    def moved(choice, x, y):
        text = re.sub(r"(\d)\s*(?=[xy])", r"\1*", choice.replace("−", "-"))
        return eval(text, {"x": x, "y": y})

    def stretches(choice):
        (a, b), (c, d) = moved(choice, 0, 0), moved(choice, 3, 4)
        return (a - c) ** 2 + (b - d) ** 2 != 25

    return [one for one in choices if stretches(one)]


def sail_of_the_mill(ask):
    """The point at the same distance from the centre, at a right angle, on the side of the turn."""
    centre, tip = _points(ask)
    arm = tip - centre
    side = 1 if "counterclockwise" in ask else -1
    return [
        _written(centre + complex(x, y))
        for x, y in itertools.product(range(-6, 7), repeat=2)
        if x * x + y * y == arm.real**2 + arm.imag**2
        and x * arm.real + y * arm.imag == 0
        and side * (arm.real * y - arm.imag * x) > 0
    ]
