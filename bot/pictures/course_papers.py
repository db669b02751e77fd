"""Papers made from the course itself: scope and sequence, standards, glossary, formulas, materials, tests to come.

Column headings and intros come in as words of the reader's language; English stands in.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from typing import Any

from bot.pictures.papers import CourseList, Look, TableOf, course_list

WORDS: Mapping[str, str] = {
    "lesson": "Lesson",
    "objective": "Objective",
    "standards": "Standards",
    "code": "Code",
    "gist": "What it asks",
    "lessons": "Lessons",
    "items": "Items",
    "tests": "Tests",
    "word": "Word",
    "meaning": "Meaning",
    "example": "Example",
    "formula": "Formula",
    "what": "What",
    "picture": "",
    "material": "Material",
    "for": "For",
    "date": "Date",
    "test": "Test",
    "covers": "What it covers",
}


@dataclass(frozen=True, slots=True)
class ScopeAndSequence:
    """Units as (title, lessons), lessons as (number, title, objective, standards)."""

    title: str
    units: Sequence[tuple[str, Sequence[tuple[str, str, str, str]]]]
    under: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


@dataclass(frozen=True, slots=True)
class StandardsTable:
    """Rows of (code, what it asks, lessons, how many items, tests), under their headings."""

    title: str
    parts: Sequence[tuple[str, Sequence[tuple[str, str, str, str, str]]]]
    under: str = ""
    intro: Sequence[str] = ()
    words: Mapping[str, str] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


@dataclass(frozen=True, slots=True)
class Glossary:
    """Entries of (word, meaning, example, lesson); they are put in alphabetical order."""

    title: str
    entries: Sequence[tuple[str, str, str, str]]
    under: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


@dataclass(frozen=True, slots=True)
class FormulaSheet:
    """Parts of (heading, rows), rows of (what, formula in backticks, figure or None)."""

    title: str
    parts: Sequence[tuple[str, Sequence[tuple[str, str, dict[str, Any] | None]]]]
    under: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


@dataclass(frozen=True, slots=True)
class Materials:
    """Rows of (material, what for)."""

    title: str
    rows: Sequence[tuple[str, str]]
    under: str = ""
    words: Mapping[str, str] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


@dataclass(frozen=True, slots=True)
class TestsToCome:
    """Rows of (date, test, what it covers)."""

    __test__ = False  # it is no test case, whatever a test runner thinks of the name

    title: str
    rows: Sequence[tuple[str, str, str]]
    under: str = ""
    intro: Sequence[str] = ()
    words: Mapping[str, str] = field(default_factory=dict)
    look: Look = field(default_factory=Look)


def _head(words: Mapping[str, str], *names: str) -> list[str]:
    return [{**WORDS, **words}[name] for name in names]


def scope_and_sequence(data: ScopeAndSequence) -> bytes:
    """Every lesson in its order, unit by unit."""
    head = ["", *_head(data.words, "lesson", "objective", "standards")]
    tables = [TableOf(title, head, lessons, (0.4, 2, 4, 1.5)) for title, lessons in data.units]
    return course_list(CourseList(data.title, tables, data.under, look=data.look))


def standards(data: StandardsTable) -> bytes:
    """Which lessons, items and tests meet each standard."""
    head = _head(data.words, "code", "gist", "lessons", "items", "tests")
    tables = [TableOf(title, head, rows, (1.2, 3.4, 3, 0.8, 1.4)) for title, rows in data.parts]
    return course_list(CourseList(data.title, tables, data.under, data.intro, data.look))


def glossary(data: Glossary) -> bytes:
    """Words of the course from A to Z."""
    head = _head(data.words, "word", "meaning", "example", "lesson")
    entries = sorted(data.entries, key=lambda entry: _letters(entry[0]))
    tables = [
        TableOf(letter, head if n == 0 else [], list(group), (2.3, 3.7, 2.6, 1.9))
        for n, (letter, group) in enumerate(groupby(entries, lambda entry: _letters(entry[0])[:1].upper()))
    ]
    return course_list(CourseList(data.title, tables, data.under, look=data.look))


def _letters(word: str) -> str:
    """A word as it is put in order: small letters, accents off (í stands with i)."""
    return "".join(
        one for one in unicodedata.normalize("NFKD", word.casefold()) if not unicodedata.combining(one)
    )


def formula_sheet(data: FormulaSheet) -> bytes:
    """Formulas with a picture where one helps."""
    tables = []
    for title, rows in data.parts:
        figures = [figure for _, _, figure in rows]
        pictured = any(figures)
        head = _head(data.words, "what", "formula", *(["picture"] if pictured else []))
        cells = [(what, formula) for what, formula, _ in rows]
        tables.append(TableOf(title, head, cells, (1.6, 2.4, 2.6), figures=figures if pictured else ()))
    return course_list(CourseList(data.title, tables, data.under, look=data.look))


def materials(data: Materials) -> bytes:
    """What has to be in the house, and what for."""
    table = TableOf("", _head(data.words, "material", "for"), data.rows, (2, 3))
    return course_list(CourseList(data.title, [table], data.under, look=data.look))


def tests_to_come(data: TestsToCome) -> bytes:
    """The tests of the year with their dates."""
    table = TableOf("", _head(data.words, "date", "test", "covers"), data.rows, (1.2, 1.6, 4))
    return course_list(CourseList(data.title, [table], data.under, data.intro, data.look))
