"""Forms that ask for one number: what each demands, and how to say what is missing."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from bot.answers.amounts import Amount, read_amounts, same_noun
from bot.answers.around import alternatives, sides
from bot.answers.closeness import USUAL_PI, half_up, nearness, with_pi
from bot.answers.expected import Expected
from bot.answers.key import Key
from bot.answers.marks import said_to_repeat
from bot.answers.shapes import (
    WORKED_OUT,
    bare,
    lowest_terms,
    proper_lowest,
    scientific,
    shape,
    shown_places,
)
from bot.answers.spoken import HAS_WORDS, spoken
from bot.answers.units import PERCENT, Unit, wanted
from bot.maths import Tree, Unreadable
from bot.maths.exact import Quotient, approximate
from bot.maths.tree import Divide, Number, Percent
from bot.vocabulary import Verdict

RIGHT, FORM, UNIT, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.UNIT, Verdict.WRONG
_RANK = {WRONG: 0, UNIT: 1, FORM: 2, RIGHT: 3}


@dataclass(frozen=True, slots=True)
class Finding:
    """The verdict on one reading of a reply, with a reason code and the tree that was read."""

    verdict: Verdict
    reason: str = ""
    tree: Tree | None = None
    value: Quotient | None = None
    unit: Unit | None = None

    def better(self, other: Finding) -> Finding:
        return self if _RANK[self.verdict] >= _RANK[other.verdict] else other


NUMBER_FORMS = frozenset(
    (
        "number", "fraction-simplest", "mixed", "decimal", "decimal-rounded", "percent", "whole", "integer",
        "money", "quantity", "quantity-exact-unit", "scientific",
    )
)  # fmt: skip

_REMAINDER = re.compile(
    r"\d ?,? ?(?:and |y )?(?:r|rem|remainder|reminder|remander|resto|residuo) ?[:=]? ?(\d+)"
)
_CARET_LOST = re.compile(r"^(-?\d*\.?\d+) ?(?:[*x]|times) ?10 ?(-?\d+)$")


_NOT_EQUAL = re.compile(
    r"[<>≤≥≠]|\b(?:less|more|greater|fewer|bigger|smaller|larger) than (?=[-\d])|\bat (?:least|most) (?=[-$\d])|"
    r"\b(?:not|isnt|aint|under|above) (?=[-$\d])"
)


_ASIDE = re.compile(r"^(.*\d.*?) ?\(([^()]*[a-z]{2}[^()]*)\)?$")


def _aside(text: str) -> str:
    """`3/4 (simplified)` and `3 ft (36 in)`: what stands in brackets behind says it again or says nothing."""
    if text[-1:] != ")" or (found := _ASIDE.match(text)) is None:
        return text
    return f"{found.group(1)} or {found.group(2)}" if re.search(r"\d", found.group(2)) else found.group(1)


def _another(text: str, want: Expected) -> Finding:
    """`> 7`, `not 7`, `less than 7` where 7 is asked: another answer, if there is a number at all."""
    if not any(c.isdigit() for c in text):
        raise Unreadable("no-number")
    return Finding(WRONG)


def grade_number(text: str, key: Key, want: Expected) -> Finding:
    """Grade a reply in one of NUMBER_FORMS. Raises Unreadable."""
    if (found := _REMAINDER.search(text)) and int(found.group(1)[:9]) != 0:
        return Finding(WRONG)
    if found:
        text = text[: found.start() + 1]
    text = _aside(text)
    if _NOT_EQUAL.search(text):
        return _another(text, want)
    options = alternatives(text)
    if len(options) > 1:
        given = [one for one in options if one]
        if len(given) < len(options) and not (options[-1] or text.rstrip().endswith("?")):
            raise Unreadable("unfinished")
        if len(given) > 12:
            raise Unreadable("several-answers")
        return all_the_same([_sides(one, key, want) for one in given])
    return _sides(text, key, want)


def all_the_same(findings: list[Finding]) -> Finding:
    """Several ways to say one thing are fine, two different answers are not graded."""
    first = findings[0]
    for other in findings[1:]:
        if first.verdict == WRONG or other.verdict == WRONG:
            if first.verdict != other.verdict or first.value is None or other.value is None:
                raise Unreadable("several-answers")
            if not first.value.same_as(other.value):
                raise Unreadable("several-answers")
        first = first.better(other)
    return first


def _sides(text: str, key: Key, want: Expected) -> Finding:
    """The last side is the answer; if all are truly equal, one in the right form is enough."""
    parts = sides(text)
    if len(parts) == 1:
        return _one(parts[0], key, want)
    if not parts or not parts[-1]:
        raise Unreadable("unfinished")
    if len(parts) > 30:
        raise Unreadable("too-long")
    if not re.search(r"[\dπ]", parts[-1]) and re.search(r"[\dπ]", parts[-2]) and len(parts[-1]) < 3:
        parts.pop()  # 7 = x
        return _sides("=".join(parts), key, want) if len(parts) > 1 else _one(parts[0], key, want)
    last = _one(parts[-1], key, want)
    if last.verdict in (FORM, UNIT):
        for side in parts[:-1]:
            try:
                other = _one(side, key, want)
            except Unreadable:
                continue
            if other.verdict == RIGHT:
                return other
    return last


def _one(text: str, key: Key, want: Expected) -> Finding:
    """One side; a decimal *said* to repeat may have two readings."""
    if "re" not in text and "per" not in text and "bar" not in text and "line" not in text:
        return _reading(text, key, want)
    findings = [_reading(one, key, want) for one in said_to_repeat(text)]
    if len({finding.verdict == WRONG for finding in findings}) > 1:
        raise Unreadable("which-repeats")
    return findings[0]


def _reading(text: str, key: Key, want: Expected) -> Finding:
    form = key.form
    asked = wanted("dollars") if form == "money" else want.asked
    text = _colon_written(text, key, want)
    try:
        amounts = read_amounts(text, want, form, asked)
    except Unreadable:
        if form == "scientific" and (found := _CARET_LOST.match(text)):
            return _caret_lost(found, want)
        raise
    findings = [_graded(amount, key, want, text) for amount in amounts]
    if len(findings) == 1 and findings[0].verdict == WRONG and _space_lost(text, want):
        raise Unreadable("space-lost")
    if len(findings) == 1:
        return findings[0]
    if any(one.unit is not None for one in amounts[:1]) and all(f.verdict == RIGHT for f in findings):
        return findings[0]
    return all_the_same(findings)


_RATIO = re.compile(r"^(-?\d+) ?: ?(\d+)$")
_HOURS = re.compile(r"^(\d+) ?: ?(\d\d)(?: ?(?:h|hs|hrs?|hours?|horas?))?$")
_SPOKEN_PRICE = re.compile(r"^(\d{1,3}) (\d\d)$")


def _colon_written(text: str, key: Key, want: Expected) -> str:
    """`5:4` for a fraction, `2:30` for hours, and `four fifty` for a price, written plainly."""
    if ":" in text:
        if (
            (found := _HOURS.match(text))
            and want.asked is not None
            and want.asked.unit.kinds == (("time", 1),)
        ):
            return f"{found.group(1)} h {found.group(2)} min"
        if found := _RATIO.match(text):
            return f"{found.group(1)} ÷ {found.group(2)}"
        text = _LABEL.sub("", text)
    if key.form == "money" and HAS_WORDS.search(text) and (found := _SPOKEN_PRICE.match(spoken(text))):
        return f"{found.group(1)}.{found.group(2)}"
    return text


_LABEL = re.compile(r"^[a-z] ?: ?(?=[-\d.])")
_STUCK_MIXED = re.compile(r"^-?(\d{2,7})/(\d{1,4})$")


def _space_lost(text: str, want: Expected) -> bool:
    """`21/2` where 2 1/2 is expected."""
    found = _STUCK_MIXED.match(text)
    if found is None or want.number is None or want.number.denominator == 1:
        return False
    whole, part = divmod(abs(want.number), 1)
    return whole > 0 and (found.group(1), found.group(2)) == (
        f"{whole}{part.numerator}",
        str(part.denominator),
    )


def _graded(amount: Amount, key: Key, want: Expected, text: str) -> Finding:
    form = key.form
    if form == "percent":
        verdict, reason = _percent(amount, key, want)
    elif form == "decimal-rounded":
        verdict, reason = _rounded(amount, key, want)
    else:
        verdict, reason = _exact(amount, key, want, text)
    return Finding(verdict, reason, amount.tree, amount.value, amount.unit)


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
            if form == "quantity-exact-unit" and (unit.size != asked.unit.size or amount.others):
                return FORM, "unit-asked"
            return _in_form(amount, key, want, near)
    if nearness(amount.value, amount.tree, want, Fraction(1)) is not None:
        return UNIT, _unit_reason(unit, asked.unit)
    return WRONG, ""


def _is_price(unit: Unit) -> bool:
    """Dollars for each of something: money where only the money is asked for."""
    kinds = dict(unit.kinds)
    return kinds.pop("money", 0) == 1 and bool(kinds) and all(n < 0 for n in kinds.values()) and unit.size == 1


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
        amount_of_pi = target / used
        if amount_of_pi != half_up(amount_of_pi, 2):
            continue
        for other in values:
            if half_up(amount_of_pi * other, places) == near:
                return FORM, "pi-value"
    return None


_NEAR_PI = Fraction(314159265359, 10**11)


def _about_circles(key: Key, target: Fraction, want: Expected) -> bool:
    if key.given is not None:
        return "π" in key.given or "pi" in key.given
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
    found = _CARET_LOST.match(text)
    return (WRONG, "") if found is None else (_caret_lost(found, want).verdict, "caret")


def _caret_lost(found: re.Match[str], want: Expected) -> Finding:
    first, power = found.groups()
    if want.number is None or len(power) > 4 or len(first) > 40:
        return Finding(WRONG)
    value = Fraction(first) * Fraction(10) ** int(power)
    return Finding(FORM, "caret") if value == want.number else Finding(WRONG)
