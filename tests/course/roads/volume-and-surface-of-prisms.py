"""Prisms cut into slices one unit thick, triangles counted strip by strip, and surfaces face by face."""

from __future__ import annotations

from fractions import Fraction

STRIPS = 20


def _triangle(wide, high):
    """Strips under one another, each as wide as the triangle in the middle of the strip."""
    return sum(
        Fraction(wide) * Fraction(2 * k + 1, 2 * STRIPS) * Fraction(high, STRIPS) for k in range(STRIPS)
    )


def _stacked(area, slices):
    return sum(area for _ in range(int(slices)))


def _faces(ends, sides, long):
    return sum([ends, ends, *(Fraction(side * long) for side in sides)])


def base_times_length(a, h):
    return _stacked(a, h)


def triangle_on_its_side(a, b, h):
    return _stacked(_triangle(a, b), h)


def which_line_for_the_surface(a, b, c, h, choices):
    surface = _faces(_triangle(a, b), [a, b, c], h)
    return [one for one in choices if eval(one.replace("×", "*").replace("÷", "/")) == surface]


def surface_of_a_tent(p, q, r, h):
    return _faces(_triangle(p, q), [p, r, r], h)


def litres_in_a_trough(a, b, h):
    """Measured in decimetres from the start: a cube of one decimetre is a litre."""
    return _triangle(Fraction(a, 10), Fraction(b, 10)) * Fraction(h, 10)
