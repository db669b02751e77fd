"""The planner's proposal for a student's day, from the records and the wishes in force; nothing is stored."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime

from sqlalchemy.orm import Session

from bot.planner.calendar import is_light_day, next_school_day
from bot.planner.history import History, Wishes
from bot.planner.outlook import plan_ahead
from bot.planner.plan import DayPlan
from bot.planner.plan_day import plan_day
from bot.records import days
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.history import history_of
from bot.school.own import lay_over
from bot.school.school import School
from bot.school.set_tests import lay_over_test
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
    wanted = _on_that_day(s, school, student, wishes, on, history)
    plan = plan_day(on, school.syllabus, history, wanted, student.id)
    return lay_over_test(lay_over(school, student, on, plan, wishes), wishes), wishes


def _on_that_day(
    s: Session, school: School, student: Student, wishes: Sequence[Wish], on: date, history: History
) -> Wishes:
    """The wishes in force, and whether it is a day of the off-season: between courses, or when this one is over."""
    over = course_over(school, history)
    off_season = dates.is_off_season(s, student, on, over=over)
    return replace(wishes_for_plan(student, list(wishes)), off_season=off_season)


def course_over(school: School, history: History) -> bool:
    """Whether the course is done: no lesson is left to meet, and every part of the final was handed in."""
    finals = {test.n for test in school.syllabus.tests if test.final}
    left = school.syllabus.next_after(history.taught, history.left_out)
    return bool(finals) and left is None and finals <= history.tests_done


def what_lies_behind(s: Session, school: School, student: Student, on: date) -> tuple[History, Wishes]:
    """A student's history up to a morning, and the wishes in force on that day, as the planner takes them."""
    wishes = in_force(s, student, on)
    history = history_of(s, school, student, on, wishes, dates.calendar_of(s, student, on))
    return history, _on_that_day(s, school, student, wishes, on, history)


def open_date(s: Session, student: Student, at: datetime) -> date | None:
    """The next school day that was not made yet: today before the push, else the next one.

    None where no school day comes within 400 days.
    """
    today = dates.today(student, at)
    local = dates.local(student, at)
    early = local.hour * 60 + local.minute < student.digest_at
    begun = student.first_day is None or student.first_day <= today
    if early and begun and dates.has_school(s, student, today) and not days.day_on(s, student.id, today):
        return today
    comes = dates.next_day(s, student, today)
    if comes is not None and student.first_day is not None and comes < student.first_day:
        return student.first_day
    return comes


def plans_ahead(
    s: Session, school: School, student: Student, first: date, *, last: date | None = None, most: int = 7
) -> tuple[DayPlan, ...]:
    """The school days from `first` on as they look today, up to a date or a number of days.

    Each is planned as if those before it went as expected; only the first is a promise.
    """
    calendar = dates.calendar_of(s, student, first)
    coming = [first]
    while len(coming) < most and (following := next_school_day(calendar, coming[-1])) is not None:
        if last is not None and following > last:
            break
        coming.append(following)
    history, wishes = what_lies_behind(s, school, student, first)
    listed = [(day, is_light_day(calendar, day)) for day in coming]
    return plan_ahead(listed, school.syllabus, history, wishes, student.id)
