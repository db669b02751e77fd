"""What the clock has to do for one student: open the day, remind, close it; late, early or twice alike."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import Message
from bot.planner.calendar import is_school_day
from bot.records import days, people
from bot.records.base import lock_chat
from bot.records.days import Stage
from bot.records.people import Student
from bot.school import dates, own, pacing
from bot.school.school import School
from bot.school_day import evening, letters, morning, speaking
from bot.vocabulary import StudentId

LATEST = 6 * 60
"""Minutes before the digest until which a day whose hour was missed still opens at once."""
REMIND = 60
"""Minutes before the digest at which a day not started is brought up once."""
NIGHT_FROM, NIGHT_TO = 21 * 60, 6 * 60
"""Minutes after midnight between which nothing is pushed."""


@dataclass(frozen=True, slots=True)
class Hours:
    """What the household's clocks show, as minutes after midnight of a date."""

    today: date
    minute: int

    @property
    def night(self) -> bool:
        """Whether it is too late, or too early, to push anything."""
        return self.minute >= NIGHT_FROM or self.minute < NIGHT_TO


def hours_of(student: Student, now: datetime) -> Hours:
    """What the household's clocks show now."""
    local = dates.local(student, now)
    return Hours(local.date(), local.hour * 60 + local.minute)


def due(s: Session, now: datetime) -> list[StudentId]:
    """Students whose `next_look` has come."""
    return [student.id for student in people.due_students(s, now)]


def look(s: Session, school: School, student_id: StudentId, now: datetime) -> list[Message]:
    """Do all that is due for one student now, and note when to look again.

    Everything is worked out from rows and the household's clocks at this moment, so a tick may come late,
    early or twice, and the clock may jump.
    """
    for chat in sorted(people.chats_around(s, student_id)):
        lock_chat(s, chat)  # so that closing a day and grading a reply don't cross
    own.learn(s, school)
    student = people.student(s, student_id)
    hours = hours_of(student, now)
    said = speaking.give_back_if_forgotten(s, school, student, now)
    if student.consented and not student.paused:
        said += _open(s, school, student, hours, now)
        said += _remind(s, student, hours)
    said += _close(s, school, student, hours, now)
    if student.consented and not student.paused:
        said += letters.send(s, school, student, now)
    people.change_student(s, student.id, next_look=_next_look(student, hours, now))
    return said


def _open(s: Session, school: School, student: Student, hours: Hours, now: datetime) -> list[Message]:
    if hours.night or hours.minute < student.push_at:
        return []
    if student.first_day is not None and hours.today < student.first_day:
        return []
    if days.day_on(s, student.id, hours.today) is not None:
        return []
    if people.chat_of_student(s, student.id) is None:
        return []
    has_school = is_school_day(dates.calendar_of(s, student, hours.today), hours.today)
    over = has_school and pacing.is_over(s, school, student, hours.today)
    if not (has_school and not over) and not dates.is_off_season(s, student, hours.today, over=over):
        return []
    if hours.minute > max(student.push_at, student.digest_at - LATEST):
        return _missed(s, student, hours, now)
    return morning.open_day(s, school, student, hours.today, now)


def _missed(s: Session, student: Student, hours: Hours, now: datetime) -> list[Message]:
    """The hour was missed for too long: the day waits until tomorrow, and the digest says it was our fault.

    A student who was only just linked has missed nothing; their first day is the next one.
    """
    if days.newest_day(s, student.id) is None:
        return []
    days.add_day(s, student.id, hours.today, "missed", None, now, late=True)
    return []


def _remind(s: Session, student: Student, hours: Hours) -> list[Message]:
    if not student.digest_at - REMIND <= hours.minute < student.digest_at or hours.night:
        return []
    day = days.day_on(s, student.id, hours.today)
    if day is None or day.stage is not Stage.PUSHED or day.late:
        return []
    return evening.remind(s, student, day)


def _close(s: Session, school: School, student: Student, hours: Hours, now: datetime) -> list[Message]:
    """Close the days whose digest hour has come, older ones first."""
    said: list[Message] = []
    since = hours.today - timedelta(days=14)
    for day in days.days_between(s, student.id, since, hours.today):
        past = day.date < hours.today or hours.minute >= student.digest_at
        if day.closed_at is None and past:
            told = evening.close(s, school, student, day, now)
            said += told if student.consented else []
    return said


def _next_look(student: Student, hours: Hours, now: datetime) -> datetime:
    """The next hour at which something may be due, an hour from now at the latest.

    An hour at the latest: then a change that forgot to say so is noticed soon all the same.
    """
    marks = (student.push_at, student.digest_at - REMIND, student.digest_at, NIGHT_TO)
    coming = [
        at
        for mark in marks
        for on in (hours.today, hours.today + timedelta(days=1))
        if (at := dates.at_hour(student, on, max(0, mark))) > now
    ]
    return min([*coming, now + timedelta(hours=1)])
