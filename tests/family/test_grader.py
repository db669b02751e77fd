"""Somebody who marks pages: invited by a parent, sees one household's sheets and marks, and nothing else."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from support.group import Group, Somebody, only
from support.steering import does, stored, words_of

from bot import demo, family
from bot.chat.render import render
from bot.family import grader
from bot.messages import (
    AskWritten,
    Changed,
    CommandsShown,
    DaysShown,
    Digest,
    DigestLine,
    GraderTold,
    Help,
    InviteShown,
    KeyPaper,
    MarksShown,
    Message,
    NoSuchCommand,
    NotForYou,
    NotLinked,
    PagesShown,
    PagesWaiting,
    PhoneMoved,
    SheetPaper,
    WeekLetter,
    Welcome,
    WrongCommand,
)
from bot.records import attempts, days, people
from bot.records.base import transaction
from bot.records.days import ItemState
from bot.school.commands import SPECS, Who
from bot.vocabulary import ChatId, Outcome, Part, Verdict

OPA = ChatId(8001)


@pytest.fixture
def wren(group: Group) -> Somebody:
    group.tick()
    group.at(9)
    return group.who(demo.WREN)


@pytest.fixture
def opa(group: Group, wren: Somebody) -> Somebody:
    """Opa, invited by Tove, with a phone of his own."""
    done = does(group.who(demo.TOVE), "/grader Opa")
    assert [each.grader for each in done if isinstance(each, GraderTold)] == ["Opa", "Opa"]
    token = only(Changed, done).link.partition("?start=")[2]
    phone = Somebody(group, OPA)
    shown = only(InviteShown, phone.types(f"/start {token}"))
    assert shown.role == "grader" and "marks pages" in words_of([shown])
    welcome = only(Welcome, phone.presses("f-yes", token))
    assert set(welcome.students) == {"Wren", "Sol"} and words_of([welcome], "es")
    return phone


def outcomes(wren: Somebody) -> dict[int, Outcome | None]:
    return {each.place: each.outcome for each in wren.items(Part.REVIEW)}


def test_every_command_of_a_graders_in_the_table_has_a_function() -> None:
    assert {spec.name for spec in SPECS if Who.GRADER in spec.who} == set(grader.FUNCTIONS)
    assert {"marks", "key", "sheet"} <= set(grader.FUNCTIONS) & set(family.FUNCTIONS)


def test_a_page_is_entered_in_one_line_by_its_misses(group: Group, wren: Somebody, opa: Somebody) -> None:
    shown = only(MarksShown, opa.types("wren mon 2 5"))
    assert shown.misses == (2, 5) and shown.entered
    found = outcomes(wren)
    assert {n for n, outcome in found.items() if outcome is Outcome.UNSOLVED} == {2, 5}
    assert {outcome for n, outcome in found.items() if n not in (2, 5)} == {Outcome.FIRST_TRY}
    assert wren.day().on_paper and wren.day().started_at is not None
    group.at(19, 5)
    digest = only(Digest, [m for m in group.tick() if isinstance(m, Digest) and m.name == "Wren"])
    assert (digest.first_try, digest.unsolved) == (len(found) - 2, 2)


def test_each_miss_has_a_button_for_what_is_written_there(wren: Somebody, opa: Somebody) -> None:
    shown = only(MarksShown, opa.types("wren 2 3"))
    first = next(each for each in wren.items(Part.REVIEW) if each.place == 2)
    verb, _, ref = render(shown, "en").buttons[0][0].data.partition(":")
    assert only(AskWritten, opa.presses(verb, ref)).n == 2
    after = only(MarksShown, opa.types("123454321"))
    assert (2, "unsolved", "123454321", False) in after.rows
    asked = only(AskWritten, opa.presses(verb, ref.replace(" 2 ?", " 3 ?")))
    empty = render(asked, "en").buttons[0][0].data.partition(":")
    assert (3, "unsolved", "", False) in only(MarksShown, opa.presses(empty[0], empty[2])).rows
    with transaction(opa.group.engine) as s:
        (tried,) = attempts.attempts_of(s, first.id)
    assert (tried.typed, tried.verdict) == ("123454321", Verdict.WRONG)


def test_what_reads_as_right_was_no_miss(wren: Somebody, opa: Somebody) -> None:
    place = next(each.place for each in wren.items(Part.REVIEW) if not each.item.choices)
    shown = only(MarksShown, opa.types(f"wren {place}"))
    verb, _, ref = render(shown, "en").buttons[0][0].data.partition(":")
    opa.presses(verb, ref)
    key = next(each.item.key.answer for each in wren.items(Part.REVIEW) if each.place == place)
    assert only(MarksShown, opa.types(key)).misses == ()
    assert outcomes(wren)[place] is Outcome.FIRST_TRY


def test_a_line_sent_again_sets_the_page_right(wren: Somebody, opa: Somebody) -> None:
    opa.types("wren 2 5")
    assert only(MarksShown, opa.types("wren 5 6")).misses == (5, 6)
    found = outcomes(wren)
    assert (found[2], found[5], found[6]) == (Outcome.FIRST_TRY, Outcome.UNSOLVED, Outcome.UNSOLVED)
    only(MarksShown, opa.types("wren none"))
    assert set(outcomes(wren).values()) == {Outcome.FIRST_TRY}


def test_what_was_answered_in_the_chat_stays_as_it_is(group: Group, wren: Somebody, opa: Somebody) -> None:
    wren.gets_to_review()
    group.later(20)
    wren.types("123454321")
    shown = only(MarksShown, opa.types("wren none"))
    assert [row[0] for row in shown.rows if row[3]] == [1]
    assert outcomes(wren)[1] is Outcome.UNSOLVED
    assert all(each.state is ItemState.DONE for each in wren.items(Part.REVIEW) if each.place > 1)


def test_a_week_of_pages_is_one_message(group: Group, wren: Somebody, opa: Somebody) -> None:
    for day in range(1, 5):
        group.at(19, 5, day=day - 1)
        group.tick()
        group.at(8, day=day)
        group.tick()
    group.at(20, day=4)
    lines = "wren mon 2\ntue none\nwed 1 3\nthu 4\nfri none"
    said = [each for each in opa.types(lines) if isinstance(each, MarksShown)]
    assert [(each.date, each.misses) for each in said] == [
        ("2026-09-14", (2,)),
        ("2026-09-15", ()),
        ("2026-09-16", (1, 3)),
        ("2026-09-17", (4,)),
        ("2026-09-18", ()),
    ]
    before = stored(group.engine)
    only(WrongCommand, opa.types("wren mon 2\ntue 99"))  # one line that can't be read: nothing is entered
    assert stored(group.engine) == before


def test_marks_of_a_day_that_is_over_change_what_is_believed(
    group: Group, wren: Somebody, opa: Somebody
) -> None:
    group.at(19, 5)
    group.tick()
    with transaction(group.engine) as s:
        before = stored(group.engine)["memory"]
        assert days.day_on(s, wren.id, wren.day().date) is not None
    group.at(20)
    opa.types("wren mon none")
    assert stored(group.engine)["memory"] != before


def test_sheet_and_key_come_for_pages_that_are_there_and_for_no_other_household(
    group: Group, wren: Somebody, opa: Somebody
) -> None:
    only(SheetPaper, opa.types("/sheet wren"))
    assert only(KeyPaper, opa.types("/key wren")).rows[0].answer
    before = stored(group.engine)
    only(WrongCommand, opa.types("/key wren tomorrow"))
    for command in ("/key juniper", "/marks juniper 1", "juniper 1", "/marks wren zzz", "/marks wren 99"):
        assert not any(isinstance(m, KeyPaper | MarksShown | SheetPaper) for m in opa.types(command)), command
    assert stored(group.engine) == before


def test_nothing_else_is_theirs(group: Group, wren: Somebody, opa: Somebody) -> None:
    before = stored(group.engine)
    for spec in SPECS:
        if Who.GRADER in spec.who:
            continue
        said = opa.types(f"/{spec.name} wren")
        assert all(isinstance(m, NotForYou | NoSuchCommand | Help) for m in said), (spec.name, said)
    day, item = wren.day().id, wren.items(Part.REVIEW)[0].id
    for verb, ref in (
        ("digest", day),
        ("in-full", day),
        ("week", day),
        ("open-test", day),
        ("talk-solution", item),
        ("t-run", f"today #{wren.id}"),
        ("f-run", f"digest #{wren.id}"),
        ("f-run", f"records #{wren.id} pdf"),
        ("hint", item),
        ("start", day),
        ("g-nonsense", 1),
    ):
        said = opa.presses(verb, ref)
        assert all(isinstance(m, NotForYou) for m in said), (verb, said)
    assert stored(group.engine) == before
    help_ = only(CommandsShown, opa.types("/help"))
    assert {name for _, names in help_.groups for name in names} == set(grader.FUNCTIONS)


def test_no_digest_and_no_letter_goes_to_them(group: Group, wren: Somebody, opa: Somebody) -> None:
    group.at(19, 5)
    assert not [m for m in group.tick() if m.to == OPA and isinstance(m, Digest | DigestLine | WeekLetter)]


def test_a_parent_lets_them_go_at_any_time(group: Group, wren: Somebody, opa: Somebody) -> None:
    done = does(group.who(demo.TOVE), "/grader Opa off")
    assert only(PhoneMoved, done).to == OPA
    assert [type(each) for each in opa.types("/marks wren")] == [NotLinked]


def test_after_consent_is_withdrawn_nobody_is_there_to_mark(
    group: Group, wren: Somebody, opa: Somebody
) -> None:
    with transaction(group.engine) as s:
        home = people.student(s, wren.id).household
    group.who(demo.TOVE).presses("f-withdraw", home)
    only(WrongCommand, opa.types("/marks wren 1"))
    only(WrongCommand, opa.types("/key wren"))


def test_a_parent_enters_a_page_in_the_same_way(group: Group, wren: Somebody) -> None:
    tove = group.who(demo.TOVE)
    shown = only(MarksShown, tove.types("/marks wren 1"))
    verb, _, ref = render(shown, "en").buttons[0][0].data.partition(":")
    only(AskWritten, tove.presses(verb, ref))
    assert (1, "unsolved", "77777", False) in only(MarksShown, tove.types("77777")).rows


def pressed(who: Somebody, said: Sequence[Message], label: str) -> list[Message]:
    """Press the first button whose label begins so."""
    for message in said:
        for row in render(message, "en").buttons:
            for each in row:
                if each.label.startswith(label):
                    verb, _, ref = each.data.partition(":")
                    return who.presses(verb, ref)
    raise AssertionError(f"no button {label!r} at {said}")


def test_a_printed_page_that_nobody_marked_waits_until_it_is_marked(
    group: Group, wren: Somebody, opa: Somebody
) -> None:
    tove = group.who(demo.TOVE)
    tove.types("/sheet wren tomorrow")
    assert only(PagesWaiting, opa.types("/marks waiting")).rows == ()
    for day in (0, 1):
        group.at(19, 5, day=day)
        group.tick()
        group.at(8, day=day + 1)
        group.tick()
    asked = opa.types("/marks")
    (row,) = only(PagesWaiting, asked).rows  # Monday had no sheet: nothing on paper waits there
    assert (row.student, row.date, row.photos, row.items >= 5) == (wren.id, "2026-09-15", 0, True)
    assert not only(MarksShown, pressed(opa, asked, "Mark: Wren, Tue")).entered
    for phone in (tove, group.who(demo.INES)):
        today = phone.types("/today")
        assert only(DaysShown, today).pages == 1
        assert only(PagesWaiting, pressed(phone, today, "Pages that wait (1)")).rows == (row,)
    opa.types("wren tue none")
    assert only(PagesWaiting, opa.types("/marks waiting")).rows == ()
    assert only(DaysShown, tove.types("/today")).pages == 0


def test_a_photo_that_came_today_waits_with_its_items(group: Group, wren: Somebody, opa: Somebody) -> None:
    tove = group.who(demo.TOVE)
    wren.sends("photo", file_id="a")
    asked = tove.types("/pages waiting")
    (row,) = only(PagesWaiting, asked).rows
    assert (row.student, row.photos, row.items > 0) == (wren.id, 1, True)
    assert len(only(PagesShown, pressed(tove, asked, "Photos: Wren")).pages) == 1
    # Who only marks pages isn't shown the photos, and no other household's pages ever.
    assert "Photos" not in str(render(only(PagesWaiting, opa.types("/marks waiting")), "en").buttons)
    assert only(PagesWaiting, group.who(demo.ANSELM).types("/marks waiting")).rows == ()
