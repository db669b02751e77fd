"""Powers by multiplying a factor in again and again, by counting cubes, and by growing step by step."""

from __future__ import annotations

import itertools
import math


def _product(factor, times):
    return math.prod([int(factor)] * int(times))


def short_for(a, n, choices):
    raised = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")

    def worth(written):
        if not any(sign in "⁰¹²³⁴⁵⁶⁷⁸⁹" for sign in written):
            return math.prod(int(part) for part in written.split(" × "))
        base = "".join(sign for sign in written if sign.isascii() and sign.isdigit())
        return int(base) ** int("".join(s for s in written if s not in base).translate(raised))

    return [choice for choice in choices if worth(choice) == _product(a, n)]


def work_it_out(a, n):
    return _product(a, n)


def rows_and_layers(a, n):
    return sum(1 for _ in itertools.product(range(int(a)), repeat=int(n)))


def which_is_it_worth(a, n):
    return str(_product(a, n))


def each_time_as_many(s, b, n):
    there = [0] * int(s)
    for _ in range(int(n)):
        there = [one for one in there for _new in range(int(b))]
    return len(there)


def power_in_a_line(a, b, c, n):
    return c + sum([_product(b, n)] * int(a))
