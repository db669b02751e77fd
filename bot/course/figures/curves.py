"""Lines and curves of a graph, and the solutions of an inequality on a number line."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from bot.course.figures.reading import number
from bot.maths import Undefined, Unreadable, read, value

_SIDE = re.compile(r"\s*(<|≤|>|≥)\s*")
_TURNED = {"<": ">", "≤": "≥", ">": "<", "≥": "≤"}


@dataclass(frozen=True, slots=True)
class Curve:
    """A line or curve: either upright at some x, or a height for each x (None where there is none)."""

    text: str
    upright: Fraction | None
    at: Callable[[Fraction], Fraction | None]


def curve(text: str) -> Curve | None:
    """The curve of "y = 2x + 1", "y = x^2" or "x = 3"; None if the text says no such thing."""
    left, equals, right = (part.strip() for part in text.replace("−", "-").partition("="))
    if not equals or left not in ("x", "y"):
        return None
    if left == "x":
        value = number(right)
        return Curve(text, value, lambda x: None) if value is not None else None
    height = _height(right)
    return Curve(text, None, height) if height else None


def _height(formula: str) -> Callable[[Fraction], Fraction | None] | None:
    try:
        tree = read(formula)
    except Unreadable:
        return None

    def at(x: Fraction) -> Fraction | None:
        try:
            return value(tree, {"x": x})
        except Undefined:
            return None

    return at


@dataclass(frozen=True, slots=True)
class Solutions:
    """The numbers that solve an inequality: from `low` to `high` (None: without end), ends counted or not."""

    low: Fraction | None
    low_counts: bool
    high: Fraction | None
    high_counts: bool


def solutions(text: str) -> Solutions | None:
    """The solutions of "x > 3", "5 ≥ n" or "-2 ≤ x < 5"; None if the text is no inequality for one letter."""
    parts = _SIDE.split(text.strip().replace("<=", "≤").replace(">=", "≥"))
    if len(parts) == 3 and number(parts[0]) is not None:
        parts = [parts[2], _TURNED[parts[1]], parts[0]]
    if len(parts) == 5 and parts[1] in ">≥":
        parts = [parts[4], _TURNED[parts[3]], parts[2], _TURNED[parts[1]], parts[0]]
    ends = [number(part) for part in parts[::2]]
    match len(parts), parts:
        case 3, [letter, sign, _] if letter.isalpha() and ends[1] is not None:
            if sign in "<≤":
                return Solutions(None, False, ends[1], sign == "≤")
            return Solutions(ends[1], sign == "≥", None, False)
        case 5, [_, first, letter, second, _] if (
            letter.isalpha() and ends[0] is not None and ends[2] is not None
        ):
            if first in "<≤" and second in "<≤" and ends[0] < ends[2]:
                return Solutions(ends[0], first == "≤", ends[2], second == "≤")
    return None
