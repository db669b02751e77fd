"""The planner's proposal for a student's day, from the records and the wishes in force; nothing is stored."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from sqlalchemy.orm import Session

from bot.planner.history import History, Wishes
from bot.planner.plan import DayPlan
from bot.planner.plan_day import plan_day
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.history import history_of
from bot.school.school import School
from bot.school.wishes import in_force, wishes_for_plan


def plan_for(
    s: Session, school: School, student: Student, on: date, *, further: Sequence[Wish] = ()
) -> tuple[DayPlan, list[Wish]]:
    """The planner's proposal for a student's day, and the wishes that it follows.

    `further` are wishes that are only thought of: so a change can be shown before it takes effect.
    """
    wishes = [*in_force(s, student, on), *further]
    calendar = dates.calendar_of(s, student, on)
    history = history_of(s, school, student, on, wishes, calendar)
    return plan_day(on, school.syllabus, history, wishes_for_plan(student, wishes), student.id), wishes


def what_lies_behind(s: Session, school: School, student: Student, on: date) -> tuple[History, Wishes]:
    """A student's history up to a morning, and the wishes in force on that day, as the planner takes them."""
    wishes = in_force(s, student, on)
    history = history_of(s, school, student, on, wishes, dates.calendar_of(s, student, on))
    return history, wishes_for_plan(student, wishes)
