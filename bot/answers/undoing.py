"""Equations and inequalities after one faulty step: something undone wrongly, or on one side only."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from bot.answers.faults import faulty
from bot.answers.parts import MOST_NODES, Faulty, multiplied, summed, terms
from bot.answers.writing import ungrouped
from bot.maths import Tree, letters_in, number
from bot.maths.exact import Beyond, normal_form
from bot.maths.tree import (
    Add,
    Divide,
    Equation,
    Group,
    Inequality,
    Letter,
    Multiply,
    Subtract,
    every,
)
from bot.maths.value import Undefined

# Equations and inequalities ---------------------------------------------------------------------------------


def faulty_relations(tree: Tree) -> Faulty:
    """The equation or inequality with one faulty step: inside a side, or in undoing something on both."""
    if sum(1 for _ in every(tree)) > MOST_NODES or not isinstance(tree, (Equation, Inequality)):
        return
    for i, side in enumerate(tree.sides):
        for name, changed in faulty(side):
            if name not in ("operands-swapped", "sign-lost"):
                yield name, _with_side(tree, i, changed)
    if len(tree.sides) == 2:
        for i in (0, 1):
            yield from _undone(tree, i)
    else:
        yield from _undone_in_middle(tree)
    for i, side in enumerate(tree.sides):
        for name, changed in faulty(side):
            if name == "sign-lost":
                yield name, _with_side(tree, i, changed)


def _with_side(tree: Equation | Inequality, i: int, side: Tree) -> Tree:
    return replace(tree, sides=(*tree.sides[:i], Group(side), *tree.sides[i + 1 :]))


def _two(tree: Equation | Inequality, i: int, here: Tree, there: Tree) -> Tree:
    sides = (Group(here), Group(there)) if i == 0 else (Group(there), Group(here))
    return replace(tree, sides=sides)


def _undone(tree: Equation | Inequality, i: int) -> Faulty:
    """Terms and factors of one side undone wrongly on the other."""
    here, there = tree.sides[i], tree.sides[1 - i]
    parts = terms(here)
    if 1 < len(parts) <= 6:
        for k, (sign, one) in enumerate(parts):
            rest = summed([p for j, p in enumerate(parts) if j != k])
            wrongly = Add(there, Group(one)) if sign > 0 else Subtract(there, Group(one))
            name = "sign-lost" if sign < 0 and letters_in(one) else "wrong-inverse"
            yield name, _two(tree, i, rest, wrongly)
            yield "one-side-only", _two(tree, i, rest, there)
    elif len(parts) == 1 and letters_in(here):
        sign, one = parts[0]
        rest = number(0)
        if len(terms(there)) > 1 or letters_in(there):
            wrongly = Add(there, Group(one)) if sign > 0 else Subtract(there, Group(one))
            yield "wrong-inverse", _two(tree, i, rest, wrongly)
    if len(parts) == 1:
        yield from _factor_undone(tree, i, parts[0], there)
    if len(parts) > 1:
        yield from _scaled_partly(tree, i, parts, there)


def _factor_undone(tree: Equation | Inequality, i: int, part: tuple[int, Tree], there: Tree) -> Faulty:
    _sign, term = part
    one = ungrouped(term)
    yield from _share_undone(tree, i, part, there)
    if isinstance(one, Divide) and letters_in(one.left) and not letters_in(one.right):
        yield "wrong-inverse", _two(tree, i, one.left, Divide(Group(there), Group(one.right)))
        yield "one-side-only", _two(tree, i, one.left, there)
        inner = ungrouped(one.left)
        if isinstance(inner, Multiply) and not letters_in(inner.left):
            share = Divide(Group(inner.left), Group(one.right))
            yield "reciprocal-not-taken", _two(tree, i, inner.right, multiplied(there, share))
    if isinstance(one, Divide) and letters_in(one.right) and not letters_in(one.left):
        yield "wrong-inverse", _two(tree, i, one.right, Divide(Group(there), Group(one.left)))
        yield "wrong-inverse", _two(tree, i, one.right, multiplied(there, one.left))
    if isinstance(one, Multiply):
        for k, rest in ((one.left, one.right), (one.right, one.left)):
            if letters_in(k) or not letters_in(rest):
                continue
            name = "reciprocal-not-taken" if isinstance(ungrouped(k), Divide) else "wrong-inverse"
            yield name, _two(tree, i, rest, multiplied(there, k))
            yield "wrong-inverse", _two(tree, i, rest, Subtract(there, Group(k)))
            yield "wrong-inverse", _two(tree, i, rest, Add(there, Group(k)))
            yield "one-side-only", _two(tree, i, rest, there)
            others = terms(there)
            for n, (sign, other) in enumerate(others if 1 < len(others) <= 6 else []):
                shared = [*others[:n], (sign, Divide(Group(other), Group(k))), *others[n + 1 :]]
                yield "first-term-only", _two(tree, i, rest, summed(shared))
            yield "operands-swapped", _two(tree, i, rest, Divide(Group(k), Group(there)))


def _share_undone(tree: Equation | Inequality, i: int, part: tuple[int, Tree], there: Tree) -> Faulty:
    """2x/3 = 8 as x = 8 · 2/3."""
    sign, term = part
    try:
        form = normal_form(term)
    except (Undefined, Beyond):
        return
    if len(form.top) == 1 and len(form.bottom) == 1:
        ((atoms, c),) = form.top.items()
        if len(atoms) == 1 and atoms[0][1] == 1 and len(atoms[0][0]) == 1:
            share = Fraction(sign * c)
            if share.denominator != 1 and share.numerator not in (1, -1):
                yield (
                    "reciprocal-not-taken",
                    _two(tree, i, Letter(atoms[0][0]), multiplied(there, number(share))),
                )


def _scaled_partly(tree: Equation | Inequality, i: int, parts: list[tuple[int, Tree]], there: Tree) -> Faulty:
    """Both sides divided or multiplied, but not every term: ax + b = c as x + b = c/a."""
    for k, (sign, one) in enumerate(parts):
        inside = ungrouped(one)
        others = [p for j, p in enumerate(parts) if j != k]
        if isinstance(inside, Multiply) and not letters_in(inside.left) and letters_in(inside.right):
            scaled = [(sign, inside.right), *others]
            yield "first-term-only", _two(tree, i, summed(scaled), Divide(Group(there), Group(inside.left)))
        if isinstance(inside, Divide) and not letters_in(inside.right) and letters_in(inside.left):
            scaled = [(sign, inside.left), *others]
            yield "first-term-only", _two(tree, i, summed(scaled), multiplied(there, inside.right))


def _undone_in_middle(tree: Equation | Inequality) -> Faulty:
    if len(tree.sides) != 3:
        return
    low, middle, high = tree.sides
    parts = terms(middle)
    if len(parts) < 2:
        return
    for k, (sign, one) in enumerate(parts):
        rest = summed([p for j, p in enumerate(parts) if j != k])
        moved_low = Subtract(low, Group(one)) if sign > 0 else Add(low, Group(one))
        moved_high = Subtract(high, Group(one)) if sign > 0 else Add(high, Group(one))
        yield "one-side-only", replace(tree, sides=(moved_low, rest, high))
        yield "one-side-only", replace(tree, sides=(low, rest, moved_high))
        yield "one-side-only", replace(tree, sides=(low, rest, high))
