"""The evening: close the day, fold it into what is believed, and tell each parent how it went."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy.orm import Session

from bot.messages import DigestLine, Message, Reminder
from bot.records import days, people
from bot.records.days import SchoolDay
from bot.records.people import Reachable, Student
from bot.school.digest import digest, in_full, week_signs
from bot.school.school import School
from bot.school.standing import COUNTED, learn_from_day
from bot.vocabulary import Outcome, Part


def remind(s: Session, student: Student, day: SchoolDay) -> list[Message]:
    """An hour before the digest, one line to a student who has not started."""
    where = people.chat_of_student(s, student.id)
    if where is None:
        return []
    minutes = day.notes.get("minutes")
    return [
        Reminder(
            to=where[0],
            key=f"remind/{student.id}/{day.date}/1",
            day=day.id,
            name=student.name,
            minutes=minutes if isinstance(minutes, int) else 0,
        )
    ]


def close(s: Session, school: School, student: Student, day: SchoolDay, now: datetime) -> list[Message]:
    """Close a day once: every item has its outcome, the memories move, each parent gets one digest."""
    if not days.close_day(s, day.id, now):
        return []
    for sent in days.items_of(s, day.id):
        if sent.outcome is None and sent.part in (*COUNTED, Part.TEST):
            days.change_item(s, sent.id, outcome=Outcome.UNTOUCHED)
    closed = days.day(s, day.id)
    learn_from_day(s, school, closed)
    return [
        m for parent in people.parents_of(s, student.id) for m in tell(s, school, student, closed, parent)
    ]


def tell(s: Session, school: School, student: Student, day: SchoolDay, parent: Reachable) -> list[Message]:
    """One parent's digest of a day; where students share the phone, a line with a button."""
    key = f"digest/{student.id}/{day.date}/{parent.chat}"
    if people.shares_phone(s, parent.chat):
        return [DigestLine(to=parent.chat, key=key, day=day.id, student=student.id, name=student.name)]
    return [digest(s, school, student, day, parent.chat, key=key)]


__all__ = ["close", "digest", "in_full", "remind", "tell", "week_signs"]
