"""Standards set against lessons, items and tests."""

from __future__ import annotations

import json
from pathlib import Path

import typer
from typer.testing import CliRunner

from bot.cli import content
from bot.course.load import load_with_faults
from bot.course.prove import check_folder
from bot.course.standards import OURS, coverage, standards
from bot.course.year import Course

ROOT = Path(__file__).parents[2]
LESSON = Path("unit-01/two-step-equations.md")


def test_all_codes_of_four_to_eight_are_known() -> None:
    counts = {grade: sum(one.grade == grade for one in standards().values()) for grade in range(4, 9)}
    assert counts == {4: 37, 5: 40, 6: 47, 7: 43, 8: 36}
    assert standards()["6.RP.A.3b"].whole == "6.RP.A.3"


def test_every_standard_of_our_grades_is_met_once_the_year_is_written(course: Course) -> None:
    written = {lesson.id for lesson in course.lessons}
    to_come = [lesson for unit in course.units for lesson in unit.lessons if lesson not in written]
    missing = [code for grade in OURS for code in coverage(course).missing(grade)]
    assert not missing or to_come, missing


def test_a_standard_is_met_by_lesson_items_and_the_test_that_asks_it_first(course: Course) -> None:
    row = next(row for row in coverage(course).rows if row.standard.code == "6.NS.B.4")
    lessons = {lesson.id for lesson in row.lessons}
    assert {"greatest-common-factor", "least-common-multiple"} <= lessons
    assert row.items == sum(len(lesson.templates) for lesson in row.lessons)
    assert "test-1" not in {test.id for test in row.tests} and row.tests


def test_parts_meet_their_whole(small: Path) -> None:
    text = (small / LESSON).read_text(encoding="utf-8")
    named = "7.EE.B.4b"
    (small / LESSON).write_text(text.replace("7.EE.B.4a", f"7.EE.B.4a, {named}"), encoding="utf-8")
    rows = {row.standard.code: row for row in coverage(load_with_faults(small)[0]).rows}
    assert rows["7.EE.B.4"].is_met and rows["7.EE.B.4"].lessons == ()
    assert not rows["7.EE.B.3"].is_met


def test_an_unknown_code_is_told_with_the_nearest(small: Path) -> None:
    text = (small / LESSON).read_text(encoding="utf-8")
    (small / LESSON).write_text(text.replace("7.EE.B.4a", "7.EE.B.4e"), encoding="utf-8")
    told = [fault for fault in check_folder(small, draws=2).faults if fault.kind == "standard"]
    assert [f"{fault.what} {fault.fix}" for fault in told] == [
        "No standard has the code '7.EE.B.4e'. Did you mean 7.EE.B.4?"
    ]


def test_the_table_is_printed_for_people_for_programs_and_on_paper(tmp_path: Path) -> None:
    app = typer.Typer()
    content.add_to(app)
    run, where = CliRunner(), ["--content", str(ROOT / "content")]

    assert "6.NS.B.4" in run.invoke(app, ["standards", *where]).stdout
    data = json.loads(run.invoke(app, ["standards", "--json", *where]).stdout)
    assert [grade["grade"] for grade in data["grades"]] == [4, 5, 6, 7, 8]
    assert all(len(row["lessons"]) > 0 for row in data["standards"] if row["items"])
    run.invoke(app, ["standards", "--pdf", str(tmp_path / "table.pdf"), *where])
    assert (tmp_path / "table.pdf").read_bytes().startswith(b"%PDF")
