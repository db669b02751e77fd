"""A test: opened by a grown-up, no hints, answers may change until it is handed in, each counts 1 or 0."""

from __future__ import annotations

import pytest
from support.answering import right_text
from support.group import Somebody, only, wrong_answer

from bot import demo
from bot.messages import (
    DayReady,
    Digest,
    ItemShown,
    NotForYou,
    NothingNow,
    TestDone,
    TestList,
    TestNoted,
    TestWaits,
    TypeAgain,
)
from bot.records import people
from bot.records.base import transaction


@pytest.fixture
def tested(wren: Somebody) -> Somebody:
    """Wren on the day of the first test, which nobody opened yet."""
    with transaction(wren.group.engine) as s:
        people.change_student(s, wren.id, lesson=12)
    wren.starts()
    wren.group.at(8, day=1)
    wren.group.tick()
    assert wren.day().kind == "test"
    return wren


def opened(wren: Somebody) -> None:
    tove = wren.group.who(demo.TOVE)
    tove.presses("open-test", wren.day().id)
    wren.starts()


def shown(wren: Somebody):
    return next(each for each in wren.items("test") if each.state == "shown")


def test_student_waits_until_a_grown_up_opened_it(tested: Somebody) -> None:
    assert only(NothingNow, tested.starts()).why == "test-waits"
    assert only(NotForYou, tested.presses("open-test", tested.day().id)).why == "grown-up"

    said = tested.group.who(demo.TOVE).presses("open-test", tested.day().id)

    assert only(TestWaits, said).opened
    assert only(DayReady, said).to == tested.chat
    assert only(ItemShown, tested.starts()).part == "test"


def test_it_holds_twenty_items_of_lessons_met_and_gives_no_hints(tested: Somebody) -> None:
    opened(tested)

    items = tested.items("test")
    met = {lesson.id for lesson in tested.group.school.course.lessons if lesson.n <= 6}

    assert len(items) == 20
    assert {each.lesson for each in items} <= met
    assert only(NotForYou, tested.presses("show", items[0].id)).why == "not-earned"


def test_nothing_is_said_of_an_answer_but_the_number_left_and_it_may_be_changed(tested: Somebody) -> None:
    opened(tested)
    first = shown(tested)
    said = (
        tested.presses("choose", f"{first.id}:0") if first.item.choices else tested.types(wrong_answer(first))
    )
    assert only(TestNoted, said).left == 19

    tested.presses("test-show", first.id)
    tested.answers(first)
    tested.presses("test-list", tested.day().id)
    tested.presses("hand-in", tested.day().id)

    assert tested.item(first.id).outcome == "first-try"


def test_child_and_parent_read_the_same_count(tested: Somebody) -> None:
    opened(tested)
    for _ in range(12):
        tested.answers(shown(tested))
    listed = only(TestList, tested.presses("test-list", tested.day().id))
    assert listed.blank == 8

    done = only(TestDone, tested.presses("hand-in", tested.day().id))
    tested.group.at(19, day=1)
    digest = next(
        m for m in tested.group.tick() if isinstance(m, Digest) and m.name == "Wren" and m.variant == "test"
    )

    assert (done.right, done.out_of, done.second_look) == (12, 20, True)
    assert (digest.first_try, digest.out_of) == (12, 20)


def test_answers_that_lack_only_their_unit_are_listed_once_to_be_typed_again(tested: Somebody) -> None:
    opened(tested)
    for each in tested.items("test"):
        tested.presses("test-show", each.id)
        if each.item.key.form == "quantity":
            tested.types(each.item.key.answer)
        else:
            tested.answers(each)
    lacking = [each for each in tested.items("test") if each.item.key.form == "quantity"]

    said = tested.presses("hand-in", tested.day().id)

    if lacking:
        assert {row[1] for row in only(TypeAgain, said).rows} == {each.id for each in lacking}
        for each in lacking:
            tested.presses("test-show", each.id)
            said = tested.types(right_text(each))
    assert only(TestDone, said).right == 20


def test_what_was_missed_comes_back_on_the_next_day(tested: Somebody) -> None:
    opened(tested)
    tested.presses("test-list", tested.day().id)
    tested.presses("hand-in", tested.day().id)
    missed = {each.template for each in tested.items("test")}
    tested.group.at(19, day=1)
    tested.group.tick()
    tested.group.at(8, day=2)
    tested.group.tick()

    review = tested.items("review")

    assert sum(each.template in missed for each in review) >= 2
    assert {each.why for each in review if each.template in missed} & {"comeback", "yesterday"}


def test_time_at_work_is_kept_for_the_record_though_there_is_no_clock(tested: Somebody) -> None:
    opened(tested)
    before = tested.day().seconds
    for _ in range(3):
        tested.group.later(60)
        tested.answers(shown(tested))
    assert tested.day().seconds == before + 180
