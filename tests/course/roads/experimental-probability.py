"""Shares by counting the throws of a list, and what to expect by going through the throws one batch at a time."""

from __future__ import annotations

import statistics
from fractions import Fraction


def _series(hits, misses):
    return [Fraction(1)] * int(hits) + [Fraction(0)] * int(misses)


def _in_batches(hits, throws, many):
    """As many hits as in the sample for each batch of its size."""
    expected = 0
    while many > 0:
        many, expected = many - throws, expected + hits
    return expected


def estimate_from_counts(s, f):
    return statistics.mean(_series(s, f))


def a_bent_coin(n, s, choices):
    return [choice for choice in choices if Fraction(choice) == statistics.mean(_series(s, n - s))]


def how_many_to_expect(n, k):
    return _in_batches(1, k, n)


def which_series_to_trust(a, b, n, m, choices):
    throws, hits = max((a, b), (n, m))
    return [choice for choice in choices if Fraction(choice) == statistics.mean(_series(hits, throws - hits))]


def from_sample_to_many(t, s, n):
    return _in_batches(s, t, n)


def good_ones_in_the_crate(t, s, n):
    return _in_batches(t - s, t, n)
