"""Areas by the shoelace rule, by counting unit squares, and by slicing a trapezoid."""

from __future__ import annotations

import re
from fractions import Fraction


def _shoelace(corners):
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return Fraction(abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)), 2)


def _trapezoid(base, top, height):
    """Leaning or not: the upper side may begin anywhere."""
    return _shoelace([(0, 0), (base, 0), (2 + top, height), (2, height)])


def l_shape(w, c, h, d):
    squares = 0
    for x in range(int(w)):
        for y in range(int(h)):
            squares += x < c or y < d
    return squares


def sheet_with_a_hole(a, b, c, d, choices):
    free = {(x, y) for x in range(int(a)) for y in range(int(b))}
    free -= {(1 + x, 1 + y) for x in range(int(c)) for y in range(int(d))}
    return [choice for choice in choices if int(choice) == len(free)]


def house_front(w, h, k):
    return _shoelace([(0, 0), (w, 0), (w, h), (w / 2, h + k), (0, h)])


def trapezoid_itself(a, b, h):
    return _trapezoid(a, b, h)


def which_line_for_it(a, b, h, choices):
    def worth(choice):
        numbers = re.sub(r"\d+", lambda found: f"F({found[0]})", choice)
        return eval(numbers.replace("×", "*").replace("÷", "/"), {"F": Fraction})

    return [choice for choice in choices if worth(choice) == _trapezoid(a, b, h)]


def field_by_the_canal(a, b, h, c, d):
    return _trapezoid(a, b, h) - _shoelace([(0, 0), (c, 0), (c, d), (0, d)])
