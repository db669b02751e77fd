"""How a number is written: whole, decimal, fraction, mixed, percent, scientific, or not worked out."""

from __future__ import annotations

import math

from bot.maths import Tree
from bot.maths.exact import normal_form
from bot.maths.tree import (
    Add,
    Call,
    Divide,
    Group,
    Mixed,
    Multiply,
    Negative,
    Number,
    Percent,
    Pi,
    Positive,
    Power,
    Root,
    Subtract,
    every,
)
from bot.maths.value import Undefined, value, whole_root

MOST_NODES = 40
"""A number that is worked out is written with far fewer parts."""

WORKED_OUT = frozenset(
    ("whole", "decimal", "repeating", "fraction", "mixed", "percent", "scientific", "irrational")
)


def bare(tree: Tree) -> Tree:
    """Without brackets around, one sign, and brackets inside the sign."""
    while isinstance(tree, Group):
        tree = tree.of
    if isinstance(tree, (Negative, Positive)):
        tree = tree.of
        while isinstance(tree, Group):
            tree = tree.of
    return tree


def shape(tree: Tree) -> str:
    """One of WORKED_OUT, or "unworked" where an operation is left to do."""
    if type(tree) is Number:
        return _shape(tree)
    for n, _ in enumerate(every(tree)):
        if n > MOST_NODES:
            return "unworked"
    return _shape(tree)


def _shape(tree: Tree) -> str:
    tree = bare(tree)
    match tree:
        case Number(places=places, repeats=repeats):
            return "repeating" if repeats else "decimal" if places else "whole"
        case Mixed(bottom=bottom):
            return "mixed" if bottom else "unworked"
        case Divide(left=left, right=right, bar=True):
            return _bar(left, right)
        case Percent(of=inner):
            return (
                "percent"
                if _shape(inner) in ("whole", "decimal", "repeating", "fraction", "mixed")
                else "unworked"
            )
        case Multiply():
            if scientific(tree) is not None:
                return "scientific"
            return "irrational" if _irrational_product(tree) else "unworked"
        case Pi():
            return "irrational"
        case Root(of=inner, degree=degree):
            return "irrational" if _stays_a_root(inner, degree) else "unworked"
        case Call(name="sqrt", parts=(inner,)):
            return "irrational" if _stays_a_root(inner, 2) else "unworked"
        case Power(base=Pi(), exponent=Number()):
            return "irrational"
        case Add(left=left, right=right) | Subtract(left=left, right=right):
            return "irrational" if _irrational_sum(left, right, tree) else "unworked"
    return "unworked"


def _bar(left: Tree, right: Tree) -> str:
    top, bottom = bare(left), bare(right)
    if isinstance(top, Number) and isinstance(bottom, Number):
        if top.places or bottom.places or not bottom.value:
            return "unworked"
        return "unworked" if (top.value / bottom.value).denominator == 1 else "fraction"
    whole_top = isinstance(top, Number) and not top.places
    whole_bottom = isinstance(bottom, Number) and not bottom.places
    above = whole_top or _shape(left) == "irrational"
    below = above and (whole_bottom or _shape(right) == "irrational")
    return "irrational" if below else "unworked"


def _irrational_product(tree: Multiply) -> bool:
    """25π, 2√3, 4/3 π, π/4 · √2: at most one plain number, the rest roots and π."""
    numbers = 0
    waiting: list[Tree] = [tree]
    roots = 0
    while waiting:
        one = bare(waiting.pop())
        if isinstance(one, Multiply):
            waiting += [one.left, one.right]
            continue
        written = "whole" if isinstance(one, Number) else _shape(one)
        if written in ("whole", "fraction", "mixed"):
            numbers += 1
        elif written != "irrational":
            return False
        roots += isinstance(one, Root)
    return numbers <= 1 and roots <= 1


def _irrational_sum(left: Tree, right: Tree, tree: Tree) -> bool:
    """1 + √2: two terms that cannot be joined."""
    if _shape(left) not in WORKED_OUT or _shape(right) not in WORKED_OUT:
        return False
    try:
        return len(normal_form(tree).top) == 2 and not isinstance(right, Negative)
    except (Undefined, ArithmeticError):
        return False


def _stays_a_root(inner: Tree, degree: int) -> bool:
    try:
        n = value(inner)
    except Undefined:
        return isinstance(bare(inner), Pi)
    if n < 0 or not isinstance(bare(inner), (Number, Divide)):
        return False
    return whole_root(n.numerator, degree) is None or whole_root(n.denominator, degree) is None


def scientific(tree: Tree) -> tuple[Number, int] | None:
    """The first number and the power of ten of `3.2 × 10^5`, whichever stands first."""
    tree = bare(tree)
    if not isinstance(tree, Multiply):
        return None
    for first, power in ((tree.left, tree.right), (tree.right, tree.left)):
        number, ten = bare(first), power
        while isinstance(ten, Group):
            ten = ten.of
        if isinstance(number, Number) and isinstance(ten, Power) and isinstance(ten.base, Number):
            if ten.base.value != 10 or ten.base.places:
                continue
            exponent = ten.exponent
            above = bare(exponent)
            if isinstance(above, Number) and not above.places:
                sign = -1 if _negative(exponent) else 1
                return number, sign * int(above.value)
    return None


def _negative(tree: Tree) -> bool:
    while isinstance(tree, Group):
        tree = tree.of
    return isinstance(tree, Negative)


def lowest_terms(tree: Tree) -> bool:
    """Whether a fraction is in lowest terms with its sign on top or in front."""
    tree = bare(tree)
    if not isinstance(tree, Divide):
        return False
    if isinstance(bare(tree.right), Number) and isinstance(bare(tree.left), Number):
        if _negative(tree.right) or not isinstance(bare(tree.right), Number):
            return False
        top, bottom = bare(tree.left), bare(tree.right)
        assert isinstance(top, Number) and isinstance(bottom, Number)
        return math.gcd(int(top.value), int(bottom.value)) == 1
    return False


def proper_lowest(tree: Tree) -> bool:
    """Whether a mixed number's fraction is proper and in lowest terms."""
    tree = bare(tree)
    return isinstance(tree, Mixed) and 0 < tree.top < tree.bottom and math.gcd(tree.top, tree.bottom) == 1


def shown_places(tree: Tree) -> int | None:
    """Places after the point that a decimal shows; a percent counts as its decimal. None for other shapes."""
    tree = bare(tree)
    if isinstance(tree, Percent):
        places = shown_places(tree.of)
        return None if places is None else places + 2
    if isinstance(tree, Number) and not tree.repeats:
        return tree.places
    return None
