"""Puzzles solved by trying everything: each has exactly one answer."""

from __future__ import annotations

import calendar
import itertools
import math
import random
import re


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


def a_bed_of_herbs(p, d):
    return [width for width in range(1, 200) if width * (width + d) == p]


def grandmother_and_grandchild(a, b, k):
    return [years for years in range(200) if a + years == k * (b + years)]


def a_drop_on_the_page(h, e, p):
    return [digit for digit in range(10) if int(f"{h}{digit}{e}") % p == 0]


def cuts_through_a_flat_bread(n):
    # Euler: pieces = 1 + cuts + crossings. Cut i runs from point i of the rim to point i + n, of 2 n points.
    cuts = [(i, i + int(n)) for i in range(int(n))]
    crossings = sum(a < c < b < d for (a, b), (c, d) in itertools.combinations(cuts, 2))
    return 1 + len(cuts) + crossings


def rectangles_in_a_window(r, c):
    rows, columns = range(int(r)), range(int(c))
    return sum(
        1
        for top, bottom in itertools.product(rows, repeat=2)
        for left, right in itertools.product(columns, repeat=2)
        if top <= bottom and left <= right
    )


def last_one_left_in_the_game(n):
    players, games = int(n), 0
    while players > 1:
        pairs = players // 2
        players, games = players - pairs, games + pairs
    return games


def a_painted_block(a, b, c):
    def painted(place, size):
        return (place == 0) + (place == size - 1)

    cubes = itertools.product(range(int(a)), range(int(b)), range(int(c)))
    return sum(1 for x, y, z in cubes if painted(x, a) + painted(y, b) + painted(z, c) == 2)


def seats_in_a_theatre(a, d, n):
    row, seats = a, 0
    for _ in range(int(n)):
        seats, row = seats + row, row + d
    return seats


def date_of_a_weekday(words):
    names = list(calendar.day_name)
    place = {"second": 1, "third": 2, "fourth": 3}[words["which"]]
    # Any month will do that begins on this weekday.
    year, month = next(
        (year, month)
        for year, month in itertools.product(range(2000, 2030), range(1, 13))
        if names[calendar.weekday(year, month, 1)] == words["first"]
    )
    days = [day for day in range(1, 29) if names[calendar.weekday(year, month, day)] == words["asked"]]
    return days[place]


def a_string_of_beads(a, b, c, n):
    colours = itertools.cycle("r" * int(a) + "w" * int(b) + "b" * int(c))
    return sum(colour == "r" for colour in itertools.islice(colours, int(n)))


def a_row_of_shapes_from_sticks(words, n):
    sides = {"triangles": 3, "squares": 4, "pentagons": 5, "hexagons": 6}[words["shapes"]]
    sticks = set()
    for shape in range(int(n)):
        # A stick between two shapes has one name in both, the others belong to one shape.
        sticks |= {("between", shape), ("between", shape + 1)}
        sticks |= {("own", shape, side) for side in range(sides - 2)}
    return len(sticks)


def a_box_of_costumes(a, b, c):
    heads = [None, *range(int(c))]
    return len(list(itertools.product(range(int(a)), range(int(b)), heads)))


def one_digit_on_all_pages(n, d):
    return "".join(str(page) for page in range(1, int(n) + 1)).count(str(d))


def two_scoops(n, k):
    pairs = set(itertools.combinations_with_replacement(range(int(n)), 2))
    return len({(cone, pair) for cone in range(int(k)) for pair in pairs})


def strokes_of_a_clock(a, b):
    strokes, half_hours = 0, 2 * int(a)
    while half_hours <= 2 * b:
        strokes += 1 if half_hours % 2 else half_hours // 2
        half_hours += 1
    return strokes


def three_wheels_of_a_lock(s, d, m):
    return [
        100 * first + 10 * middle + last
        for first, middle, last in itertools.product(range(10), repeat=3)
        if first + middle + last == s and first == last + d and middle == m * last
    ]


def a_square_with_a_clue(u, v, r, m):
    return [n for n in range(int(u) + 1, int(v)) if math.isqrt(n) ** 2 == n and n % m == r]


def two_secret_numbers(s, p):
    return list({max(one, s - one) for one in range(int(s) + 1) if one * (s - one) == p})


def age_of_an_oak(ask, a, b):
    least, most = (int(found) for found in re.search(r"least (\d+) and at most (\d+)", ask).groups())
    return [age for age in range(least, most + 1) if (age - 1) % a == 0 and (age + 1) % b == 0]


def three_baskets_of_apples(t, d, m):
    return [first for first in range(int(t)) if first + (first + d) + first * m == t]


def a_hedge_around_a_field(p, m):
    return [wide for wide in range(1, int(p)) if wide + wide * m + wide + wide * m == p]


def coins_in_a_purse(t, m):
    return [
        tens
        for tens in range(int(t))
        for fives in (tens * int(m),)
        if sum([10] * tens) + sum([5] * fives) == t
    ]


def weight_of_a_pumpkin(p, words):
    part = {"one third": 3, "a quarter": 4, "a fifth": 5, "a sixth": 6}[words["part"]]
    return [weight for weight in range(1000) if p * part + weight == weight * part]


