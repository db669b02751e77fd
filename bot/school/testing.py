"""What a test would hold, and what became of one: its count, and whether a second look is open."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from sqlalchemy.orm import Session

from bot.planner.blueprint import Reading, plan_second_look, plan_test, read_result
from bot.planner.plan import Pick
from bot.planner.syllabus import TestPlace
from bot.records import days
from bot.records.days import SchoolDay
from bot.records.people import Student
from bot.school.planning import what_lies_behind
from bot.school.school import School
from bot.vocabulary import Outcome, Part, TemplateId

FEWEST = 5
"""Items that a test holds at least; with fewer there is too little met to ask."""
LOOK_BACK = timedelta(days=60)
"""How far back a test may lie whose second look is set."""


@dataclass(frozen=True, slots=True)
class Result:
    """A test that was counted: its day, its number, what was missed, and what the count can tell."""

    day: SchoolDay
    number: int
    missed: tuple[TemplateId, ...]
    reading: Reading

    @property
    def offered(self) -> bool:
        """Whether a second look is offered: under the share, and this was none itself."""
        return self.reading.look_again and not self.day.notes.get("second_of")


def place_of(school: School, number: int) -> TestPlace | None:
    """The blueprint of a test; None where the course has none of that number, or its lessons aren't written."""
    return next((test for test in school.syllabus.tests if test.n == number), None)


def test_title(school: School, number: object) -> str:
    """A test's title, from the course."""
    return next((test.title for test in school.course.tests if test.n == number), "Test")


def picks_of_test(s: Session, school: School, student: Student, on: date, number: int) -> tuple[Pick, ...]:
    """The items that a test would hold on a day; none where the course has no such test."""
    place = place_of(school, number)
    if place is None:
        return ()
    history, wishes = what_lies_behind(s, school, student, on)
    return plan_test(on, school.syllabus, place, history, wishes, student.id)


def picks_of_second_look(s: Session, school: School, student: Student, on: date, of: int) -> tuple[Pick, ...]:
    """Eight to ten items with new numbers on what was missed in the test of a day."""
    found = result_of(s, days.day(s, of))  # type: ignore[arg-type]
    if found is None:
        return ()
    history, wishes = what_lies_behind(s, school, student, on)
    return plan_second_look(on, school.syllabus, found.missed, history, wishes, student.id)


def result_of(s: Session, day: SchoolDay) -> Result | None:
    """What a test came to; None while it isn't counted."""
    number = day.notes.get("test")
    if not day.notes.get("test_counted") or not isinstance(number, int):
        return None
    items = days.items_of(s, day.id, Part.TEST)
    if not items:
        return None
    missed = tuple(each.template for each in items if each.outcome is not Outcome.FIRST_TRY)
    return Result(day, number, missed, read_result(len(items) - len(missed), len(items)))


def newest_result(s: Session, student: Student, on: date) -> Result | None:
    """The newest test of a student's that was counted, no second look."""
    past = days.days_between(s, student.id, on - LOOK_BACK, on)
    for day in reversed(past):
        found = result_of(s, day) if not day.notes.get("second_of") else None
        if found is not None:
            return found
    return None


def was_looked_at_again(s: Session, student: Student, result: Result, on: date) -> bool:
    """Whether the one second look of a test was made already."""
    since = days.days_between(s, student.id, result.day.date, on)
    return any(day.notes.get("second_of") == result.day.id for day in since)
