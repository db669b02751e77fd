"""Dates and hours as people type them: "tomorrow", "fri", "24 dec - 2 jan", "mon-thu", "7:30 pm"."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from datetime import date, timedelta

_WEEKDAYS = (
    ("mon", "monday", "lun", "lunes"),
    ("tue", "tues", "tuesday", "mar", "martes"),
    ("wed", "weds", "wednesday", "mie", "miercoles"),
    ("thu", "thur", "thurs", "thursday", "jue", "jueves"),
    ("fri", "friday", "vie", "viernes"),
    ("sat", "saturday", "sab", "sabado"),
    ("sun", "sunday", "dom", "domingo"),
)
_MONTHS = (
    ("jan", "january", "ene", "enero"),
    ("feb", "february", "febrero"),
    ("mar", "march", "marzo"),
    ("apr", "april", "abr", "abril"),
    ("may", "mayo"),
    ("jun", "june", "junio"),
    ("jul", "july", "julio"),
    ("aug", "august", "ago", "agosto"),
    ("sep", "sept", "september", "septiembre", "set"),
    ("oct", "october", "octubre"),
    ("nov", "november", "noviembre"),
    ("dec", "december", "dic", "diciembre"),
)
WEEKDAY = {name: n for n, names in enumerate(_WEEKDAYS) for name in names}
MONTH = {name: n for n, names in enumerate(_MONTHS, start=1) for name in names}
_TODAY = {"today", "hoy"}
_TOMORROW = {"tomorrow", "manana"}
_YESTERDAY = {"yesterday", "ayer"}
_TO = {"-", "–", "—", "to", "until", "till", "a", "al", "hasta"}
_FROM = {"from", "on", "del", "desde", "el"}
_YEAR = re.compile(r"20\d\d")
_ISO = re.compile(r"\d{4}-\d{2}-\d{2}")
_DAY = re.compile(r"(\d{1,2})(?:st|nd|rd|th|\.)?")
_HOUR = re.compile(r"(\d{1,2})(?:[:.h](\d{2}))?\s*(h|am|pm|a\.m\.|p\.m\.)?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of days, both ends in."""

    first: date
    last: date


