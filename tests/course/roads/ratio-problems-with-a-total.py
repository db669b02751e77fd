"""Sharing by dealing out: a for the one, b for the other, round after round, until nothing is left."""

from __future__ import annotations


def _dealt(total, a, b):
    """What each has when `total` things are dealt out, a and b in each round."""
    one = other = 0
    while one + other < total:
        one, other = one + a, other + b
    assert one + other == total
    return one, other


def size_of_one_box(t, a, b):
    one, _other = _dealt(t, a, b)
    return one / a


def share_in_a_ratio(t, a, b):
    return _dealt(t, a, b)[0]


def which_line_finds_it(t, a, b, choices):
    def worth(written):
        return eval(written.replace("×", "*").replace("÷", "/"), {})

    return [choice for choice in choices if abs(worth(choice) - _dealt(t, a, b)[1]) < 1e-9]


def total_from_one_part(p, a, b):
    return [total for total in range(1, 400) if total * a == p * (a + b)]


def same_share_or_not(t, a, b):
    tulips, lilies = _dealt(t, a, b)
    return tulips > lilies


def difference_of_the_parts(t, a, b):
    one, other = _dealt(t, a, b)
    return one - other
