"""What comes out when one step of an expression or equation goes wrong in a known way.

Each function yields (name of the misstep, tree): the tree as it would stand after that one faulty step.
The most telling missteps come first; whoever matches takes the first name that explains what was written.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import fields, replace
from fractions import Fraction
from typing import Any

from bot.answers.faults_of_letters import sign_of_one, unlike_terms, wrong_powers
from bot.answers.parts import MOST_NODES, Faulty, as_fraction, mixed_in, multiplied, number_in, summed, terms
from bot.answers.shapes import bare
from bot.answers.writing import ungrouped
from bot.maths import Tree, letters_in, number
from bot.maths.tree import (
    Add,
    Divide,
    Group,
    Letter,
    Mixed,
    Multiply,
    Negative,
    Number,
    Percent,
    Power,
    Root,
    Subtract,
    every,
)


def faulty(tree: Tree) -> Faulty:
    """The expression with one faulty step anywhere in it."""
    if sum(1 for _ in every(tree)) > MOST_NODES:
        return
    for rule in _RULES:
        yield from _anywhere(tree, rule)


def _anywhere(tree: Tree, rule: Callable[[Tree], Faulty]) -> Faulty:
    yield from rule(tree)
    for field in fields(tree):
        part: Any = getattr(tree, field.name)
        if isinstance(part, tuple):
            continue
        if hasattr(part, "__dataclass_fields__"):
            for name, changed in _anywhere(part, rule):
                yield name, replace(tree, **{field.name: changed})  # type: ignore[arg-type]


# Rules, each looking at one place --------------------------------------------------------------------------


def _straight_across(tree: Tree) -> Faulty:
    """a/b + c/d as (a + c)/(b + d), also beside the whole parts of mixed numbers."""
    if not isinstance(tree, (Add, Subtract)):
        return
    join = type(tree)
    one, other = as_fraction(tree.left), as_fraction(tree.right)
    if one and other:
        yield (
            "added-across",
            Divide(Group(join(one[0], Group(other[0]))), Group(join(one[1], Group(other[1])))),
        )
        if join is Subtract:
            bottoms = [number_in(one[1]), number_in(other[1])]
            if bottoms[0] is not None and bottoms[1] is not None:
                yield (
                    "added-across",
                    Divide(
                        Group(Subtract(one[0], Group(other[0]))), Group(number(abs(bottoms[0] - bottoms[1])))
                    ),
                )
        return
    left, right = ungrouped(tree.left), ungrouped(tree.right)
    if isinstance(left, Mixed) and isinstance(right, Mixed):
        sign = 1 if join is Add else -1
        bottom = left.bottom + right.bottom if join is Add else abs(left.bottom - right.bottom)
        if bottom and left.bottom and right.bottom:
            total = left.whole + sign * right.whole + Fraction(left.top + sign * right.top, bottom)
            yield "added-across", number(total)


def _tops_kept(tree: Tree) -> Faulty:
    """Bottoms made alike, tops left as they were."""
    if not isinstance(tree, (Add, Subtract)):
        return
    one, other = as_fraction(tree.left), as_fraction(tree.right)
    if not one or not other:
        return
    bottoms = number_in(one[1]), number_in(other[1])
    if (
        bottoms[0] is None
        or bottoms[1] is None
        or any(b is None or b.denominator != 1 or not b for b in bottoms)
    ):
        return
    common = number(math.lcm(int(bottoms[0]), int(bottoms[1])))
    yield "top-not-scaled", Divide(Group(type(tree)(one[0], Group(other[0]))), common)


def _first_only(tree: Tree) -> Faulty:
    """k(a + b) as ka + b; (a + b)/k as a/k + b; (a + b)(c + d) as ac + bd."""
    if isinstance(tree, Multiply):
        for k, bracket in ((tree.left, tree.right), (tree.right, tree.left)):
            inside = ungrouped(bracket)
            if isinstance(inside, (Add, Subtract)):
                parts = terms(inside)
                other = ungrouped(k)
                if isinstance(other, (Add, Subtract)):
                    others = terms(other)
                    if len(parts) == len(others) == 2:
                        yield (
                            "first-term-only",
                            summed(
                                [
                                    (s1 * s2, multiplied(t1, t2))
                                    for (s1, t1), (s2, t2) in zip(parts, others, strict=True)
                                ]
                            ),
                        )
                    continue
                first, *rest = parts
                yield "first-term-only", summed([(first[0], multiplied(k, first[1])), *rest])
                if len(parts) == 2:
                    yield "last-term-only", summed([first, (rest[0][0], multiplied(k, rest[0][1]))])
            mixed = mixed_in(bracket)
            if mixed and mixed[1] and mixed_in(k) and not mixed_in(k)[1]:  # type: ignore[index]
                whole = mixed_in(k)[0]  # type: ignore[index]
                yield "first-term-only", number(whole * mixed[0] + mixed[1])
        left, right = mixed_in(tree.left), mixed_in(tree.right)
        if left and right and left[1] and right[1]:  # whole by whole, part by part
            yield "first-term-only", number(left[0] * right[0] + left[1] * right[1])
    if isinstance(tree, Divide):
        inside = ungrouped(tree.left)
        if isinstance(inside, (Add, Subtract)):
            first, *rest = terms(inside)
            yield "first-term-only", summed([(first[0], Divide(Group(first[1]), Group(tree.right))), *rest])


def _minus_bracket(tree: Tree) -> Faulty:
    """a − (b + c) as a − b + c; a − k(b + c) as a − kb + kc with the sign of the later terms kept."""
    if not isinstance(tree, Subtract):
        return
    right = tree.right
    k: Tree | None = None
    inside = ungrouped(right)
    if isinstance(right, Multiply) or isinstance(inside, Multiply):
        product = inside if isinstance(inside, Multiply) else right
        assert isinstance(product, Multiply)
        for factor, bracket in ((product.left, product.right), (product.right, product.left)):
            if isinstance(ungrouped(bracket), (Add, Subtract)):
                k, inside = factor, ungrouped(bracket)
                break
    if isinstance(inside, (Add, Subtract)):
        first, *rest = terms(inside)

        def scaled(one: Tree) -> Tree:
            return one if k is None else multiplied(k, one)

        parts = [(1, tree.left), (-first[0], scaled(first[1])), *[(s, scaled(t)) for s, t in rest]]
        yield "minus-not-distributed", summed(parts)


def _minus_minus(tree: Tree) -> Faulty:
    """a − (−b) as a − b; −(−a) as −a."""
    if isinstance(tree, Subtract) and isinstance(ungrouped(tree.right), Negative):
        inner = ungrouped(tree.right)
        assert isinstance(inner, Negative)
        yield "sign-lost", Subtract(tree.left, Group(inner.of))
    if isinstance(tree, Add) and isinstance(ungrouped(tree.right), Negative):
        inner = ungrouped(tree.right)
        assert isinstance(inner, Negative)
        yield "sign-lost", Add(tree.left, Group(inner.of))


def _left_to_right(tree: Tree) -> Faulty:
    """a + b × c as (a + b) × c; 2 × 3² as (2 × 3)²."""
    if isinstance(tree, (Add, Subtract)) and isinstance(tree.right, (Multiply, Divide)):
        right = tree.right
        if letters_in(right) and not isinstance(ungrouped(right.right), (Add, Subtract)):
            return  # 5 - 2x as 3x: unlike terms combined
        yield "left-to-right", type(right)(Group(type(tree)(tree.left, right.left)), Group(right.right))
    if isinstance(tree, (Add, Subtract)) and isinstance(tree.right, Power) and not letters_in(tree):
        power = tree.right
        yield "left-to-right", Power(Group(type(tree)(tree.left, power.base)), power.exponent)
    if isinstance(tree, Multiply) and isinstance(tree.right, Power):
        yield "left-to-right", Power(Group(Multiply(tree.left, tree.right.base)), tree.right.exponent)
    if isinstance(tree, Divide) and isinstance(tree.left, (Add, Subtract)):
        return
    if isinstance(tree, (Multiply, Divide)) and isinstance(tree.left, Group):
        inside = tree.left.of
        if isinstance(inside, (Add, Subtract)) and not letters_in(tree) and not tree_is_bar(tree):
            yield "bracket-ignored", type(inside)(inside.left, type(tree)(inside.right, tree.right))


def tree_is_bar(tree: Tree) -> bool:
    """Whether a quotient was written with a fraction bar."""
    return isinstance(tree, Divide) and tree.bar


def _squares(tree: Tree) -> Faulty:
    """(−3)² as −9; −3² as 9."""
    if isinstance(tree, Power) and isinstance(ungrouped(tree.base), Negative):
        inner = ungrouped(tree.base)
        assert isinstance(inner, Negative)
        yield "minus-squared", Negative(Power(Group(inner.of), tree.exponent))
    if isinstance(tree, Negative) and isinstance(tree.of, Power):
        yield "minus-squared", Power(Group(Negative(tree.of.base)), tree.of.exponent)


def _turning(tree: Tree) -> Faulty:
    """Division by a fraction: the reciprocal not taken, or taken of the wrong one."""
    if not isinstance(tree, Divide):
        return
    right = ungrouped(tree.right)
    is_fraction = isinstance(right, (Divide, Mixed)) or (
        isinstance(right, Number) and right.places == 0 and not tree.bar
    )
    if is_fraction and not (isinstance(right, Number) and not as_fraction(tree.left)):
        yield "reciprocal-not-taken", multiplied(tree.left, tree.right)
        yield "wrong-one-inverted", multiplied(Divide(Number(Fraction(1)), Group(tree.left)), tree.right)
        yield (
            "both-turned-over",
            multiplied(
                Divide(Number(Fraction(1)), Group(tree.left)), Divide(Number(Fraction(1)), Group(tree.right))
            ),
        )


def _swapped(tree: Tree) -> Faulty:
    if isinstance(tree, (Subtract, Divide)):
        yield "operands-swapped", type(tree)(Group(tree.right), Group(tree.left))


def _percents(tree: Tree) -> Faulty:
    """15% of 80 as 15 × 80; 40 increased by 10% as 40 + 10; the part given for the rest."""
    if isinstance(tree, Percent):
        yield "percent-as-number", Group(tree.of)
        yield "point-misplaced", Divide(Group(tree.of), number(10))
        yield "point-misplaced", Divide(Group(tree.of), number(1000))
    if isinstance(tree, Multiply):
        for share, whole in ((tree.left, tree.right), (tree.right, tree.left)):
            inside = ungrouped(share)
            if isinstance(inside, Percent):
                yield "part-for-rest", Subtract(whole, Group(tree))
            if isinstance(inside, (Add, Subtract)) and isinstance(ungrouped(inside.right), Percent):
                percent = ungrouped(inside.right)
                assert isinstance(percent, Percent)
                yield "percent-as-number", type(inside)(whole, Group(percent.of))
                yield "part-for-rest", multiplied(percent, whole)


def _roots(tree: Tree) -> Faulty:
    if isinstance(tree, Root) and tree.degree == 2:
        yield "half-for-root", Divide(Group(tree.of), number(2))


def _mixed_misread(tree: Tree) -> Faulty:
    if isinstance(tree, Mixed) and tree.bottom:
        yield "mixed-number-misread", number(Fraction(tree.whole * tree.top, tree.bottom))
        yield "whole-part-lost", number(Fraction(tree.top, tree.bottom))


_RULES: tuple[Callable[[Tree], Faulty], ...] = (
    _straight_across,
    _tops_kept,
    _first_only,
    _minus_bracket,
    _minus_minus,
    _left_to_right,
    _squares,
    wrong_powers,
    _turning,
    _percents,
    unlike_terms,
    sign_of_one,
    _swapped,
    _roots,
    _mixed_misread,
)


def one_number_changed(one: Tree, other: Tree) -> bool:
    """Whether two trees differ in exactly one number as written."""
    first, second = list(every(one)), list(every(other))
    if len(first) != len(second):
        return False
    changed = 0
    for a, b in zip(first, second, strict=True):
        if type(a) is not type(b):
            return False
        if isinstance(a, Number) and isinstance(b, Number):
            changed += a.value != b.value
        elif isinstance(a, Letter) and a != b:
            return False
    return changed == 1


def first_number(tree: Tree) -> Fraction | None:
    """The number that an expression begins with."""
    while True:
        tree = bare(tree)
        match tree:
            case Number(value=n):
                return n
            case Add(left=left) | Subtract(left=left) | Multiply(left=left) | Divide(left=left):
                tree = left
            case Power(base=base):
                tree = base
            case Percent(of=inner):
                tree = inner
            case _:
                return None
