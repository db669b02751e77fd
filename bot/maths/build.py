"""How each rule of the grammar builds its tree: one entry a rule, named as in `maths.lark`."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Any

from bot.maths.tree import (
    Add,
    Call,
    Compare,
    Conditions,
    Divide,
    Equation,
    Group,
    Inequality,
    IsWhole,
    Letter,
    Listing,
    Many,
    Mixed,
    Multiply,
    Negative,
    Number,
    OneOf,
    Percent,
    Pi,
    PlusMinus,
    Point,
    Positive,
    Power,
    Ratio,
    Root,
    Span,
    Subtract,
    TheAnswer,
    Tree,
)


class SideBySide(ValueError):
    """Two numbers with nothing between them: `3 4`."""


def number_from(digits: str) -> Number:
    """A number from its digits: `12`, `12.50`, `.5`, `0.1(6)`."""
    whole, point, places = digits.partition(".")
    if not point:
        return Number(Fraction(int(whole)))
    fixed, bracket, block = places.partition("(")
    value = Fraction(int(whole + fixed or "0"), 10 ** len(fixed))
    if not bracket:
        return Number(value, len(fixed))
    block = block[:-1]
    value += Fraction(int(block), (10 ** len(block) - 1) * 10 ** len(fixed))
    return Number(value, len(fixed) + len(block), len(block))


def _mixed(parts: list[Any]) -> Tree:
    whole, top, bottom = (int(digits) for digits in re.split(r"[ /]+", parts[0]))
    return Mixed(whole, top, bottom)


def _beside(parts: list[Any]) -> Tree:
    left, right = parts
    if type(right) in (Number, Mixed) and _ends_in_number(left):
        raise SideBySide
    if type(right) is Divide and type(right.left) in (Number, Mixed) and _ends_in_number(left):
        raise SideBySide
    return Multiply(left, right, beside=True)


def _ends_in_number(tree: Tree) -> bool:
    while isinstance(tree, (Multiply, Divide)):
        tree = tree.right
    return isinstance(tree, (Number, Mixed))


def _point(parts: list[Any]) -> Tree:
    return Point(tuple(parts))


def _span(parts: list[Any]) -> Tree:
    low, high, *more = parts
    step, but = None, ()
    for kind, what in more:
        if kind == "step":
            step = what
        else:
            but = what
    return Span(low, high, step, but)


BUILD: dict[str, Callable[[list[Any]], Any]] = {
    "equation": lambda p: Equation(tuple(p)),
    "inequality": lambda p: Inequality(tuple(p[::2]), tuple(p[1::2])),
    "ratio": lambda p: Ratio(tuple(p)),
    "listing": lambda p: Listing(tuple(p)),
    "add": lambda p: Add(p[0], p[1]),
    "subtract": lambda p: Subtract(p[0], p[1]),
    "plus_minus": lambda p: PlusMinus(p[0], p[1]),
    "both_signs": lambda p: PlusMinus(None, p[0]),
    "multiply": lambda p: Multiply(p[0], p[1]),
    "divide": lambda p: Divide(p[0], p[1]),
    "bar": lambda p: Divide(p[0], p[1], bar=True),
    "bar_negative": lambda p: Divide(p[0], Negative(p[1]), bar=True),
    "negative": lambda p: Negative(p[0]),
    "positive": lambda p: Positive(p[0]),
    "beside": _beside,
    "percent": lambda p: Percent(p[0]),
    "power": lambda p: Power(p[0], p[1]),
    "number": lambda p: number_from(p[0]),
    "mixed": _mixed,
    "letter": lambda p: Letter(p[0]),
    "call": lambda p: Call(p[0], tuple(p[1:])),
    "root": lambda p: Root(p[0]),
    "cube_root": lambda p: Root(p[0], 3),
    "pi": lambda p: Pi(),
    "the_answer": lambda p: TheAnswer(),
    "group": lambda p: Group(p[0]),
    "point": _point,
    "many": lambda p: Many(p[0], p[1]),
    "span": _span,
    "step": lambda p: ("step", p[0]),
    "but": lambda p: ("but", tuple(p)),
    "one_of": lambda p: OneOf(tuple(p)),
    "conditions": lambda p: Conditions(tuple(p)),
    "compare": lambda p: Compare(tuple(p[::2]), tuple(p[1::2])),
    "is_whole": lambda p: IsWhole(p[0], False),
    "is_not_whole": lambda p: IsWhole(p[0], True),
}
