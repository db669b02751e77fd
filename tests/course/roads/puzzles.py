"""Puzzles solved by trying everything: each has exactly one answer."""

from __future__ import annotations

import itertools


def snail_in_the_well(h, u, d):
    height, day = 0, 0
    while True:
        day, height = day + 1, height + u
        if height >= h:
            return [day]
        height -= d


def number_thought_of(m, a, r):
    return [x for x in range(1000) if x * m + a == r]


def flour_sold_by_halves(k, e):
    def left(sacks):
        for _ in range(2):
            sacks = sacks / 2 - k
        return sacks

    return [n for n in range(1, 2000) if left(n) == e]


def ways_to_pay(t):
    return sum(1 for tens in range(100) for fives in range(200) if 10 * tens + 5 * fives == t)


def neighbours_with_a_product(p):
    return [n for n in range(1, 1000) if n * (n + 1) == p]


def heads_and_legs(h, l):
    return [rabbits for rabbits in range(int(h) + 1) if 4 * rabbits + 2 * (h - rabbits) == l]


def handshakes(n):
    return sum(1 for _ in itertools.combinations(range(int(n)), 2))


def last_digit_of_a_power(b, k):
    return int(str(int(b) ** int(k))[-1])


def three_baskets(n):
    return sum(1 for a in range(1, int(n)) for b in range(1, int(n)) if n - a - b >= 1)


def number_with_clues(a, b, r, q, u):
    return [n for n in range(int(u), int(u + a * b)) if n % a == r and n % b == q]


def three_in_a_row(t):
    return [middle for middle in range(1, 1000) if middle - 1 + middle + middle + 1 == t]


def largest_of_five(s):
    return max(s - sum(four) for four in itertools.combinations(range(1, 15), 4) if s - sum(four) > max(four))


def not_multiples(n, a):
    return sum(1 for one in range(1, int(n) + 1) if one % a)


def two_shopping_bags(s, t):
    return [
        pen for pen in range(1, 200) if any(2 * pen + book == s and pen + book == t for book in range(1, 200))
    ]
