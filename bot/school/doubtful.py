"""Doubts that come up by themselves: a kind of item that several students of one tutor left unsolved."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.records import days, doubts
from bot.records.days import SchoolDay
from bot.records.doubts import DoubtKind
from bot.records.people import Student
from bot.vocabulary import Outcome, PersonId

LATELY = timedelta(days=14)
MANY = 3
"""Students who missed the same kind of item in two weeks: then it may be the item (common practice, no source)."""


def missed_by(s: Session, tutor: PersonId, template: str, at: datetime) -> int:
    """How many students of a tutor left a kind of item unsolved lately, since it was last looked at."""
    since = (at - LATELY).date()
    cleared = doubts.cleared_since(s, tutor, template)
    if cleared is not None:
        since = max(since, cleared.date() + timedelta(days=1))
    return doubts.students_who_missed(s, tutor, [template], since).get(template, 0)


def note_many_missed(s: Session, student: Student, day: SchoolDay, now: datetime) -> None:
    """At the end of a day: note the kinds that it left unsolved, if enough others missed them too."""
    unsolved = {each.template for each in days.items_of(s, day.id) if each.outcome is Outcome.UNSOLVED}
    unsolved -= doubts.kinds_waiting(s, student.tutor) if unsolved else set()
    counts = doubts.students_who_missed(s, student.tutor, unsolved, (now - LATELY).date()) if unsolved else {}
    for template, count in sorted(counts.items()):
        if count >= MANY and missed_by(s, student.tutor, template, now) >= MANY:
            doubts.add_doubt(s, DoubtKind.MANY_MISSED, student.tutor, template, now)
