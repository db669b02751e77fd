"""What every writing of a tree shares: the order of things, brackets, and tidying as a teacher does."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

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
    ending_places,
)
from bot.maths.value import SHOWN_AS, Undefined, value

# How tightly a thing holds together; a part that holds less tightly than its place asks gets brackets.
SUM, PRODUCT, SIGNED, RUN, BAR, POWER, ATOM = range(7)
ONE = Number(Fraction(1))
_WORKED_OUT = SHOWN_AS | {"gcd", "lcm", "mean", "median", "range", "count"}


@dataclass(frozen=True, slots=True)
class Shown:
    text: str
    holds: int


def plain_number(number: Fraction | int) -> str:
    """A number as a teacher writes it: whole, or as a fraction with a bar; the minus sign is a real one."""
    number = Fraction(number)
    sign = "−" if number < 0 else ""
    size = abs(number)
    return f"{sign}{size.numerator}" + ("" if size.denominator == 1 else f"/{size.denominator}")


def mixed_parts(number: Fraction) -> tuple[int, int, int]:
    """Whole, top and bottom of the size of a number: 5/2 is (2, 1, 2)."""
    size = abs(number)
    whole = size.numerator // size.denominator
    rest = size - whole
    return whole, rest.numerator, rest.denominator


def decimal_digits(number: Fraction, places: int | None = None) -> str:
    """The decimal of the size of a number: `0.75`, `12.50`, `0.1(6)` where it repeats.

    Raises Undefined when the block that repeats is longer than 30 digits.
    """
    size = abs(number)
    if places is None:
        places = ending_places(size)
    if places is not None:
        scaled = size * 10**places
        digits = str(scaled.numerator // scaled.denominator).rjust(places + 1, "0")
        return f"{digits[:-places]}.{digits[-places:]}" if places else digits
    whole, rest = divmod(size.numerator, size.denominator)
    seen: dict[int, int] = {}
    digits = ""
    while rest not in seen:
        if len(digits) > 60:
            raise Undefined("not-exact")
        seen[rest] = len(digits)
        digit, rest = divmod(rest * 10, size.denominator)
        digits += str(digit)
    start = seen[rest]
    if len(digits) - start > 30:
        raise Undefined("not-exact")
    return f"{whole}.{digits[:start]}({digits[start:]})"


_RELATIONS = frozenset(
    (Equation, Inequality, Compare, Ratio, Listing, OneOf, Conditions, Span, Many, IsWhole)
)


class Writer:
    """What both writings share: the order of things, brackets and tidying."""

    minus = "-"
    times = "*"
    divided = "÷"
    plus_minus = "±"
    signs: ClassVar[dict[str, str]] = {"=": "=", "≠": "≠", "<": "<", "≤": "≤", ">": ">", "≥": "≥"}
    ratio = ":"

    def whole(self, tree: Tree) -> str:
        """A tree that stands alone."""
        if type(tree) not in _RELATIONS:
            return self.show(tree).text
        match tree:
            case Equation(sides=sides):
                return " = ".join(self.whole(side) for side in sides)
            case Inequality(sides=sides, signs=signs) | Compare(sides=sides, signs=signs):
                text = self.whole(sides[0])
                for sign, side in zip(signs, sides[1:], strict=True):
                    text += f" {self.signs[sign]} {self.whole(side)}"
                return text
            case Ratio(parts=parts):
                return f" {self.ratio} ".join(self.whole(part) for part in parts)
            case Listing(parts=parts) | OneOf(parts=parts) | Conditions(parts=parts):
                return ", ".join(self.whole(part) for part in parts)
            case Span(low=low, high=high, step=step, but=but):
                text = f"{self.whole(low)}..{self.whole(high)}"
                text += f" step {self.whole(step)}" if step is not None else ""
                return text + (f" except {', '.join(self.whole(one) for one in but)}" if but else "")
            case Many(count=count, span=span):
                return f"{self.whole(count)} of {self.whole(span)}"
            case IsWhole(of=inner, negated=negated):
                return f"{self.whole(inner)} is {'not ' if negated else ''}whole"
        return self.show(tree).text

    def at(self, tree: Tree, holds: int) -> str:
        """The tree in a place that asks for that much holding together."""
        shown = self.show(tree)
        return shown.text if shown.holds >= holds else self.brackets(shown.text)

    def brackets(self, text: str) -> str:
        return f"({text})"

    def show(self, tree: Tree) -> Shown:
        match tree:
            case Number():
                return self.number(tree)
            case Mixed(whole=whole, top=top, bottom=bottom):
                return Shown(self.mixed(whole, top, bottom), BAR)
            case Letter(name=name):
                return Shown(name, ATOM)
            case Pi():
                return Shown(self.pi(), ATOM)
            case TheAnswer():
                return Shown("answer", ATOM)
            case Group(of=inner):
                return Shown(self.brackets(self.whole(inner)), ATOM)
            case Point(parts=parts):
                return Shown(self.brackets(", ".join(self.whole(part) for part in parts)), ATOM)
            case Percent(of=inner):
                return Shown(self.percent(self.at(inner, BAR)), BAR)
            case Negative(of=inner):
                return self.negative(inner)
            case Positive(of=inner):
                return Shown("+" + self.at(inner, SIGNED), SIGNED)
            case PlusMinus(left=None, right=right):
                return Shown(self.plus_minus + self.at(right, SIGNED), SIGNED)
            case PlusMinus(left=left, right=right) if left is not None:
                return Shown(f"{self.at(left, SUM)} {self.plus_minus} {self.at(right, PRODUCT)}", SUM)
            case Add(left=left, right=right):
                return self.sum(left, right, plus=True)
            case Subtract(left=left, right=right):
                return self.sum(left, right, plus=False)
            case Multiply(left=left, right=right, beside=beside):
                return self.product(left, right, beside)
            case Divide(left=left, right=right, bar=bar):
                return self.bar(left, right) if bar else self.divide(left, right)
            case Power(base=base, exponent=exponent):
                return Shown(self.power(self.at(base, ATOM), exponent), POWER)
            case Root(of=inner, degree=degree):
                return Shown(self.root(inner, degree), ATOM)
            case Call(name=name, parts=parts):
                return self.call(name, parts)
        return Shown(self.whole(tree), SUM)

    # Signs -----------------------------------------------------------------------------------------

    def negative(self, inner: Tree) -> Shown:
        text = self.at(inner, SIGNED)
        if text.startswith((self.minus, "+")):  # - -3 is −(−3)
            text = self.brackets(text)
        return Shown(self.minus + text, SIGNED)

    def sum(self, left: Tree, right: Tree, plus: bool) -> Shown:
        first = self.at(left, SUM)
        size = _without_minus(right) if plus else None
        if size is not None:  # + -3 is − 3
            return Shown(f"{first} {self.minus} {self.at(size, PRODUCT)}", SUM)
        second = self.show(right)
        signed = second.text.startswith((self.minus, "+"))
        text = self.brackets(second.text) if signed or second.holds < PRODUCT else second.text
        return Shown(f"{first} {'+' if plus else self.minus} {text}", SUM)

    # Products --------------------------------------------------------------------------------------

    def product(self, left: Tree, right: Tree, beside: bool) -> Shown:
        if not beside:
            second = self.show(right)
            text = second.text
            if second.holds < SIGNED or text.startswith((self.minus, "+")):
                text = self.brackets(text)
            return Shown(f"{self.at(left, PRODUCT)} {self.times} {text}", PRODUCT)
        if left == ONE and not starts_with_digit(right):
            return self.show(right)  # 1 x is x
        if left == Negative(ONE) and not starts_with_digit(right):
            return self.negative(right)
        first = self.show(left)
        start = first.text
        if isinstance(left, Negative) and first.holds == SIGNED:
            pass  # -2 x needs no brackets
        elif first.holds < RUN:
            start = self.brackets(start)
        holds = SIGNED if isinstance(left, Negative) else RUN
        second = self.show(right)
        if second.text.startswith((self.minus, "+")) or second.holds < BAR:
            if isinstance(right, Multiply):
                inner = self.product(left, right.left, beside=True)
                return Shown(f"{inner.text} {self.times} {self.at(right.right, SIGNED)}", PRODUCT)
            return Shown(start + self.brackets(second.text), holds)
        if starts_with_digit(right):
            first_product = first.text if first.holds >= PRODUCT else start
            return Shown(f"{first_product} {self.times} {second.text}", PRODUCT)
        return Shown(self.run_together(start, second.text, left, right), holds)

    def run_together(self, start: str, end: str, left: Tree, right: Tree) -> str:
        return f"{start}{end}"

    def divide(self, left: Tree, right: Tree) -> Shown:
        second = self.show(right)
        text = second.text
        if second.holds < SIGNED or text.startswith((self.minus, "+")):
            text = self.brackets(text)
        return Shown(f"{self.at(left, PRODUCT)} {self.divided} {text}", PRODUCT)

    # Words -----------------------------------------------------------------------------------------

    def call(self, name: str, parts: tuple[Tree, ...]) -> Shown:
        if name == "sqrt" and len(parts) == 1:
            return Shown(self.root(parts[0], 2), ATOM)
        if name == "abs" and len(parts) == 1:
            return Shown(f"|{self.whole(parts[0])}|", ATOM)
        if name in SHOWN_AS and len(parts) == 1:
            try:
                return self.shown_as(name, value(parts[0]))
            except Undefined:
                return self.show(parts[0])
        try:
            return self.shown_as("value", value(Call(name, parts)))
        except Undefined:
            return Shown(f"{name}({', '.join(self.whole(part) for part in parts)})", ATOM)

    def shown_as(self, name: str, number: Fraction) -> Shown:
        """A worked-out number as the word asks: mixed, decimal, percent, money, or plainly."""
        sign = self.minus if number < 0 else ""
        size = abs(number)
        holds = SIGNED if sign else ATOM
        if name == "money":
            cents = size * 100
            if cents.denominator == 1:
                return Shown(
                    f"{sign}{self.dollar()}{decimal_digits(size, 0 if size.denominator == 1 else 2)}", holds
                )
            name = "decimal"
        if name == "percent":
            hundredfold = size * 100
            inner = self.shown_as("value" if hundredfold.denominator == 1 else "decimal", hundredfold)
            return Shown(sign + self.percent(inner.text), min(holds, BAR))
        if name == "decimal":
            try:
                return Shown(sign + decimal_digits(size), holds)
            except Undefined:
                name = "value"
        if name == "mixed" and size.denominator != 1 and size > 1:
            return Shown(sign + self.mixed(*mixed_parts(size)), min(holds, BAR))
        if size.denominator == 1:
            return Shown(sign + str(size.numerator), holds)
        return Shown(sign + self.fraction(str(size.numerator), str(size.denominator)), min(holds, BAR))

    # What each writing does in its own way ------------------------------------------------------------

    def number(self, number: Number) -> Shown:
        worth = number.value
        if not number.places:
            if worth.denominator != 1:
                return self.shown_as("value", worth)
            if worth.numerator >= 0:
                return Shown(str(worth.numerator), ATOM)
        if number.repeats:
            return self.shown_as("decimal", worth)
        sign = self.minus if worth.numerator < 0 else ""
        return Shown(sign + decimal_digits(worth, number.places), SIGNED if sign else ATOM)

    def bar(self, left: Tree, right: Tree) -> Shown:
        raise NotImplementedError

    def mixed(self, whole: int, top: int, bottom: int) -> str:
        raise NotImplementedError

    def fraction(self, top: str, bottom: str) -> str:
        raise NotImplementedError

    def power(self, base: str, exponent: Tree) -> str:
        raise NotImplementedError

    def root(self, inner: Tree, degree: int) -> str:
        raise NotImplementedError

    def percent(self, inner: str) -> str:
        raise NotImplementedError

    def pi(self) -> str:
        raise NotImplementedError

    def dollar(self) -> str:
        raise NotImplementedError


def _without_minus(tree: Tree) -> Tree | None:
    """The tree without its leading minus, if it has one."""
    match tree:
        case Negative(of=inner):
            return inner
        case Number(value=number) if number < 0:
            return Number(-number, tree.places, tree.repeats)
        case Multiply(left=left, right=right, beside=beside):
            bare = _without_minus(left)
            return None if bare is None else Multiply(bare, right, beside)
        case Divide(left=left, right=right, bar=bar):
            bare = _without_minus(left)
            return None if bare is None else Divide(bare, right, bar)
        case Call(name=name, parts=(part,)) if name in SHOWN_AS:
            try:
                number = value(part)
            except Undefined:
                return None
            return Call(name, (Number(-number),)) if number < 0 else None
    return None


def starts_with_digit(tree: Tree) -> bool:
    while True:
        match tree:
            case Number() | Mixed():
                return True
            case Multiply(left=left) | Divide(left=left):
                tree = left
            case Power(base=base):
                tree = base
            case Percent(of=inner):
                tree = inner
            case Call(name=name, parts=parts) if name in SHOWN_AS or name in (
                "gcd",
                "lcm",
                "mean",
                "median",
                "range",
                "count",
            ):
                try:
                    value(Call(name, parts))
                except Undefined:
                    return False
                return True
            case _:
                return False
