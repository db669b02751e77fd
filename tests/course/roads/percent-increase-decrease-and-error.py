"""Each percent is tried: the one that, put on or taken off, leads from the first amount to the last."""

from __future__ import annotations

from fractions import Fraction


def _percent_from(start, end):
    """The whole percent of the start that leads from start to end, found by trying, as a fraction."""
    one, hits = Fraction(start) / 100, []
    up = down = Fraction(start)
    for p in range(501):  # one percent after another is put on, and taken off
        if up == end or (down == end and p <= 100):
            hits.append(p)
        up, down = up + one, down - one
    (hit,) = hits
    return Fraction(abs(hit), 100)


def went_up(a, b):
    return _percent_from(a, b)


def which_fraction(a, b, choices):
    def leads(choice):
        top, bottom = choice.split("/")
        return a - a * Fraction(int(top), int(bottom)) == b

    return [choice for choice in choices if leads(choice)]


def went_down(a, b):
    return _percent_from(a, b)


def how_far_off(g, n):
    return _percent_from(n, g)


def grew_by_more(words, a, b, c, d):
    return words["one"] if Fraction(c, a) > Fraction(d, b) else words["other"]


def and_back_again(a, p):
    high = a + sum([Fraction(a) / 100] * int(p))
    return _percent_from(high, a)
