"""The longest side by trying whole lengths, and right angles by the angle itself."""

from __future__ import annotations

import math
import re
from fractions import Fraction
from itertools import count


def _cells(side):
    """Unit squares in a square, counted row by row."""
    return sum(int(side) for _ in range(int(side)))


def _distance(a, b):
    """The first length whose square isn't smaller than the two others."""
    return next(x for x in count(1) if _cells(x) >= _cells(a) + _cells(b))


def square_on_the_hypotenuse(a, b):
    """The tilted square is what four triangles leave over in the square around them."""
    return _cells(a + b) - 4 * Fraction(a * b, 2)


def which_equation_fits(a, b, choices):
    long = math.dist((float(a), 0.0), (0.0, float(b)))

    def holds(choice):
        text = re.sub(r"(?<=\d)\s*x", "*x", choice.replace("²", "**2").replace("×", "*"))
        left, right = (eval(side, {"x": long}) for side in text.split("="))
        return math.isclose(left, right)

    return [choice for choice in choices if holds(choice)]


def find_the_hypotenuse(a, b):
    return _distance(a, b)


def is_the_corner_right(a, b, c):
    """By the area from the three sides alone: in a right triangle it is half of the legs' product."""
    half = Fraction(a + b + c, 2)
    return half * (half - a) * (half - b) * (half - c) == Fraction(a * b, 2) ** 2


def across_the_meadow(a, b):
    return a + b - _distance(a, b)
