"""What of a course can be taught today: a lesson with a fault stays out, and takes nothing from the others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from bot.course.faults import CourseErrors, Fault
from bot.course.lesson import HandsOn, Lesson, Template, TestBlueprint
from bot.course.load import load_with_faults
from bot.course.prepare import prepare
from bot.course.year import Course
from bot.vocabulary import LessonId

HARMLESS = frozenset(("misstep-twice", "not-in-course", "glossary", "formulas", "strand", "foundation"))
"""Faults by which no item becomes false: the first sentence counts, a file without a place isn't used."""

H = TypeVar("H", Lesson, HandsOn)


def usable_course(folder: Path) -> tuple[Course, Sequence[Fault]]:
    """The course in a folder without the lessons that have a fault, and all faults.

    Every template is made ready on the way, so that none fails in the morning. A misstep whose sentence can't be
    read any more falls away from the templates that name it. Raises CourseErrors where nothing can be taught.
    """
    course, faults = load_with_faults(folder)
    found = list(faults)
    broken = {fault.file for fault in faults if fault.kind not in HARMLESS}

    def sound(holders: Sequence[H]) -> tuple[H, ...]:
        kept: list[H] = []
        for holder in holders:
            templates = tuple(_with_known_missteps(course, template) for template in holder.templates)
            wrong: list[Fault] = []
            for template in templates if holder.file not in broken else ():
                ready, faults_of = prepare(template, holder.file, course.missteps)
                wrong += faults_of
                if ready is not None:
                    course.ready[template.id] = ready
            found.extend(wrong)
            if holder.file not in broken and not wrong and holder.templates:
                kept.append(replace(holder, templates=templates))
        return tuple(kept)

    lessons = sound(course.lessons)
    if not lessons:
        raise CourseErrors(found)
    order = [lesson for unit in course.units for lesson in unit.lessons]
    written = {lesson.id for lesson in lessons}
    warm_ups = sound(course.warm_ups)
    open_templates = {template.id for holder in warm_ups for template in holder.templates}
    return (
        replace(
            course,
            lessons=lessons,
            before=sound(course.before),
            warm_ups=warm_ups,
            mental_math=tuple(s for s in course.mental_math if {*s.templates} <= open_templates),
            puzzles=tuple(s for s in course.puzzles if {*s.templates} <= open_templates),
            hands_on=tuple(
                replace(task, after=_at_or_before(task.after, order, written))
                for task in sound(course.hands_on)
            ),
            tests=tuple(_without_gaps(test, order, written) for test in course.tests),
            ready=course.ready,
        ),
        found,
    )


def _with_known_missteps(course: Course, template: Template) -> Template:
    known = {name: at for name, at in template.recipe.missteps.items() if name in course.missteps}
    return replace(template, recipe=replace(template.recipe, missteps=known))


def _without_gaps(test: TestBlueprint, order: Sequence[LessonId], written: set[LessonId]) -> TestBlueprint:
    """The test with its ends moved inwards to lessons that are there."""

    def ends(pair: tuple[LessonId, LessonId]) -> tuple[LessonId, LessonId]:
        first = next((one for one in order[order.index(pair[0]) :] if one in written), pair[0])
        return first, _at_or_before(pair[1], order, written)

    after = _at_or_before(test.after, order, written)
    return replace(test, after=after, new=ends(test.new), cumulative=ends(test.cumulative))


def _at_or_before(lesson: LessonId, order: Sequence[LessonId], written: set[LessonId]) -> LessonId:
    if lesson not in order:
        return lesson
    return next((one for one in reversed(order[: order.index(lesson) + 1]) if one in written), lesson)
