"""Equal fractions, by the fractions library and by trying tops."""

from __future__ import annotations

from fractions import Fraction


def _top(a, b, d):
    return [top for top in range(1, 1000) if Fraction(top, int(d)) == Fraction(int(a), int(b))]


def fill_the_gap(a, b, d):
    return _top(a, b, d)


def same_amount(a, b, c, d):
    return a * d == c * b


def which_is_equal(a, b, choices):
    return [choice for choice in choices if Fraction(choice) == Fraction(int(a), int(b))]


def lowest_terms(a, b):
    return str(Fraction(int(a), int(b)))


def part_of_the_day(a, b):
    return str(Fraction(int(a), int(b)))


def same_from_another(a, b, d):
    return _top(a, b, d)
