"""Forms that ask for one number: what each demands, and how to say what is missing."""

from __future__ import annotations

import re

from bot.answers.amounts import read_amounts
from bot.answers.around import alternatives, sides
from bot.answers.expected import Expected
from bot.answers.finding import FORM, RIGHT, UNIT, WRONG, Finding, all_the_same
from bot.answers.key import Key
from bot.answers.marks import said_to_repeat
from bot.answers.number_forms import CARET_LOST, caret_lost, graded_amount
from bot.answers.spoken import HAS_WORDS, size_of_part, spoken
from bot.answers.units import wanted
from bot.maths import Unreadable
from bot.maths.patterns import regex

NUMBER_FORMS = frozenset(
    (
        "number", "fraction-simplest", "mixed", "decimal", "decimal-rounded", "percent", "whole", "integer",
        "money", "quantity", "quantity-exact-unit", "scientific",
    )
)  # fmt: skip

_REMAINDER = regex(r"\d ?,? ?(?:and |y )?(?:r|rem|remainder|reminder|remander|resto|residuo) ?[:=]? ?(\d+)")


_NOT_EQUAL = regex(
    r"[<>≤≥≠]|\b(?:less|more|greater|fewer|bigger|smaller|larger) than (?=[-\d])|\bat (?:least|most) (?=[-$\d])|"
    r"\b(?:not|isnt|aint|under|above) (?=[-$\d])"
)


_ITEM_LETTER = regex(r"^\([a-h]\) (?=[-\d.$])")
_ANGLE = regex(r"^(?:m ?)?[<∠] ?[a-z]{1,3} ?=(?= ?-?\d)")  # <A = 90
_LABELS = regex(r"(?<![a-z])([a-z]) ?= ?-?[\d.]+(?![\d.]*(?:[a-z]| ?[-+*/÷^(=]))")
_ASIDE = regex(r"^(.*\d.*?) ?\(([^()]*[a-z]{2}[^()]*)\)?$")


def _aside(text: str) -> str:
    """`3/4 (simplified)` and `3 ft (36 in)`: what stands in brackets behind says it again or says nothing."""
    if text[-1:] != ")" or (found := _ASIDE.match(text)) is None:
        return text
    says_it_again = re.search(r"\d", found.group(2)) and not found.group(2).startswith("not ")
    return f"{found.group(1)} or {found.group(2)}" if says_it_again else found.group(1)


_PARTS_COUNTED = regex(r"^(.*[^ -])(?: - |[ -]|(?<=\d))([a-z]+)[.! ]*$")
_NONE = regex(
    r"^(?:none(?: of (?:them|these|those|the [a-z]+))?|no ?body|no ?one|not (?:a single |even )?one|"
    r"ningun[oa]?|nadie)[.! ]*$"
)


def _counted(text: str, key: Key) -> str:
    """`1600 thousandths` where thousandths are counted is the count; `none`, `nobody`, `no trams` count nothing."""
    if text[-1:].isdigit():
        return text
    if _NONE.fullmatch(text) or (key.unit and text == f"no {key.unit}"):
        return "0"
    size = size_of_part(key.unit) if key.unit else None
    if size is None or (found := _PARTS_COUNTED.match(text)) is None or size_of_part(found.group(2)) != size:
        return text
    return found.group(1)


def _another(text: str, want: Expected) -> Finding:
    """`> 7`, `not 7`, `less than 7` where 7 is asked: another answer, if there is a number at all."""
    if not any(c.isdigit() for c in text):
        raise Unreadable("no-number")
    return Finding(WRONG)


def grade_number(text: str, key: Key, want: Expected) -> Finding:
    """Grade a reply in one of NUMBER_FORMS. Raises Unreadable."""
    if key.form == "whole":
        text = _counted(text, key)
    if (found := _REMAINDER.search(text)) and int(found.group(1)[:9]) != 0:
        return Finding(WRONG)
    if found:
        text = text[: found.start() + 1]
    text = _ANGLE.sub("", _aside(_ITEM_LETTER.sub("", text)))
    if len(set(_LABELS.findall(text))) > 1:
        raise Unreadable("several-answers")
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
    if last.verdict in (FORM, UNIT) and not last.reason.startswith("exact"):
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
        if form == "scientific" and (found := CARET_LOST.match(text)):
            return caret_lost(found, want)
        raise
    findings = [graded_amount(amount, key, want, text) for amount in amounts]
    if len(findings) == 1 and findings[0].verdict == WRONG and _space_lost(text, want):
        raise Unreadable("space-lost")
    if len(findings) == 1:
        return findings[0]
    if any(one.unit is not None for one in amounts[:1]) and all(f.verdict == RIGHT for f in findings):
        return findings[0]
    return all_the_same(findings)


_RATIO = regex(r"^(-?\d+) ?: ?(\d+)$")
_HOURS = regex(r"^(\d+) ?: ?(\d\d)(?: ?(?:h|hs|hrs?|hours?|horas?))?$")
_SIGN_FOR_POINT = regex(r"^(\d+)\$(\d\d)$")
_SPOKEN_PRICE = regex(r"^(\d{1,3}) (\d\d)$")


def _colon_written(text: str, key: Key, want: Expected) -> str:
    """`5:4` for a fraction, `2:30` for hours, and `four fifty` for a price, written plainly."""
    if ":" in text:
        if (
            (found := _HOURS.match(text))
            and want.asked is not None
            and want.asked.unit.kinds == (("time", 1),)
        ):
            whole, part = ("min", "s") if want.asked.unit.size == 1 else ("h", "min")
            return f"{found.group(1)} {whole} {found.group(2)} {part}"
        if found := _RATIO.match(text):
            return f"{found.group(1)} ÷ {found.group(2)}"
        text = _LABEL.sub("", text)
    if key.form == "money" and "$" in text:
        text = _SIGN_FOR_POINT.sub(r"\1.\2", text)
    if key.form == "money" and HAS_WORDS.search(text) and (found := _SPOKEN_PRICE.match(spoken(text))):
        return f"{found.group(1)}.{found.group(2)}"
    return text


_LABEL = regex(r"^[a-z] ?: ?(?=[-\d.])")
_STUCK_MIXED = regex(r"^-?(\d{2,7})/(\d{1,4})$")


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
