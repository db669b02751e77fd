"""A paper day: what is printed is what is asked, the key stays with grown-ups, and pages come back as photos."""

from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader
from support.group import Group, Somebody, only
from support.steering import stored, words_of

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import Drawing, Kept
from bot.course.item import plain_text
from bot.messages import (
    HoldsShown,
    KeyPaper,
    NoSuchCommand,
    PagesShown,
    PaperGraded,
    PaperSheet,
    PlanShown,
    SheetPaper,
    TakenBack,
    WrongCommand,
)
from bot.pictures.recipes import make
from bot.records import people
from bot.records.base import transaction
from bot.vocabulary import Part


def written(message: SheetPaper | KeyPaper) -> str:
    content = render(message, "en").documents[0].content
    assert isinstance(content, Drawing)
    pages = PdfReader(BytesIO(make(content.recipe, content.data))).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


@pytest.fixture
def tove(group: Group, wren: Somebody) -> Somebody:
    return group.who(demo.TOVE)


def test_what_was_printed_for_tomorrow_is_asked_tomorrow_whatever_happens_until_then(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    sheet = only(SheetPaper, tove.types("/sheet wren tomorrow"))
    assert sheet.fixed and sheet.date == "2026-09-15"
    group.at(9)
    wren.gets_to_review()
    for _ in range(3):  # one item is missed for good, which would change tomorrow's plan
        group.later(20)
        wren.types("123454321")
    group.at(19, 5)
    group.tick()
    group.at(8, day=1)
    group.tick()
    assert [(each.place, each.item.ask) for each in wren.items(Part.REVIEW)] == [
        (r.n, r.ask) for r in sheet.rows
    ]
    key = only(KeyPaper, tove.types("/key wren"))
    assert [row.answer for row in key.rows] == [each.item.answer_shown for each in wren.items(Part.REVIEW)]


def test_printing_twice_gives_the_same_sheet(tove: Somebody) -> None:
    first, again = (only(SheetPaper, tove.types("/sheet wren tomorrow")) for _ in range(2))
    assert (first.fixed, again.fixed) == (True, False)
    assert first.rows == again.rows


def test_the_answers_of_todays_sheet_come_by_their_numbers_in_any_order(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    group.at(9)
    wren.gets_to_review()
    only(PaperSheet, wren.presses("paper", wren.day().id))
    sheet = only(SheetPaper, tove.types("/sheet wren"))
    assert sheet.date == "2026-09-14" and not sheet.fixed
    typed = [each for each in wren.items(Part.REVIEW) if not each.item.choices][:3]
    answers = "  ".join(f"{each.place}) {each.item.key.answer}" for each in reversed(typed))
    graded = only(PaperGraded, wren.types(answers))
    assert [row[0] for row in graded.rows] == sorted(each.place for each in typed)
    assert {row.n: row.ask for row in sheet.rows} == {e.place: e.item.ask for e in wren.items(Part.REVIEW)}


def test_a_sheet_holds_every_question_with_its_lesson_and_no_answer(wren: Somebody, tove: Somebody) -> None:
    sheet = only(SheetPaper, tove.types("/sheet wren"))
    assert all(not row.answer and not row.steps and not row.unit for row in sheet.rows)
    text = written(sheet)
    for sent in wren.items(Part.REVIEW):
        words = [word for word in plain_text(sent.item.ask).split() if word.isalpha()]
        assert all(word in text for word in words[:4])
        if sent.lesson != wren.day().lesson:
            assert f"from {sent.item.lesson_title}" in text
    assert written(only(KeyPaper, tove.types("/key wren"))) != text


def test_a_student_gets_the_sheet_to_print_and_never_the_key(group: Group, wren: Somebody) -> None:
    group.at(9)
    wren.gets_to_review()
    sheet = only(SheetPaper, wren.presses("print", wren.day().id))
    assert not sheet.side and all(not row.answer for row in sheet.rows)
    assert render(sheet, "en").buttons == ()
    before = stored(group.engine)
    for command in ("/key", "/key wren", "/sheet wren"):
        only(NoSuchCommand, wren.types(command))
    assert not [m for m in wren.presses("f-run", f"key #{wren.id}") if isinstance(m, KeyPaper)]
    assert stored(group.engine) == before


@pytest.mark.parametrize(
    ("country", "words", "size", "big"),
    [
        ("GB", "", "a4", False),
        ("US", "", "letter", False),
        ("US", "a4", "a4", False),
        ("GB", "letter big", "letter", True),
        ("", "carta grande", "letter", True),
    ],
)
def test_the_paper_is_that_of_the_country_unless_a_word_says_otherwise(
    group: Group, tove: Somebody, country: str, words: str, size: str, big: bool
) -> None:
    with transaction(group.engine) as s:
        wren = group.who(demo.WREN).id
        people.change_household(s, people.student(s, wren).household, country=country)
    sheet = only(SheetPaper, tove.types(f"/sheet wren {words}"))
    assert (sheet.size, sheet.big) == (size, big)
    key = only(KeyPaper, tove.presses("f-run", render(sheet, "en").buttons[0][0].data.partition(":")[2]))
    assert (key.size, key.big, key.date) == (size, big, sheet.date)


def test_a_printed_sheet_is_seen_in_the_plan_and_can_be_taken_back(group: Group, tove: Somebody) -> None:
    ines = group.who(demo.INES)
    only(SheetPaper, ines.types("/sheet wren tomorrow"))
    assert "a sheet was printed" in words_of([only(PlanShown, ines.types("/plan wren tomorrow"))])
    assert "a printed sheet" in words_of([only(HoldsShown, ines.types("/holds wren"))])
    only(TakenBack, ines.types("/undo"))
    assert "a sheet was printed" not in words_of(ines.types("/plan wren tomorrow"))
    assert only(SheetPaper, ines.types("/sheet wren tomorrow")).fixed


@pytest.mark.parametrize("when", ["sunday", "20 dec", "2026-09-01"])
def test_no_sheet_for_a_day_without_school_or_far_away(group: Group, tove: Somebody, when: str) -> None:
    before = stored(group.engine)
    only(WrongCommand, tove.types(f"/sheet wren {when}"))
    assert stored(group.engine) == before


def test_photos_of_pages_are_shown_to_parent_and_tutor_only(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    group.at(10)
    for name in ("page-1", "page-2"):
        wren.sends("photo", file_id=name, caption="today" if name == "page-1" else "")
    for grown_up in (tove, group.who(demo.INES)):
        shown = only(PagesShown, grown_up.types("/pages wren"))
        assert [name for name, _ in shown.pages] == ["page-1", "page-2"]
        assert "I can’t read pictures" in render(shown, "en").pictures[0].alt
        assert [each.content for each in render(shown, "en").pictures] == [Kept("page-1"), Kept("page-2")]
    assert only(PagesShown, tove.types("/pages sol")).pages == ()
    only(WrongCommand, group.who(demo.ANSELM).types("/pages wren"))
