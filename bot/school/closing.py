"""The end of the year and the day before a test: the family's page of foundations, and what to look at again."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from sqlalchemy.orm import Session

from bot.planner.closing import Standing, standing_of, study_list
from bot.records.memories import memories
from bot.records.people import Student
from bot.school.history import MOVED_PAST
from bot.school.planning import plan_for, what_lies_behind
from bot.school.school import School
from bot.school.testing import test_title
from bot.vocabulary import LessonId


@dataclass(frozen=True, slots=True)
class Study:
    """For the day before a test: its title, titles of the lessons that are new in it, and of those to look at again."""

    title: str
    new: tuple[str, ...]
    look_again: tuple[str, ...]
    lessons: tuple[LessonId, ...] = ()
    """Ids of those to look at again, in the same order."""


def study_for(s: Session, school: School, student: Student, on: date) -> Study | None:
    """What to look at before the test of the coming school day `on`; None where that day holds none.

    Ask once today's lesson is stored as met: the plan for `on` is made from what lies behind.
    """
    if not _may_hold_a_test(school, student):
        return None
    plan, _ = plan_for(s, school, student, on)
    place = next((test for test in school.syllabus.tests if test.n == plan.test), None)
    if place is None:
        return None
    history, _ = what_lies_behind(s, school, student, on)
    found = study_list(school.syllabus, place, history, on)
    return Study(
        title=test_title(school, place.n),
        new=tuple(school.title(lesson) for lesson in found.new),
        look_again=tuple(school.title(lesson) for lesson in found.look_again),
        lessons=found.look_again,
    )


def _may_hold_a_test(school: School, student: Student) -> bool:
    """Whether a test lies just behind the last lesson; else no plan needs to be made to know that none comes."""
    behind = student.lesson - 1
    return any(test.after <= behind < test.after + MOVED_PAST for test in school.syllabus.tests) or (
        behind >= len(school.syllabus.lessons)
    )


def standings(s: Session, school: School, student: Student, on: date) -> tuple[tuple[str, Standing], ...]:
    """The dozen skills that algebra rests on, by their English names, each steady, shaky or not met."""
    held = memories(s, student.id)
    return tuple((one.title["en"], standing_of(held, one.skills, on)) for one in school.course.foundations)
