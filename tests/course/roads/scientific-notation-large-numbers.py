"""Large numbers by writing digits down and counting them, and by Python's own exponent format."""

from __future__ import annotations

import re
from decimal import Decimal

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")


def _parts(text):
    """First factors and exponents of what is printed, raised digits or a caret."""
    flat = re.sub(r"10([⁰¹²³⁴⁵⁶⁷⁸⁹]+)", lambda hit: "10^" + hit[1].translate(RAISED), text)
    return [(Decimal(a), int(e)) for a, e in re.findall(r"([\d.]+) × 10\^(\d+)", flat)]


def _full(first, exponent):
    """The number that the exponent format of Python stands for."""
    return int(Decimal(f"{first}E{exponent}"))


def which_exponent(ask):
    digits = re.findall(r"[\d,]{4,}", ask)[0].replace(",", "")
    return len(digits) - 1


def more_of_the_two(ask, choices):
    best = max(_full(*one) for one in _parts(ask))
    return [choice for choice in choices if _full(*_parts(choice)[0]) == best]


def into_short_form(ask):
    digits = re.findall(r"[\d,]{4,}", ask)[0].replace(",", "")
    first, exponent = f"{Decimal(digits):E}".split("E+")
    return f"{Decimal(first).normalize()} × 10" + exponent.translate(
        str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
    )


def written_out(ask):
    ((first, exponent),) = _parts(ask)
    return _full(first, exponent)


def times_as_many(ask):
    (big, small) = (_full(*one) for one in _parts(ask))
    count, left = divmod(big, small)
    assert left == 0
    return count


def set_right(ask, choices):
    wanted = _full(*_parts(ask)[0])
    return [one for one in choices if _full(*_parts(one)[0]) == wanted and 1 <= _parts(one)[0][0] < 10]
