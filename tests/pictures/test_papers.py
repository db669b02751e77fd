"""Papers: everything that belongs on them is on them, and nothing that doesn't."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from io import BytesIO

import pytest
from pypdf import PdfReader

from bot.pictures import papers
from bot.pictures.charts import SkillMap, Week, Year
from bot.pictures.papers import CourseList, Letter, Look, Record, SheetItem, TableOf, Worksheet
from bot.pictures.recipes import make

FIGURE = {"figure": "rectangle", "width": "24 m", "height": "unknown"}
STEPS = [("12 ÷ 3/4", "Turn it over.")]
SHEET = Worksheet(
    "Monday's review",
    [
        SheetItem("1", "How many loaves?", "from *Dividing by a fraction*", answer="16 loaves", steps=STEPS),
        SheetItem("2", "Which sign?", "", None, ("less", "equal", "greater"), 0, "greater"),
        SheetItem("3", "The other side?", "from Area", FIGURE, (), 3, "7 m"),
    ],
    "Wren, 14 September 2026",
)


def read(content):
    return PdfReader(BytesIO(content))


def text(content):
    return " ".join(" ".join(page.extract_text() for page in read(content).pages).split())


def test_a_sheet_holds_its_items_and_where_they_come_from():
    written = text(papers.worksheet(SHEET))

    for part in (
        "Monday's review",
        "Wren, 14",
        "How many loaves?",
        "from Dividing by a fraction",
        "greater",
        "24 m",
    ):
        assert part in written


def test_a_sheet_holds_no_answer_and_its_key_does():
    assert "16 loaves" not in text(papers.worksheet(SHEET))
    assert "16 loaves" in text(papers.key(SHEET)) and "Turn it over." in text(papers.key(SHEET))


@pytest.mark.parametrize(("size", "points"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_papers_come_in_both_sizes(size, points):
    box = read(papers.worksheet(replace(SHEET, look=Look(size=size)))).pages[0].mediabox

    assert (round(box.width), round(box.height)) == points


def test_big_type_takes_more_pages():
    many = replace(
        SHEET, items=[SheetItem(str(n), "How many loaves?" * 9, answer="x" * 9) for n in range(90)]
    )
    big = replace(many, look=Look(big=True))

    assert len(read(papers.key(big)).pages) > len(read(papers.key(many)).pages)
    assert len(read(papers.worksheet(big)).pages) > len(read(papers.worksheet(many)).pages)


def test_equal_papers_are_equal_bytes():
    dated = replace(SHEET, look=Look(made=date(2026, 9, 14)))

    assert papers.worksheet(SHEET) == papers.worksheet(SHEET)
    assert papers.worksheet(dated) == papers.worksheet(dated)
    assert read(papers.worksheet(dated)).metadata.creation_date.date() == date(2026, 9, 14)


def test_a_paper_is_tagged_and_named_for_those_who_listen():
    made = read(papers.worksheet(replace(SHEET, look=Look(language="es"))))

    assert made.metadata.title == "Monday's review"
    assert made.trailer["/Root"]["/Lang"] == "es"
    assert "/StructTreeRoot" in made.trailer["/Root"]


TYPED = """#panic()
$ 1/0 $ @ref <label>
") #import "x"
= heading
\\u{41} // note
`#panic()`
`$4.50`
`7 R 2`
**b
`x""".splitlines()


@pytest.mark.parametrize("typed", TYPED)
def test_what_stands_in_a_text_stays_text(typed):
    sheet = Worksheet(
        "T", [SheetItem("1", typed, typed, None, (typed,), 1, typed, [(typed, typed)])], typed, typed
    )
    letter = Letter(typed, [typed], typed, [(typed, typed)], closing=typed)
    table = CourseList("T", [TableOf(typed, [typed], [[typed]], note=typed)])

    made = [papers.worksheet(sheet), papers.key(sheet), papers.letter(letter), papers.course_list(table)]

    word = typed.strip("`* ").split()[0].strip("`")
    assert all(word in text(one) for one in made)


def test_a_letter_with_pictures_is_a_page():
    monday = date(2026, 9, 14)
    letter = Letter(
        "The week of 14 September",
        ["Wren did **42 of 48**."],
        facts=[("Lessons", "5")],
        week=Week(monday, "dpd..ff", [(monday, 9, 2, 1, 0)]),
        year=Year(date(2026, 8, 31), date(2027, 6, 11), 116, [(monday, 6)]),
        closing="Ines Okafor-Lund",
    )

    made = papers.letter(letter)
    assert len(read(made).pages) == 1
    assert [part for part in ("42 of 48", "Ines Okafor-Lund", "Mon") if part not in text(made)] == []


def test_a_record_holds_every_row():
    rows = [[f"day {n}", "Area", "6.G.A.1"] for n in range(180)]
    record = Record(
        "Record",
        [TableOf("School days", ["Day", "Lesson", "Standard"], rows, [1, 3, 1])],
        "Wren",
        notes=["Twenty items are a small look."],
        skills=SkillMap([("Area", ["steady", "shaky"])]),
    )
    written = text(papers.record(record))

    assert [n for n in range(180) if f"day {n} " not in written] == []
    assert written.count("Standard") > 1  # the heading is repeated on every page
    assert "Twenty items are a small look." in written


def test_a_short_row_is_filled_up():
    assert "only" in text(
        papers.course_list(CourseList("T", [TableOf("", ["a", "b"], [["only"], ["x", "y"]])]))
    )


def test_papers_are_made_from_plain_data_as_well():
    table = {"heading": "A", "head": ["word"], "rows": [["**area**: `a b`"]]}
    plain = {"title": "Words", "tables": [table], "look": {"made": "2026-09-14"}}

    assert "area" in text(make("course-list", plain))
