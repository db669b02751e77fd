"""One list of doubts, oldest first: asked, unreadable, working nobody could judge, reported, missed by many."""

from __future__ import annotations

import pytest
from support.group import Group, Somebody, only
from support.steering import stored, words_of

from bot import demo
from bot.chat.render import render
from bot.messages import (
    DoubtShown,
    NeedsShown,
    NoDoubts,
    Passed,
    ReportNoted,
    WhyThis,
)
from bot.records import days, doubts, people
from bot.records.base import transaction
from bot.records.doubts import DoubtKind
from bot.school.doubtful import note_many_missed
from bot.vocabulary import Outcome, Part


@pytest.fixture
def at_review(group: Group, wren: Somebody) -> days.Sent:
    group.at(9)
    return wren.gets_to_review()


def test_a_student_may_say_that_an_item_is_wrong_and_the_tutor_sees_it_once(
    group: Group, wren: Somebody, ines: Somebody, at_review: days.Sent
) -> None:
    about = only(WhyThis, wren.presses("about", at_review.id))
    assert "report" in {one.data.partition(":")[0] for row in render(about, "en").buttons for one in row}
    said = wren.presses("report", at_review.id)
    assert only(ReportNoted, said).tutor == "Ines" and only(Passed, said).to == demo.INES.chat
    assert words_of(said) and words_of(said, "es")
    assert only(ReportNoted, wren.types("/report")).again

    shown = only(DoubtShown, ines.types("/doubts"))
    assert (shown.row.kind, shown.left) == ("reported", 0)
    assert only(NeedsShown, ines.types("/needs")).doubts == 1
    only(NoDoubts, ines.presses("t-run", f"doubts seen {shown.row.ref}"))
    only(ReportNoted, wren.types("/report"))
    only(NoDoubts, ines.types("/doubts"))


def test_excusing_a_reported_item_clears_it_too(
    group: Group, wren: Somebody, ines: Somebody, at_review: days.Sent
) -> None:
    wren.presses("report", at_review.id)
    row = only(DoubtShown, ines.types("/doubts")).row
    preview = ines.presses("t-run", f"excuse {row.excuse}")[0]
    ines.presses("t-do", preview.change)  # type: ignore[attr-defined]
    assert wren.item(at_review.id).outcome is Outcome.EXCUSED
    only(NoDoubts, ines.types("/doubts"))


def test_the_oldest_comes_first_whatever_its_kind(
    group: Group, wren: Somebody, ines: Somebody, at_review: days.Sent
) -> None:
    group.later(60)
    wren.types("¿¿")
    group.later(60)
    wren.presses("report", at_review.id)
    group.later(60)
    wren.types("??%%")
    second = wren.items(Part.REVIEW)[1]
    group.later(60)
    wren.presses("ask", second.id)
    kinds = []
    while True:
        said = ines.types("/doubts")
        if isinstance(said[0], NoDoubts):
            break
        shown = only(DoubtShown, said)
        kinds.append(shown.row.kind)
        ines.types(f"/doubts seen {shown.row.ref}")
    assert kinds[0] == "reported" and set(kinds) == {"reported", "unreadable", "asked"}


def test_working_that_could_not_be_judged_waits_for_the_tutor(
    group: Group, wren: Somebody, ines: Somebody, at_review: days.Sent
) -> None:
    student = wren.id
    with transaction(group.engine) as s:
        doubts.add_doubt(
            s,
            DoubtKind.WORKING,
            people.student(s, student).tutor,
            at_review.template,
            group.clock.now(),
            student=student,
            item=at_review.id,
        )
    assert only(DoubtShown, ines.types("/doubts")).row.kind == "working"


def test_a_kind_that_three_students_missed_is_one_doubt_until_it_is_seen(
    group: Group, ines: Somebody
) -> None:
    with transaction(group.engine) as s:
        me = people.who(s, demo.INES.chat)
        assert me is not None
        students = people.students_of_tutor(s, me.id)
        assert len(students) == 3
        kept = []
        for student in students:
            day = days.newest_day(s, student.id)
            assert day is not None
            kept.append({each.template: each for each in days.items_of(s, day.id, Part.REVIEW)})
        (template, *_) = sorted(set(kept[0]) & set(kept[1]) & set(kept[2]))
        for n, (student, items) in enumerate(zip(students, kept, strict=True)):
            days.change_item(s, items[template].id, outcome=Outcome.UNSOLVED)
            day = days.day(s, items[template].day)
            note_many_missed(s, student, day, group.clock.now())
            note_many_missed(s, student, day, group.clock.now())
            assert len(doubts.open_doubts(s, me.id, [])) == (n == 2)
    shown = only(DoubtShown, ines.types("/doubts"))
    assert (shown.row.kind, shown.row.student) == ("many-missed", "")
    only(NoDoubts, ines.types(f"/doubts seen {shown.row.ref}"))
    with transaction(group.engine) as s:
        note_many_missed(s, students[0], days.day(s, kept[0][template].day), group.clock.now())
    only(NoDoubts, ines.types("/doubts"))


def test_nobody_else_reports_or_clears_a_students_item(
    group: Group, wren: Somebody, tove: Somebody, at_review: days.Sent
) -> None:
    before = stored(group.engine)
    for somebody in (tove, group.who(demo.SOL), group.who(demo.ANSELM)):
        said = somebody.presses("report", at_review.id)
        assert not any(isinstance(each, ReportNoted) for each in said)
    assert stored(group.engine) == before
    wren.presses("report", at_review.id)
    with transaction(group.engine) as s:
        other = people.add_person(s, "Rosalind", group.clock.now(), tutor=True)
        people.link(s, 7002, other, group.clock.now())  # type: ignore[arg-type]
    before = stored(group.engine)
    only(NoDoubts, Somebody(group, 7002).types("/doubts seen d1"))  # type: ignore[arg-type]
    assert stored(group.engine) == before
