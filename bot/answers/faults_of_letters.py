"""Faulty steps with powers, and with terms that are not alike or have signs."""

from __future__ import annotations

from fractions import Fraction

from bot.answers.parts import Faulty, multiplied, number_in, summed, terms
from bot.answers.writing import ungrouped
from bot.maths import Tree, number
from bot.maths.exact import Beyond, normal_form
from bot.maths.tree import (
    Add,
    Divide,
    Group,
    Letter,
    Multiply,
    Negative,
    Number,
    Power,
    Subtract,
)
from bot.maths.value import Undefined


def wrong_powers(tree: Tree) -> Faulty:
    """Exponents multiplied, added or taken as factors."""
    if isinstance(tree, Multiply):
        one, other = _power_of(tree.left), _power_of(tree.right)
        if one and other and one[0] == other[0]:
            yield "exponent-multiplied", Power(Group(one[0]), Group(number(one[1] * other[1])))
            if isinstance(ungrouped(one[0]), Number):
                yield (
                    "base-multiplied",
                    Power(Group(multiplied(one[0], other[0])), Group(number(one[1] + other[1]))),
                )
    if isinstance(tree, Divide):
        one, other = _power_of(tree.left), _power_of(tree.right)
        if one and other and one[0] == other[0] and one[1] % other[1] == 0 and other[1] > 1:
            yield "exponent-multiplied", Power(Group(one[0]), Group(number(one[1] / other[1])))
    if isinstance(tree, (Add, Subtract)):
        one, other = _power_of(tree.left), _power_of(tree.right)
        if one and other and one[0] == other[0]:
            yield "exponents-added", Power(Group(one[0]), Group(number(one[1] + other[1])))
    if isinstance(tree, Power):
        inner = _power_of(tree.base)
        above = number_in(tree.exponent)
        if inner and inner[1] != 1 and above is not None:
            yield "exponents-added", Power(Group(inner[0]), Group(number(inner[1] + above)))
        if above is not None and above > 1:
            yield "exponent-as-product", multiplied(tree.base, tree.exponent)


def _power_of(tree: Tree) -> tuple[Tree, Fraction] | None:
    tree = ungrouped(tree)
    if isinstance(tree, Power):
        n = number_in(tree.exponent)
        return (ungrouped(tree.base), n) if n is not None and abs(n) < 100 else None
    if isinstance(tree, Letter):
        return tree, Fraction(1)
    return None


def unlike_terms(tree: Tree) -> Faulty:
    """ax + b as (a + b)x; 4a + 3b as 7ab."""
    if not isinstance(tree, (Add, Subtract)):
        return
    parts = terms(tree)
    if len(parts) < 2 or len(parts) > 8:
        return
    for i in range(len(parts)):
        for j in range(i + 1, len(parts)):
            joined = _joined_unlike(parts[i], parts[j])
            for one in joined:
                yield (
                    "unlike-terms-combined",
                    summed([(1, one), *[p for k, p in enumerate(parts) if k not in (i, j)]]),
                )


def _joined_unlike(one: tuple[int, Tree], other: tuple[int, Tree]) -> list[Tree]:
    try:
        first, second = normal_form(one[1]), normal_form(other[1])
    except (Undefined, Beyond):
        return []
    found: list[Tree] = []
    if isinstance(ungrouped(other[1]), Multiply) and len(second.top) > 1:
        found += _into_bracket(one, other)
    if len(first.top) != 1 or len(second.top) != 1:
        return found
    ((t1, c1),) = first.top.items()
    ((t2, c2),) = second.top.items()
    if t1 == t2:
        return found
    total = number(Fraction(one[0] * c1 + other[0] * c2))
    letters = [Power(Letter(a), number(Fraction(n))) for t in (t1, t2) for a, n in t if len(a) == 1]
    tree: Tree = total
    for letter in letters:
        tree = multiplied(tree, letter)
    found.append(tree)
    return found


def _into_bracket(one: tuple[int, Tree], other: tuple[int, Tree]) -> list[Tree]:
    """5n + 2(n − 1) as 7n(n − 1)."""
    product = ungrouped(other[1])
    if not isinstance(product, Multiply):
        return []
    k, bracket = product.left, product.right
    try:
        first, second = normal_form(one[1]), normal_form(k)
    except (Undefined, Beyond):
        return []
    c1 = next(iter(first.top.values()), 0)
    c2 = next(iter(second.top.values()), 0)
    term = next(iter(first.top), ())
    tree = number(Fraction(one[0] * c1 + other[0] * c2))
    for a, n in term:
        if len(a) == 1:
            tree = multiplied(tree, Power(Letter(a), number(Fraction(n))))
    return [multiplied(tree, bracket)]


def sign_of_one(tree: Tree) -> Faulty:
    """One term of a sum with its sign turned."""
    if isinstance(tree, (Add, Subtract)):
        parts = terms(tree)
        if len(parts) <= 8:
            for i, (sign, one) in enumerate(parts):
                yield "sign-lost", summed([*parts[:i], (-sign, one), *parts[i + 1 :]])
    elif isinstance(tree, Negative) and not isinstance(tree.of, Power):
        yield "sign-lost", Group(tree.of)
