"""The coming school days as they look today, and why."""

from __future__ import annotations

from collections import Counter

from bot.messages import Message, WeekAhead
from bot.planner.plan import DayPlan
from bot.records.people import Student
from bot.school.asking import Asked
from bot.school.planning import open_date, plans_ahead
from bot.school.school import School
from bot.school.testing import test_title

DAYS = 5
"""School days that are looked ahead; only the first is a promise."""


def week(asked: Asked, student: Student) -> list[Message]:
    """The next five school days of a student."""
    first = open_date(asked.s, student, asked.at)
    if first is None:
        raise asked.wrong("why-no-day-ahead", student, name=student.name)
    plans = plans_ahead(asked.s, asked.school, student, first, most=DAYS)
    rows = tuple(_row(asked.school, plan) for plan in plans)
    return [WeekAhead(to=asked.person.chat, student=student.id, name=student.name, rows=rows)]


def _row(
    school: School, plan: DayPlan
) -> tuple[str, str, str, int, int, str, int, tuple[tuple[str, int], ...]]:
    lesson = school.course.lesson(plan.lesson) if plan.lesson else None
    test = test_title(school, plan.test) if plan.test else ""
    why = Counter(pick.why.value for pick in plan.review)
    return (
        plan.day.isoformat(),
        plan.kind.value,
        lesson.title if lesson else "",
        plan.sitting,
        lesson.sittings if lesson else 1,
        test,
        len(plan.review) + plan.own_items,
        tuple(why.most_common()),
    )
