"""What each number form demands of an amount, and how to say what is missing."""

from __future__ import annotations

import re
from fractions import Fraction

from bot.answers.amounts import Amount, same_noun
from bot.answers.closeness import USUAL_PI, half_up, nearness, with_pi
from bot.answers.expected import Expected
from bot.answers.finding import FORM, RIGHT, UNIT, WRONG, Finding
from bot.answers.key import Key, tells_of_pi
from bot.answers.shapes import (
    WORKED_OUT,
    bare,
    lowest_terms,
    proper_lowest,
    scientific,
    shape,
    shown_places,
)
from bot.answers.units import PERCENT, Unit, wanted
from bot.maths import Tree
from bot.maths.exact import Quotient, approximate
from bot.maths.patterns import regex
from bot.maths.tree import Divide, Number, Percent
from bot.vocabulary import Verdict

CARET_LOST = regex(r"^(-?\d*\.?\d+) ?(?:[*x]|times) ?10 ?(-?\d+)$")


def graded_amount(amount: Amount, key: Key, want: Expected, text: str) -> Finding:
    form = key.form
    if form == "percent":
        verdict, reason = _percent(amount, key, want)
    elif form == "decimal-rounded":
        verdict, reason = _rounded(amount, key, want)
    else:
        verdict, reason = _exact(amount, key, want, text)
    return Finding(verdict, reason, amount.tree, amount.value, amount.unit, amount)


# With units --------------------------------------------------------------------------------------------


def _exact(amount: Amount, key: Key, want: Expected, text: str) -> tuple[Verdict, str]:
    form = key.form
    asked = wanted("dollars") if form == "money" else want.asked
    unit = amount.unit
    if form == "money" and unit is not None and _is_price(unit):
        unit = wanted("dollars").unit
    if asked is None or (unit is None and amount.noun is None):
        near = nearness(amount.value, amount.tree, want, Fraction(1))
        if near is None:
            return _lost_caret(text, want) if form == "scientific" else (WRONG, "")
        if asked is not None and form.startswith("quantity"):
            return UNIT, "unit-missing"
        return _in_form(amount, key, want, near)
    if unit is None:
        near = nearness(amount.value, amount.tree, want, Fraction(1))
        if near is None:
            return WRONG, ""
        if amount.noun is not None and same_noun(amount.noun, asked):
            return _in_form(amount, key, want, near)
        return UNIT, "unit-missing" if form.startswith("quantity") else "unit-wrong"
    if unit.kinds == asked.unit.kinds:
        near = nearness(
            amount.value, None if amount.others else amount.tree, want, asked.unit.size / unit.size
        )
        if near is not None:
            if (
                unit.size != asked.unit.size
                and not form.startswith("quantity")
                and not near
                and not amount.others
            ):
                return (RIGHT, "") if shape(amount.tree) in WORKED_OUT else (FORM, "work-out")
            if form == "quantity-exact-unit" and (unit.size != asked.unit.size or amount.others):
                return FORM, "unit-asked"
            return _in_form(amount, key, want, near)
    if nearness(amount.value, amount.tree, want, Fraction(1)) is not None:
        return UNIT, _unit_reason(unit, asked.unit)
    return WRONG, ""


def _is_price(unit: Unit) -> bool:
    """Dollars for each of something: money where only the money is asked for."""
    kinds = dict(unit.kinds)
    return (
        kinds.pop("money", 0) == 1 and bool(kinds) and all(n < 0 for n in kinds.values()) and unit.size == 1
    )


def _unit_reason(unit: Unit, asked: Unit) -> str:
    """What is the matter with the unit: not squared, not cubed, half of a rate missing, or another one."""
    kinds, wants = dict(unit.kinds), dict(asked.kinds)
    if kinds.keys() == wants.keys() and len(kinds) == 1:
        ((kind, power),) = wants.items()
        if kinds[kind] != power:
            return "unit-power"
    if len(wants) > len(kinds) and all(wants.get(kind) == n for kind, n in kinds.items()):
        return "unit-half"
    return "unit-wrong"


