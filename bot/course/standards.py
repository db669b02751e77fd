"""Which published standards the course meets: by which lessons, with how many kinds of item, in which tests.

The codes are those of the Common Core State Standards for Mathematics (2010, National Governors Association Center
for Best Practices and Council of Chief State School Officers), grades 4 to 8, in `standards.tsv`. Each gist there is
a short paraphrase of our own; the text of a standard is to be read where it is published.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from bot.course.lesson import Lesson, TestBlueprint
from bot.course.year import Course

OURS = (6, 7, 8)
"""Grades of which every standard is met once the whole year is written."""


@dataclass(frozen=True, slots=True)
class Standard:
    """One published standard; `gist` says in our own words what it asks."""

    code: str
    grade: int
    domain: str
    gist: str

    @property
    def whole(self) -> str:
        """The standard that a part such as 6.RP.A.3b belongs to; its own code where it is no part."""
        return re.sub(r"[a-d]$", "", self.code)


@dataclass(frozen=True, slots=True)
class Met:
    """A standard and what meets it. `items` counts templates. `parts_met` says that all its parts are met."""

    standard: Standard
    lessons: tuple[Lesson, ...]
    items: int
    tests: tuple[TestBlueprint, ...]
    parts_met: bool = False

    @property
    def is_met(self) -> bool:
        """Whether a written lesson names it, or lessons name all of its parts."""
        return bool(self.lessons) or self.parts_met


@dataclass(frozen=True, slots=True)
class Coverage:
    """All standards in the order of their codes, with what meets them."""

    rows: tuple[Met, ...]

    def of_grade(self, grade: int) -> tuple[Met, ...]:
        """The rows of one grade."""
        return tuple(row for row in self.rows if row.standard.grade == grade)

    def missing(self, grade: int) -> tuple[str, ...]:
        """Codes of a grade that nothing written meets yet."""
        return tuple(row.standard.code for row in self.of_grade(grade) if not row.is_met)


@lru_cache(maxsize=1)
def standards() -> Mapping[str, Standard]:
    """All known standards by code."""
    lines = (files("bot.course") / "standards.tsv").read_text(encoding="utf-8").splitlines()[1:]
    rows = (line.split("\t") for line in lines)
    return {code: Standard(code, int(grade), domain, gist) for code, grade, domain, gist in rows}


def coverage(course: Course) -> Coverage:
    """Set every standard against what is written."""
    found: list[Met] = []
    for standard in standards().values():
        lessons = tuple(
            lesson for lesson in (*course.before, *course.lessons) if standard.code in lesson.standards
        )
        ids = {lesson.id for lesson in lessons}
        tests = tuple(test for test in course.tests if ids & _examined(course, test))
        found.append(Met(standard, lessons, sum(len(lesson.templates) for lesson in lessons), tests))
    named = {row.standard.code for row in found if row.lessons}
    return Coverage(tuple(_with_parts(row, named) for row in found))


def _with_parts(row: Met, named: set[str]) -> Met:
    parts = [one.code for one in standards().values() if one.whole == row.standard.code != one.code]
    whole = bool(parts) and all(part in named for part in parts)
    return Met(row.standard, row.lessons, row.items, row.tests, whole)


def _examined(course: Course, test: TestBlueprint) -> set[str]:
    """The lessons that a test examines for the first time."""
    order = [lesson for unit in course.units for lesson in unit.lessons]
    first, last = (order.index(end) for end in test.new)
    return set(order[first : last + 1])
