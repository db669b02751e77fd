"""Ratios, and quotients with a remainder."""

from __future__ import annotations

import math
import re
from fractions import Fraction
from functools import lru_cache

from bot.answers.amounts import read_amounts
from bot.answers.around import alternatives, sides
from bot.answers.expected import BadKey, expected_of
from bot.answers.finding import Finding
from bot.answers.key import Key
from bot.answers.marks import digits_for_letters, plain_marks
from bot.answers.shapes import WORKED_OUT, shape
from bot.answers.spoken import HAS_WORDS, spoken
from bot.maths import Unreadable, normal
from bot.maths.patterns import regex
from bot.maths.value import Undefined
from bot.vocabulary import Verdict

RIGHT, FORM, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.WRONG

# Ratios --------------------------------------------------------------------------------------------------------

_COLON = regex(
    r" ?(?::|;|\bto\b|\bis to\b|\bas\b|\bes a\b|(?<=\d)to(?=\d)|(?<=[\dz]) a(?= )| a(?= \d)|\bcontra\b|"
    r"\bvs\b|\bversus\b|\bfor every\b|\bpor cada\b|\bper\b) ?"
)
_FOR_EVERY = regex(
    r"^(?:for every|for each|por cada) (\d+)(?: [a-z]+)?,? (?:there (?:are|is)|we (?:have|need)|"
    r"you need|hay) (\d+)(?: [a-z]+)?$"
)
_DASH = regex(r"^(\d+) ?- ?(\d+)(?: ?- ?(\d+))?$|^(\d+) ?/ ?(\d+) ?/ ?(\d+)$")


@lru_cache(maxsize=1024)
def _wanted_ratio(answer: str) -> tuple[Fraction, ...]:
    text = normal(answer).lower()
    parts = re.split(r":|\bto\b|/", text)
    found = [expected_of(part.strip(), None).number for part in parts]
    if any(number is None for number in found):
        raise BadKey(answer)
    return tuple(number for number in found if number is not None)


