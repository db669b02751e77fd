"""A tutor's own items and lessons: read, proved, and found by their text alone."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from bot.answers import judge
from bot.course.draw import draw
from bot.course.own import learn_lesson, own_id, prove_own_lesson, read_own_items
from bot.course.starting import starting_file
from bot.course.year import Course, NoSuchThing
from bot.vocabulary import Verdict

ROWS = list(csv.DictReader(Path(__file__).with_name("own_items.tsv").open(encoding="utf-8"), delimiter="\t"))


@pytest.mark.parametrize("row", ROWS, ids=[row["why"] for row in ROWS])
def test_a_typed_item_is_read_and_its_own_answer_counts(row: dict[str, str]) -> None:
    ((line, item),), faults = read_own_items(row["typed"])
    assert not faults and line == row["typed"]
    assert (item.key.answer, item.key.form, item.key.unit or "") == (row["answer"], row["form"], row["unit"])
    assert judge(f"{row['answer']} {row['unit']}".strip(), item.key).verdict is Verdict.RIGHT
    assert judge("123454321", item.key).verdict is not Verdict.RIGHT


@pytest.mark.parametrize(
    ("typed", "kind"),
    [
        ("Only a question", "no-answer"),
        ("// 4", "no-answer"),
        ("A question //", "no-answer"),
        ("a // b // words // d // e", "too-many-fields"),
        ("3 * 4 // 12 // hole", "unknown-form"),
        ("2 + 2 // five // whole", "answer-refused"),
        ("Which? // green // choice red, blue", "choice"),
        ("Which? // red // choice red, red", "choice"),
        ("Round 2/3. // 0.67 // decimal-rounded", "unknown-form"),
        ("q" * 700 + " // 4", "long"),
        ("Say it // " + "9" * 100, "long"),
    ],
)
def test_a_line_that_does_not_hold_is_named_with_its_number(typed: str, kind: str) -> None:
    made, (fault,) = read_own_items(f"2 + 2 // 4\n\n{typed}")
    assert len(made) == 1
    assert (fault.kind, fault.line) == (kind, 3)
    assert fault.what


def test_nothing_typed_becomes_a_mark() -> None:
    ((_, item),), _ = read_own_items("3*4 is *not* `5` **x** // 12")
    assert item.ask == "3×4 is ×not× 5 ××x××"


def test_at_most_twelve_items_at_a_time() -> None:
    made, (fault,) = read_own_items("\n".join(f"{n} + 0 // {n}" for n in range(1, 15)))
    assert len(made) == 12
    assert (fault.kind, fault.line) == ("too-many", 13)


def test_a_lesson_is_proved_with_many_draws_and_then_drawn_like_any_other(course: Course) -> None:
    text = starting_file(course, "flour-by-the-sack")
    found = prove_own_lesson(course, text)
    assert found.lesson is not None and not found.faults and found.draws == 50
    assert {note.kind for note in found.notes} >= {"few-templates"}
    name = found.lesson.id
    with pytest.raises(NoSuchThing):
        course.lesson(name)
    assert learn_lesson(course, text) == name == own_id(text)
    try:
        template = course.lesson(name).templates[0]
        item = draw(course, template.id, 5)
        assert item == draw(course, template.id, 5)
        assert (item.lesson, item.lesson_title) == (name, "Flour by the sack")
        assert judge(item.key.answer, item.key).verdict is Verdict.RIGHT
        assert all(one.id != name for one in course.lessons), "it is found by its id and never planned"
    finally:
        del course.own[name]


@pytest.mark.parametrize(
    ("old", "new", "kind"),
    [
        ("answer: a + b", "answer: a + q", "never-drawn"),
        ("form: whole", "form: hole", "unknown-form"),
        ("a: 12..60\n  b: 12..60 except a", "a: 12..13\n  b: 14..15", "too-few"),
        ("2. `answer`", "2. `a - b`", "last-step"),
        ("needs: add-subtract-whole", "needs: flying", "skill-not-taught"),
        ("# Items", "# Itmes", "unknown-part"),
        ("title: TITLE", "titel: TITLE", "missing-key"),
    ],
)
def test_what_is_false_in_a_lesson_stops_it_and_is_named_with_its_line(
    course: Course, old: str, new: str, kind: str
) -> None:
    text = starting_file(course, "flour").replace("title: Flour", "title: TITLE")
    found = prove_own_lesson(course, text.replace(old, new))
    faults = {fault.kind: fault for fault in found.faults}
    assert kind in faults, list(faults)
    assert faults[kind].line >= 1 and faults[kind].what
    assert learn_lesson(course, "no lesson at all") is None
