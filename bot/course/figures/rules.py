"""Rules that figures of several kinds share. Each yields what is wrong, with what would be right."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from bot.course.figures.reading import Drawn

Rule = Callable[[Drawn], Iterator[str]]


def whole(drawn: Drawn, name: str, low: int, high: int) -> Iterator[str]:
    if drawn.has(name):
        value = drawn.number(name)
        if value.denominator != 1 or not low <= value <= high:
            yield f"'{name}' is a whole number from {low} to {high}; here it is {value}."


def wholes(drawn: Drawn, name: str, low: int, high: int) -> Iterator[str]:
    for value in drawn.numbers(name):
        if value.denominator != 1 or not low <= value <= high:
            yield f"'{name}' holds whole numbers from {low} to {high}; {value} isn't one."


def between(drawn: Drawn, name: str, fewest: int, most: int) -> Iterator[str]:
    """How many values a field holds."""
    if drawn.has(name) and not fewest <= len(drawn.labels(name)) <= most:
        few = str(fewest) if fewest == most else f"{fewest} to {most}"
        yield f"'{name}' holds {few} values; here it has {len(drawn.labels(name))}."


def as_many(drawn: Drawn, name: str, other: str) -> Iterator[str]:
    if drawn.has(name) and drawn.has(other) and len(drawn.labels(name)) != len(drawn.labels(other)):
        yield (
            f"'{name}' and '{other}' go together one by one; here are {len(drawn.labels(name))} and"
            f" {len(drawn.labels(other))}."
        )


def by_twos(drawn: Drawn, *names: str) -> Iterator[str]:
    for name in names:
        if len(drawn.labels(name)) % 2:
            yield f"'{name}' holds points two by two; here one is left over."


def inside(drawn: Drawn, name: str, low: Fraction, high: Fraction) -> Iterator[str]:
    for value in drawn.numbers(name):
        if not low <= value <= high:
            yield f"'{name}' holds {value}, which lies outside {low} to {high}."