def _in_form(amount: Amount, key: Key, want: Expected, near: str) -> tuple[Verdict, str]:
    """The value is right: is it written as asked?"""
    if amount.summed:
        return FORM, "work-out"
    if amount.others:
        if (
            any(shape(tree) not in WORKED_OUT for tree, _ in amount.others)
            or shape(amount.tree) not in WORKED_OUT
        ):
            return FORM, "work-out"
        return RIGHT, ""
    reason = near or _missing(amount.tree, key.form, want)
    return (FORM, reason) if reason else (RIGHT, "")


def _missing(tree: Tree, form: str, want: Expected) -> str:
    """What the writing of a right value lacks in its form; "" if nothing."""
    written = shape(tree)
    if written == "unworked":
        return _unworked(tree, form)
    if form in ("number", "quantity", "quantity-exact-unit"):
        return ""
    whole = want.number is not None and want.number.denominator == 1
    if whole and form != "scientific" and written in ("whole", "decimal"):
        return ""
    if form == "fraction-simplest":
        if written == "fraction":
            return "" if lowest_terms(tree) else "simplest"
        if written == "mixed":
            return "" if proper_lowest(tree) else "simplest"
        return "fraction"
    if form == "mixed":
        if whole:
            return "whole"
        if want.number is not None and abs(want.number) < 1:
            return "" if written == "fraction" and lowest_terms(tree) else "simplest"
        if written == "mixed":
            return "" if proper_lowest(tree) else "simplest"
        return "mixed"
    if form == "decimal":
        return "" if written in ("whole", "decimal", "repeating") else "decimal"
    if form in ("whole", "integer"):
        return "" if written in ("whole", "decimal") else "whole"
    if form == "money":
        return "" if written in ("whole", "decimal") else "money"
    if form == "scientific":
        return _not_scientific(tree)
    return ""


def _unworked(tree: Tree, form: str) -> str:
    inner = bare(tree)
    if (
        isinstance(inner, Divide)
        and isinstance(bare(inner.left), Number)
        and isinstance(bare(inner.right), Number)
    ):
        return (
            "fraction" if form == "fraction-simplest" and inner.bar and not _whole_over(inner) else "divide"
        )
    return "work-out"


def _whole_over(tree: Divide) -> bool:
    top, bottom = bare(tree.left), bare(tree.right)
    return isinstance(top, Number) and isinstance(bottom, Number) and not top.places and not bottom.places


# Percents ----------------------------------------------------------------------------------------------


def _percent(amount: Amount, key: Key, want: Expected) -> tuple[Verdict, str]:
    one = Fraction(1)
    value, tree = amount.value, amount.tree
    is_percent = isinstance(bare(tree), Percent)
    printed = "%" not in key.answer
    if is_percent and amount.unit is None:
        near = nearness(value, tree, want, Fraction(1, 100) if printed else one)
        if near is None:
            return WRONG, ""
        if near:
            return FORM, near
        return (RIGHT, "") if shape(tree) == "percent" else (FORM, "work-out")
    if amount.unit == PERCENT:
        return WRONG, ""
    if printed:
        near = nearness(value, tree, want, one)
        if near is not None:
            if amount.unit is not None:
                return UNIT, "unit-wrong"
            reason = near or ("work-out" if shape(tree) == "unworked" else "")
            return (FORM, reason) if reason else (RIGHT, "")
        return (FORM, "percent") if nearness(value, tree, want, Fraction(1, 100)) is not None else (WRONG, "")
    if nearness(value, tree, want, one) is not None:
        return FORM, "percent"
    hundredth = Quotient({term: Fraction(c) / 100 for term, c in value.top.items()}, value.bottom)
    if nearness(hundredth, Percent(tree), want, one) is not None:
        return UNIT, "percent-sign"
    return WRONG, ""


# Rounded -----------------------------------------------------------------------------------------------


