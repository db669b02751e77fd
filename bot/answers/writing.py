"""How an expression is written: terms, factors, brackets left, coefficients worked out."""

from __future__ import annotations

import math
from fractions import Fraction

from bot.answers.shapes import bare, shape
from bot.maths import Tree
from bot.maths.exact import Beyond, Quotient, normal_form
from bot.maths.tree import (
    Add,
    Call,
    Divide,
    Group,
    Letter,
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
from bot.maths.value import Undefined


def ungrouped(tree: Tree) -> Tree:
    """Without brackets around the whole."""
    while isinstance(tree, Group):
        tree = tree.of
    return tree


def terms_of(tree: Tree) -> tuple[list[Tree], str]:
    """The terms of a sum, and a reason where its signs or brackets are not cleared."""
    found: list[Tree] = []
    reason = ""
    waiting: list[tuple[Tree, bool]] = [(ungrouped(tree), False)]
    while waiting:
        one, inside = waiting.pop()
        match one:
            case Add(left=left, right=right):
                waiting += [(right, True), (left, inside)]
            case Subtract(left=left, right=right):
                if isinstance(ungrouped(right), (Negative, Positive)):
                    reason = "signs"
                waiting += [(right, True), (left, inside)]
            case Negative(of=inner) | Positive(of=inner):
                if isinstance(ungrouped(inner), (Negative, Positive)):
                    reason = "signs"
                waiting.append((inner, inside))
            case Group(of=inner):
                if isinstance(ungrouped(inner), (Add, Subtract)) or (
                    isinstance(ungrouped(inner), Negative) and not inside
                ):
                    reason = reason or "brackets"
                waiting.append((inner, inside))
            case _:
                found.append(one)
    return found, reason


def simplified(tree: Tree, powers_of_numbers: bool) -> str:
    """What is left to do in an expression that should be simplified; "" if nothing.

    `powers_of_numbers` where the expected answer keeps one, as 3^5.
    """
    terms, reason = terms_of(tree)
    if reason:
        return reason
    seen = set()
    for term in terms:
        left = _term(term, powers_of_numbers)
        if left:
            return left
        try:
            form = normal_form(term)
        except (Beyond, Undefined):
            return ""
        if not form.top:
            return "like-terms" if len(terms) > 1 else ""
        if len(form.top) == 1 and len(form.bottom) == 1:
            kind = next(iter(form.top))
            if kind in seen:
                return "like-terms"
            seen.add(kind)
    if powers_of_numbers and not any(
        isinstance(one, Power) and isinstance(one.base, Number) for one in every(tree)
    ):
        return "power"
    return ""


class _Factors:
    """The factors of one term: numbers above and below, letters with how often they stand there."""

    def __init__(self) -> None:
        self.above: list[Fraction] = []
        self.below: list[Fraction] = []
        self.letters: dict[str, int] = {}
        self.sums = 0
        self.decimals = False
        self.reason = ""

    def take(self, tree: Tree, above: bool, powers: bool) -> None:
        match tree:
            case Group(of=inner):
                if isinstance(inner, (Negative, Positive)) and not isinstance(ungrouped(inner.of), Number):
                    self.reason = self.reason or "signs"
                self.take(inner, above, powers)
            case Multiply(left=left, right=right):
                self.take(left, above, powers)
                self.take(right, above, powers)
            case Divide(left=left, right=right):
                self.take(left, above, powers)
                self.take(right, not above, powers)
            case Negative(of=inner) | Positive(of=inner):
                self.take(inner, above, powers)
            case Number(value=number, places=places):
                self.decimals = self.decimals or bool(places)
                (self.above if above else self.below).append(number)
            case Mixed(whole=whole, top=top, bottom=bottom):
                self.decimals = True
                self.above.append(whole + Fraction(top, bottom or 1))
            case Percent():
                self.decimals = True
                self.above.append(Fraction(1, 3))
            case Letter(name=name):
                self.letters[name] = self.letters.get(name, 0) + 1
            case Pi():
                self.letters["π"] = self.letters.get("π", 0) + 1
            case Power(base=base, exponent=exponent):
                self.power(ungrouped(base), ungrouped(exponent), powers)
            case Root() | Call():
                if shape(tree) == "unworked" and not any(isinstance(one, Letter) for one in every(tree)):
                    self.reason = self.reason or "work-out"
                self.letters["√"] = self.letters.get("√", 0) + 1
            case Add() | Subtract():
                self.sums += 1

    def power(self, base: Tree, exponent: Tree, powers: bool) -> None:
        if (
            isinstance(exponent, Negative)
            or (
                not isinstance(exponent, (Number, Letter))
                and not any(isinstance(o, Letter) for o in every(exponent))
            )
            or (isinstance(exponent, Number) and exponent.value == 1)
        ):
            self.reason = self.reason or "exponent"
        if isinstance(base, Letter):
            self.letters[base.name] = self.letters.get(base.name, 0) + 1
        elif isinstance(base, Pi):
            self.letters["π"] = self.letters.get("π", 0) + 1
        elif isinstance(base, Number):
            if isinstance(exponent, Number) and not powers:
                self.reason = self.reason or "coefficient"
            name = f"^{base.value}"
            self.letters[name] = self.letters.get(name, 0) + 1
        elif isinstance(base, (Add, Subtract)):
            self.sums += 1
        else:
            self.reason = self.reason or "brackets"


def _term(tree: Tree, powers: bool) -> str:
    factors = _Factors()
    factors.take(tree, True, powers)
    if factors.reason:
        return factors.reason
    others = bool(factors.letters) or factors.sums > 0
    if any(f"^{n}" in factors.letters for n in factors.above):
        return "like-terms"
    if factors.sums and not _sum_below_only(tree):
        return "brackets"
    if any(count > 1 for count in factors.letters.values()):
        return "like-terms"
    if len(factors.above) > 1 or len(factors.below) > 1:
        if len(factors.above) == 2 and factors.above[0] == 1 and factors.below:
            return "coefficient"
        return "coefficient"
    above = factors.above[0] if factors.above else None
    below = factors.below[0] if factors.below else None
    if below is not None and (below == 1 or below == 0):
        return "coefficient"
    if above == 1 and others and below is None and _stands_above(tree):
        return "coefficient"
    if above is not None and below is not None:
        if above.denominator != 1 or below.denominator != 1:
            return "coefficient"
        if math.gcd(above.numerator, below.numerator) != 1:
            return "coefficient"
    return ""


def _stands_above(tree: Tree) -> bool:
    """Whether the 1 of a term stands beside letters above, as in 1x; in 1/x it has to stand there."""
    tree = ungrouped(tree)
    if isinstance(tree, Divide):
        return not isinstance(ungrouped(tree.left), Number)
    if isinstance(tree, Multiply):
        for side in (tree.left, tree.right):
            side = ungrouped(side)
            if isinstance(side, Divide) and isinstance(ungrouped(side.left), Number):
                return False
    return True


def _sum_below_only(tree: Tree) -> bool:
    """A sum in brackets that only stands below the bar cannot be multiplied out."""
    tree = ungrouped(tree)
    if isinstance(tree, (Negative, Positive)):
        return _sum_below_only(tree.of)
    if isinstance(tree, Divide):
        above = sum(isinstance(one, (Add, Subtract)) for one in every(tree.left))
        form = normal_form(tree)
        return (above == 0 or isinstance(ungrouped(tree.left), (Add, Subtract))) and len(form.bottom) > 1
    return False


# The same writing up to order and signs of multiplication ---------------------------------------------------


def writing(tree: Tree) -> object:
    """A key that is equal for two writings that differ only in order, spaces, brackets and times signs."""
    tree = ungrouped(tree)
    match tree:
        case Add() | Subtract() | Negative() | Positive():
            found: list[tuple[int, object]] = []
            waiting: list[tuple[Tree, int]] = [(tree, 1)]
            while waiting:
                one, sign = waiting.pop()
                one = one if not isinstance(one, Group) or isinstance(one.of, (Add, Subtract)) else one.of
                match one:
                    case Add(left=left, right=right):
                        waiting += [(left, sign), (right, sign)]
                    case Subtract(left=left, right=right):
                        waiting += [(left, sign), (right, -sign)]
                    case Negative(of=inner):
                        waiting.append((inner, -sign))
                    case Positive(of=inner):
                        waiting.append((inner, sign))
                    case _:
                        found.append((sign, writing(one)))
            return ("sum", tuple(sorted(found, key=repr)))
        case Multiply() | Divide() | Power():
            above: list[object] = []
            below: list[object] = []
            _factors(tree, above, below)
            return ("product", tuple(sorted(above, key=repr)), tuple(sorted(below, key=repr)))
        case Number(value=number):
            return ("number", number)
        case Mixed(whole=whole, top=top, bottom=bottom):
            return ("mixed", whole, top, bottom)
        case Letter(name=name):
            return ("letter", name)
        case Pi():
            return ("letter", "π")
        case Root(of=inner, degree=degree):
            return ("root", degree, writing(inner))
        case Percent(of=inner):
            return ("percent", writing(inner))
        case Call(name=name, parts=parts):
            return (name, tuple(writing(part) for part in parts))
    return repr(tree)


def _factors(tree: Tree, above: list[object], below: list[object]) -> None:
    if isinstance(tree, Group) and not isinstance(ungrouped(tree), (Add, Subtract, Negative)):
        tree = ungrouped(tree)
    match tree:
        case Multiply(left=left, right=right):
            _factors(left, above, below)
            _factors(right, above, below)
        case Divide(left=left, right=right):
            _factors(left, above, below)
            _factors(right, below, above)
        case Power(base=base, exponent=exponent):
            above.append(("power", writing(base), writing(exponent)))
        case Number(value=number) if number == 1:
            pass
        case _:
            above.append(writing(tree))


# Factored ------------------------------------------------------------------------------------------------


def factors_of(tree: Tree) -> list[Tree] | None:
    """The factors of a product, powers written out; None if it is no product or something stands below a bar."""
    tree = ungrouped(tree)
    if isinstance(tree, (Negative, Positive)):
        inner = factors_of(tree.of)
        return (
            None
            if inner is None
            else [Negative(Number(Fraction(1))), *inner]
            if isinstance(tree, Negative)
            else inner
        )
    found: list[Tree] = []
    waiting: list[Tree] = [tree]
    while waiting:
        one = ungrouped(waiting.pop())
        match one:
            case Multiply(left=left, right=right):
                waiting += [left, right]
            case Power(base=base, exponent=Number(value=n)) if n.denominator == 1 and 0 < n <= 30:
                waiting += [base] * int(n)
            case Divide():
                return None
            case _:
                found.append(one)
        if len(found) > 60:
            return None
    return found


def content(form: Quotient) -> tuple[Fraction, bool]:
    """The greatest number that divides all terms, and whether a letter divides them all."""
    top = 0
    bottom = 1
    common: dict[str, Fraction] | None = None
    for term, c in form.top.items():
        c = Fraction(c)
        top = math.gcd(top, c.numerator)
        bottom = math.lcm(bottom, c.denominator)
        powers = {atom: Fraction(n) for atom, n in term}
        if common is None:
            common = powers
        else:
            common = {atom: min(n, powers[atom]) for atom, n in common.items() if atom in powers}
    return Fraction(top, bottom), any(n > 0 for n in (common or {}).values())


def is_plain_number(tree: Tree) -> bool:
    """Whether a factor is a number as written."""
    return isinstance(bare(tree), Number)
