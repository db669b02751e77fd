"""The real course: every claim proved, names found, the handbook up to date, cards readable."""

from __future__ import annotations

import json
import re
import shutil
import statistics
from pathlib import Path

import pytest
import textstat
import typer
from support.courses import read_content, whole_course
from typer.testing import CliRunner

from bot.cli import content
from bot.course import figures
from bot.course.item import RunKind, runs
from bot.course.lesson import HandsOn, Lesson
from bot.course.load import load_course
from bot.course.prove import check_folder, check_lesson
from bot.course.recipes import FORMS, KEYS
from bot.course.words import WORDS
from bot.course.year import Course

ROOT = Path(__file__).parents[2]
HANDBOOK = (ROOT / "content" / "README.md").read_text(encoding="utf-8")


COURSE, FAULTS = whole_course(), read_content()[1]


def test_every_file_can_be_read() -> None:
    assert [str(fault) for fault in FAULTS] == []


@pytest.mark.parametrize("holder", COURSE.holders, ids=[holder.id for holder in COURSE.holders])
def test_every_claim_holds(holder: Lesson | HandsOn) -> None:
    """A few draws of each template; `evensum check-content`, which `make test` runs too, makes hundreds."""
    assert [str(fault) for fault in check_lesson(COURSE, holder, draws=12).faults] == []


def test_lessons_are_found_by_id_by_number_and_by_skill(course: Course) -> None:
    lesson = course.lesson("greatest-common-factor")
    assert course.lesson_number(10) == lesson
    assert course.teaches(lesson.skills[0]) == lesson.id
    assert course.template("greatest-common-factor/equal-bags") in lesson.templates


def test_syllabus_names_prerequisites_by_the_lessons_that_teach_them(course: Course) -> None:
    by_id = {lesson.id: lesson for lesson in course.syllabus()}
    assert by_id["equivalent-fractions-and-simplest-form"].prerequisites == (
        "fractions-on-a-line-and-as-division",
        "factors-and-divisibility",
        "greatest-common-factor",
    )
    assert [lesson.n for lesson in course.syllabus()][:11] == list(range(1, 12))


def test_handbook_names_everything_a_writer_can_use() -> None:
    for key in KEYS:
        assert f"`{key}`" in HANDBOOK, key
    for form in FORMS:
        assert f"`{form}`" in HANDBOOK, form
    for word in WORDS:
        assert f"`{word.partition('(')[0]}(" in HANDBOOK, word
    for kind in figures.KINDS.values():
        row = next(line for line in HANDBOOK.splitlines() if line.startswith(f"| `{kind.name}`"))
        assert {field.name for field in kind.fields} <= set(re.findall(r"[a-z][a-z-]*", row)), kind.name


def reading_grade(text: str) -> float:
    """A school grade of reading, the higher of two formulas that count letters, words and sentences.

    Maths counts as a short word and a bold term as a known one. (Formulas that count syllables need a dictionary that
    has to be fetched.)
    """
    parts = {RunKind.MATHS: "six", RunKind.BOLD: "term"}
    plain = "".join(parts.get(run.kind, run.text) for run in runs(text)).replace("•", "")
    return max(float(textstat.automated_readability_index(plain)), float(textstat.coleman_liau_index(plain)))


def test_cards_are_readable_for_a_twelve_year_old(course: Course) -> None:
    by_unit: dict[int, list[float]] = {}
    for lesson in course.lessons:
        for card in lesson.cards:
            grade = reading_grade(card.text)
            assert grade <= 8, (lesson.title, grade)
            by_unit.setdefault(lesson.unit, []).append(grade)
    for unit, grades in by_unit.items():
        assert statistics.median(grades) <= 6, (unit, grades)


@pytest.fixture
def command() -> typer.Typer:
    app = typer.Typer()
    content.add_to(app)
    return app


def test_preview_gives_an_object_a_draw(command: typer.Typer) -> None:
    what = ["preview", "order-of-operations/plus-and-times", "--draws", "2", "--json"]
    result = CliRunner().invoke(command, [*what, "--content", str(ROOT / "content")])
    lines = [json.loads(line) for line in result.stdout.splitlines()]
    assert [line["seed"] for line in lines] == [1, 2]
    wanted = (
        "lesson",
        "template",
        "skills",
        "question",
        "answer",
        "form",
        "unit",
        "missteps",
        "hints",
        "steps",
        "picture",
    )
    assert set(wanted) <= lines[0].keys()


