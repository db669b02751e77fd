"""Small numbers by Python's exponent format and by exact decimals, never by counting places."""

from __future__ import annotations

import re
from decimal import Decimal, localcontext

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
LOWERED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")


def _numbers(text):
    """What each first factor times its power of ten stands for, in the order printed."""
    flat = re.sub(r"10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)", lambda hit: "10^" + hit[1].translate(RAISED), text.replace("−", "-"))
    flat = re.sub(r"10\^\((-?\d+)\)", r"10^\1", flat)
    return [Decimal(f"{a}E{e}") for a, e in re.findall(r"([\d.]+) × 10\^(-?\d+)", flat)]


def _first(text):
    """The first factor that is printed."""
    return Decimal(re.findall(r"[\d.]+", text)[0])


def _short(number):
    """In scientific notation as it is printed, found by the exponent format."""
    first, exponent = f"{number.normalize():E}".split("E")
    return f"{Decimal(first).normalize()} × 10" + str(int(exponent)).translate(LOWERED)


def _small(text):
    return Decimal(re.findall(r"0\.0\d+", text)[0])


def exponent_of_a_small_number(ask):
    return _small(ask).adjusted()


def greater_of_two_small(ask, choices):
    best = max(_numbers(ask))
    return [one for one in choices if _numbers(one) == [best]]


def small_into_short_form(ask):
    return _short(_small(ask))


def small_written_out(ask):
    return f"{_numbers(ask)[0]:f}"


def product_set_right(ask, choices):
    with localcontext(prec=80):
        one, other = _numbers(ask)
        return [found for found in choices if _numbers(found) == [one * other] and 1 <= _first(found) < 10]


def quotient_of_two(ask):
    with localcontext(prec=80):
        large, small = _numbers(ask)[:2]
        return _short(large / small)


def sum_of_the_same_power(ask, choices):
    one, other = _numbers(ask)
    return [found for found in choices if _numbers(found) == [one + other]]


def sum_of_unlike_powers(ask):
    one, other = _numbers(ask)
    return _short(one + other)
