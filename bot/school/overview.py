"""How a student's day stands just now, in a line, and the digest of any day."""

from __future__ import annotations

from bot.messages import DayRow, DaysShown, DigestChoice, Message, NoDay
from bot.records import days, people
from bot.records.days import ItemState, Stage
from bot.records.people import Student
from bot.school import dates
from bot.school.asking import Asked
from bot.school.digest import digest
from bot.school.names import take_student
from bot.school.standing import count_up
from bot.school.waiting_pages import pages_waiting
from bot.school.when import take_dates
from bot.vocabulary import Part

CHOICES = 6
"""Days that are offered for a digest."""


def today(asked: Asked) -> list[Message]:
    """Today, a line for each student."""
    rows = tuple(day_row(asked, each) for each in asked.students)
    if not rows:
        raise asked.wrong("why-no-students")
    pages = len(pages_waiting(asked.s, asked.students, asked.at))
    return [DaysShown(to=asked.person.chat, rows=rows, side=asked.side, pages=pages)]


def day_row(asked: Asked, student: Student) -> DayRow:
    """How a student's day of today stands."""
    s = asked.s
    on = dates.today(student, asked.at)
    day = days.day_on(s, student.id, on)
    home = asked.household_of(student)
    if day is None:
        return DayRow(student.id, student.name, home, _before(asked, student))
    review = days.items_of(s, day.id, Part.REVIEW)
    counts = count_up(review)
    return DayRow(
        student=student.id,
        name=student.name,
        household=home,
        stage=_stage(day.stage, day.enough, bool(day.notes.get("off")), day.kind),
        lesson=asked.school.title(day.lesson) if day.lesson else "",
        done=sum(1 for each in review if each.state is ItemState.DONE),
        out_of=len(review),
        first_try=counts.first_try,
        open=counts.unsolved,
    )


def _before(asked: Asked, student: Student) -> str:
    """Why there is no day: nothing stands in the way, or what does."""
    if not student.consented:
        return "no-consent"
    if people.chat_of_student(asked.s, student.id) is None:
        return "no-chat"
    if student.paused:
        return "paused"
    on = dates.today(student, asked.at)
    if student.first_day is not None and on < student.first_day:
        return "not-begun"
    return "none" if dates.has_school(asked.s, student, on) else "off"


def _stage(stage: Stage, enough: bool, off: bool, kind: str) -> str:
    if off:
        return "off"
    if kind == "missed":
        return "missed"
    if stage is Stage.DONE:
        return "enough" if enough else "done"
    return "pushed" if stage is Stage.PUSHED else "working"


def digest_of(asked: Asked) -> list[Message]:
    """The digest of a day: of the date that is named, else of the latest."""
    student, rest = take_student(asked)
    today = dates.today(student, asked.at)
    span, left = take_dates(rest, today, past=True)
    if left:
        raise asked.wrong("why-not-a-date", student, words=left[:60])
    day = days.day_on(asked.s, student.id, span.first) if span else days.newest_day(asked.s, student.id)
    if day is None:
        on = span.first if span else today
        missing = NoDay(to=asked.person.chat, name=student.name, date=on.isoformat())
        return [missing, *_offer(asked, student)]
    told = digest(asked.s, asked.school, student, day, asked.person.chat, on_demand=True, side=asked.side)
    return [told]


def _offer(asked: Asked, student: Student) -> list[Message]:
    today = dates.today(student, asked.at)
    last = days.last_days(asked.s, student.id, today, CHOICES)
    if not last:
        return []
    rows = tuple((str(day.id), day.date.isoformat()) for day in last)
    return [DigestChoice(to=asked.person.chat, student=student.id, name=student.name, days=rows)]