def test_a_broken_lesson_stops_no_other(command: typer.Typer, small: Path) -> None:
    shutil.copy(small / "unit-01" / "two-step-equations.md", small / "unit-01" / "inequalities.md")
    (small / "unit-01" / "inequalities.md").write_text("no lesson yet\n", encoding="utf-8")
    where = ["--draws", "1", "--content", str(small)]

    shown = CliRunner().invoke(command, ["preview", "two-step-equations", *where])
    assert shown.exit_code == 0 and "Two-step equations" in shown.stdout
    broken = CliRunner().invoke(command, ["preview", "inequalities", *where])
    assert broken.exit_code == 2 and "front matter" in broken.output
    assert check_folder(small, draws=2, only="two-step").faults == []


def test_lessons_shared_by_processes_give_the_same_report(small: Path) -> None:
    shutil.copy(small / "unit-01" / "two-step-equations.md", small / "unit-01" / "inequalities.md")
    one, two = (check_folder(small, draws=3, processes=n) for n in (1, 2))
    assert one.faults == two.faults and len(one.faults) > 0
    assert [r.template.id for r in one.templates] == [r.template.id for r in two.templates]


def test_check_ends_with_1_when_there_is_a_fault(command: typer.Typer, small: Path) -> None:
    clean = CliRunner().invoke(
        command, ["check-content", "--draws", "100", "--json", "--content", str(small)]
    )
    assert (clean.exit_code, json.loads(clean.stdout)["counts"]["faults"]) == (0, 0)
    (small / "words.yaml").write_text("people: Wren\n", encoding="utf-8")
    assert (
        CliRunner().invoke(command, ["check-content", "--draws", "9", "--content", str(small)]).exit_code == 1
    )


def test_a_new_lesson_begins_without_faults(command: typer.Typer, small: Path) -> None:
    result = CliRunner().invoke(command, ["new-lesson", "inequalities", "--content", str(small)])
    assert result.exit_code == 0, result.output
    report = check_folder(small, draws=60, only="inequalities")
    kinds = {fault.kind for fault in report.faults}
    assert kinds <= {
        "few-templates",
        "buttons",
        "no-words",
        "nothing-mixed-in",
        "one-level",
        "skill-not-taught",
    }
    assert load_course(small).lesson("inequalities").title == "Inequalities"


def test_the_summary_counts_what_there_is(command: typer.Typer, small: Path) -> None:
    what = [
        "check-content",
        "--draws",
        "60",
        "--summary",
        "--json",
        "--pictures",
        "2",
        "--content",
        str(small),
    ]
    said = json.loads(CliRunner().invoke(command, what).stdout)
    assert set(said) == {"figures", "faults"}
    figures_ = said["figures"]
    wanted = {"lessons": 1, "templates": 4, "draws": 240, "hints": 8, "pictures_made": 2, "faults": 0}
    assert {name: figures_[name] for name in wanted} == wanted
    assert figures_["share_by_button"] == 0.25
    assert 150 < figures_["different_items"] <= 240
    assert 0 < figures_["thrown_away_by_wish"] < 240 and figures_["seconds"] > 0


def test_numbers_that_come_again_are_proved_once_and_counted_as_drawn(small: Path) -> None:
    path = small / "unit-01" / "two-step-equations.md"
    narrow = path.read_text(encoding="utf-8").replace(
        "  p: 3..12\n  f: 2..6\n  n: 4..20\n", "  p: 3..4\n  f: 5..6\n  n: 7..8\n"
    )
    path.write_text(narrow, encoding="utf-8")
    report = next(r for r in check_folder(small, draws=60).templates if r.template.name == "tram-pass")
    assert (report.draws, report.different) == (60, 8)
    # Three names and eight triples of numbers: no more items than that were judged, three missteps each.
    assert 3 * 8 <= report.typed <= 3 * 8 * 3
