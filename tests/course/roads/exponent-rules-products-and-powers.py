"""Powers written out as lists of factors, and counted."""

from __future__ import annotations

import itertools
import math
import re

PLAIN = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


def _power(base, exponent):
    return list(itertools.repeat(base, int(exponent)))


def _powers(factors, exponent):
    return list(itertools.chain.from_iterable(itertools.repeat(factors, int(exponent))))


def _written(factors):
    return "x" + str(len(factors)).translate(RAISED)


def _is(choice, factors):
    base, exponent = re.fullmatch(r"([0-9]+)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)", choice).groups()
    return int(base) ** int(exponent.translate(PLAIN)) == math.prod(factors)


def product_of_powers(a, m, n):
    return len(_power(a, m) + _power(a, n))


def which_power_is_it(a, m, n, choices):
    return [choice for choice in choices if _is(choice, _power(a, m) + _power(a, n))]


def power_of_a_power(a, m, n):
    return len(_powers(_power(a, m), n))


def letters_and_a_lone_one(m, n):
    return _written([*_power("x", m), "x", *_power("x", n)])


def layers_and_folds(a, m, n, choices):
    return [choice for choice in choices if _is(choice, _power(a, m) + _power(a, n))]


def both_rules(a, b, c, d):
    return _written(_powers(_power("x", a), b) + _powers(_power("x", c), d))
