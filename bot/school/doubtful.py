"""Doubts that come up by themselves: a kind of item that several students of one tutor left unsolved."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.records import days, doubts, people
from bot.records.days import SchoolDay
from bot.records.doubts import DoubtKind
from bot.records.people import Student
from bot.vocabulary import Outcome

LATELY = timedelta(days=14)
MANY = 3
"""Students who missed the same kind of item in two weeks: then it may be the item (common practice, no source)."""


def missed_by(s: Session, student: Student, template: str, at: datetime) -> int:
    """How many students of the same tutor left a kind of item unsolved lately, since it was last looked at."""
    since = (at - LATELY).date()
    cleared = doubts.cleared_since(s, student.tutor, template)
    if cleared is not None:
        since = max(since, cleared.date() + timedelta(days=1))
    count = 0
    for each in people.students_of_tutor(s, student.tutor):
        past = days.past_items(s, each.id, since, at.date() + timedelta(days=2))
        count += any(one.template == template and one.outcome is Outcome.UNSOLVED for one in past)
    return count


def note_many_missed(s: Session, student: Student, day: SchoolDay, now: datetime) -> None:
    """At the end of a day: note the kinds that it left unsolved, if enough others missed them too."""
    unsolved = {each.template for each in days.items_of(s, day.id) if each.outcome is Outcome.UNSOLVED}
    if len(people.students_of_tutor(s, student.tutor)) < MANY:
        return
    for template in sorted(unsolved):
        if missed_by(s, student, template, now) >= MANY:
            doubts.add_doubt(s, DoubtKind.MANY_MISSED, student.tutor, template, now)
