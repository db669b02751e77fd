"""What the planner knows of a course: lessons in order, their skills, and templates by id. No text, no
numbers of items.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import ClassVar

from bot.vocabulary import LessonId, SkillId, TemplateId

EASY, MIDDLE, HARD = 1, 2, 3


@dataclass(frozen=True, slots=True)
class Template:
    """An item's recipe, as far as planning goes.

    `skills` is the real list: the lesson's own skills that the item needs and those of earlier lessons.
    `level` is 1 (easy) to 3 (hard) within its lesson. `sitting` is 2 where it needs the second day of a lesson
    of two sittings. `guided`, `review` and `test` say where it suits.
    """

    id: TemplateId
    lesson: LessonId
    skills: tuple[SkillId, ...]
    level: int = MIDDLE
    sitting: int = 1
    guided: bool = True
    review: bool = True
    test: bool = True


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson of the course. `n` counts from 1; `prerequisites` are numbers of earlier lessons, direct ones
    only.

    `core` is False for a lesson that may be left out; `sittings` is 2 where the lesson takes two days.
    """

    n: int
    id: LessonId
    unit: int
    skills: tuple[SkillId, ...]
    prerequisites: tuple[int, ...] = ()
    core: bool = True
    sittings: int = 1


@dataclass(frozen=True, slots=True)
class TestPlace:
    """Where a test stands: after lesson `after`, on lessons `new` for the first time, on all of `cumulative`.

    Both ranges are first and last lesson number, inclusive. `new_share` (0 to 1) of the `items` are on `new`.
    A part of the final comes after the week of review, and its items are shared out evenly among the strands;
    `only` limits it to some lessons (those without a calculator, or those with one).
    """

    n: int
    unit: int
    after: int
    new: tuple[int, int]
    cumulative: tuple[int, int]
    items: int = 20
    new_share: float = 0.4
    final: bool = False
    only: frozenset[int] | None = None
    __test__: ClassVar[bool] = False  # or the test runner takes it for one of its own


@dataclass(frozen=True, slots=True)
class HandsOnPlace:
    """A hands-on lesson, offered once lesson `after` was met."""

    id: str
    after: int


@dataclass(frozen=True)
class Syllabus:
    """The course as the planner sees it.

    `before` names templates that need nothing of this course, so that they may be asked before lesson 1 was
    met. `strands` are numbers of lessons, a day of review each before the final.
    Equal syllabuses give equal plans; the lookups below are worked out once and kept.
    """

    lessons: tuple[Lesson, ...]
    templates: tuple[Template, ...]
    before: frozenset[TemplateId] = field(default_factory=frozenset)
    tests: tuple[TestPlace, ...] = ()
    hands_on: tuple[HandsOnPlace, ...] = ()
    strands: tuple[frozenset[int], ...] = ()

    @cached_property
    def by_number(self) -> Mapping[int, Lesson]:
        return {lesson.n: lesson for lesson in self.lessons}

    @cached_property
    def by_id(self) -> Mapping[LessonId, Lesson]:
        return {lesson.id: lesson for lesson in self.lessons}

    @cached_property
    def template(self) -> Mapping[TemplateId, Template]:
        return {template.id: template for template in self.templates}

    @cached_property
    def templates_of(self) -> Mapping[LessonId, tuple[Template, ...]]:
        """Templates by lesson, in the order of the lesson's file."""
        found: dict[LessonId, list[Template]] = defaultdict(list)
        for template in self.templates:
            found[template.lesson].append(template)
        return {lesson: tuple(templates) for lesson, templates in found.items()}

    @cached_property
    def taught_by(self) -> Mapping[SkillId, int]:
        """Number of the lesson that teaches a skill; each skill is taught once."""
        return {skill: lesson.n for lesson in self.lessons for skill in lesson.skills}

    @cached_property
    def contained_in(self) -> Mapping[SkillId, tuple[SkillId, ...]]:
        """Earlier skills that a skill is built on: those of its lesson's direct prerequisites."""
        return {
            skill: tuple(earlier for n in lesson.prerequisites for earlier in self.by_number[n].skills)
            for lesson in self.lessons
            for skill in lesson.skills
        }

    @cached_property
    def needed_lesson(self) -> Mapping[TemplateId, frozenset[int]]:
        """Numbers of the lessons that must have been met before a template may be asked.

        A skill that no lesson teaches belongs to earlier years and needs nothing.
        """
        return {
            template.id: frozenset()
            if template.id in self.before
            else frozenset(self.taught_by[skill] for skill in template.skills if skill in self.taught_by)
            | ({self.by_id[template.lesson].n} if template.lesson in self.by_id else frozenset())
            for template in self.templates
        }

    def next_after(self, taught: frozenset[int], left_out: frozenset[int] = frozenset()) -> Lesson | None:
        """First lesson, in the order of the course, that was neither met nor left out."""
        for lesson in self.lessons:
            if lesson.n not in taught and lesson.n not in left_out:
                return lesson
        return None
