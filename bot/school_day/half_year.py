"""The look at half-year: once, in the evening of the ninetieth school day, for the tutor to decide."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import HalfYearLook, Line, Message
from bot.planner.pace import Advice, extra_lessons
from bot.records import people
from bot.records.days import SchoolDay
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import pacing
from bot.school.asking import TUTOR, Asked
from bot.school.changes import store
from bot.school.school import School
from bot.school.wishes import WishKind


def tell_tutor(s: Session, school: School, student: Student, day: SchoolDay, now: datetime) -> list[Message]:
    """What the year so far says, and one change that would put it right, if one is needed."""
    where = people.reach(s, student.tutor)
    tutor = people.who(s, where.chat) if where is not None else None
    on = day.date + timedelta(days=1)
    found = pacing.half_year(s, school, people.student(s, student.id), on)
    if tutor is None or found is None:
        return []
    look, wanted = found
    heading = pacing.heading(s, school, student, on)
    extras = extra_lessons(school.syllabus, heading.history)
    titles = tuple(school.title(each.id) for each in extras)
    home = people.household(s, student.household)
    change = 0
    if look.advice is Advice.LEAVE_OUT_EXTRAS and extras:
        asked = Asked(s, school, tutor, now, 0, TUTOR, "skip", "")
        wish = Wish(
            WishKind.LEAVE_OUT, {"lessons": [each.n for each in extras]}, on, None, student=student.id
        )
        line = Line("line-leave-out-extras", {"name": student.name, "titles": list(titles)})
        change = store(asked, "skip", [line], wished=[wish])
    return [
        HalfYearLook(
            to=tutor.chat,
            key=f"half-year/{student.id}",
            student=student.id,
            name=student.name,
            household=home.name,
            advice=look.advice.value,
            wanted=wanted.isoformat(),
            early=look.finish.early.isoformat() if look.finish else "",
            late=look.finish.late.isoformat() if look.finish else "",
            core_early=look.without_extras.early.isoformat() if look.without_extras else "",
            core_late=look.without_extras.late.isoformat() if look.without_extras else "",
            extras=titles,
            change=change,
        )
    ]
