"""Papers about the course come out of the command as PDF, whole and in the reader's language."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
import typer
from pypdf import PdfReader
from support.courses import CONTENT, whole_course
from typer.testing import CliRunner

from bot.cli import printing
from bot.cli.printing import Paper
from bot.school.course_papers import PAPERS

COURSE = whole_course()


def made(tmp_path: Path, *words: str) -> PdfReader:
    app = typer.Typer()
    printing.add_to(app)
    out = tmp_path / "paper.pdf"
    result = CliRunner().invoke(app, [*words, "--out", str(out), "--content", str(CONTENT)])
    assert result.exit_code == 0, result.output
    return PdfReader(BytesIO(out.read_bytes()))


def text(paper: PdfReader) -> str:
    return " ".join(" ".join(page.extract_text() for page in paper.pages).replace("-\n", "").split())


def test_every_paper_can_be_asked_for() -> None:
    assert {str(paper) for paper in Paper} == set(PAPERS)


def test_scope_and_sequence_holds_every_written_lesson(tmp_path: Path) -> None:
    written = text(made(tmp_path, "scope"))
    assert [lesson.title for lesson in COURSE.lessons if lesson.title.split()[0] not in written] == []
    assert [unit.n for unit in COURSE.units if f"Unit {unit.n}: {unit.title}" not in written] == []


@pytest.mark.parametrize(
    ("language", "words"), [("en", ("Meaning", "numerator")), ("es", ("Significado", "numerador"))]
)
def test_the_glossary_is_in_the_language_asked_for(
    tmp_path: Path, language: str, words: tuple[str, ...]
) -> None:
    written = text(made(tmp_path, "glossary", "--language", language))
    assert [word for word in words if word not in written] == []


def test_the_formula_sheet_has_the_size_asked_for(tmp_path: Path) -> None:
    letter, a4 = made(tmp_path, "formulas", "--size", "letter"), made(tmp_path, "formulas")
    sizes = [tuple(round(float(side)) for side in paper.pages[0].mediabox[2:]) for paper in (letter, a4)]
    assert sizes == [(612, 792), (595, 842)]  # points: 8.5 × 11 in; 210 × 297 mm (ISO 216)
    assert "Pythagorean theorem" in text(a4)


def test_materials_name_things_of_the_year_and_of_the_hands_on_lessons(tmp_path: Path) -> None:
    written = text(made(tmp_path, "materials"))
    assert "a protractor" in written and "measuring cup" in written
    assert [task.title for task in COURSE.hands_on if task.title.split()[0] not in written] == []


def test_standards_name_lessons_and_what_is_met(tmp_path: Path) -> None:
    written = text(made(tmp_path, "standards"))
    assert "6.NS.B.4" in written and "Greatest common factor" in written
    assert "Grade 6: 47 of 47" in written


def test_the_schedule_names_every_test_with_its_lesson_and_what_it_asks_for(tmp_path: Path) -> None:
    written = text(made(tmp_path, "schedule"))
    assert [test.title for test in COURSE.tests if test.title not in written] == []
    assert "with a calculator" in written and "without a calculator" in written
    assert "Place value and rounding" in written
