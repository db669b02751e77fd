"""Charts for grown-ups: a week, the year so far, what a student stands firm on, unit by unit.

What is written in them comes in as words of the reader's language; English stands in where none are given.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from fractions import Fraction

from bot.course.figures.scales import nice_step, ticks
from bot.pictures.canvas import CLAY, FAINT, MARGIN, PENCIL, TEAL, WIDTH, Canvas, Point
from bot.pictures.labels import room, wrap

_SMALL = 14.0

SIGNS: Mapping[str, str] = {"d": "●", "p": "◐", "t": "■", "n": "○", "o": "–", "f": "", ".": "·"}
"""A day in one sign: done, partly, a test, not opened, a day off, a free weekday, still to come."""

WORDS: Mapping[str, str] = {
    "d": "done",
    "p": "partly done",
    "t": "test",
    "n": "not opened",
    "o": "day off",
    ".": "to come",
    "first": "first go",
    "later": "later try",
    "unsolved": "still open",
    "rest": "not reached",
    "lessons": "lessons",
    "done": "done",
    "planned": "planned",
    "finish": "probable finish",
    "steady": "steady",
    "shaky": "shaky",
    "not met": "not met",
}
DAY_NAMES = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTH_NAMES = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


@dataclass(frozen=True, slots=True)
class Week:
    """One week. `signs` has a letter a day from Monday (see SIGNS); `days` are (date, first try, later try, unsolved,
    not reached) in items, for the days that had any."""

    monday: date
    signs: str = ""
    days: Sequence[tuple[date, int, int, int, int]] = ()
    name: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    day_names: Sequence[str] = DAY_NAMES


@dataclass(frozen=True, slots=True)
class Year:
    """The year so far. `done` and `planned` are (date, lessons by then); the finish is a range, never one day."""

    start: date
    end: date
    lessons: int
    done: Sequence[tuple[date, int]]
    planned: Sequence[tuple[date, int]] = ()
    finish_first: date | None = None
    finish_last: date | None = None
    name: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    month_names: Sequence[str] = MONTH_NAMES


@dataclass(frozen=True, slots=True)
class SkillMap:
    """What a student stands firm on: for each unit its title and a state for each skill, in the order of the course
    ("steady", "shaky", "not met")."""

    units: Sequence[tuple[str, Sequence[str]]]
    name: str = ""
    words: Mapping[str, str] = field(default_factory=dict)


def sign_row(signs: str) -> str:
    """A week as a row of signs, for a line of text; free weekdays are left out."""
    return " ".join(SIGNS[sign] for sign in signs if SIGNS.get(sign))


def week(data: Week) -> Canvas:
    """A column for each day: its sign, and how its items went as a stacked bar."""
    words = {**WORDS, **data.words}
    canvas = Canvas()
    columns = 7 if any(sign not in "f" for sign in data.signs[5:7]) or not data.signs else 5
    weekend = max(((day - data.monday).days for day, *counts in data.days if sum(counts)), default=0)
    columns = max(columns, weekend + 1 if weekend < 7 else 7)
    slot = (WIDTH - 2 * MARGIN) / columns
    most = max((sum(counts) for _, *counts in data.days), default=0)
    floor = MARGIN + 62 + (150 if most else 0)
    for n in range(columns):
        x = MARGIN + (n + 0.5) * slot
        canvas.write(data.day_names[n], (x, MARGIN), down=0, size=_SMALL)
        day_sign(canvas, data.signs[n : n + 1] or ".", (x, MARGIN + 36))
    for day, *counts in data.days:
        n = (day - data.monday).days
        if 0 <= n < columns and most:
            _stack(canvas, counts, MARGIN + (n + 0.5) * slot, floor, 120 / most)
    if most:
        canvas.line((MARGIN, floor), (WIDTH - MARGIN, floor), 2)
        parts = zip(("first", "later", "unsolved", "rest"), _FILLS, strict=True)
        _legend_boxes(canvas, [(words[name], fill) for name, fill in parts])
    _legend_signs(canvas, [(sign, words[sign]) for sign in "dptno." if sign in data.signs[:columns]])
    return canvas.finish()


_FILLS = ("shade", "stripe", "paper", "dots")


def _stack(canvas: Canvas, counts: Sequence[int], x: float, floor: float, unit: float) -> None:
    y = floor
    for count, fill in zip(counts, _FILLS, strict=True):
        if count:
            canvas.rectangle(x - 14, y - count * unit, 28, count * unit, fill=fill, width=1.6)
            y -= count * unit
    if sum(counts):
        canvas.write(str(sum(counts)), (x, y - 6), down=1, size=_SMALL)


def day_sign(canvas: Canvas, sign: str, at: Point, size: float = 9.0) -> None:
    """A day's sign, told apart by its shape."""
    x, y = at
    match sign:
        case "d":
            canvas.disc(at, size, fill="teal", ink=TEAL)
        case "p":
            canvas.disc(at, size, fill="paper", ink=TEAL)
            canvas.arc(at, size, 90, 270, wedge=True, fill="teal", width=0, ink=TEAL)
        case "t":
            canvas.rectangle(x - size * 0.9, y - size * 0.9, size * 1.8, size * 1.8, fill="teal", ink=TEAL)
        case "n":
            canvas.disc(at, size, fill="paper", ink=PENCIL)
        case "o":
            canvas.line((x - size * 0.8, y), (x + size * 0.8, y), 2.6, PENCIL)
        case ".":
            canvas.disc(at, 2.4, fill="pencil", width=0)


