"""Powers worked out as whole numbers and divided; the exponent counted by dividing again and again."""

from __future__ import annotations

import re
from fractions import Fraction

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")


def _exponent(number, base):
    count = 0
    while number != 1:
        number, rest = divmod(number, base)
        assert rest == 0
        count += 1
    return count


def _power(text):
    base, raised = re.fullmatch(r"(\d+?)([⁰¹²³⁴⁵⁶⁷⁸⁹]*)", text.strip()).groups()
    return int(base) ** int(raised.translate(RAISED) or 1)


def which_exponent(a, m, n):
    return _exponent(int(a) ** int(m) // int(a) ** int(n), int(a))


def nothing_left(a, choices):
    """One step further down the row of powers."""
    step = Fraction(int(a) ** 3)
    for _ in range(3):
        step /= a
    return [choice for choice in choices if int(choice) == step]


def one_power(ask, choices):
    above, below = (_power(one) for one in re.search(r"as (.*)\?", ask)[1].split("/"))
    return [choice for choice in choices if _power(choice) * below == above]


def sheets_into_boxes(b, m, n):
    return _exponent(int(b) ** int(m) // int(b) ** int(n), int(b))


def zero_in_a_line(a, b, c):
    return int(b) + sum(int(a) ** 0 for _ in range(int(c)))


def up_and_down(a, p, q, r):
    base = int(a)
    return _exponent(base ** int(p) * base ** int(q) // base ** int(r), base)