def fold(text: str) -> str:
    """Small letters without accents, for comparing what people type."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(letter for letter in apart if not unicodedata.combining(letter))


def take_dates(text: str, today: date, *, past: bool = False) -> tuple[Span | None, str]:
    """Take a date or a stretch of days out of a text; give it and what is left of the text.

    Days without a year are the next such day from `today` on; with `past` the last one up to today. A day
    that doesn't exist ("31 feb") is left in the text.
    """
    words = re.sub(r"(?<=[^\d\s-])\s*[-–—]\s*(?=\S)|(?<=\d)\s*[-–—]\s+", " - ", text).split()
    words = [part for word in words for part in _apart(word)]
    for at in range(len(words)):
        first = _date_at(words, at, today, past)
        if first is None:
            continue
        start, used = first
        end = at + used
        last = start
        if end < len(words) and fold(words[end]) in _TO:
            second = _date_at(words, end + 1, start, False)
            if second is not None:
                last, end = second[0], end + 1 + second[1]
        before = words[: at - 1] if at and fold(words[at - 1]) in _FROM else words[:at]
        return Span(start, last), " ".join(before + words[end:])
    return None, " ".join(words)


def _apart(word: str) -> list[str]:
    """Take "mon-thu" and "24-28" apart, but not an ISO date."""
    if _ISO.fullmatch(word) or "-" not in word.strip("-"):
        return [word]
    parts = word.split("-")
    if len(parts) == 2 and all(fold(part) in WEEKDAY or _DAY.fullmatch(part) for part in parts):
        return [parts[0], "-", parts[1]]
    return [word]


def _date_at(words: list[str], at: int, today: date, past: bool) -> tuple[date, int] | None:
    """A date that starts at a word, and how many words it takes."""
    if at >= len(words):
        return None
    word = fold(words[at]).strip(",")
    after = fold(words[at + 1]).strip(",") if at + 1 < len(words) else ""
    if _ISO.fullmatch(word):
        try:
            return date.fromisoformat(word), 1
        except ValueError:
            return None
    for names, shift in ((_TODAY, 0), (_TOMORROW, 1), (_YESTERDAY, -1)):
        if word in names:
            return today + timedelta(days=shift), 1
    day = _DAY.fullmatch(word)
    if day and after == "de" and at + 2 < len(words):  # "24 de diciembre"
        return _in_year(words, at, 3, _on(int(day[1]), fold(words[at + 2]), today, past))
    if day and after in MONTH:
        return _in_year(words, at, 2, _on(int(day[1]), after, today, past))
    if day and after in _TO and at + 3 < len(words) and fold(words[at + 3]) in MONTH:  # 24 - 28 dec
        return _with(_on(int(day[1]), fold(words[at + 3]), today, past), 1)
    if word in MONTH and (day := _DAY.fullmatch(after)):
        return _in_year(words, at, 2, _on(int(day[1]), word, today, past))
    if word in WEEKDAY:
        ahead = (WEEKDAY[word] - today.weekday()) % 7
        return today + timedelta(days=ahead - 7 if past and ahead else ahead), 1
    return None


def _in_year(words: list[str], at: int, used: int, found: date | None) -> tuple[date, int] | None:
    """A day and month with the year that may stand behind it ("1 aug 2027", "1 de agosto de 2027")."""
    if found is None:
        return None
    end = at + used
    if end + 1 < len(words) and fold(words[end]) in ("de", "del"):
        end += 1
    if end < len(words) and _YEAR.fullmatch(words[end].strip(",")):
        try:
            return found.replace(year=int(words[end].strip(","))), end + 1 - at
        except ValueError:
            return None
    return found, used


def _with(found: date | None, used: int) -> tuple[date, int] | None:
    return (found, used) if found else None


def _on(day: int, month: str, today: date, past: bool) -> date | None:
    """That day and month, in the year that fits best; None where it doesn't exist."""
    if month not in MONTH:
        return None
    order = (0, -1, 1) if past else (0, 1, 2, 3, 4)
    for shift in order:
        try:
            found = date(today.year + shift, MONTH[month], day)
        except ValueError:
            continue
        if (found <= today) if past else (found >= today):
            return found
    return None


def take_hour(text: str) -> tuple[int | None, str]:
    """Take an hour out of the end of a text; give it as minutes after midnight, and what is left."""
    found = re.search(rf"(?:^|\s)({_HOUR.pattern})\s*$", text.strip(), re.IGNORECASE)
    if not found:
        return None, text
    hour, minute, half = int(found[2]), int(found[3] or 0), fold(found[4] or "").replace(".", "")
    if half in ("am", "pm"):
        if not 1 <= hour <= 12:
            return None, text
        hour = hour % 12 + (12 if half == "pm" else 0)
    if hour > 23 or minute > 59:
        return None, text
    return hour * 60 + minute, text.strip()[: found.start()].strip()


def take_week(text: str) -> str | None:
    """A school week ("mon-thu light fri") as seven signs from Monday on: 1 school, 2 light, 0 free.

    None where a word isn't a day, or there is more than one light day.
    """
    words = re.sub(r"\s*[-–—]\s*", "-", text.replace(",", " ")).split()
    signs = ["0"] * 7
    light = False
    for word in map(fold, words):
        if word in ("light", "ligero", "suave"):
            light = True
            continue
        ends = word.split("-")
        if not word or len(ends) > 2 or any(end not in WEEKDAY for end in ends):
            return None
        first, last = WEEKDAY[ends[0]], WEEKDAY[ends[-1]]
        for n in range(first, last + 1 if last >= first else last + 8):
            signs[n % 7] = "2" if light else "1"
        light = False
    if light or signs.count("2") > 1 or not any(sign != "0" for sign in signs):
        return None
    return "".join(signs)
