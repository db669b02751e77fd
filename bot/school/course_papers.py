"""Papers about the course itself, made from its content: scope and sequence, glossary, formulas, materials, standards.

Each gives the name of a recipe of `pictures` and its data. Column headings come in as words of the reader's language.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Mapping
from itertools import groupby

from bot.course.standards import Coverage, Met, coverage
from bot.course.year import Course
from bot.pictures.course_papers import (
    FormulaSheet,
    Glossary,
    Materials,
    ScopeAndSequence,
    StandardsTable,
    TestsToCome,
)
from bot.pictures.papers import Look

Words = Mapping[str, str]
"""Headings and sentences of the papers by their names, see `NEEDED`."""

NEEDED = (
    "lesson",
    "objective",
    "standards",
    "code",
    "gist",
    "lessons",
    "items",
    "tests",
    "word",
    "meaning",
    "example",
    "formula",
    "what",
    "material",
    "for",
    "unit",
    "grade",
    "by-parts",
    "standards-note",
    "standards-met",
    "scope-title",
    "standards-title",
    "glossary-title",
    "formulas-title",
    "materials-title",
    "schedule-title",
    "schedule-intro",
    "schedule-covers",
    "schedule-final",
    "schedule-final-calculator",
    "after",
    "test",
    "covers",
)

Paper = tuple[str, object]
Make = Callable[[Course, Words, Look], Paper]


def scope(course: Course, words: Words, look: Look) -> Paper:
    """Every lesson of the year in its order with its objective; one that isn't written yet by its name alone."""
    written = {lesson.id: lesson for lesson in course.lessons}
    n = 0
    units = []
    for unit in course.units:
        rows = []
        for name in unit.lessons:
            n += 1
            lesson = written.get(name)
            if lesson is None:
                rows.append((str(n), name.replace("-", " ").capitalize(), "", ""))
            else:
                rows.append((str(n), lesson.title, lesson.objective, ", ".join(lesson.standards)))
        units.append((f"{words['unit']} {unit.n}: {unit.title}", rows))
    under = course.title
    return "scope-and-sequence", ScopeAndSequence(words["scope-title"], units, under, words, look)


def standards(course: Course, words: Words, look: Look) -> Paper:
    """Which lessons, items and tests meet each standard."""
    found = coverage(course)
    parts = [
        (
            f"{words['grade']} {grade}: {domain}",
            [
                (
                    row.standard.code,
                    row.standard.gist,
                    ", ".join(lesson.title for lesson in row.lessons)
                    or (words["by-parts"] if row.parts_met else ""),
                    str(row.items or ""),
                    ", ".join(test.title for test in row.tests),
                )
                for row in rows
            ],
        )
        for (grade, domain), rows in by_domain(found)
    ]
    intro = [words["standards-note"], *_met(found, words)]
    return "standards", StandardsTable(words["standards-title"], parts, course.title, intro, words, look)


def by_domain(found: Coverage) -> list[tuple[tuple[int, str], list[Met]]]:
    """The rows under their grade and domain."""
    rows = groupby(found.rows, lambda row: (row.standard.grade, row.standard.domain))
    return [(key, list(group)) for key, group in rows]


def _met(found: Coverage, words: Words) -> list[str]:
    grades = sorted({row.standard.grade for row in found.rows})
    return [
        words["standards-met"]
        .replace("GRADE", str(grade))
        .replace("MET", str(len(found.of_grade(grade)) - len(found.missing(grade))))
        .replace("COUNT", str(len(found.of_grade(grade))))
        for grade in grades
    ]


def glossary(course: Course, words: Words, look: Look) -> Paper:
    """The words of the course from A to Z; in another language with the word of the lessons beside it."""
    titles = {lesson.id: lesson.title for lesson in course.lessons}
    entries = []
    for word in course.glossary:
        said = word.in_language(look.language)
        same = said.term.casefold() == word.term.casefold()
        term = said.term if same else f"{said.term} *({word.term})*"
        title = titles.get(word.lesson, word.lesson.replace("-", " ").capitalize())
        entries.append((term, said.meaning, said.example, title))
    return "glossary", Glossary(words["glossary-title"], entries, course.title, words, look)


def formulas(course: Course, words: Words, look: Look) -> Paper:
    """The formula sheet."""

    def mine(texts: Mapping[str, str]) -> str:
        return texts.get(look.language, texts["en"])

    parts = [
        (
            mine(part.title),
            [
                (mine(row.what), mine(row.formula), dict(row.figure) if row.figure else None)
                for row in part.rows
            ],
        )
        for part in course.formulas
    ]
    return "formula-sheet", FormulaSheet(words["formulas-title"], parts, course.title, words, look)


def materials(course: Course, words: Words, look: Look) -> Paper:
    """What has to be in the house: first what is wanted all year, then the things of the hands-on lessons."""
    wanted: dict[str, list[str]] = defaultdict(list)
    for task in course.hands_on:
        for thing in task.materials:
            wanted[_bare(thing)].append(task.title)
    rows = [(thing, what) for thing, what in course.materials]
    at_hand = " ".join(thing for thing, _ in rows)
    rows += [
        (thing, "; ".join(dict.fromkeys(tasks)))
        for thing, tasks in sorted(wanted.items(), key=_often)
        if not re.search(rf"\b{re.escape(thing)}s?\b", at_hand)
    ]
    return "materials", Materials(words["materials-title"], rows, course.title, words, look)


def _bare(thing: str) -> str:
    """A thing without its article and without what stands in brackets at its end, so that two of a kind meet."""
    return re.sub(r"^(?:an?|the) | \(.* with care\)$", "", thing)


def _often(row: tuple[str, list[str]]) -> tuple[int, str]:
    return -len(row[1]), row[0]


def schedule(course: Course, words: Words, look: Look) -> Paper:
    """The tests of the year: after which lesson each may be opened, and what it asks for."""
    titles = {lesson.id: f"{lesson.n}. {lesson.title}" for lesson in course.lessons}
    rows = []
    for test in course.tests:
        if test.after not in titles:
            continue
        if test.final:
            covers = words["schedule-final-calculator" if test.calculator else "schedule-final"]
        else:
            covers = words["schedule-covers"]
        first, last = (titles.get(lesson, lesson) for lesson in test.new)
        covers = covers.replace("FIRST", first).replace("LAST", last).replace("COUNT", str(test.items))
        rows.append((titles[test.after], test.title, covers))
    headed = {**words, "date": words["after"]}
    intro = [words["schedule-intro"]]
    return "tests-to-come", TestsToCome(words["schedule-title"], rows, course.title, intro, headed, look)


PAPERS: Mapping[str, Make] = {
    "scope": scope,
    "standards": standards,
    "glossary": glossary,
    "formulas": formulas,
    "materials": materials,
    "schedule": schedule,
}
"""Every paper by the name it is asked for."""
