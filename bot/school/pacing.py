"""Where a student's year is heading: lesson days that took place, what is left, and when it may be done."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from sqlalchemy.orm import Session

from bot.planner.calendar import Finish, SchoolCalendar, finish, is_light_day, school_days
from bot.planner.history import History
from bot.planner.pace import HalfYear, days_behind, days_needed, half_year_look
from bot.records import days
from bot.records.days import SchoolDay
from bot.records.people import Student
from bot.school import dates
from bot.school.history import history_of
from bot.school.planning import course_over
from bot.school.school import School
from bot.school.wishes import WishKind, in_force, of_kind

WEEKS = 6
"""Weeks that the pace so far is taken from."""
A_YEAR = timedelta(days=365)
"""When a one-year course is wanted to be done, counted from its first day, unless the family says otherwise."""

ENDING = 15
"""Lessons from the end at which it is looked up whether the course is over; the last may all be left out."""
HALF = 90
"""School days after which half of a school year is behind a student (180 are common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Heading:
    """Lesson days of the last weeks that were planned and that took place, those still to come, and the range."""

    planned: int
    taken: int
    left: int
    range: Finish | None
    history: History
    calendar: SchoolCalendar


def heading(s: Session, school: School, student: Student, on: date) -> Heading:
    """Where the year is heading, as it looks on the morning of a day."""
    calendar = dates.calendar_of(s, student, on)
    since = on - timedelta(weeks=WEEKS)
    if student.first_day is not None:
        since = max(since, student.first_day)
    planned = sum(
        not is_light_day(calendar, day) for day in school_days(calendar, since, on - timedelta(days=1))
    )
    taken = _lesson_days(s, student, since, on)
    history = history_of(s, school, student, on, in_force(s, student, on), calendar)
    left = days_needed(school.syllabus, history)
    return Heading(planned, taken, left, finish(calendar, on, left, planned, taken), history, calendar)


def _lesson_days(s: Session, student: Student, since: date, before: date) -> int:
    past = days.days_between(s, student.id, since, before - timedelta(days=1))
    return sum(1 for day in past if day.notes.get("lesson_met") or day.notes.get("handed_in"))


def wanted_finish(s: Session, student: Student, on: date) -> tuple[date | None, bool]:
    """The day by which the family would like to be done, and whether they said so themselves."""
    said = [wish.what.get("date") for wish in of_kind(in_force(s, student, on), WishKind.FINISH_BY)]
    if said and isinstance(said[-1], str):
        return date.fromisoformat(said[-1]), True
    return (student.first_day + A_YEAR if student.first_day else None), False


def behind(s: Session, student: Student, on: date) -> int:
    """Lesson days that the calendar held up to yesterday and that did not take place."""
    if student.first_day is None or student.first_day >= on:
        return 0
    calendar = dates.calendar_of(s, student, on)
    taken = _lesson_days(s, student, student.first_day, on)
    return days_behind(calendar, student.first_day, on, taken)


def half_year(s: Session, school: School, student: Student, on: date) -> tuple[HalfYear, date] | None:
    """The look at half-year, and the day by which the family wants to be done; None before the first day."""
    wanted, _ = wanted_finish(s, student, on)
    if wanted is None:
        return None
    now = heading(s, school, student, on)
    look = half_year_look(school.syllabus, now.history, now.calendar, on, wanted, now.planned, now.taken)
    return look, wanted


def is_half_year(s: Session, student: Student, day: SchoolDay) -> bool:
    """Whether a day is the ninetieth that a student started."""
    return day.started_at is not None and days.day_number(s, student.id, day.date) == HALF - 1


def is_over(s: Session, school: School, student: Student, on: date) -> bool:
    """Whether the course is done for a student; looked up only near its end."""
    if student.lesson <= len(school.syllabus.lessons) - ENDING:
        return False
    wishes = in_force(s, student, on)
    return course_over(school, history_of(s, school, student, on, wishes, dates.calendar_of(s, student, on)))
