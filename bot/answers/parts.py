"""Trees taken apart and put together: terms, factors, fractions."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TypeAlias

from bot.answers.writing import ungrouped
from bot.maths import Tree
from bot.maths.tree import (
    Add,
    Divide,
    Group,
    Mixed,
    Multiply,
    Negative,
    Number,
    Positive,
    Subtract,
)
from bot.maths.value import Undefined, value

Faulty: TypeAlias = Iterator[tuple[str, Tree]]
MOST_NODES = 60
"""Larger expressions are not searched for missteps: bounds the time of one wrong answer."""


def multiplied(one: Tree, other: Tree) -> Tree:
    return Multiply(Group(one), Group(other))


def number_in(tree: Tree) -> Fraction | None:
    try:
        return value(tree)
    except Undefined:
        return None


def terms(tree: Tree) -> list[tuple[int, Tree]]:
    """The terms of a sum with their signs."""
    found: list[tuple[int, Tree]] = []
    waiting = [(1, tree)]
    while waiting:
        sign, one = waiting.pop()
        match one:
            case Add(left=left, right=right):
                waiting += [(sign, right), (sign, left)]
            case Subtract(left=left, right=right):
                waiting += [(-sign, right), (sign, left)]
            case Negative(of=inner):
                waiting.append((-sign, inner))
            case Positive(of=inner):
                waiting.append((sign, inner))
            case Group(of=inner) if isinstance(ungrouped(inner), (Add, Subtract, Negative)) and sign == 1:
                waiting.append((sign, inner))
            case _:
                found.append((sign, one))
    return found


def summed(parts: list[tuple[int, Tree]]) -> Tree:
    """Terms put together again."""
    if not parts:
        return Number(Fraction(0))
    sign, first = parts[0]
    tree: Tree = first if sign > 0 else Negative(Group(first))
    for sign, one in parts[1:]:
        tree = Add(tree, Group(one)) if sign > 0 else Subtract(tree, Group(one))
    return tree


def as_fraction(tree: Tree) -> tuple[Tree, Tree] | None:
    tree = ungrouped(tree)
    if isinstance(tree, Divide):
        return tree.left, tree.right
    return None


def mixed_in(tree: Tree) -> tuple[int, Fraction] | None:
    tree = ungrouped(tree)
    if isinstance(tree, Mixed) and tree.bottom:
        return tree.whole, Fraction(tree.top, tree.bottom)
    if isinstance(tree, Number) and not tree.places:
        return int(tree.value), Fraction(0)
    return None
