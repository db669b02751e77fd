"""Papers made from the course: every row is there, in order, in one language."""

from __future__ import annotations

from io import BytesIO

from pypdf import PdfReader

from bot.pictures.course_papers import (
    FormulaSheet,
    Glossary,
    Materials,
    ScopeAndSequence,
    StandardsTable,
    TestsToCome,
)
from bot.pictures.recipes import make


def text(content):
    return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(content)).pages).split())


def test_scope_and_sequence_holds_every_lesson_in_order():
    lessons = [(str(n), f"Lesson {n:03}", "Find the area.", "6.G.A.1") for n in range(1, 129)]
    written = text(
        make(
            "scope-and-sequence",
            ScopeAndSequence("Scope", [("First", lessons[:60]), ("Second", lessons[60:])]),
        )
    )

    places = [written.index(f"Lesson {n:03}") for n in range(1, 129)]
    assert places == sorted(places)
    assert written.index("First") < places[0] and places[59] < written.index("Second") < places[60]


def test_standards_name_code_lessons_items_and_tests():
    rows = [
        ("6.NS.A.1", "Divide fractions", "Dividing by a fraction", "212", "Unit 4"),
        ("6.G.A.1", "Area", "", "0", ""),
    ]
    written = text(make("standards", StandardsTable("Standards", [("Grade 6", rows)])))

    assert [cell for row in rows for cell in row if cell not in written] == []


def test_a_glossary_is_in_alphabetical_order():
    entries = [
        ("slope", "how steep", "`2/3`", "Slope"),
        ("area", "room inside", "`4 × 3`", "Area"),
        ("Base", "below", "", ""),
    ]
    written = text(make("glossary", Glossary("Words", entries)))

    assert written.index("area") < written.index("Base") < written.index("slope")


def test_a_formula_sheet_has_pictures_where_they_help():
    circle = {"figure": "circle", "radius": "r = 77"}
    sheet = FormulaSheet(
        "Formulas", [("Flat", [("Circle", "`A = π r^2`", circle), ("Square", "`A = s^2`", None)])]
    )

    assert "77" in text(make("formula-sheet", sheet))


def test_lists_for_the_kitchen_table():
    assert "string" in text(make("materials", Materials("Materials", [("string", "How far around")])))
    assert "Unit 2" in text(
        make("tests-to-come", TestsToCome("Tests", [("1 October", "Unit 2, first", "Area")]))
    )


def test_headings_come_from_outside():
    spoken = Glossary(
        "Palabras", [("área", "lo de dentro", "", "")], words={"word": "Palabra", "meaning": "Qué es"}
    )

    assert "Palabra" in text(make("glossary", spoken)) and "Meaning" not in text(make("glossary", spoken))
