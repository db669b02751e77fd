"""Division by counting how often a piece fits, in whole thousandths."""

from __future__ import annotations

from fractions import Fraction


def _fits(whole, piece):
    """How often a piece fits, by taking it away: both are lengths in thousandths."""
    left, times = round(whole * 1000), 0
    step = round(piece * 1000)
    while left > 0:
        left, times = left - step, times + 1
    assert left == 0
    return times


def same_division(x, y, choices):
    def worth(written):
        top, bottom = (Fraction(part.replace(",", "")) for part in written.split(" ÷ "))
        return top / bottom

    return [choice for choice in choices if worth(choice) * y == x]


def by_a_whole_number(maths):
    return eval(maths[0], {"F": Fraction})


def by_tenths(x, y):
    return [q for q in (Fraction(k, 100) for k in range(1, 2000)) if q * y == x]


def more_or_less(x, y):
    return f"more than {x}" if x / y > x else f"less than {x}"


def filling_jars(x, y):
    return _fits(x, y)


def planks_and_pieces(x, y, w):
    return _fits(x - w, y)