def balls_of_wool_in_the_dark(a, b, c, k):
    def certain(taken):
        for red, blue in itertools.product(range(int(a) + 1), range(int(b) + 1)):
            green = taken - red - blue
            if 0 <= green <= c and max(red, blue, green) < k:
                return False
        return True

    return next(taken for taken in range(1, int(a + b + c) + 1) if certain(taken))


def largest_product_from_four_cards(a, b, c, d):
    orders = itertools.permutations((a, b, c, d))
    return max((10 * one + two) * (10 * three + four) for one, two, three, four in orders)


def eggs_in_baskets(n, a, b):
    # What can be reached with so many baskets, filling one after the other.
    possible, reached = 0, {0}
    for _ in range(int(n)):
        reached = {eggs + more for eggs in reached for more in range(int(a), int(b) + 1) if eggs + more <= n}
        possible += n in reached
    return possible


def music_and_swimming(n, p, q):
    both = [both for both in range(int(n) + 1) if both <= min(p, q) and p + q - both <= n]
    return min(both)


def slips_in_a_hat(n, d):
    last = set()
    for seed in range(30):
        chance = random.Random(seed)
        slips = list(range(1, int(n) + 1))
        while len(slips) > 1:
            chance.shuffle(slips)
            slips.append(slips.pop() + slips.pop() + int(d))
        last |= set(slips)
    return list(last)


def cups_turned_over(n, k):
    seen, front = {0}, [0]
    while front:
        upright = front.pop()
        for up in range(int(k) + 1):
            down = int(k) - up
            if up <= n - upright and down <= upright and upright + up - down not in seen:
                seen.add(upright + up - down)
                front.append(upright + up - down)
    return n in seen


def books_moved_about(a, b, c, m, d):
    books = int(a + b + c)
    return [
        top
        for top, middle in itertools.product(range(books + 1), repeat=2)
        if middle == m * top and books - top - middle == top + d
    ]


def years_between_two(d, k):
    return [birch for birch in range(1, 300) if birch + d == k * birch]


def tearing_a_sheet_of_stamps(r, c):
    tears = set()
    for seed in range(20):
        chance = random.Random(seed)
        pieces, torn = [(int(r), int(c))], 0
        while any(piece != (1, 1) for piece in pieces):
            high, wide = pieces.pop(chance.randrange(len(pieces)))
            if (high, wide) == (1, 1):
                pieces.append((1, 1))
                continue
            line = chance.randrange(1, high + wide - 1)
            if line < high:
                pieces += [(line, wide), (high - line, wide)]
            else:
                pieces += [(high, line - high + 1), (high, wide - (line - high + 1))]
            torn += 1
        tears.add(torn)
    return list(tears)


def two_in_a_rowing_boat(a, b):
    club = ["knows"] * int(a) + ["new"] * int(b)
    return sum("knows" in pair for pair in itertools.combinations(club, 2))


def path_around_the_inside(l, b, d):
    squares = itertools.product(range(int(l)), range(int(b)))
    return sum(1 for x, y in squares if min(x, y, l - 1 - x, b - 1 - y) < d)


def lamps_along_the_quay(n, a, b):
    return sum(1 for lamp in range(1, int(n) + 1) if lamp % a and lamp % b)


def sum_of_the_others(n, a):
    return sum(one for one in range(1, int(n) + 1) if one % a)


def three_parcels_two_by_two(p, q, r):
    return [red for red in range(1, 200) if (p - red) + (r - red) == q and p > red and r > red]


def plums_and_melons(s, t):
    return [
        2 * small
        for small, large in itertools.product(range(1, 150), repeat=2)
        if 3 * small + large == s and 4 * small + 2 * large == t
    ]


def an_empty_jar(f, h):
    return [jar for jar in range(int(h)) if f - jar == 2 * (h - jar)]


def swapping_at_the_fair(a, b, c, n):
    marbles, stickers, kites = 0, 0, 0
    while kites < n:
        marbles, stickers = marbles + a, stickers + b
        if stickers >= c:
            stickers, kites = stickers - c, kites + 1
    return marbles


def two_seats_apart(n, g):
    return sum(1 for one, other in itertools.product(range(int(n)), repeat=2) if abs(one - other) > g)


def raft_over_the_river(n, c):
    # Breadth first: how many wait, and whether the raft is on their side.
    front, seen, trips = {(int(n), True)}, set(), 0
    while not any(waiting == 0 for waiting, _ in front):
        seen |= front
        after = set()
        for waiting, here in front:
            ready = waiting if here else int(n) - waiting
            for aboard in range(1, min(int(c), ready) + 1):
                after.add((waiting - aboard if here else waiting + aboard, not here))
        front, trips = after - seen, trips + 1
    return trips


def every_second_one_steps_out(n):
    circle = list(range(1, int(n) + 1))
    while len(circle) > 1:
        circle = [*circle[2:], circle[0]]
    return circle


def ball_around_a_circle(n, k):
    place, throws = k % n, 1
    while place:
        place, throws = (place + k) % n, throws + 1
    return throws


def two_sides_in_the_pan(n, p, m):
    # Breadth first: how many breads have no side done yet, and how many have one.
    front, fillings = {(int(n), 0)}, 0
    while (0, 0) not in front:
        after = set()
        for raw, half in front:
            for first in range(min(raw, int(p)) + 1):
                second = min(half, int(p) - first)
                after.add((raw - first, half + first - second))
        front, fillings = after, fillings + 1
    return fillings * m
