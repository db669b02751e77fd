"""The tutor's own items and lessons by chat: proved, shown, given to the students named and to nobody else."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from support.group import Group, Somebody, only, wrong_answer
from support.steering import does, stored, undoes, words_of

from bot import demo
from bot.course.starting import starting_file
from bot.messages import (
    Changed,
    ChangesShown,
    Digest,
    FileComes,
    ItemShown,
    NotText,
    OwnFaults,
    OwnListed,
    OwnShown,
    PlanShown,
    Preview,
    RecordShown,
    WrongCommand,
)
from bot.records import days, own, people
from bot.records.base import transaction
from bot.tutoring import own_files
from bot.vocabulary import Outcome, Part

ITEM = "2 sacks hold 9 kg. How much is in one? // 4.5 // decimal"


def to_tuesday(group: Group) -> None:
    group.at(20)
    group.tick()
    group.at(8, day=1)
    group.tick()


def of_own(who: Somebody, part: Part = Part.REVIEW) -> list[days.Sent]:
    return [each for each in who.items(part) if each.lesson.startswith("own-")]


def test_an_item_of_ones_own_reaches_the_student_named_and_nobody_else(
    group: Group, ines: Somebody, wren: Somebody
) -> None:
    shown = only(Preview, ines.types(f"/own wren {ITEM}"))
    assert "4.5" in words_of([shown]) and "4.5" in words_of([shown], "es")
    to_nobody = own_texts(group)
    ines.presses("t-do", shown.change)
    assert (to_nobody, own_texts(group)) == ([], [ITEM])

    to_tuesday(group)

    (sent,) = of_own(wren)
    assert (sent.place, sent.item.key.answer) == (1, "4.5")
    sol = group.who(demo.SOL).id
    with transaction(group.engine) as s:
        for student in (sol, people.shares_phone(s, demo.ANSELM.chat)[0].id):
            day = days.newest_day(s, student)
            assert day is not None
            assert not [each for each in days.items_of(s, day.id) if each.lesson.startswith("own-")]


def own_texts(group: Group) -> list[str]:
    with transaction(group.engine) as s:
        me = people.who(s, demo.INES.chat)
        assert me is not None
        return [each.text for each in own.all_own(s, me.id)]


def test_it_is_asked_graded_and_told_like_any_other(group: Group, ines: Somebody, wren: Somebody) -> None:
    does(ines, f"/own wren {ITEM}\nIs 7 prime? // yes // yes-no")
    to_tuesday(group)
    first = wren.gets_to_review()
    assert first.lesson.startswith("own-")
    shown = only(ItemShown, wren.presses("again", first.id))
    assert shown.source == "Ines" and shown.ask.startswith("2 sacks hold 9 kg")
    for _ in range(3):
        group.later(20)
        wren.types(wrong_answer(first))
    said = wren.presses("show", first.id)
    assert "4.5" in words_of(said)
    wren.presses("on")
    second = of_own(wren)[1]
    wren.answers(second)

    assert [wren.item(each.id).outcome for each in of_own(wren)] == [Outcome.UNSOLVED, Outcome.FIRST_TRY]
    record = only(RecordShown, ines.types("/item wren 1"))
    assert len(record.attempts) == 3 and record.answer == "4.5"
    group.at(20, day=1)
    digest = next(each for each in group.tick() if isinstance(each, Digest) and each.name == "Wren")
    assert any(each.item == first.id for each in digest.open_items)
    assert (digest.first_try, digest.unsolved) == (1, 1)
    ines.types("/agenda wren")
    assert words_of(ines.types("/agenda wren"))


def test_it_stands_in_the_plan_and_among_what_holds_and_is_undone_in_a_day(
    group: Group, ines: Somebody
) -> None:
    before = only(PlanShown, ines.types("/plan wren"))
    done = does(ines, f"/own wren {ITEM}")
    plan = only(PlanShown, ines.types("/plan wren"))
    first = next(each for each in plan.items if each.part == "review")
    assert first.ask.startswith("2 sacks") and first.n == "1"
    assert len(plan.items) == len(before.items), "it takes the place of a review item"
    only(WrongCommand, ines.types("/drop wren 1"))
    assert "2 sacks" in words_of(ines.types("/holds wren"))
    undoes(ines, done)
    assert only(PlanShown, ines.types("/plan wren")).items == before.items
    assert own_texts(group) == []


def test_undone_after_the_day_was_made_it_leaves_the_day_while_it_waits(
    group: Group, ines: Somebody, wren: Somebody
) -> None:
    group.at(20)
    group.tick()
    done = does(ines, f"/own wren {ITEM}")
    group.at(8, day=1)
    group.tick()
    assert [each.state for each in of_own(wren)] == ["waiting"]
    undoes(ines, done)
    assert of_own(wren) == []


def test_what_has_no_room_waits_for_the_next_day(group: Group, ines: Somebody, wren: Somebody) -> None:
    does(ines, f"/own wren {ITEM}")
    does(ines, "/off wren tomorrow")
    to_tuesday(group)
    assert wren.day().date == date(2026, 9, 14)
    group.at(8, day=2)
    group.tick()
    assert len(of_own(wren)) == 1
    group.at(20, day=2)
    group.tick()
    group.at(8, day=3)
    group.tick()
    assert wren.day().date == date(2026, 9, 17) and of_own(wren) == [], "it comes once"


def test_a_line_that_does_not_hold_is_named_and_nothing_changes(group: Group, ines: Somebody) -> None:
    before = stored(group.engine)
    said = only(OwnFaults, ines.types(f"/own wren {ITEM}\n3 + 4 // seven // whole\nNo answer"))
    assert [row.line for row in said.rows] == [2, 3]
    assert "Line 2" in words_of([said]) and "Línea 2" in words_of([said], "es")
    assert stored(group.engine) == before


def test_versions_are_kept_and_one_can_be_put_back(group: Group, ines: Somebody) -> None:
    does(ines, f"/own wren {ITEM}")
    (row,) = only(OwnListed, ines.types("/own")).rows
    does(ines, f"/own {row.own} 2 sacks hold 8 kg. How much is in one? // 4 // whole")
    shown = only(OwnShown, ines.types(f"/own {row.own}"))
    assert (shown.version, [n for n, _ in shown.versions]) == (2, [1, 2])
    done = does(ines, f"/own {row.own} v1")
    assert own_texts(group) == [ITEM]
    undoes(ines, done)
    assert own_texts(group)[0].startswith("2 sacks hold 8 kg")
    does(ines, f"/own {row.own} away")
    assert only(OwnListed, ines.types("/own")).rows == ()


def test_nobody_sees_or_gives_what_is_another_tutors(group: Group, ines: Somebody) -> None:
    does(ines, f"/own wren {ITEM}")
    with transaction(group.engine) as s:
        other = people.add_person(s, "Rosalind", group.clock.now(), tutor=True)
        people.link(s, 7002, other, group.clock.now())  # type: ignore[arg-type]
    rosalind = Somebody(group, 7002)  # type: ignore[arg-type]
    assert only(OwnListed, rosalind.types("/own")).rows == ()
    only(WrongCommand, rosalind.types("/own 1"))
    only(WrongCommand, rosalind.types("/own 1 v1"))


# Files -------------------------------------------------------------------------------------------------


def sends_lesson(group: Group, who: Somebody, text: str, caption: str = "", name: str = "flour.md") -> list:
    """The file is noted at once, and read once its bytes are here."""
    only(FileComes, who.sends("document", file_id="f1", name=name, size=len(text), caption=caption))
    with transaction(group.engine) as s:
        (row,) = own.coming(s)
    proof = own_files.prove(group.school, row.name, text.encode())
    with transaction(group.engine) as s:
        said = own_files.came(s, group.school, row, proof, group.clock.now())
        assert own_files.came(s, group.school, row, proof, group.clock.now()) == [], "once is enough"
    assert words_of(said) and words_of(said, "es")
    return said


@pytest.fixture
def text(group: Group) -> str:
    return starting_file(group.school.course, "flour-by-the-sack")


def test_a_lesson_that_was_sent_is_shown_proved_and_taught_to_the_student_named(
    group: Group, ines: Somebody, wren: Somebody, text: str
) -> None:
    shown = only(Preview, sends_lesson(group, ines, text, "wren"))
    assert "50 draws" in words_of([shown])
    assert own_texts(group) == []
    ines.presses("t-do", shown.change)
    assert own_texts(group) == [text]
    plan = only(PlanShown, ines.types("/plan wren"))
    assert plan.lesson == "Flour by the sack" and plan.day_kind == "lesson"
    assert only(PlanShown, ines.types("/plan sol")).lesson != "Flour by the sack"
    waits = people_lesson(group, wren)

    to_tuesday(group)
    wren.gets_to_review()

    assert [each.lesson for each in wren.items(Part.GUIDED)] == [wren.day().lesson] * 4
    assert wren.day().notes["lesson_met"] and people_lesson(group, wren) == waits, "the course's lesson waits"
    group.at(20, day=1)
    digest = next(each for each in group.tick() if isinstance(each, Digest) and each.name == "Wren")
    assert digest.lesson == "Flour by the sack"
    group.at(8, day=2)
    group.tick()
    assert not str(wren.day().lesson).startswith("own-"), "it is taught once"
    for command in ("/map wren", "/pace wren", "/today wren", "/needs", "/agenda wren"):
        assert words_of(ines.types(command))


def people_lesson(group: Group, who: Somebody) -> int:
    with transaction(group.engine) as s:
        return people.student(s, who.id).lesson


def test_a_lesson_is_known_to_a_process_that_began_before_it_came(
    group: Group, ines: Somebody, text: str
) -> None:
    shown = only(Preview, sends_lesson(group, ines, text, "wren"))
    ines.presses("t-do", shown.change)
    # Another process has the same course, but never heard of the lesson.
    group.school.course.own.clear()
    group.school.learned.clear()
    group.school.course.ready.clear()
    assert only(PlanShown, ines.types("/plan wren")).lesson == "Flour by the sack"


def test_further_items_of_a_lesson_of_ones_own_can_be_given(
    group: Group, ines: Somebody, wren: Somebody, text: str
) -> None:
    shown = only(Preview, sends_lesson(group, ines, text))
    assert "Nobody gets it yet" in words_of([shown])
    ines.presses("t-do", shown.change)
    (row,) = only(OwnListed, ines.types("/own")).rows
    does(ines, f"/give wren {row.own} 3")
    to_tuesday(group)
    items = of_own(wren)
    assert len(items) == 3 and len({each.item.ask for each in items}) == 3
    assert not str(wren.day().lesson).startswith("own-")
    first = wren.gets_to_review()
    wren.answers(first)
    assert wren.item(first.id).outcome is Outcome.FIRST_TRY


def test_a_file_of_the_same_name_is_the_next_version(group: Group, ines: Somebody, text: str) -> None:
    ines.presses("t-do", only(Preview, sends_lesson(group, ines, text)).change)
    newer = text.replace("a: 12..60", "a: 12..90")
    ines.presses("t-do", only(Preview, sends_lesson(group, ines, newer)).change)
    (row,) = only(OwnListed, ines.types("/own")).rows
    assert (row.version, row.versions) == (2, 2)
    does(ines, f"/own {row.own} v1")
    assert own_texts(group) == [text]


def test_a_bad_file_is_answered_line_by_line_and_changes_nothing(
    group: Group, ines: Somebody, text: str
) -> None:
    before = stored(group.engine)
    said = only(OwnFaults, sends_lesson(group, ines, text.replace("answer: a + b", "answer: a + q"), "wren"))
    assert said.rows[0].line == text.splitlines().index("answer: a + b") + 1
    after = stored(group.engine)
    after.pop("own_file"), before.pop("own_file")
    assert after == before


@pytest.mark.parametrize(
    "content", [None, b"\xff\xfe\x00", b"", b"no lesson", b"---\n" * 5000, b"a" * 70_000]
)
def test_whatever_a_file_holds_there_is_a_kind_answer(group: Group, ines: Somebody, content: bytes) -> None:
    ines.sends("document", file_id="f1", name="x.md", size=10)
    with transaction(group.engine) as s:
        (row,) = own.coming(s)
        proof = own_files.prove(group.school, row.name, content)
        said = only(OwnFaults, own_files.came(s, group.school, row, proof, group.clock.now()))
    assert words_of([said])


def test_a_name_beside_the_file_that_nobody_has_loses_nothing(
    group: Group, ines: Somebody, text: str
) -> None:
    shown = only(Preview, sends_lesson(group, ines, text, "wern please"))
    assert "wern" in words_of([shown])
    only(Changed, ines.presses("t-do", shown.change))
    assert own_texts(group) == [text]


def test_files_of_others_and_other_files_are_none(group: Group, ines: Somebody, tove: Somebody) -> None:
    only(NotText, tove.sends("document", file_id="f", name="x.md", size=10))
    only(NotText, ines.sends("document", file_id="f", name="x.exe", size=10))
    only(NotText, ines.sends("photo", file_id="f"))
    only(OwnFaults, ines.sends("document", file_id="f", name="x.md", size=10_000_000))
    with transaction(group.engine) as s:
        assert own.coming(s) == []


def test_a_tutor_who_is_none_any_more_gets_no_answer_to_a_file(
    group: Group, ines: Somebody, text: str
) -> None:
    ines.sends("document", file_id="f1", name="x.md", size=10)
    with transaction(group.engine) as s:
        (row,) = own.coming(s)
        proof = own_files.prove(group.school, row.name, text.encode())
        assert own_files.came(s, group.school, replace(row, by=999_999), proof, group.clock.now()) == []  # type: ignore[arg-type]


def test_changes_name_what_a_change_does_where_its_first_line_is_only_a_heading(
    group: Group, ines: Somebody
) -> None:
    does(ines, "/own wren What is 7 + 8? // 15")

    shown = only(ChangesShown, ines.types("/changes"))

    assert "7 + 8" in words_of([shown])
