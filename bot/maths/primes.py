"""Primes of a whole number, in bounded time."""

from __future__ import annotations


def prime_powers(n: int) -> dict[int, int]:
    """Primes and their powers of a whole number above 0; a part too large to factor stays whole.

    Trial division up to 100,000 (about 5 ms at most).
    """
    found: dict[int, int] = {}
    p = 2
    while p * p <= n and p < 100_000:
        while n % p == 0:
            found[p] = found.get(p, 0) + 1
            n //= p
        p += 1 if p == 2 else 2
    if n > 1:
        found[n] = found.get(n, 0) + 1
    return found
