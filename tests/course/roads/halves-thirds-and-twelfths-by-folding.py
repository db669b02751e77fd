"""A strip of 24 centimetres, folded and laid end to end."""

from __future__ import annotations

from fractions import Fraction

STRIP = range(24)


def parts_of_the_small_strip():
    parts = 3
    for _ in range(2):
        parts += parts
    return parts


def half_and_third_in_cm():
    return len(STRIP[: len(STRIP) // 2]) + len(STRIP[: len(STRIP) // 3])


def half_and_third_in_twelfths():
    twelfth = len(STRIP) // 12
    return half_and_third_in_cm() // twelfth


def third_and_quarter():
    return Fraction(len(STRIP) // 3 + len(STRIP) // 4, len(STRIP))


def water_in_the_cup():
    return Fraction(1, 2) + Fraction(1, 4)
