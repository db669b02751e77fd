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


def lanterns_on_the_harbour_wall(l, g):
    return 2 * len([metre for metre in range(int(l) + 1) if metre % g == 0])


def buttons_round_a_cushion(n):
    last = int(n) - 1
    return len({(x, y) for x in range(last + 1) for y in range(last + 1) if x in (0, last) or y in (0, last)})


def along_the_valley_road(a, b, c):
    pieces = itertools.product(range(1, 40), repeat=3)
    return [y for x, y, z in pieces if x + y == a and y + z == b and x + y + z == c]


def sawing_a_beam(n, m, r):
    pieces, minutes = 1, 0
    while pieces < n:
        pieces, minutes = pieces + 1, minutes + m
        if pieces < n:
            minutes += r
    return minutes


def two_bags_of_shells(p, q):
    found = []
    for red, blue in itertools.product(range(200), repeat=2):
        after_red, after_blue = red - blue, blue + blue
        if (after_red + after_red, after_blue - after_red) == (p, q) and min(after_red, q) >= 0:
            found.append(red)
    return found


def duckweed_on_the_pond(n, words):
    wanted = {"half": 2, "a quarter": 4, "an eighth": 8, "a sixteenth": 16}[words["share"]]
    return [day for day in range(1, int(n) + 1) if wanted * 2**day == 2 ** int(n)]


def people_on_the_tram(a, b, n):
    found = []
    for people in range(0, 400, 2):
        after_first = people - people // 2 + a
        if after_first % 3 == 0 and after_first - after_first // 3 + b == n:
            found.append(people)
    return found


def rectangles_from_a_rope(n):
    sides = range(1, int(n))
    return len(
        {(short, long) for short in sides for long in sides if short <= long and 2 * (short + long) == n}
    )


def two_savings_boxes(a, b, c, d):
    return [weeks for weeks in range(1000) if a + c * weeks == b + d * weeks]


def boats_for_two_and_three(n):
    return sum(1 for twos in range(int(n)) for threes in range(int(n)) if 2 * twos + 3 * threes == n)


def two_lighthouses(a, b):
    flashes = {a * n for n in range(1, 500)} & {b * n for n in range(1, 500)}
    return min(flashes)