def _rounded(amount: Amount, key: Key, want: Expected) -> tuple[Verdict, str]:
    asked, unit = want.asked, amount.unit
    scale = Fraction(1)
    if asked is not None and unit is not None:
        if unit.kinds != asked.unit.kinds or (
            unit.size != asked.unit.size and _places_match(amount, key, want, scale)
        ):
            return (
                (UNIT, _unit_reason(unit, asked.unit))
                if _places_match(amount, key, want, scale)
                else (WRONG, "")
            )
        scale = unit.size / asked.unit.size
    found = _places_match(amount, key, want, scale)
    if found is None:
        return WRONG, ""
    if asked is not None and unit is None and amount.noun is not None and not same_noun(amount.noun, asked):
        return UNIT, "unit-wrong"
    return found


def _places_match(amount: Amount, key: Key, want: Expected, scale: Fraction) -> tuple[Verdict, str] | None:
    target = want.number
    if target is None:
        return None
    places = shown_places(want.tree) or 0
    written = shape(amount.tree)
    if amount.value.letters():
        return None
    typed = amount.value.rational()
    near = (typed if typed is not None else approximate(amount.value)) * scale
    if scale == 1 and written in ("whole", "decimal"):
        shown = shown_places(amount.tree) or 0
        if near == target:
            if shown == places:
                return RIGHT, ""
            return FORM, "places"
        if shown > places:
            return (
                (FORM, "places")
                if half_up(near, places) == target
                else _other_pi(near, target, places, key, want)
            )
        if shown < places:
            figures = len(str(abs(int(near * 10**shown))).lstrip("0"))
            if half_up(target, shown) == near and figures >= 2 and not key.form_is_the_skill:
                return FORM, "places"
            return None
        return _other_pi(near, target, places, key, want)
    if scale != 1 and near == target and written in ("whole", "decimal"):
        return RIGHT, ""
    if half_up(near, places) == target:
        return FORM, "round"
    if typed is None:
        for pi in USUAL_PI:
            worked = with_pi(amount.value, pi)
            if worked is not None and half_up(worked * scale, places) == target:
                return FORM, "round"
    return None


def _other_pi(
    near: Fraction, target: Fraction, places: int, key: Key, want: Expected
) -> tuple[Verdict, str] | None:
    """Worked with another usual value of π than the question states, and rounded to the same places."""
    if not _about_circles(key, target, want):
        return None
    values = [*USUAL_PI, _NEAR_PI]
    for used in values:
        for amount_of_pi in _short_multiples(target, used, places):
            for other in values:
                if half_up(amount_of_pi * other, places) == near:
                    return FORM, "pi-value"
    return None


def _short_multiples(target: Fraction, pi: Fraction, places: int) -> list[Fraction]:
    """Short numbers of which the target may be π times, rounded: 36 for 113.0, since 36 x 3.14 is 113.04."""
    exact = target / pi
    halves = half_up(2 * exact, 0) / 2
    found = [halves] if half_up(halves * pi, places) == target else []
    return [*found, exact] if exact == half_up(exact, 2) else found


_NEAR_PI = Fraction(314159265359, 10**11)


def _about_circles(key: Key, target: Fraction, want: Expected) -> bool:
    if key.circles is not None:
        return key.circles
    if key.given is not None:
        return tells_of_pi(key.given)
    if want.asked is None:
        return False
    kinds = dict(want.asked.unit.kinds)
    return kinds.keys() <= {"length", "unit"} and target > 3


# Scientific --------------------------------------------------------------------------------------------


def _not_scientific(tree: Tree) -> str:
    found = scientific(tree)
    if found is None:
        return "scientific"
    first, _ = found
    return "" if 1 <= first.value < 10 else "first-number"


def _lost_caret(text: str, want: Expected) -> tuple[Verdict, str]:
    """`3.2 x 105`: right once the power is raised."""
    found = CARET_LOST.match(text)
    return (WRONG, "") if found is None else (caret_lost(found, want).verdict, "caret")


def caret_lost(found: re.Match[str], want: Expected) -> Finding:
    first, power = found.groups()
    if want.number is None or len(power) > 4 or len(first) > 40:
        return Finding(WRONG)
    value = Fraction(first) * Fraction(10) ** int(power)
    return Finding(FORM, "caret") if value == want.number else Finding(WRONG)
