"""The course as simulation needs it: the written one if all of it is there, else its sequence with made-up
templates.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from importlib.resources import files
from pathlib import Path
from typing import TypedDict

from bot.course.faults import CourseErrors
from bot.course.load import load_course
from bot.planner.syllabus import Lesson, Syllabus, Template
from bot.school.school import syllabus_of
from bot.vocabulary import LessonId, SkillId, TemplateId

TEMPLATES = 6
"""Templates a lesson, each with exactly the lesson's own skills: no policy gains by naming more."""


class CourseRow(TypedDict):
    """A lesson as a student class is told of it."""

    n: int
    skills: list[str]
    prerequisites: list[int]


@dataclass(frozen=True, slots=True)
class Timetable:
    """Which lesson is taught on which school day (index 0 is day 1); None: a light day, a second sitting, or
    done.
    """

    lessons: tuple[int | None, ...]


def syllabus_at(folder: Path | None) -> Syllabus:
    """The written course with its templates' real skill lists, if every lesson of the sequence is written.

    Else, or without a folder, the sequence. Of the written course only what simulation takes part in is kept:
    no tests, no hands-on lessons, nothing that stands before lesson 1, no skill that belongs to earlier years
    (a student class was told of the lessons' skills only).
    """
    sequence = read_sequence()
    if folder is None or not folder.is_dir():
        return sequence
    try:
        written = syllabus_of(load_course(folder))
    except CourseErrors:
        return sequence
    if [lesson.n for lesson in written.lessons] != [lesson.n for lesson in sequence.lessons]:
        return sequence
    taught = written.taught_by
    within = (
        replace(template, skills=tuple(skill for skill in template.skills if skill in taught))
        for template in written.templates
        if template.id not in written.before
    )
    return Syllabus(written.lessons, tuple(template for template in within if template.skills))


def course_rows(syllabus: Syllabus) -> list[CourseRow]:
    """The course for a student class."""
    return [
        CourseRow(n=lesson.n, skills=list(lesson.skills), prerequisites=list(lesson.prerequisites))
        for lesson in syllabus.lessons
    ]


def read_sequence() -> Syllabus:
    """The year's sequence: numbers, units, skills, prerequisites, sittings. Templates are made up."""
    rows = json.loads(files("bot.simulation").joinpath("sequence.json").read_text("utf-8"))
    lessons = tuple(
        Lesson(
            n=row["n"],
            id=LessonId(f"lesson-{row['n']}"),
            unit=row["unit"],
            skills=tuple(SkillId(skill) for skill in row["skills"]),
            prerequisites=tuple(row["prerequisites"]),
            core=row["core"],
            sittings=row["sittings"],
        )
        for row in rows
    )
    templates = tuple(
        Template(TemplateId(f"{lesson.id}/{k}"), lesson.id, lesson.skills, level=1 + k % 3)
        for lesson in lessons
        for k in range(1, TEMPLATES + 1)
    )
    return Syllabus(lessons, templates)


def timetable(syllabus: Syllabus, days: int) -> Timetable:
    """Four lesson days and a light one by turns; a lesson of two sittings takes two lesson days."""
    lessons: list[int | None] = []
    waiting = [n for lesson in syllabus.lessons for n in (lesson.n, *[None] * (lesson.sittings - 1))]
    for day in range(1, days + 1):
        light = day % 5 == 0 or not waiting
        lessons.append(None if light else waiting.pop(0))
    return Timetable(tuple(lessons))
