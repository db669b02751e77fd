"""What a statement in one letter means: its solutions."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from bot.answers.closeness import half_up
from bot.answers.shapes import shown_places
from bot.maths import Tree, Undefined, letters_in
from bot.maths.algebra import (
    EVERYTHING,
    Interval,
    coefficients,
    lifted,
    proportional,
    where,
    without_root,
)
from bot.maths.exact import Beyond, Sum, approximate, normal_form, plus, times
from bot.maths.tree import Equation, Inequality


@dataclass(frozen=True, slots=True)
class Roots:
    """The solutions of an equation in one letter: some fractions, or every number."""

    values: frozenset[Fraction]
    every: bool = False


# Meaning of a statement -----------------------------------------------------------------------------------


def difference(tree: Equation) -> Sum:
    left, right = normal_form(tree.sides[0]), normal_form(tree.sides[-1])
    return lifted(plus(times(left.top, right.bottom), times(right.top, left.bottom), -1))


def _roots(terms: Sum, letter: str) -> Roots | None:
    """The solutions of a sum in one letter set equal to 0; None where they are not all fractions."""
    numbers = coefficients(terms, letter)
    if numbers is None:
        return None
    if not numbers:
        return Roots(frozenset(), every=True)
    found: set[Fraction] = set()
    while len(numbers) > 2:
        root = _one_root(numbers)
        if root is None:
            if len(numbers) == 3 and numbers[1] ** 2 - 4 * numbers[0] * numbers[2] < 0:
                return Roots(frozenset(found))
            return None
        found.add(root)
        numbers, _ = without_root(numbers, root)
    if len(numbers) == 2:
        found.add(-numbers[0] / numbers[1])
    return Roots(frozenset(found))


def _one_root(numbers: list[Fraction]) -> Fraction | None:
    """A fraction at which the sum is 0, by the rational root rule; bounded."""
    if numbers[0] == 0:
        return Fraction(0)
    bottom = 1
    for c in numbers:
        bottom = bottom * c.denominator // _gcd(bottom, c.denominator)
    first, last = abs(int(numbers[0] * bottom)), abs(int(numbers[-1] * bottom))
    if first > 20_000 or last > 2_000:
        return None
    for p in _divisors(first):
        for q in _divisors(last):
            for root in (Fraction(p, q), Fraction(-p, q)):
                if sum(c * root**n for n, c in enumerate(numbers)) == 0:
                    return root
    return None


def _gcd(a: int, b: int) -> int:
    while b:
        a, b = b, a % b
    return a


def _divisors(n: int) -> list[int]:
    return [d for d in range(1, min(n, 20_000) + 1) if n % d == 0]


def where_true(tree: Inequality) -> Interval | None:
    letters = letters_in(tree)
    if len(letters) != 1:
        return None
    found = EVERYTHING
    forms = [normal_form(side) for side in tree.sides]
    for left, sign, right in zip(forms, tree.signs, forms[1:], strict=False):
        one = where(left, sign, right, next(iter(letters)))
        if one is None:
            return None
        found = found.and_also(one)
    return found


def meaning_of(trees: tuple[Tree, ...]) -> tuple[str, Roots | Interval] | None:
    """The letter and the solutions of statements in one letter; None where that can't be said."""
    if len(trees) == 1 and isinstance(trees[0], Inequality):
        interval = where_true(trees[0])
        return None if interval is None else (next(iter(letters_in(trees[0]))), interval)
    values: set[Fraction] = set()
    all_numbers = False
    letters: set[str] = set()
    for tree in trees:
        if not isinstance(tree, Equation):
            return None
        terms = difference(tree)
        own = {atom for term in terms for atom, _ in term} | letters_in(tree)
        letters |= own
        if len(letters) > 1:
            return None
        roots = _roots(terms, next(iter(own), "x"))
        if roots is None:
            return None
        values |= roots.values
        all_numbers = all_numbers or roots.every
    return next(iter(letters), "x"), Roots(frozenset(values), all_numbers)


def value_of(tree: Tree) -> Fraction | None:
    try:
        return normal_form(tree).rational()
    except (Undefined, Beyond):
        return None


def rounds_to(exact: Tree, rounded: Tree) -> bool:
    places = shown_places(rounded)
    if places is None:
        return False
    try:
        return half_up(approximate(normal_form(exact)), places) == value_of(rounded)
    except (Undefined, Beyond):
        return False


def same_solutions(before: tuple[Tree, ...], after: tuple[Tree, ...], nearly: bool) -> bool | None:
    """Whether two statements have the same solutions; None where that can't be decided."""
    one, other = meaning_of(before), meaning_of(after)
    if one is not None and other is not None:
        if isinstance(one[1], Roots) and isinstance(other[1], Roots):
            if one[0] != other[0] and letters_in(after[0]) and letters_in(before[0]):
                return None
            if nearly and len(one[1].values) == len(other[1].values) == 1:
                tree = after[0]
                if isinstance(tree, Equation) and shown_places(tree.sides[-1]) is not None:
                    places = shown_places(tree.sides[-1]) or 0
                    return half_up(next(iter(one[1].values)), places) == next(iter(other[1].values))
            return one[1] == other[1]
        return one[1] == other[1]
    if len(before) == len(after) == 1:
        first, second = before[0], after[0]
        if isinstance(first, Equation) and isinstance(second, Equation):
            d1, d2 = difference(first), difference(second)
            if proportional(d1, d2):
                return True
            linear = all(sum(n for _, n in term) <= 2 for term in (*d1, *d2))
            if one is None and other is not None and isinstance(other[1], Roots):
                letters = letters_in(first)
                if len(letters) == 1 and letters == letters_in(second):
                    return _root_by_root(d1, next(iter(letters)), other[1])
            return (
                False
                if linear and letters_in(first) == letters_in(second) and len(letters_in(first)) > 1
                else None
            )
    return None


def _root_by_root(terms: Sum, letter: str, roots: Roots) -> bool | None:
    """Solutions that are no fractions on one side: decided only where a root surely fails."""
    numbers = coefficients(terms, letter)
    if numbers is None:
        return None
    for root in roots.values:
        if sum(c * root**n for n, c in enumerate(numbers)) != 0:
            return False
    return None
