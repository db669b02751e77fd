"""Dot plots as plain lists of answers, counted by Python; statistical questions by a list of our own."""

from __future__ import annotations

import re
import statistics
from collections import Counter

SAME_FOR_ALL = ("minutes are there", "legs do", "cents are there", "weeks do", "wheels do", "corners do")


def statistical_or_not(ask):
    return not any(phrase in ask for phrase in SAME_FOR_ALL)


def how_often(ask, D):
    return Counter(D)[int(re.search(r"is the number of \w+ (\d+)", ask)[1])]


def how_many_in_all(D):
    return len(D)


def most_often(D):
    return str(statistics.mode(D))


def at_least(ask, D):
    least = int(re.search(r"at least (\d+)", ask)[1])
    return len([one for one in D if one >= least])


def how_much_together(D):
    return sum(D)