def _legend_signs(canvas: Canvas, entries: Sequence[tuple[str, str]]) -> None:
    x, y = MARGIN + 8, canvas.height + 22
    for sign, text in entries:
        if x + 20 + room(text, _SMALL).width > WIDTH - MARGIN:
            x, y = MARGIN + 8, y + 24
        day_sign(canvas, sign, (x, y), 7)
        x = canvas.write(text, (x + 14, y), across=0, size=_SMALL).right + 22


def _legend_boxes(canvas: Canvas, entries: Sequence[tuple[str, str]]) -> None:
    x, y = MARGIN, canvas.height + 22
    for text, fill in entries:
        if x + 22 + room(text, _SMALL).width > WIDTH - MARGIN:
            x, y = MARGIN, y + 24
        canvas.rectangle(x, y - 7, 14, 14, fill=fill, width=1.4)
        x = canvas.write(text, (x + 20, y), across=0, size=_SMALL).right + 14


def year(data: Year) -> Canvas:
    """Lessons done against the plan, month by month, and the range in which the course probably ends."""
    words = {**WORDS, **data.words}
    canvas = Canvas()
    last = max(data.end, data.finish_last or data.end)
    left, top, tall = MARGIN + 36.0, MARGIN + 24.0, 200.0
    wide = WIDTH - MARGIN - 6 - left

    def spot(day: date, lessons: float) -> Point:
        across = (day - data.start) / (last - data.start or timedelta(days=1))
        return (left + across * wide, top + tall * (1 - lessons / max(data.lessons, 1)))

    canvas.write(words["lessons"], (MARGIN / 2, MARGIN / 2), across=0, down=0, size=_SMALL)
    for lessons in ticks(Fraction(0), Fraction(data.lessons), nice_step(Fraction(max(data.lessons, 1)), 7)):
        y = spot(data.start, float(lessons))[1]
        canvas.line((left, y), (left + wide, y), 1, FAINT)
        canvas.write(str(lessons), (left - 6, y), across=1, size=_SMALL)
    _months(canvas, data, last, spot(data.start, 0)[1], left, wide)
    if data.finish_first and data.finish_last:
        one, other = spot(data.finish_first, data.lessons), spot(data.finish_last, data.lessons)
        canvas.rectangle(one[0], top, max(other[0] - one[0], 4), tall, fill="back", width=0)
    for line, ink, width, dash in ((data.planned, PENCIL, 2.0, "dash"), (data.done, TEAL, 3.4, "")):
        if len(line) > 1:
            canvas.shape([spot(*p) for p in line], closed=False, ink=ink, width=width, dash=dash)
    if data.done:
        canvas.disc(spot(*data.done[-1]), 5, fill=TEAL, width=0)
    y = canvas.height + 22
    x = MARGIN
    entries = [("done", TEAL, 3.4, "")] + ([("planned", PENCIL, 2.0, "dash")] if data.planned else [])
    for name, ink, width, dash in entries:
        canvas.line((x, y), (x + 26, y), width, ink, dash)
        x = canvas.write(words[name], (x + 33, y), across=0, size=_SMALL).right + 18
    if data.finish_first:
        canvas.rectangle(x, y - 7, 18, 14, fill="back", width=1)
        canvas.write(words["finish"], (x + 25, y), across=0, size=_SMALL)
    return canvas.finish()


def _months(canvas: Canvas, data: Year, last: date, floor: float, left: float, wide: float) -> None:
    days = (last - data.start).days or 1
    canvas.line((left, floor), (left + wide, floor), 2)
    month = date(data.start.year, data.start.month, 1)
    n = 0 if data.start.day < 15 else 1  # names at every second month, from the first whole one
    every = 1 if days < 200 else 2
    while month <= last:
        x = left + max(0, (month - data.start).days) / days * wide
        canvas.line((x, floor), (x, floor + 5), 1.4)
        room_before = month > data.start or data.start.day < 15  # else the next month's name stands too near
        if n % every == 0 and room_before and x < left + wide - 12:
            canvas.write(data.month_names[month.month - 1], (x, floor + 9), across=0.3, down=0, size=_SMALL)
        month = date(month.year + month.month // 12, month.month % 12 + 1, 1)
        n += 1


def skill_map(data: SkillMap) -> Canvas:
    """A row for each unit: its title and a mark for each skill, full, half or hollow."""
    words = {**WORDS, **data.words}
    canvas = Canvas()
    y = MARGIN
    across = 15
    step = (WIDTH - 2 * MARGIN) / across
    for title, states in data.units:
        for line in wrap(title, WIDTH - 2 * MARGIN):
            canvas.write(line, (MARGIN, y), across=0, down=0)
            y += 18
        y += 12
        for n, state in enumerate(states):
            row, column = divmod(n, across)
            _state(canvas, state, (MARGIN + (column + 0.5) * step, y + row * 22))
        y += 22 * max(1, -(-len(states) // across)) + 2
    y += 6
    canvas.line((MARGIN, y - 8), (WIDTH - MARGIN, y - 8), 1, FAINT)
    x = MARGIN + 8
    for state in ("steady", "shaky", "not met"):
        count = sum(list(states).count(state) for _, states in data.units)
        _state(canvas, state, (x, y + 12))
        x = canvas.write(f"{words[state]}: {count}", (x + 14, y + 12), across=0, size=_SMALL).right + 22
    return canvas.finish()


def _state(canvas: Canvas, state: str, at: Point) -> None:
    match state:
        case "steady":
            canvas.disc(at, 7.5, fill="teal", ink=TEAL)
        case "shaky":
            canvas.disc(at, 7.5, fill="paper", ink=CLAY)
            canvas.arc(at, 7.5, 180, 360, wedge=True, fill="clay", width=0, ink=CLAY)
        case _:
            canvas.disc(at, 7.5, fill="paper", ink=PENCIL, width=1.4)
