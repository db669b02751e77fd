"""Factors and primes, by trying every number and by sympy."""

from __future__ import annotations

import sympy


def divisible_or_not(n, d):
    return n in range(0, 10_000, int(d))


def the_other_factor(n, a):
    return [other for other in range(1, 101) if a * other == n]


def how_many_factors(n):
    return int(sympy.divisor_count(int(n)))


def which_is_prime(choices):
    return [choice for choice in choices if sympy.isprime(int(choice))]


def rows_of_jars(n):
    ways = {frozenset((rows, int(n) // rows)) for rows in range(2, int(n)) if int(n) % rows == 0}
    return len(ways)


def smallest_prime_factor(n):
    return min(sympy.factorint(int(n)))
