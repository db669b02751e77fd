"""Published exercises fed to our templates: with their numbers a template has to come to the published answer.

The rows and their licence are described in `course_examples/README.md`.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from support.courses import whole_course

from bot.answers.judge import judge
from bot.answers.key import Key
from bot.course.draw import key_with
from bot.course.make_item import Thrown
from bot.maths.read import Unreadable, read
from bot.maths.tree import letters_in
from bot.vocabulary import Verdict

HERE = Path(__file__).parent / "course_examples"
COURSE = whole_course()


def table(name: str) -> list[list[str]]:
    """The rows of a tab-separated file, without its heading."""
    lines = (HERE / name).read_text(encoding="utf-8").splitlines()[1:]
    return [line.split("\t") for line in lines if line]


def rows(unit: str) -> list[dict[str, Any]]:
    lines = (HERE / f"{unit}.jsonl").read_text(encoding="utf-8").splitlines()
    return [json.loads(line) for line in lines if line]


UNITS = sorted(path.stem for path in HERE.glob("*.jsonl"))
ROWS = {unit: rows(unit) for unit in UNITS}
WITHOUT = dict(table("lessons-without.tsv"))
CANNOT = {(template, letters): why for template, letters, why in table("rows-that-cannot.tsv")}


def name_of(row: dict[str, Any]) -> tuple[str, str]:
    letters = ", ".join(f"{name} = {text}" for name, text in row["letters"].items())
    return f"{row['lesson']}/{row['template']}", letters


def in_letters_of(key: Key, answer: str) -> str:
    """The published answer with the item's letter, where each has a single one: the book asks in a or y, we in x."""
    try:
        ours, theirs = letters_in(read(key.answer)), letters_in(read(answer))
    except Unreadable:
        return answer
    if len(ours) != 1 or len(theirs) != 1:
        return answer
    return re.sub(rf"(?<![A-Za-z]){next(iter(theirs))}(?![A-Za-z])", next(iter(ours)), answer)


def trouble(row: dict[str, Any]) -> str:
    """Why a row's published answer isn't what its template takes to be right; empty if it is."""
    template = COURSE.template(name_of(row)[0])
    key = key_with(COURSE, template, row["letters"], row.get("words", {}))
    if isinstance(key, Thrown):
        return f"{key.why}: {key.detail}"
    typed = in_letters_of(key, row["answer"])
    if key.unit and key.form.startswith("quantity"):
        typed = f"{typed} {key.unit}"
    found = judge(typed, key)
    return "" if found.verdict is Verdict.RIGHT else f"{found.verdict} of {typed}, expected {key.answer}"


@pytest.mark.parametrize("unit", UNITS)
def test_templates_come_to_the_published_answers(unit: str) -> None:
    named = [(row, name_of(row)) for row in ROWS[unit]]
    wrong = [(*name, why) for row, name in named if name not in CANNOT and (why := trouble(row))]
    counts = Counter(row["source"].partition(",")[0] for row, name in named if name not in CANNOT)
    print(unit, dict(counts))

    assert wrong == []


def test_a_row_that_cannot_be_fed_is_there_and_cannot() -> None:
    known = {name_of(row): row for found in ROWS.values() for row in found}
    assert CANNOT.keys() <= known.keys()
    assert [name for name in CANNOT if not trouble(known[name])] == []


def test_every_row_names_its_source_and_licence() -> None:
    for found in ROWS.values():
        for row in found:
            assert row["source"] and row["licence"], row


def test_a_lesson_without_published_examples_is_listed_with_the_reason() -> None:
    """Asked of every unit that has rows, and of all once the year is written."""
    written = {lesson.id: lesson.unit for lesson in COURSE.lessons}
    whole_year = written.keys() >= {lesson for unit in COURSE.units for lesson in unit.lessons}
    complete = {lesson for lesson, unit in written.items() if whole_year or f"unit-{unit:02}" in UNITS}
    met = {row["lesson"] for found in ROWS.values() for row in found}
    assert sorted(complete - met - WITHOUT.keys()) == []
    assert sorted(met & WITHOUT.keys()) == []


def test_there_are_at_least_four_hundred() -> None:
    assert sum(len(found) for found in ROWS.values()) - len(CANNOT) >= 400
