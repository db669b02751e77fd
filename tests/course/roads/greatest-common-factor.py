"""The greatest common factor, by the library and by trying every number."""

from __future__ import annotations

import math


def _greatest(a, b):
    return max(k for k in range(1, int(min(a, b)) + 1) if a % k == 0 and b % k == 0)


def gcf_of_two(a, b):
    return math.gcd(int(a), int(b))


def common_or_not(a, b, g):
    return a % g == 0 and b % g == 0


def which_is_greatest(a, b):
    return str(math.gcd(int(a), int(b)))


def nothing_in_common(a, b):
    return _greatest(a, b)


def equal_bags(a, b):
    return _greatest(a, b)


def tiles_on_a_floor(a, b):
    side = _greatest(a, b)
    return len(range(0, int(a), int(side))) * len(range(0, int(b), int(side)))
