"""A lesson with a fault is left out alone: the others, the tests and the hands-on lessons go on."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from bot.course.draw import draw
from bot.course.faults import CourseErrors
from bot.course.usable import usable_course

ROOT = Path(__file__).parents[2]


@pytest.fixture
def two(tmp_path: Path) -> Path:
    """Two units of the real course."""
    folder = tmp_path / "content"
    shutil.copytree(ROOT / "content", folder, ignore=shutil.ignore_patterns("unit-0[3-9]", "unit-1*"))
    return folder


def test_a_sound_course_is_whole(two: Path) -> None:
    course, faults = usable_course(two)
    assert ([str(fault) for fault in faults], len(course.lessons)) == ([], 22)
    assert {template.id for holder in course.holders for template in holder.templates} == course.ready.keys()


def test_a_lesson_that_cannot_be_read_takes_nothing_from_the_others(two: Path) -> None:
    (two / "unit-01" / "factors-and-divisibility.md").write_text("no lesson yet\n", encoding="utf-8")
    course, faults = usable_course(two)

    assert {fault.file for fault in faults} == {"content/unit-01/factors-and-divisibility.md"}
    assert len(course.lessons) == 21 and course.lesson_number(8) is None
    for holder in course.holders:
        for template in holder.templates:
            assert draw(course, template.id, 1).lesson == holder.id


def test_a_lesson_whose_maths_cannot_be_read_is_left_out_before_the_morning(two: Path) -> None:
    path = two / "unit-02" / "comparing-fractions.md"
    path.write_text(
        path.read_text(encoding="utf-8").replace("\nanswer: ", "\nanswer: ) ", 1), encoding="utf-8"
    )
    course, faults = usable_course(two)

    assert {fault.file for fault in faults} == {"content/unit-02/comparing-fractions.md"}
    assert "comparing-fractions" not in {lesson.id for lesson in course.lessons}
    assert len(course.lessons) == 21


def test_tests_and_hands_on_lessons_step_back_to_a_lesson_that_is_there(two: Path) -> None:
    (two / "unit-01" / "equivalent-fractions-and-simplest-form.md").write_bytes(b"\xff\xfe no text")
    (two / "unit-01" / "place-value-and-rounding.md").write_text("", encoding="utf-8")
    (two / "unit-02" / "opposites-and-absolute-value.md").write_text("", encoding="utf-8")
    course, _ = usable_course(two)
    test = course.test("test-1")

    assert test.after == "greatest-common-factor"
    assert test.new == ("order-of-operations", "fractions-on-a-line-and-as-division")
    line = course.hands_on_lesson("a-number-line-across-the-room")
    assert line.after == "decimals-place-value-and-comparing"


def test_a_course_without_a_sound_lesson_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CourseErrors, match=r"no course\.yaml"):
        usable_course(tmp_path)
