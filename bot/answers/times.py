"""Lengths of time and times of day."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache, lru_cache

from bot.answers.amounts import Amount, read_amounts
from bot.answers.around import alternatives, sides
from bot.answers.finding import Finding, all_the_same
from bot.answers.key import Key
from bot.answers.marks import digits_for_letters
from bot.answers.shapes import WORKED_OUT, shape
from bot.answers.spoken import spoken
from bot.answers.units import Unit, Wanted, wanted
from bot.maths import Unreadable
from bot.maths.patterns import regex
from bot.vocabulary import Verdict

RIGHT, FORM, UNIT, WRONG = Verdict.RIGHT, Verdict.FORM, Verdict.UNIT, Verdict.WRONG
_DAY = 24 * 60

_AM_PM = regex(r"(?<![a-z])(a|p) ?\.? ?m\b\.?|(?<=\d) ?(a|p)\b\.?$")
_MORNING = regex(r"\b(?:in the morning|this morning|de la manana|por la manana|de la madrugada|morning)\b")
_EVENING = regex(
    r"\b(?:in the (?:afternoon|evening)|at night|this (?:afternoon|evening)|tonight|de la (?:tarde|noche)|"
    r"afternoon|evening)\b"
)
_CLOCK = regex(
    r"^(?:at |las |la |a las )?(\d+) ?[:h.] ?(\d{1,2})(?: ?: ?\d\d)?(?: ?(?:h|hs|hrs?|hours?|o ?clock|min|"
    r"mins|minutes?))?$"
)
_TO_PAST = regex(
    r"^(?:a |las |la )?(\d+|quarter|half|1/4|1/2|cuarto)(?: minutes?| min| mins)? (to|til|till|until|before|"
    r"of|past|after)"
    r"(?: the hour)? (\d+)$"
)
_Y_MENOS = regex(r"^(?:las |la )?(\d+) ?(y|menos|-|\+) ?(\d+|cuarto|media|1/4|1/2)$")
_HOUR_ONLY = regex(r"^(?:at |las |la )?(\d+)(?: ?o ?clock| en punto)?$")
_AT = regex(r"^(?:.*[a-z] )?(?:at|a las?|is) (?=\d|quarter|half|noon|mid|[a-z]+ (?:past|to|y|menos) )")
_QUARTERS = {"quarter": 15, "1/4": 15, "cuarto": 15, "half": 30, "1/2": 30, "media": 30}
_HALF_HOUR = (
    (regex(r"\b(?:an |one |1 |una )?(?:hour|hora) (?:and|y) (?:a |1/2|half|media)(?:half)?\b"), "1.5 h"),
    (regex(r"\b(\d+) (?:hours?|hrs?|horas?) (?:and|y) (?:a half|half|media|1/2)\b"), r"\1 1/2 h"),
    (regex(r"\b(\d+) (?:hours?|hrs?|horas?) (?:and|y) (?:a quarter|quarter|cuarto|1/4)\b"), r"\1 1/4 h"),
    (regex(r"\bhalf (?:an? |of an )?hour\b|\bmedia hora\b"), "1/2 h"),
    (regex(r"\b(?:a )?quarter (?:of )?(?:an )?hour\b|\b(?:un )?cuarto de hora\b"), "1/4 h"),
    (
        regex(r"\b(?:three|3|tres) (?:quarters?|cuartos) (?:of |de )?(?:an |una )?(?:hour|hora)\b"),
        "3/4 h",
    ),
    (regex(r"\b(?:of|de) (?:an? |una? )?(?=hour|hora|day|dia)"), ""),
    (regex(r"(?<![\w/])(?:an?|una?) (?=hour|hora|minute|minuto)"), "1 "),
)


@dataclass(frozen=True, slots=True)
class _Wanted:
    """An expected time: seconds of a length, or minutes of the day; whether am or pm was stored."""

    length: Fraction | None
    clock: int | None
    half_known: bool


@lru_cache(maxsize=1024)
def _wanted(answer: str) -> _Wanted:
    text = answer.lower().strip()
    half, rest = _half(text)
    found = _CLOCK.match(rest) if ":" in rest else None
    if (half is not None or found) and (found or _HOUR_ONLY.match(rest)):
        hour, minute = (int(found.group(1)), int(found.group(2))) if found else (int(rest.split()[0]), 0)
        if half is not None:
            return _Wanted(None, (hour % 12 + half) * 60 + minute, True)
        return _Wanted(None, (hour * 60 + minute) % _DAY, hour > 12 or rest.startswith("0"))
    amounts = read_amounts(text, None, "time", _any_length())
    return _Wanted(_seconds(amounts[0]), None, False)


@cache
def _any_length() -> Wanted:
    """Hours are asked for; a spelling slip may stand for any length of time."""
    return replace(wanted("h"), parts=frozenset(wanted(one).unit for one in ("h", "min", "s")))


def _seconds(amount: Amount) -> Fraction | None:
    number = amount.value.rational()
    if number is None or amount.unit is None or amount.unit.kinds != (("time", 1),):
        return None
    return number * amount.unit.size


def _half(text: str) -> tuple[int | None, str]:
    """0 for am, 12 for pm, None if neither stands there; and the text without it."""
    if (found := _AM_PM.search(text)) is not None:
        half = 0 if (found.group(1) or found.group(2)) == "a" else 12
        return half, (text[: found.start()] + text[found.end() :]).strip(" ,.")
    for pattern, half in ((_MORNING, 0), (_EVENING, 12)):
        if (found := pattern.search(text)) is not None:
            return half, (text[: found.start()] + text[found.end() :]).strip(" ,.")
    return None, text


def grade_time(text: str, key: Key) -> Finding:
    """Grade a length of time or a time of day. Raises Unreadable."""
    want = _wanted(key.answer)
    if want.clock is None and want.length is None:
        raise ValueError(f"the stored time '{key.answer}' is neither a length of time nor a time of day")
    options = [one for one in alternatives(text) if one]
    if len(options) > 12:
        raise Unreadable("several-answers")
    if not options:
        raise Unreadable("no-number")
    findings = []
    for option in options:
        parts = sides(option)
        if not parts or not parts[-1]:
            raise Unreadable("unfinished")
        findings.append(_clock(parts[-1], want) if want.clock is not None else _length(parts[-1], want))
    if len(findings) > 1 and len({f.verdict for f in findings}) > 1:
        raise Unreadable("several-answers")
    return findings[0] if len(findings) == 1 else all_the_same(findings)


# Times of day -------------------------------------------------------------------------------------------


def _clock(text: str, want: _Wanted) -> Finding:
    assert want.clock is not None
    half, rest = _half(_AT.sub("", text))
    read = _time_of_day(rest)
    if read is None:
        if rest in ("", "am", "pm") or not any(c.isdigit() for c in rest):
            raise Unreadable("no-number")
        return _as_length(rest, half, want)
    minutes, is_24 = read
    if minutes is None:
        return Finding(WRONG)
    if half is not None and minutes < 13 * 60:
        minutes = (minutes % 720) + half * 60
        return Finding(
            RIGHT
            if minutes == want.clock or (not want.half_known and minutes % 720 == want.clock % 720)
            else WRONG
        )
    if is_24 or not want.half_known:
        same = minutes == want.clock or (not want.half_known and minutes % 720 == want.clock % 720)
        return Finding(RIGHT if same else WRONG)
    if minutes % 720 == want.clock % 720:
        return Finding(UNIT, "am-pm")
    return Finding(WRONG)


def _time_of_day(text: str) -> tuple[int | None, bool] | None:
    """Minutes of the day (None if there is no such time) and whether it is said in 24 hours."""
    text = text.strip(" .,")
    if text in ("noon", "midday", "mediodia", "12 noon", "twelve noon"):
        return 720, True
    if text in ("midnight", "medianoche", "12 midnight", "twelve midnight"):
        return 0, True
    text = text.replace("oclock", "o clock").replace("o'clock", "o clock")
    text = re.sub(
        r"\b(?:quarter|cuarto)\b",
        "15",
        re.sub(r"\b(?:half|media)\b", "30", re.sub(r"\b(?:a|un) (?=quarter|cuarto)", "", text)),
    )
    text = spoken(text)
    text = re.sub(r"\bclock$", "", text).strip()
    text = re.sub(r" o$", "", text).strip()
    if (found := _TO_PAST.match(text)) is not None:
        minutes, hour = _QUARTERS.get(found.group(1)) or int(found.group(1)[:4]), int(found.group(3)[:4])
        sign = -1 if found.group(2) in ("to", "til", "till", "until", "before", "of") else 1
        return _hm(hour, 0, found.group(3), sign * minutes)
    if (found := _Y_MENOS.match(text)) is not None:
        minutes, hour = _QUARTERS.get(found.group(3)) or int(found.group(3)[:4]), int(found.group(1)[:4])
        return _hm(hour, 0, found.group(1), minutes if found.group(2) in "y+" else -minutes)
    if (found := _CLOCK.match(text)) is not None:
        return _hm(int(found.group(1)[:5]), int(found.group(2)), found.group(1), 0)
    if (found := re.match(r"^(\d{1,2}) (\d\d)$", text)) is not None:
        return _hm(int(found.group(1)), int(found.group(2)), found.group(1), 0)
    if (found := re.match(r"^(\d{1,2})(\d\d)(?: ?h(?:ours|rs)?)?$", text)) is not None:
        return _hm(int(found.group(1)), int(found.group(2)), found.group(1), 0)
    if (found := _HOUR_ONLY.match(text)) is not None:
        return _hm(int(found.group(1)[:5]), 0, found.group(1), 0)
    return None


def _hm(hour: int, minute: int, written: str, shift: int) -> tuple[int | None, bool]:
    if hour > 24 or minute > 59 or abs(shift) > 59:
        return None, True
    return (hour * 60 + minute + shift) % _DAY, hour > 12 or hour == 0 or (
        written.startswith("0") and len(written) == 2
    )


def _as_length(text: str, half: int | None, want: _Wanted) -> Finding:
    """3 h 45 min for a time of day."""
    amounts = read_amounts(text, None, "time", _any_length())
    seconds = _seconds(amounts[0]) if len(amounts) == 1 else None
    if seconds is None or seconds % 60:
        if len(amounts) > 1:
            raise Unreadable("several-answers")
        return Finding(WRONG)
    assert want.clock is not None
    minutes = int(seconds / 60) + (half or 0) * 60
    if minutes == want.clock and (half is not None or minutes >= 13 * 60):
        return Finding(RIGHT)
    return Finding(UNIT, "am-pm") if minutes % 720 == want.clock % 720 else Finding(WRONG)


# Lengths ------------------------------------------------------------------------------------------------

_COLON = regex(r"^(\d+) ?: ?(\d{1,2})(?: ?: ?(\d\d))?(?: ?(?:h|hs|hrs?|hours?|horas?))?$")
_COLON_MINUTES = regex(r"^(\d+) ?: ?(\d{1,2}) ?(?:m|min|mins|minutes?)$")
_STUCK = regex(r"(?<=\d)(?=h|hr|hrs|m|min|mins|s)|(?<=h)(?=\d)|(?<=hr)(?=\d)|(?<=hrs)(?=\d)")
_M = regex(r"(?<=\d) ?m\b")


def _length(text: str, want: _Wanted) -> Finding:
    assert want.length is not None
    text = digits_for_letters(text)
    half, _ = _half(text) if re.search(r"\d ?[ap]\.? ?m\b", text) else (None, "")
    if half is not None:
        return Finding(WRONG)
    if (found := _COLON.match(text)) or (found := _COLON_MINUTES.match(text)):
        hours, minutes = int(found.group(1)[:25]), int(found.group(2))
        seconds = Fraction(hours * 3600 + minutes * 60)
        if found.re is _COLON and found.group(3):
            seconds += int(found.group(3))
        if seconds == want.length:
            return Finding(FORM, "minutes") if minutes > 59 else Finding(RIGHT)
        return Finding(WRONG)
    if re.search(r"\d ?:$", text) or re.match(r"^: ?\d", text):
        raise Unreadable("unfinished")
    for pattern, plainly in _HALF_HOUR:
        text = pattern.sub(plainly, text)
    text = _M.sub(" min", text)
    text = _STUCK.sub(" ", text)
    amounts = read_amounts(text, None, "time", _any_length())
    if len(amounts) > 1:
        worth = {_seconds(amount) for amount in amounts}
        if len(worth) > 1:
            if all(amount.unit is not None and amount.unit.kinds == (("time", 1),) for amount in amounts):
                return Finding(WRONG)
            raise Unreadable("several-answers")
    return _amount_of_time(amounts[0], want.length)


def _amount_of_time(amount: Amount, length: Fraction) -> Finding:
    number = amount.value.rational()
    if number is None:
        return Finding(WRONG)
    if amount.unit is None:
        if amount.noun is None and number in (length / 60, length / 3600):
            return Finding(UNIT, "unit-missing", amount.tree, unit=amount.unit)
        return Finding(
            UNIT if number in (length / 60, length / 3600) else WRONG,
            "unit-wrong",
            amount.tree,
            unit=amount.unit,
        )
    seconds = _seconds(amount)
    if seconds == length:
        if (
            amount.summed
            or shape(amount.tree) not in WORKED_OUT
            or any(shape(t) not in WORKED_OUT for t, _ in amount.others)
        ):
            return Finding(FORM, "work-out", amount.tree, unit=amount.unit)
        if amount.others and _too_many_minutes(amount):
            return Finding(FORM, "minutes", amount.tree, unit=amount.unit)
        return Finding(RIGHT, "", amount.tree, unit=amount.unit)
    if not amount.others and number in (length / 60, length / 3600):
        return Finding(UNIT, "unit-wrong", amount.tree, unit=amount.unit)
    return Finding(WRONG, "", amount.tree, unit=amount.unit)


def _too_many_minutes(amount: Amount) -> bool:
    above: Unit | None = amount.unit
    for tree, unit in amount.others:
        from bot.maths import value

        if above is not None and unit.size < above.size and value(tree) >= above.size / unit.size:
            return True
        above = unit
    return False
