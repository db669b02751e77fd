"""Primes by sympy."""

from __future__ import annotations

import re

import sympy


def _primes(n):
    return [p for p, often in sorted(sympy.factorint(int(n)).items()) for _ in range(often)]


def _product(n):
    return " × ".join(str(p) for p in _primes(n))


def _numbers(ask):
    return [int(shown) for shown in re.findall(r"\d+", ask)]


def primes_only(ask):
    return all(sympy.isprime(one) for one in _numbers(ask))


def the_third_prime(ask):
    n, *known = _numbers(ask)
    left = _primes(n)
    for p in known:
        left.remove(p)
    return left


def three_primes(n):
    return _product(n)


def which_product(n):
    return _product(n)


def the_lock(n):
    return _primes(n)[-1]


def shared_primes(ask):
    first, second = _numbers(ask)[-2:]
    return max(k for k in range(1, first + 1) if first % k == 0 == second % k)