def _scaled(parts: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """The ratio in lowest terms: whole numbers without a common divisor."""
    bottom = math.lcm(*(part.denominator for part in parts))
    whole = [int(part * bottom) for part in parts]
    divisor = math.gcd(*whole) or 1
    return tuple(Fraction(part, divisor) for part in whole)


def grade_ratio(text: str, key: Key) -> Finding:
    """A ratio in lowest terms or as stored. Raises Unreadable."""
    want = _wanted_ratio(key.answer)
    options = [one for one in alternatives(text) if one]
    if not options or len(options) > 12:
        raise Unreadable("no-number" if not options else "several-answers")
    findings = [_ratio_sides(one, want) for one in options]
    if len({f.verdict == WRONG for f in findings}) > 1:
        raise Unreadable("several-answers")
    best = findings[0]
    for one in findings[1:]:
        best = best.better(one)
    return best


def _ratio_sides(text: str, want: tuple[Fraction, ...]) -> Finding:
    parts = sides(text)
    if not parts or not parts[-1]:
        raise Unreadable("unfinished")
    found = _ratio(parts[-1], want)
    if found.verdict == FORM:
        for side in parts[:-1]:
            try:
                if _ratio(side, want).verdict == RIGHT:
                    return Finding(RIGHT)
            except Unreadable:
                continue
    return found


def _ratio(text: str, want: tuple[Fraction, ...]) -> Finding:
    text = digits_for_letters(text)
    if HAS_WORDS.search(text) and not re.search(r"\d", text):
        text = re.sub(r"\b(?:ratio|razon|of|is|the)\b", " ", text).strip()
        text = re.sub(r"(?<=[a-z]) a (?=[a-z])", " : ", text)
    if re.search(r"(?:^[:;/]|[:;/]$|\bto$)", text):
        raise Unreadable("unfinished")
    if (found := _FOR_EVERY.search(text)) is not None:
        text = f"{found.group(1)}:{found.group(2)}"
    pieces = [piece for piece in _COLON.split(text) if piece and piece.strip()]
    if len(pieces) > 12:
        raise Unreadable("several-answers")
    if len(pieces) > 1:
        numbers = []
        reason = ""
        for piece in pieces:
            amounts = read_amounts(plain_marks(piece), None, "ratio")
            if len(amounts) > 1:
                raise Unreadable("several-answers")
            number = amounts[0].value.rational()
            if number is None:
                return Finding(WRONG)
            if shape(amounts[0].tree) != "whole":
                reason = "whole"
            numbers.append(number)
        return _ratio_of(tuple(numbers), want, reason)
    return _other_ratio(text, want)


def _ratio_of(numbers: tuple[Fraction, ...], want: tuple[Fraction, ...], reason: str) -> Finding:
    if len(numbers) != len(want):
        return Finding(WRONG)
    if numbers == want:
        return Finding(RIGHT)
    if not any(numbers) or any(number < 0 for number in numbers) or _scaled(numbers) != _scaled(want):
        return Finding(WRONG)
    if reason:
        return Finding(FORM, "ratio-whole")
    return Finding(RIGHT) if numbers == _scaled(want) else Finding(FORM, "ratio-lowest")


def _other_ratio(text: str, want: tuple[Fraction, ...]) -> Finding:
    """A ratio without a colon: a fraction bar, a dash, a decimal, or the colon was lost."""
    if (found := _DASH.match(text)) is not None:
        numbers = tuple(Fraction(part) for part in found.groups() if part)
        result = _ratio_of(numbers, want, "dash")
        return Finding(FORM, "colon") if result.verdict != WRONG else result
    digits = [str(part) for part in want]
    typed = re.sub(r"[^\d]", "", text)
    lost = re.fullmatch(r"\d+[., ]?\d*(?:[., ]\d+)*", text.strip()) and typed == "".join(digits)
    if lost and "/" not in text:
        raise Unreadable("colon-lost")
    amounts = read_amounts(text, None, "ratio")
    if len(amounts) > 1:
        numbers = tuple(n for n in (amount.value.rational() for amount in amounts) if n is not None)
        if (
            len(numbers) == len(want) == len(amounts)
            and HAS_WORDS.search(text)
            and _scaled(numbers) == _scaled(want)
        ):
            return Finding(FORM, "colon")  # 3 boys, 4 girls
        raise Unreadable("several-answers" if len(amounts) > 2 else "colon-lost")
    number = amounts[0].value.rational()
    if number is None or len(want) != 2 or not want[1]:
        return Finding(WRONG, "", amounts[0].tree)
    if number != want[0] / want[1]:
        return Finding(WRONG, "", amounts[0].tree)
    if shape(amounts[0].tree) == "fraction" or ("/" in text and shape(amounts[0].tree) == "unworked"):
        top, _, bottom = text.strip("() ").replace(" ", "").partition("/")
        if top.lstrip("-").isdigit() and bottom.lstrip("-").isdigit():
            return _ratio_of((Fraction(top), Fraction(bottom)), want, "")
        return Finding(RIGHT, "", amounts[0].tree)
    return Finding(FORM, "ratio", amounts[0].tree)


# Remainders ----------------------------------------------------------------------------------------------------

_R = regex(
    r"^(?:(?:the |el )?(?:q(?:uotient)?|cociente)(?: is| es)? ?[=:]? ?)?"
    r"(-?\d+(?:\.\d+)?) ?[,;.]? ?(?:and |with |y |con |is )?(?:an? |una? )?(?:the |el )?"
    r"(?:r(?![a-z])|rem(?![a-z])|rema?in?d?e?r|remanider|remaining|reminder|remander|remaninder|resto|"
    r"residuo|left ?over|leftover|sobran?|quedan?)"
    r"(?: of| de| is| es)? ?[.:=]? ?(-?\d+(?:\.\d+)?|/)?(.*)$"
)
_TIMES_IN = regex(r"(?<=\d) times\b,? ?(?:in )?(?=and |with |,|y |con )")
_HOW_OFTEN = regex(r"^(?:it )?(?:goes|went|fits|makes|gives|cabe)(?: in(?:to)?)? (?=\d)")
_LEFT = regex(
    r"^(-?\d+)(?: (?:groups?|each|times|bags|boxes|full))?(?: ?,)? ?(?:and |with |y |con |but )?(-?\d+) ?"
    r"(?:is |are |as |as a |as the )?(?:left|remaining|remain|remainder|left ?over|leftover|extra|over|"
    r"sobran?|de resto|quedan?|resto|rem|r)\b.*$"
)
_LEFT_WORDS = r"(?:left|leftover|remain(?:s|ing)?|extra|sobran?|quedan?)"
_STORY = regex(rf"[a-z ]*(\d+)[a-z ,;.]*? (\d+)[a-z ]*?\b{_LEFT_WORDS}\b[a-z ]*")
_STORY_BACKWARDS = regex(
    rf"(\d+)[a-z ]*?\b{_LEFT_WORDS}\b[a-z ,;.]*? (\d+) (?:each|apiece|per|cada)\b[a-z ]*"
)
_NO_REMAINDER = regex(
    r"[ ,]*\b(?:(?:and |with |y |con )?(?:no|zero|0|without(?: a)?|sin|nothing|none)(?: ?(?:remainder|"
    r"remainders|rem|r|resto|left|leftover|left over|leftovers))+|"
    r"exactly|exact|exacto|evenly|even|sin resto)\b"
)


def grade_remainder(text: str, key: Key) -> Finding:
    """A quotient with its remainder. Raises Unreadable."""
    found = re.match(r"^\s*(-?\d+)\s*r\s*(\d+)\s*$", normal(key.answer).lower())
    if found is None:
        raise BadKey(key.answer)
    want = (Fraction(found.group(1)), Fraction(found.group(2)))
    text = re.sub(r"(?:(?<=[:,= ])|(?<=[\d ]r))o\b", "0", digits_for_letters(text)).strip()
    text = re.sub(r"\bleft[ -]over", "leftover", text.replace("w/", "with "))
    text = re.sub(r" ?\((r[a-z]* ?\d+)\)?$", r" \1", text)
    text = _HOW_OFTEN.sub("", _TIMES_IN.sub(" ", text))
    parts = sides(text)
    if len(parts) > 1 and parts[-1] and re.match(r"^\d", parts[-1]) and not re.search(r"[a-z] ?=", text):
        text = parts[-1]
    text = spoken(plain_marks(text) if "," not in text else re.sub(r"(?<=\d),(?=\d{3}\b)", "", text)).strip(
        " .!?"
    )
    text = re.sub(r" ?\b(?:groups?|apples|times)\b ?", " ", text).strip()
    if _NO_REMAINDER.search(text):
        text = _NO_REMAINDER.sub("", text).strip(" ,.")
        if not any(c.isdigit() for c in text):
            raise Unreadable("no-number")
        return _remainder(text, "0", want)
    if (told := _STORY_BACKWARDS.fullmatch(text)) is not None:  # 3 left over and 5 each
        return _remainder(told.group(2), told.group(1), want)
    if (found := _R.match(text)) is not None:
        if found.group(2) is None:
            if not found.group(3).strip() and re.search(r"left|leftover", text):
                return Finding(WRONG)
            raise Unreadable("unfinished")
        return _remainder(found.group(1), found.group(2), want)
    if (found := _LEFT.match(text)) is not None:
        return _remainder(found.group(1), found.group(2), want)
    if found := re.match(
        r"^(?:r|rem|remainder|resto) ?[:=]? ?(\d+)[ ,;]*(?:and |y )?q?(?:uotient)? ?[:=]? ?(\d+)$", text
    ):
        return _remainder(found.group(2), found.group(1), want)
    if (found := re.fullmatch(r"(-?\d+)(?: ?[,;] ?| and | y | | ?\()(-?\d+)\)?", text)) is not None:
        result = _remainder(found.group(1), found.group(2), want)
        return Finding(FORM, "remainder") if result.verdict == RIGHT else result
    if not any(c.isdigit() for c in text):
        raise Unreadable("no-number")
    if (told := _STORY.fullmatch(text)) is not None:  # each gets 5 with 3 left
        return _remainder(told.group(1), told.group(2), want)
    try:
        amounts = read_amounts(text, None, "remainder")
    except Unreadable as trouble:
        if trouble.kind in ("letter-alone", "no-number", "unknown-sign"):
            raise
        raise Unreadable("unfinished") from None
    if len(amounts) > 1:
        raise Unreadable("several-answers")
    value = amounts[0].value.rational()
    if value == want[0] and want[1] == 0 and re.search(r"left|over|rem", text) is None:
        return Finding(RIGHT if shape(amounts[0].tree) in WORKED_OUT else FORM, "work-out", amounts[0].tree)
    return Finding(WRONG, "", amounts[0].tree)


def _remainder(quotient: str, rest: str, want: tuple[Fraction, Fraction]) -> Finding:
    if len(quotient) > 30 or len(rest) > 30 or rest == "/":
        return Finding(WRONG)
    try:
        typed = (Fraction(quotient), Fraction(rest))
    except (ValueError, Undefined):
        try:
            amounts = read_amounts(quotient, None, "remainder")
        except Unreadable:
            return Finding(WRONG)
        typed = (amounts[0].value.rational() or Fraction(-1), Fraction(rest))
    return Finding(RIGHT if typed == want else WRONG)
