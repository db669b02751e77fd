"""A test that was handed in after its evening: what is believed follows, and the grown-ups read the new count."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import Message, TestCountedAgain
from bot.records import days, outbox, people
from bot.records.days import SchoolDay
from bot.records.people import Reachable, Student
from bot.school import dates
from bot.school.school import School
from bot.school.standing import relearn
from bot.school.test_orders import REACH
from bot.vocabulary import Outcome, Part

HELD = timedelta(days=2)
"""A line that a parent didn't get, because a student held the phone, follows for so long."""


def count_again(
    s: Session, school: School, student: Student, day: SchoolDay, was: int | None, at: datetime
) -> list[Message]:
    """After the new outcomes are stored: work out anew what is believed, and tell parents and tutor in one line.

    What is believed is rebuilt from all days, so that no item is learnt from twice.
    """
    relearn(s, school, student.id)
    times = _times(day) + 1
    days.note_day(s, day, counted_again=times, counted_again_at=at.isoformat(), was_right=was)
    if not student.consented:
        return []
    counted = days.day(s, day.id)
    parents = people.parents_of(s, student.id)
    said = [m for parent in parents for m in _tell(s, student, counted, parent)]
    tutor = people.reach(s, student.tutor)
    if tutor is not None and tutor.chat not in {each.chat for each in parents}:
        said.append(_line(s, student, counted, tutor, shared=False, button=False))
    return said


def held(s: Session, student: Student, parent: Reachable, now: datetime) -> list[Message]:
    """Lines of the last days that a parent didn't get because a student held the phone."""
    today = dates.today(student, now)
    said: list[Message] = []
    for day in days.days_between(s, student.id, today - REACH - HELD, today):
        at = day.notes.get("counted_again_at")
        fresh = isinstance(at, str) and now - datetime.fromisoformat(at) <= HELD
        if fresh and not outbox.key_exists(s, _key(student, day, parent)):
            said += _tell(s, student, day, parent)
    return said


def _tell(s: Session, student: Student, day: SchoolDay, parent: Reachable) -> list[Message]:
    if parent.speaking is not None or parent.blocked:
        return []
    return [_line(s, student, day, parent, shared=bool(people.shares_phone(s, parent.chat)), button=True)]


def _line(
    s: Session, student: Student, day: SchoolDay, whom: Reachable, *, shared: bool, button: bool
) -> TestCountedAgain:
    items = days.items_of(s, day.id, Part.TEST)
    was = day.notes.get("was_right")
    return TestCountedAgain(
        to=whom.chat,
        key=_key(student, day, whom),
        day=day.id,
        name=student.name,
        date=day.date.isoformat(),
        right=sum(1 for each in items if each.outcome is Outcome.FIRST_TRY),
        out_of=len(items),
        was=was if isinstance(was, int) else None,
        shared=shared,
        button=button,
    )


def _times(day: SchoolDay) -> int:
    times = day.notes.get("counted_again")
    return times if isinstance(times, int) else 0


def _key(student: Student, day: SchoolDay, whom: Reachable) -> str:
    return f"test-again/{student.id}/{day.date}/{_times(day)}/{whom.chat}"
