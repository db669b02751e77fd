"""Pieces that several papers share: how long, how set, charts in the reader's language, tables."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from babel.dates import format_date

from bot.chat.words import Text, Words
from bot.messages import MyWeek, WeekOf, WeekPicture, YearSoFar

MARKS = {"bold": "**", "italic": "*"}


def duration(words: Words, minutes: int) -> Text:
    """Minutes in words."""
    return words("paper-time", hours=minutes // 60, minutes=minutes % 60)


def typed(text: str) -> str:
    """What somebody typed, for a typesetter: without what would be read as a mark."""
    return text.replace("`", "'").replace("*", "·")


def look(words: Words, size: str, big: bool, made: str, footer: str = "") -> dict[str, object]:
    """How a paper is set."""
    return {"size": size, "big": big, "language": words.language, "footer": footer, "made": made}


def chart_words(words: Words) -> dict[str, str]:
    """The words of charts in the reader's language, by the charts' own keys."""
    keys = ("first", "later", "unsolved", "rest", "lessons", "done", "planned", "finish", "steady", "shaky")
    found = {key: words.label(f"chart-{key}") for key in keys}
    signs = {"d": "day-done", "p": "partly", "t": "test", "n": "not-opened", "o": "off", ".": "to-come"}
    found |= {sign: words.label(f"chart-{key}") for sign, key in signs.items()}
    return {**found, "not met": words.label("chart-not-met")}


def day_names(words: Words) -> list[str]:
    """Short names of the weekdays, Monday first."""
    monday = date(2024, 1, 1)
    return [format_date(monday + timedelta(days=n), "EEE", locale=words.locale) for n in range(7)]


def month_names(words: Words) -> list[str]:
    """Short names of the months."""
    return [format_date(date(2024, n, 1), "MMM", locale=words.locale) for n in range(1, 13)]


def year_chart(words: Words, year: YearSoFar, name: str) -> dict[str, object]:
    """A year as the year chart takes it."""
    return {
        "start": year.start,
        "end": year.end,
        "lessons": year.lessons,
        "done": [list(each) for each in year.done],
        "finish_first": year.early or None,
        "finish_last": year.late or None,
        "name": name,
        "words": chart_words(words),
        "month_names": month_names(words),
    }


def marked(text: Text) -> str:
    """A text for a typesetter, its marks written out; only for words of our own."""
    return "".join(f"{MARKS.get(mark, '')}{words}{MARKS.get(mark, '')}" for mark, words, _ in text.pieces)


def table(
    heading: str, head: Sequence[str], rows: Sequence[Sequence[str]], shares: Sequence[float], note: str = ""
) -> dict[str, object]:
    return {
        "heading": heading,
        "head": list(head),
        "rows": [list(row) for row in rows],
        "shares": list(shares),
        "note": note,
    }


def week_chart(words: Words, week: WeekOf | WeekPicture | MyWeek) -> dict[str, object]:
    """A week as the week chart takes it."""
    return {
        "monday": week.monday,
        "signs": week.signs,
        "days": [list(day) for day in week.days],
        "name": week.name,
        "words": chart_words(words),
        "day_names": day_names(words),
    }
