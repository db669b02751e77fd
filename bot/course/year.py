"""The whole course: everything that is written, in the order of the year, and how to look things up in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TypeVar

from bot.course.closing import Foundation, Strand
from bot.course.formulas import FormulaPart
from bot.course.glossary import GlossaryWord
from bot.course.lesson import (
    HandsOn,
    Lesson,
    MisstepNote,
    Strategy,
    SyllabusLesson,
    SyllabusTemplate,
    Template,
    TestBlueprint,
    Unit,
)
from bot.vocabulary import LessonId, SkillId, TemplateId

T = TypeVar("T")
OWN = "own-"
"""How the ids of a tutor's own lessons and items begin."""


class NoSuchThing(LookupError):
    """A lesson, template or test that the course doesn't have (any more)."""


@dataclass(frozen=True)
class Course:
    """All that is written, in the order of the year. Made by `load_course`."""

    title: str
    units: tuple[Unit, ...]
    lessons: tuple[Lesson, ...]
    """The written lessons, in the order of the year."""
    before: tuple[Lesson, ...] = ()
    """Lessons of "before we start": what an eleven-year-old brings. Reviewed from the first day on."""
    tests: tuple[TestBlueprint, ...] = ()
    hands_on: tuple[HandsOn, ...] = ()
    mental_math: tuple[Strategy, ...] = ()
    puzzles: tuple[Strategy, ...] = ()
    warm_ups: tuple[Lesson, ...] = ()
    """The files of the mental-math strings and puzzles, for their templates."""
    missteps: Mapping[str, MisstepNote] = field(default_factory=dict)
    planned: Mapping[SkillId, LessonId] = field(default_factory=dict)
    """Skills of lessons that are placed in the year but not written yet."""
    former_names: Mapping[str, str] = field(default_factory=dict)
    """Old ids of lessons, templates and skills, and the ids they have now."""
    plurals: Mapping[str, str] = field(default_factory=dict)
    """Plurals that don't just add an s, for `{loaf for n}`."""
    lists: Mapping[str, tuple[Mapping[str, str], ...]] = field(default_factory=dict)
    """Words that items may draw, by the name of their list."""
    own: dict[LessonId, Lesson] = field(default_factory=dict, compare=False, repr=False)
    """Lessons of tutors' own, learned while the course is in use; found by id only, never planned by itself."""
    glossary: tuple[GlossaryWord, ...] = ()
    """The words of the course, in the order of its lessons."""
    formulas: tuple[FormulaPart, ...] = ()
    strands: tuple[Strand, ...] = ()
    foundations: tuple[Foundation, ...] = ()
    materials: tuple[tuple[str, str], ...] = ()
    """Things that are wanted all year, and what for; those of hands-on lessons are named there."""
    stressed: frozenset[str] = frozenset()
    """Words that cards set in bold to lean on them: no terms."""
    known_words: frozenset[str] = frozenset()
    """Words, in small letters, that the dictionary doesn't know and that are spelt as they should be."""
    ready: dict[TemplateId, object] = field(default_factory=dict, compare=False, repr=False)
    """Templates as the drawer made them ready; kept here because a course outlives its draws."""

    @cached_property
    def _lessons(self) -> Mapping[str, Lesson]:
        return {lesson.id: lesson for lesson in (*self.before, *self.lessons, *self.warm_ups)}

    @cached_property
    def _templates(self) -> Mapping[str, Template]:
        return {template.id: template for holder in self.holders for template in holder.templates}

    @cached_property
    def _by_n(self) -> Mapping[int, Lesson]:
        return {lesson.n: lesson for lesson in self.lessons}

    @cached_property
    def _teachers(self) -> Mapping[SkillId, LessonId]:
        return {skill: lesson.id for lesson in (*self.before, *self.lessons) for skill in lesson.skills}

    def _find(self, table: Mapping[str, T], name: str) -> T:
        found = table.get(name) or table.get(self.former_names.get(name, ""))
        if found is None:
            raise NoSuchThing(f"The course has no '{name}'.")
        return found

    def lesson(self, lesson: str) -> Lesson:
        """Find a lesson by its id (a former id will do). Raises NoSuchThing."""
        own = self.own.get(LessonId(lesson))
        return own if own is not None else self._find(self._lessons, lesson)

    def lesson_number(self, n: int) -> Lesson | None:
        """Find a lesson by its place in the year; None if it isn't written."""
        return self._by_n.get(n)

    def template(self, template: str) -> Template:
        """Find a template by its id (a former id will do). Raises NoSuchThing."""
        own = self.own.get(LessonId(template.partition("/")[0]))
        for one in own.templates if own is not None else ():
            if one.id == template:
                return one
        return self._find(self._templates, template)

    @cached_property
    def holders(self) -> tuple[Lesson | HandsOn, ...]:
        """Everything that holds templates."""
        return (*self.before, *self.lessons, *self.warm_ups, *self.hands_on)

    @cached_property
    def _holders(self) -> Mapping[LessonId, Lesson | HandsOn]:
        return {one.id: one for one in self.holders}

    def _holder(self, template: Template) -> Lesson | HandsOn:
        return self.own.get(template.lesson) or self._holders[template.lesson]

    def title_of(self, template: Template) -> str:
        """Title of the lesson a template belongs to."""
        return self._holder(template).title

    def file_of(self, template: Template) -> str:
        """The file a template stands in."""
        return self._holder(template).file

    def says(self, misstep: str, template: Template) -> str:
        """What is said on a misstep of a template: a lesson of one's own may have words of its own for it."""
        own = self.own.get(template.lesson)
        notes = {note.name: note for note in own.missteps} if own is not None else {}
        return notes[misstep].say if misstep in notes else self.missteps[misstep].say

    def calculator_for(self, template: Template) -> bool:
        """Whether a calculator is meant to be used."""
        holder = self._holder(template)
        return isinstance(holder, Lesson) and holder.calculator

    def test(self, test: str) -> TestBlueprint:
        """Find a test by its id. Raises NoSuchThing."""
        return self._find({one.id: one for one in self.tests}, test)

    def hands_on_lesson(self, task: str) -> HandsOn:
        """Find a hands-on lesson by its id. Raises NoSuchThing."""
        return self._find({one.id: one for one in self.hands_on}, task)

    def teaches(self, skill: SkillId) -> LessonId | None:
        """Say which lesson teaches a skill; None if no written lesson does."""
        return self._teachers.get(skill)

    def syllabus(self, lessons: tuple[Lesson, ...] | None = None) -> tuple[SyllabusLesson, ...]:
        """Tell a planner the year: the written lessons in order. Pass `course.before` for unit 0."""
        chosen = self.lessons if lessons is None else lessons
        return tuple(self._syllabus_lesson(lesson) for lesson in chosen)

    def _syllabus_lesson(self, lesson: Lesson) -> SyllabusLesson:
        sources = dict.fromkeys(self.teaches(skill) for skill in lesson.needs)
        return SyllabusLesson(
            n=lesson.n,
            id=lesson.id,
            title=lesson.title,
            unit=lesson.unit,
            skills=lesson.skills,
            needs=lesson.needs,
            prerequisites=tuple(source for source in sources if source is not None),
            core=lesson.core,
            sittings=lesson.sittings,
            calculator=lesson.calculator,
            templates=tuple(
                SyllabusTemplate(t.id, t.skills, t.level, t.sitting, t.by_button) for t in lesson.templates
            ),
        )
