"""The week's end: a short letter to each parent, the evening after the week's last school day."""

from __future__ import annotations

from datetime import date, datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import Message, WeekLetter, WeekLetterLine
from bot.records import days, outbox, people
from bot.records.people import Student
from bot.school import dates
from bot.school.school import School
from bot.school.weekly import WEEK, week_of

HELD = timedelta(days=2)
"""A letter that couldn't be sent for so long, since a child held the phone or we were away, isn't sent any more."""


def letter_day(student: Student, monday: date) -> date:
    """The day whose evening brings a week's letter: the one after the week's last school day, Sunday at the latest.

    So it doesn't come in one evening with the digest, unless school is on Sundays.
    """
    last = max((n for n, sign in enumerate(student.week) if sign != "0"), default=4)
    return monday + timedelta(days=min(6, last + 1))


def send(s: Session, school: School, student: Student, now: datetime) -> list[Message]:
    """The letters of a week whose hour has come, once to each parent; nothing for a week without a school day."""
    local = dates.local(student, now)
    monday = _week_due(student, local.date(), local.hour * 60 + local.minute)
    if monday is None:
        return []
    waiting = [
        (parent, key)
        for parent in people.parents_of(s, student.id)
        if parent.speaking is None
        and not outbox.key_exists(s, key := f"week/{student.id}/{monday}/{parent.chat}")
    ]
    if not waiting:
        return []
    opened = days.days_between(s, student.id, monday, monday + timedelta(days=6))
    if not any(day.started_at is not None for day in opened):
        return []
    week = week_of(s, school, student, monday, now)
    return [
        WeekLetterLine(to=each.chat, key=key, student=student.id, name=student.name, monday=week.monday)
        if people.shares_phone(s, each.chat)
        else WeekLetter(to=each.chat, key=key, week=week)
        for each, key in waiting
    ]


def _week_due(student: Student, today: date, minute: int) -> date | None:
    """The Monday of the week whose letter is due now, this week's or the last one's; None: of neither."""
    for monday in (dates.monday_of(today), dates.monday_of(today) - WEEK):
        on = letter_day(student, monday)
        if on + HELD >= today >= on and (today > on or minute >= student.digest_at):
            return monday
    return None
