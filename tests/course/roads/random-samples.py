"""Lots rebuilt from copies of the sample and counted; marked animals by trying all lots."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def _numbers(text):
    return [int(one.replace(",", "")) for one in re.findall(r"\d[\d,]*\d|\d", text)]


def _in_copies(sample, kind, whole):
    """How many of the kind there are in a lot of that size made of equal samples."""
    lot = ([True] * kind + [False] * (sample - kind)) * whole
    return Fraction(sum(lot), sample)


def estimate_a_total(ask):
    whole, sample, kind, _ = _numbers(ask)
    return _in_copies(sample, kind, whole)


def which_sample_is_fair(choices):
    return [one for one in choices if "lot" in one.split()]


def decimal_share(ask):
    whole, sample, kind, _ = _numbers(ask)
    return _in_copies(sample, kind, whole)


def three_samples(ask):
    whole, sample, *counts, _ = _numbers(ask)
    return Fraction(statistics.mean(counts)) * (whole // sample)


def what_would_you_expect(ask, choices):
    sample, kind, whole = _numbers(ask)
    expected = _in_copies(sample, kind, whole)
    return [one for one in choices if _numbers(one) == [expected]]


def marked_fish(a, n, c):
    return [whole for whole in range(1, 3000) if Fraction(int(a), whole) == Fraction(int(c), int(n))]
