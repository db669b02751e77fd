"""What can be made, by name: plain data in, bytes out. This is what the worker process runs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import msgspec

from bot.pictures import charts, course_papers, figures, maths, papers
from bot.pictures.canvas import Canvas
from bot.pictures.typeset import typeset


def _chart(draw: Callable[[Any], Canvas]) -> Callable[[Any], bytes]:
    return lambda data: typeset("picture.typ", figures.sheet(draw(data)))


def _steps(data: list[tuple[str, str]]) -> bytes:
    return maths.lines(data)


RECIPES: Mapping[str, tuple[Any, Callable[[Any], bytes]]] = {
    "figure": (dict[str, Any], figures.png),
    "figure-svg": (dict[str, Any], figures.svg),
    "maths": (list[tuple[str, str]], _steps),
    "week": (charts.Week, _chart(charts.week)),
    "year": (charts.Year, _chart(charts.year)),
    "skill-map": (charts.SkillMap, _chart(charts.skill_map)),
    "worksheet": (papers.Worksheet, papers.worksheet),
    "key": (papers.Worksheet, papers.key),
    "letter": (papers.Letter, papers.letter),
    "record": (papers.Record, papers.record),
    "course-list": (papers.CourseList, papers.course_list),
    "scope-and-sequence": (course_papers.ScopeAndSequence, course_papers.scope_and_sequence),
    "standards": (course_papers.StandardsTable, course_papers.standards),
    "glossary": (course_papers.Glossary, course_papers.glossary),
    "formula-sheet": (course_papers.FormulaSheet, course_papers.formula_sheet),
    "materials": (course_papers.Materials, course_papers.materials),
    "tests-to-come": (course_papers.TestsToCome, course_papers.tests_to_come),
}
"""Name, the type its data is read as, and what makes it."""


def warm() -> None:
    """Load what the first job would wait for: fonts, layout, grammar."""
    figures.png({"figure": "grid", "x": "0..2", "y": "0..2", "line": "y = x"})


def make(recipe: str, data: object) -> bytes:
    """The bytes of a recipe: PNG, SVG or PDF. `data` is plain (dates as text) or the data class itself.

    Raises KeyError for an unknown recipe, msgspec.ValidationError for data of another shape, and
    CannotDraw for a figure that isn't in order.
    """
    kind, maker = RECIPES[recipe]
    return maker(msgspec.convert(msgspec.to_builtins(data), kind, strict=False))
