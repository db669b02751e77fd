"""What probably happened between two lines of working."""

from __future__ import annotations

from fractions import Fraction

from bot.answers.faults import faulty, one_number_changed
from bot.answers.meaning import Roots, difference, meaning_of, value_of, where_true
from bot.answers.shapes import shown_places
from bot.answers.undoing import faulty_relations
from bot.answers.writing import ungrouped
from bot.maths import Tree, Undefined, Unreadable, letters_in
from bot.maths.algebra import (
    Interval,
    coefficients,
    proportional,
)
from bot.maths.exact import ONE, Beyond, normal_form, plus
from bot.maths.tree import (
    Add,
    Divide,
    Equation,
    Inequality,
    Multiply,
    Percent,
    Power,
    Root,
    Subtract,
    every,
)

# What happened ----------------------------------------------------------------------------------------------


def why_expression(before: Tree, after: Tree) -> str | None:
    """The misstep that turns one expression into the other, where one explains it."""
    try:
        target = normal_form(after)
    except (Undefined, Beyond):
        return None
    for name, tree in faulty(before):
        try:
            if normal_form(tree).same_as(target):
                return name
        except (Undefined, Beyond, ArithmeticError):
            continue
    if any(isinstance(node, Root) or _power_of_group(node) for node in every(before)):
        return None
    if _taken_out_of_one(before, after):
        return "first-term-only"
    if _as_decimal_digits(before, after):
        return "fraction-as-decimal"
    if one_number_changed(before, after):
        return "copied-wrong"
    if not letters_in(before):
        typed, right = target.rational(), value_of(before)
        if typed is None or right is None:
            return None
        if typed == -right != 0:
            return "sign-lost"
        return "point-misplaced" if _tens_off(before, typed, right) else "arithmetic"
    try:
        right_form = normal_form(before)
    except (Undefined, Beyond):
        return None
    if target.bottom is ONE and right_form.bottom is ONE and target.top.keys() == right_form.top.keys():
        off = [t for t in target.top if target.top[t] != right_form.top[t]]
        if len(off) == 1:
            return "sign-lost" if target.top[off[0]] == -right_form.top[off[0]] else "arithmetic"
    return None


def _power_of_group(node: Tree) -> bool:
    """`(3x)^2` or `(a + b)^2`: what goes wrong there is no slip of arithmetic."""
    return isinstance(node, Power) and isinstance(ungrouped(node.base), (Add, Subtract, Multiply))


def _taken_out_of_one(before: Tree, after: Tree) -> bool:
    """`6x + 9` as `3(2x + 9)`: the factor taken out of one term, the other left as it was."""
    after = ungrouped(after)
    if not isinstance(after, Multiply):
        return False
    try:
        whole = normal_form(before).top
        for factor, bracket in ((after.left, after.right), (after.right, after.left)):
            k = value_of(factor)
            if k is None or k in (0, 1) or not isinstance(ungrouped(bracket), (Add, Subtract)):
                continue
            inside = normal_form(bracket).top
            if inside.keys() == whole.keys() and all(whole[t] in (c, k * c) for t, c in inside.items()):
                return len({whole[t] == c for t, c in inside.items()}) == 2
    except (Undefined, Beyond):
        pass
    return False


def _tens_off(before: Tree, typed: Fraction, right: Fraction) -> bool:
    """The digits are right and the point is not, after a calculation with decimals."""
    if not right or typed / right not in (Fraction(1, 100), Fraction(1, 10), 10, 100):
        return False
    return any(isinstance(one, Percent) or (shown_places(one) or 0) > 0 for one in every(before))


def _as_decimal_digits(before: Tree, after: Tree) -> bool:
    """3/4 as 0.34 or 3.4."""
    before = ungrouped(before)
    if not isinstance(before, Divide) or shown_places(after) is None:
        return False
    top, bottom = value_of(before.left), value_of(before.right)
    typed = value_of(after)
    if top is None or bottom is None or typed is None or top.denominator != 1 or bottom.denominator != 1:
        return False
    return typed in (Fraction(f"{top}.{abs(bottom)}"), Fraction(f"0.{abs(top)}{abs(bottom)}"))


def why_relation(before: tuple[Tree, ...], after: tuple[Tree, ...]) -> str | None:
    """The misstep between two equations or inequalities, where one explains the change."""
    try:
        return _why_relation(before, after)
    except (Undefined, Beyond, ArithmeticError, Unreadable):
        return None


def _why_relation(before: tuple[Tree, ...], after: tuple[Tree, ...]) -> str | None:
    one, other = meaning_of(before), meaning_of(after)
    if one and other and isinstance(one[1], Roots) and isinstance(other[1], Roots):
        lost = one[1].values - other[1].values
        if other[1].values and other[1].values < one[1].values:
            return "divided-by-unknown" if lost == {0} else "root-lost"
    if len(before) != 1 or len(after) != 1:
        return None
    first, second = before[0], after[0]
    if isinstance(first, Inequality) and isinstance(second, Inequality):
        turned = _turned(first, second)
        if turned is not None:
            return turned
    if isinstance(first, Equation) and isinstance(second, Equation) and len(letters_in(first)) > 1:
        target = difference(second)
        for name, tree in faulty_relations(first):
            if isinstance(tree, Equation) and proportional(difference(tree), target):
                return name
        return None
    if other is None or other[1] == Roots(frozenset()):
        return None
    if one_number_changed(first, second):
        return "copied-wrong"
    negated = (
        one is not None
        and isinstance(one[1], Roots)
        and isinstance(other[1], Roots)
        and other[1].values == {-v for v in one[1].values}
    )
    found: str | None = None
    for name, tree in faulty_relations(first):
        try:
            meaning = meaning_of((tree,))
        except (Undefined, Beyond):
            continue
        if meaning is not None and meaning[1] == other[1]:
            found = name
            break
    if negated and found not in ("left-to-right", "minus-not-distributed", "first-term-only"):
        return "sign-lost"
    if found is not None:
        return found
    return "arithmetic" if _off_by_arithmetic(first, second, one, other) else None


def _turned(first: Inequality, second: Inequality) -> str | None:
    """The sign of order not turned, or turned without need."""
    if len(first.signs) != 1 or len(second.signs) != 1:
        return None
    one, other = where_true(first), where_true(second)
    if one is None or other is None:
        return None
    ends = {e for e in (one.low, one.high) if e is not None}
    if ends != {e for e in (other.low, other.high) if e is not None} or one == other:
        return None
    if (one.low is None) == (other.low is None):
        return None
    letter = next(iter(letters_in(first)))
    before, after = (_slope(tree, letter) for tree in (first, second))
    return "inequality-not-turned" if before * after < 0 else "inequality-turned-needlessly"


def _slope(tree: Inequality, letter: str) -> Fraction:
    left, right = normal_form(tree.sides[0]), normal_form(tree.sides[1])
    numbers = coefficients(plus(left.top, right.top, -1), letter) or []
    return numbers[1] if len(numbers) > 1 else Fraction(0)


def _off_by_arithmetic(
    first: Tree, second: Tree, one: tuple[str, Roots | Interval] | None, other: tuple[str, Roots | Interval]
) -> bool:
    """A solution close to the right one after a step that looks right: the calculation went wrong."""
    if one is None or not isinstance(one[1], Roots) or not isinstance(other[1], Roots):
        return False
    if len(one[1].values) != 1 or len(other[1].values) != 1 or not isinstance(second, Equation):
        return False
    right, typed = next(iter(one[1].values)), next(iter(other[1].values))
    return abs(right - typed) <= max(Fraction(2), abs(right) / 4)
