"""The week's end: one short letter to each parent, with the rows' own numbers."""

from __future__ import annotations

from datetime import date, timedelta
from io import BytesIO

import pytest
from pypdf import PdfReader
from sqlalchemy import text
from support.group import Group, Lived, LiveOnce, Somebody, only
from support.steering import words_of

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import Drawing
from bot.course.year import Course
from bot.messages import LetterPaper, Message, WeekLetter, WeekLetterLine, WrongCommand
from bot.pictures.recipes import make
from bot.records import people
from bot.records.base import transaction
from bot.school_day.letters import letter_day

MONDAY = date(2026, 9, 14)
LETTERS = (WeekLetter, WeekLetterLine)


def letters(said: list[Message]) -> list[Message]:
    return [each for each in said if isinstance(each, LETTERS)]


@pytest.fixture(scope="session")
def whole_week(course: Course, live_once: LiveOnce) -> Lived:
    return live_once("week", course, lives_a_week)


@pytest.fixture
def lived(request: pytest.FixtureRequest) -> Lived | None:
    return request.getfixturevalue("whole_week") if "week" in request.fixturenames else None


@pytest.fixture
def week(group: Group) -> Group:
    """Wren works on Monday and begins Tuesday; the rest of the week isn't opened."""
    return group


def lives_a_week(group: Group) -> None:
    wren = group.who(demo.WREN)
    for day in range(5):
        group.at(8, day=day)
        group.tick()
        group.at(9, day=day)
        if day < 2:
            sent = wren.gets_to_review()
            for _ in range(3 if day == 0 else 1):
                group.later(40)
                wren.answers(next(each for each in wren.items("review") if each.state == "shown"))
                wren.presses("on")
            if day == 0:
                group.later(30)
                wren.types("123454321")
            assert sent.student == wren.id
        group.at(19, 5, day=day)
        group.tick()


def test_it_comes_once_on_the_evening_after_the_last_school_day(week: Group) -> None:
    week.at(18, 50, day=5)
    assert letters(week.tick()) == []
    week.at(19, 5, day=5)
    to_tove = [each for each in letters(week.tick()) if each.to == demo.TOVE.chat]
    assert [type(each) for each in to_tove] == [WeekLetter]
    assert to_tove[0].week.name == "Wren"  # type: ignore[attr-defined]
    for hour, day in ((20, 5), (12, 6), (9, 7)):
        week.at(hour, day=day)
        assert letters(week.tick()) == []


@pytest.mark.parametrize(("day", "come"), [(6, 1), (7, 1), (8, 0)])
def test_a_late_clock_still_brings_it_and_after_two_days_not_any_more(
    week: Group, day: int, come: int
) -> None:
    week.at(9, day=day)
    assert len(letters(week.tick())) == come


def test_its_numbers_are_those_of_the_rows(week: Group) -> None:
    week.at(19, 5, day=5)
    letter = only(WeekLetter, letters(week.tick())).week
    wren = week.who(demo.WREN).id
    with week.engine.connect() as connection:
        opened, seconds = connection.execute(
            text(
                "select count(*), sum(seconds) from school_day where student_id = :w and started_at is not null"
            ),
            {"w": wren},
        ).one()
        rows = connection.execute(
            text(
                "select d.date, i.outcome, count(*) from item i join school_day d on d.id = i.day_id"
                " where i.student_id = :w and i.part = 'review' and i.state <> 'dropped'"
                " and d.started_at is not null group by d.date, i.outcome"
            ),
            {"w": wren},
        ).all()
    assert (letter.opened, letter.planned, letter.minutes) == (opened, 5, round(seconds / 60))
    counted = {(str(day), outcome): count for day, outcome, count in rows}
    for day, first, later, unsolved, rest in letter.days:
        assert first == counted.get((day, "first-try"), 0)
        assert later == counted.get((day, "later-try"), 0)
        assert unsolved == counted.get((day, "unsolved"), 0)
        assert rest == counted.get((day, "untouched"), 0)
    assert len(letter.days) == 2 and sum(day[1] for day in letter.days) >= 4


def test_a_week_in_which_nothing_was_opened_has_no_letter(group: Group) -> None:
    for day in range(5):
        group.at(8, day=day)
        group.tick()
        group.at(19, 5, day=day)
        group.tick()
    group.at(19, 5, day=5)
    assert letters(group.tick()) == []


def test_on_a_phone_that_goes_round_it_is_a_line_and_waits_while_a_child_holds_it(group: Group) -> None:
    anselm = group.who(demo.ANSELM)
    group.at(8)
    group.tick()
    with transaction(group.engine) as s:
        juniper = people.shares_phone(s, anselm.chat)[0]
    group.at(9)
    anselm.presses("speak", juniper.id)
    anselm.gets_to_review()
    anselm.presses("back")
    group.at(18, 30, day=5)
    anselm.presses("speak", juniper.id)
    group.at(19, 5, day=5)
    assert letters(group.tick()) == []
    anselm.presses("back")
    group.at(20, 10, day=5)
    line = only(WeekLetterLine, group.tick())
    assert (line.name, line.to) == ("Juniper", anselm.chat)
    shown = only(WeekLetter, anselm.presses("f-run", f"letter #{juniper.id} {line.monday}"))
    assert shown.week.opened == 1
    taken = anselm.presses("speak", juniper.id)
    assert any(getattr(each, "away", ()) for each in taken)  # what was opened is taken off the screen


def test_the_letter_to_print_holds_the_week_and_no_other_child(week: Group) -> None:
    week.at(19, 5, day=5)
    week.tick()
    tove: Somebody = week.who(demo.TOVE)
    wren = week.who(demo.WREN).id
    for size, points in (("a4", 595), ("letter", 612)):
        paper = only(LetterPaper, tove.types(f"/letter wren pdf {MONDAY} {size}"))
        for language in ("en", "es"):
            content = render(paper, language).documents[0].content
            assert isinstance(content, Drawing)
            pages = PdfReader(BytesIO(make(content.recipe, content.data))).pages
            assert round(pages[0].mediabox.width) == points
            written = " ".join(page.extract_text() for page in pages)
            assert "Wren" in written and "Sol" not in written
            assert all(title in " ".join(written.split()) for title in paper.week.learned)
    assert paper.week.student == wren


def test_any_week_can_be_asked_for_and_none_that_is_still_to_come(week: Group) -> None:
    week.at(9, day=9)
    tove = week.who(demo.TOVE)
    assert only(WeekLetter, tove.types("/letter wren 14 sep")).week.monday == MONDAY.isoformat()
    assert (
        only(WeekLetter, tove.types("/letter wren")).week.monday == (MONDAY + timedelta(days=7)).isoformat()
    )
    refused = only(WrongCommand, tove.types("/letter wren 2027-03-01"))
    assert "1 March" in words_of([refused])


@pytest.mark.parametrize(
    ("school_days", "day"), [("1111200", 5), ("1111211", 6), ("0100000", 2), ("1111120", 6), ("0000000", 5)]
)
def test_the_letter_comes_the_day_after_the_last_school_day_and_on_sunday_at_the_latest(
    group: Group, school_days: str, day: int
) -> None:
    with transaction(group.engine) as s:
        wren = group.who(demo.WREN).id
        people.change_student(s, wren, week=school_days)
        assert letter_day(people.student(s, wren), MONDAY) == MONDAY + timedelta(days=day)
