"""Dots looked up one by one, slopes by least squares, and lines followed step by step."""

from __future__ import annotations

import re
import statistics
from fractions import Fraction


def _rule(text):
    """Slope and start of the printed rule, as exact numbers."""
    found = re.search(r"y = (−?[\d.]*)x(?: ([+−]) (\d+))?", text)
    slope = found[1].replace("−", "-")
    slope = Fraction(slope + "1") if slope in ("", "-") else Fraction(slope)
    start = Fraction(found[3] or 0)
    return slope, -start if found[2] == "−" else start


def _climb(start, slope, steps):
    """Along the line from its start, one step of x after the other."""
    high = start
    for _ in range(int(steps)):
        high += slope
    return high


def _fitted(dots):
    """Slope and intercept by least squares, from Python's statistics."""
    across, up = zip(*dots, strict=True)
    return statistics.linear_regression([float(x) for x in across], [float(y) for y in up])


def read_a_dot(ask, a, b, c, d, e, f):
    dots = {1: a, 2: b, 3: c, 4: d, 5: e, 6: f}
    return dots[int(re.findall(r"\d+", ask)[-1])]


def climb_or_sink(p, q, r, t, s):
    rests = (p, -q, r, -t, -t, r, -q, p)
    dots = [(n, 12 + (2 * n - 9) * s + rest) for n, rest in enumerate(rests, 1)]
    slope = _fitted(dots).slope
    if abs(slope) < 0.5:
        return "about zero"
    return "positive" if slope > 0 else "negative"


def what_the_slope_says(ask, words):
    slope, start = _rule(ask)
    return f"{_climb(start, slope, 9) - _climb(start, slope, 8)} {words['many']}"


def what_it_predicts(ask):
    slope, start = _rule(ask)
    return _climb(start, slope, re.findall(r"\d+", ask)[-1])


def which_line_fits(m, b, p, q, r, t, choices):
    """The line with the least sum of squared gaps to the dots."""
    rests = (p, -q, r, -t, -p, q, -r, t)
    dots = [(n, m * n + b + rest) for n, rest in enumerate(rests, 1)]

    def gaps(choice):
        slope, start = _rule(choice)
        return sum((y - slope * x - start) ** 2 for x, y in dots)

    return min(choices, key=gaps)


def gap_to_the_line(ask):
    slope, start = _rule(ask)
    x, y = (int(one) for one in re.search(r"\((\d+), (\d+)\)", ask).groups())
    return y - _climb(start, slope, x)


def rule_and_guess(ask):
    _, low, far, high, asked = (int(one) for one in re.findall(r"\d+", ask))
    return low + (high - low) * Fraction(asked, far)
