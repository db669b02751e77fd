"""Choosing ticks: a scale that a person would draw by hand."""

from __future__ import annotations

from fractions import Fraction
from math import floor, log10

_NICE = (1, 2, 5, 10)


def nice_step(length: Fraction, most: int = 10) -> Fraction:
    """The smallest of 1, 2, 5 times a power of ten that cuts the length into at most so many parts."""
    rough = length / most
    power = Fraction(10) ** floor(log10(rough))
    return next(power * nice for nice in _NICE if power * nice >= rough)


def ticks(low: Fraction, high: Fraction, step: Fraction) -> list[Fraction]:
    """The numbers from low to high that are a whole number of steps from low, or from 0 where 0 lies between."""
    start = low if low > 0 or high < 0 else -((-low) // step) * step
    if low > 0 and (low / step).denominator != 1 and start != low:
        start = low
    count = floor((high - start) / step)
    return [start + i * step for i in range(count + 1)]


def line_step(low: Fraction, high: Fraction, *numbers: Fraction) -> Fraction:
    """A step for a number line on which the numbers fall on ticks where that leaves few enough of them."""
    length = high - low
    whole = length.denominator == 1 == low.denominator
    step = Fraction(1) if whole and 4 <= length <= 30 else nice_step(length, 20)
    if whole and length <= 40 and any(((number - low) / step).denominator != 1 for number in numbers):
        step = Fraction(1)
    bottoms = {(number - low).denominator for number in numbers}
    for bottom in sorted(bottoms - {1}, reverse=True):
        if (high - low) * bottom <= 24 and all((number * bottom).denominator == 1 for number in numbers):
            return Fraction(1, bottom)
    return step


def outward(values: list[Fraction], most: int = 10) -> tuple[Fraction, Fraction, Fraction]:
    """A scale (low, high, step) that holds all values, its ends on ticks."""
    low, high = min(values), max(values)
    step = nice_step((high - low) or Fraction(1), most)
    return (low // step) * step, -((-high) // step) * step, step
