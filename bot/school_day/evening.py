"""The evening: close the day, fold it into what is believed, and tell each parent how it went."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import CourseDone, DigestLine, Message, Reminder, StudyList
from bot.records import days, outbox, people
from bot.records.days import SchoolDay
from bot.records.people import Reachable, Student
from bot.school import dates, pacing
from bot.school.closing import study_for
from bot.school.digest import digest, in_full, week_signs
from bot.school.doubtful import note_many_missed
from bot.school.school import School
from bot.school.standing import COUNTED, learn_from_day
from bot.school_day import counted_again, half_year
from bot.vocabulary import Outcome, Part, PersonId

HELD = timedelta(days=2)
"""Older digests are not brought up by themselves."""


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
    note_many_missed(s, student, closed, now)
    said = [
        m
        for parent in people.parents_of(s, student.id)
        for m in tell(s, school, student, closed, parent, now)
    ]
    said += _study_list(s, school, student, closed)
    if pacing.is_half_year(s, student, closed):
        said += half_year.tell_tutor(s, school, student, closed, now)
    return said + _course_done(s, school, student, closed)


def _study_list(s: Session, school: School, student: Student, day: SchoolDay) -> list[Message]:
    """On the evening before a test, to a student with a chat of their own: what it is about, what to look at again."""
    own = people.reach(s, student.id)
    comes = dates.next_day(s, student, day.date)
    if own is None or comes is None or days.day_on(s, student.id, comes) is not None:
        return []
    found = study_for(s, school, people.student(s, student.id), comes)
    if found is None:
        return []
    return [
        StudyList(
            to=own.chat,
            key=f"study/{student.id}/{comes}",
            test=found.title,
            date=comes.isoformat(),
            new=found.new,
            again=found.look_again,
            lessons=found.lessons,
        )
    ]


def _course_done(s: Session, school: School, student: Student, day: SchoolDay) -> list[Message]:
    """On the evening of the last part of the final: to each parent and the tutor, with the page of foundations."""
    if not day.notes.get("handed_in") or not pacing.is_over(
        s, school, people.student(s, student.id), day.date + timedelta(days=1)
    ):
        return []
    home = people.household(s, student.household).name
    parents = [each for each in people.parents_of(s, student.id) if each.speaking is None]
    tutor = people.reach(s, student.tutor)
    phones = {each.chat: "f" for each in parents} | ({tutor.chat: "t"} if tutor is not None else {})
    return [
        CourseDone(
            to=chat,
            key=f"course-done/{student.id}/{chat}",
            student=student.id,
            name=student.name,
            household=home,
            side=side,
        )
        for chat, side in phones.items()
    ]


def tell(
    s: Session, school: School, student: Student, day: SchoolDay, parent: Reachable, now: datetime
) -> list[Message]:
    """One parent's digest of a day; where students share the phone, a line with a button.

    While a student is speaking on that phone nothing is sent; it follows when the phone is given back.
    """
    if parent.speaking is not None:
        return []
    key = f"digest/{student.id}/{day.date}/{parent.chat}"
    if people.shares_phone(s, parent.chat):
        return [DigestLine(to=parent.chat, key=key, day=day.id, student=student.id, name=student.name)]
    late = dates.today(student, now) != day.date  # then the day is named, or "today" would mislead
    return [digest(s, school, student, day, parent.chat, key=key, on_demand=late)]


def held(s: Session, school: School, parent: PersonId, now: datetime) -> list[Message]:
    """Digests of the last days that a parent didn't get because a student held the phone."""
    me = people.reach(s, parent)
    if me is None:
        return []
    said: list[Message] = []
    for student in people.students_of_parent(s, parent):
        today = dates.today(student, now)
        for day in days.days_between(s, student.id, today - HELD, today):
            key = f"digest/{student.id}/{day.date}/{me.chat}"
            if day.closed_at is not None and student.consented and not outbox.key_exists(s, key):
                said += tell(s, school, student, day, me, now)
        if student.consented:
            said += counted_again.held(s, student, me, now)
    return said


__all__ = ["close", "digest", "held", "in_full", "remind", "tell", "week_signs"]
