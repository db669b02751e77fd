"""A student's dates and hours: the household's calendar, and what the clocks show there."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from sqlalchemy.orm import Session

from bot.planner.calendar import SchoolCalendar, is_school_day, moment, next_school_day
from bot.planner.pace import is_off_season_day
from bot.records.people import Student
from bot.records.wishes import Wish, wishes_for
from bot.school.wishes import WishKind

LIGHT = "2"
"""In a student's week: a school day without a new lesson; "1" is a lesson day, "0" a free one."""


def local(student: Student, at: datetime) -> datetime:
    """What the household's clocks show."""
    return at.astimezone(ZoneInfo(student.zone))


def today(student: Student, at: datetime) -> date:
    """The household's date."""
    return local(student, at).date()


def hour(minutes: int) -> time:
    """Minutes after midnight as a time of day."""
    return time(minutes // 60 % 24, minutes % 60)


def at_hour(student: Student, on: date, minutes: int) -> datetime:
    """The moment at which the household's clocks show that many minutes after midnight."""
    return moment(on, hour(minutes), student.zone)


def calendar_of(s: Session, student: Student, around: date) -> SchoolCalendar:
    """The student's calendar, with days off from 200 days before to 400 after a date."""
    wishes = wishes_for(
        s,
        student.id,
        student.household,
        student.tutor,
        around - timedelta(days=200),
        around + timedelta(days=400),
    )
    return calendar_with(student, wishes, around)


def calendar_with(student: Student, wishes: list[Wish], around: date) -> SchoolCalendar:
    """The student's calendar from wishes that were looked up already."""
    light = student.week.find(LIGHT)
    off, sick, works = _free_and_not(wishes, around)
    return SchoolCalendar(
        weekdays=sum(1 << n for n, sign in enumerate(student.week) if sign != "0"),
        light=None if light < 0 else light,
        country=student.country or None,
        days_off=off,
        sick=sick,
        works_on=works,
    )


def _free_and_not(
    wishes: list[Wish], around: date
) -> tuple[frozenset[date], frozenset[date], frozenset[date]]:
    """Days off, sick days, and school days in spite of a holiday; of two wishes for a day the newer holds."""
    off: set[date] = set()
    sick: set[date] = set()
    works: set[date] = set()
    for wish in sorted(wishes, key=lambda each: each.id):
        if wish.kind not in (WishKind.DAYS_OFF, WishKind.SICK, WishKind.SCHOOL_ON):
            continue
        first = max(wish.starts, around - timedelta(days=200))
        last = min(wish.ends or around + timedelta(days=400), around + timedelta(days=400))
        about = {first + timedelta(days=n) for n in range((last - first).days + 1)}
        if wish.kind == WishKind.SCHOOL_ON:
            off -= about
            sick -= about
            works |= about
        else:
            works -= about
            (off if wish.kind == WishKind.DAYS_OFF else sick).update(about)
    return frozenset(off), frozenset(sick), frozenset(works)


def is_off_season(s: Session, student: Student, on: date, *, over: bool = False) -> bool:
    """Whether a date without school is one of the ten-minute days that somebody wanted for the off-season.

    `over`: the course is done, so that no day has school any more.
    """
    if not is_off_season_day(on) or (has_school(s, student, on) and not over):
        return False
    wishes = wishes_for(s, student.id, student.household, student.tutor, on, on)
    return _wanted(wishes) and not any(wish.kind == WishKind.SICK for wish in wishes)


def off_season_wanted(s: Session, student: Student, on: date) -> bool:
    """Whether somebody of the family wants the off-season; of two wishes the newer holds."""
    return _wanted(wishes_for(s, student.id, student.household, student.tutor, on, on))


def _wanted(wishes: Iterable[Wish]) -> bool:
    wanted = [wish.what.get("on") for wish in wishes if wish.kind == WishKind.OFF_SEASON]
    return bool(wanted and wanted[-1])


def monday_of(on: date) -> date:
    """The Monday of a date's week."""
    return on - timedelta(days=on.weekday())


def next_day(s: Session, student: Student, after: date) -> date | None:
    """The student's next school day later than a date."""
    return next_school_day(calendar_of(s, student, after), after)


def has_school(s: Session, student: Student, on: date) -> bool:
    """Whether a date is a school day for the student."""
    return is_school_day(calendar_of(s, student, on), on)
