"""The school that all use cases work for: its course, as lessons and as the planner sees it."""

from __future__ import annotations

from dataclasses import dataclass, field

from bot.course.lesson import Lesson, TestBlueprint
from bot.course.year import Course
from bot.planner import syllabus as plan
from bot.vocabulary import LessonId, SkillId

TRIES = 3
"""Tries at a typed answer (common practice, no source)."""


@dataclass(frozen=True)
class School:
    """Course and syllabus, made once at the start and handed to every use case."""

    course: Course
    syllabus: plan.Syllabus
    bot_name: str = ""
    """The bot's name in links, without @."""
    keep_months: int = 0
    """Months after which photos and answers are removed; 0: they aren't."""
    learned: dict[str, object] = field(default_factory=dict, compare=False, repr=False)
    """How far lessons of tutors' own were learned; kept here because a school outlives its use cases."""

    def title(self, lesson: str) -> str:
        """A lesson's title; for a lesson that was taken out of the course, its id read as words."""
        try:
            return self.course.lesson(lesson).title
        except LookupError:
            return lesson.replace("-", " ").capitalize()

    def lesson_still_here(self, lesson: str | None) -> Lesson | None:
        """A lesson of a day that was planned earlier; None if the day has none or it was taken out since."""
        try:
            return self.course.lesson(lesson) if lesson else None
        except LookupError:
            return None

    def skill_title(self, skill: str) -> str:
        """A skill as people read it: the title of the lesson that teaches it."""
        lesson = self.course.teaches(SkillId(skill))
        return self.title(lesson) if lesson else skill.replace("-", " ")

    def lesson_beginning(self, start: str) -> Lesson | None:
        """The lesson whose id begins so; a button holds only the beginning. None where it is none."""
        lessons = (*self.course.before, *self.course.lessons, *self.course.own.values())
        return next((lesson for lesson in lessons if start and lesson.id.startswith(start)), None)

    def lesson_at(self, n: int) -> Lesson | None:
        """The first written lesson from place `n` on; None at the end of what is written."""
        return next((lesson for lesson in self.course.lessons if lesson.n >= n), None)


def make_school(course: Course, bot_name: str = "", keep_months: int = 0) -> School:
    """Join a course with what the planner needs to know of it."""
    return School(course, syllabus_of(course), bot_name, keep_months)


def syllabus_of(course: Course) -> plan.Syllabus:
    """The course as the planner sees it: ids and numbers, no text."""
    number = {lesson.id: lesson.n for lesson in course.lessons}
    lessons, templates = [], []
    for lesson in course.syllabus():
        lessons.append(
            plan.Lesson(
                n=lesson.n,
                id=lesson.id,
                unit=lesson.unit,
                skills=lesson.skills,
                prerequisites=tuple(number[need] for need in lesson.prerequisites if need in number),
                core=lesson.core,
                sittings=lesson.sittings,
            )
        )
        templates += [
            plan.Template(t.id, lesson.id, t.skills, int(t.level), t.sitting) for t in lesson.templates
        ]
    before = [
        plan.Template(t.id, lesson.id, t.skills, int(t.level), guided=False, test=False)
        for lesson in course.syllabus(course.before)
        for t in lesson.templates
    ]
    return plan.Syllabus(
        lessons=tuple(lessons),
        templates=(*before, *templates),
        before=frozenset(template.id for template in before),
        tests=tuple(_test_places(course, number)),
        strands=tuple(
            frozenset(number[one] for one in strand.lessons if one in number) for strand in course.strands
        ),
        hands_on=tuple(
            plan.HandsOnPlace(task.id, _place(course, task.after, number)) for task in course.hands_on
        ),
    )


def _test_places(course: Course, number: dict[LessonId, int]) -> list[plan.TestPlace]:
    """Tests whose lessons are all written; the others come with their lessons."""
    return [
        plan.TestPlace(
            n=test.n,
            unit=test.unit,
            after=number[test.after],
            new=(number[test.new[0]], number[test.new[1]]),
            cumulative=(number[test.cumulative[0]], number[test.cumulative[1]]),
            items=test.items,
            new_share=float(test.new_share),
            final=test.final,
            only=_only(course, test) if test.final else None,
        )
        for test in course.tests
        if {test.after, *test.new, *test.cumulative} <= number.keys()
    ]


def _only(course: Course, test: TestBlueprint) -> frozenset[int]:
    """Lessons of a part of the final: those with a calculator and those named beside them, or those without."""
    return frozenset(
        lesson.n
        for lesson in course.lessons
        if (lesson.calculator or lesson.id in test.also if test.calculator else not lesson.calculator)
    )


def _place(course: Course, after: LessonId, number: dict[LessonId, int]) -> int:
    """Where a hands-on lesson stands; after the last written lesson while its own place isn't written."""
    return number.get(after, max(number.values(), default=0))
