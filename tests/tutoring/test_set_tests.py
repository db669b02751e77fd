"""A test is set, opened, opened again by chat; the one second look is a day of its own with other numbers."""

from __future__ import annotations

from datetime import date

import pytest
from support.answering import right_text
from support.group import Group, Somebody, only
from support.steering import does, undoes, words_of

from bot import demo
from bot.messages import (
    DayReady,
    Digest,
    ItemShown,
    NotForYou,
    PlanShown,
    Preview,
    TestCountedAgain,
    TestDone,
    TestReopened,
    TestWaits,
    WrongCommand,
)
from bot.records import days, memories, people
from bot.records.base import transaction
from bot.school.record import record_of
from bot.school.standing import relearn
from bot.school.weekly import week_of
from bot.vocabulary import Part

WRONG = "123454321"


@pytest.fixture
def far(wren: Somebody) -> Somebody:
    """Wren, with a dozen lessons behind and no test done; Monday's day is over."""
    with transaction(wren.group.engine) as s:
        people.change_student(s, wren.id, lesson=12)
    return wren


def morning(group: Group, day: int) -> list:
    group.at(20, day=day - 1)
    group.tick()
    group.at(8, day=day)
    return group.tick()


def takes_test(who: Somebody, wrong: int) -> TestDone:
    """Open it, answer so many wrong and the rest right, hand in."""
    who.group.who(demo.TOVE).presses("open-test", who.day().id)
    who.starts()
    for n, sent in enumerate(who.items(Part.TEST)):
        if sent.item.choices:
            right = sent.item.choices.index(sent.item.key.answer) if n >= wrong else None
            other = next(i for i, c in enumerate(sent.item.choices) if c != sent.item.key.answer)
            who.presses("test-show", sent.id)
            who.presses("choose", f"{sent.id}:{other if right is None else right}")
        else:
            who.presses("test-show", sent.id)
            who.types(right_text(sent) if n >= wrong else WRONG)
    said = who.presses("hand-in", who.day().id)
    if not any(isinstance(each, TestDone) for each in said):
        said = who.presses("count-now", who.day().id)
    return only(TestDone, said)


def test_a_test_is_set_for_the_next_day_and_the_parents_are_told_that_morning(
    group: Group, wren: Somebody, ines: Somebody
) -> None:
    with transaction(group.engine) as s:
        people.change_student(s, wren.id, lesson=8)  # no test is due yet
    shown = only(Preview, ines.types("/test wren 1"))
    assert "20 items" in words_of([shown])
    ines.presses("t-do", shown.change)
    only(WrongCommand, ines.types("/test wren 1"))
    assert "Test" in words_of(ines.types("/holds wren"))
    assert only(PlanShown, ines.types("/plan wren")).day_kind == "test"

    said = morning(group, 1)

    assert (wren.day().kind, len(wren.items(Part.TEST))) == ("test", 20)
    told = [each for each in said if isinstance(each, TestWaits)]
    assert [each.to for each in told] == [demo.TOVE.chat] and not told[0].opened
    opened = only(TestWaits, ines.types("/test wren open"))
    assert opened.day == wren.day().id
    assert only(DayReady, ines.presses("open-test", wren.day().id)).to == wren.chat
    morning(group, 2)
    assert wren.day().kind != "test", "it comes once"


def test_minutes_before_a_test_hold_the_more_time_of_a_student(
    group: Group, wren: Somebody, ines: Somebody
) -> None:
    with transaction(group.engine) as s:
        people.change_student(s, wren.id, lesson=8)
    does(group.who(demo.TOVE), "/adjust wren time")
    shown = only(Preview, ines.types("/test wren 1"))
    assert "60 min" in words_of([shown])
    ines.presses("t-do", shown.change)
    told = [each for each in morning(group, 1) if isinstance(each, TestWaits)]
    assert [(each.items, each.minutes) for each in told] == [(20, 60)]


def test_setting_a_test_is_undone_while_it_waits(group: Group, far: Somebody, ines: Somebody) -> None:
    with transaction(group.engine) as s:
        people.change_student(s, far.id, lesson=8)
    done = does(ines, "/test wren 1")
    undoes(ines, done)
    assert only(PlanShown, ines.types("/plan wren")).day_kind != "test"


@pytest.mark.parametrize(
    "command", ["/test wren 99", "/test wren nonsense", "/test wren reopen", "/test wren open"]
)
def test_what_cannot_be_set_is_said(group: Group, wren: Somebody, ines: Somebody, command: str) -> None:
    only(WrongCommand, ines.types(command))


def test_a_test_handed_in_too_soon_is_opened_again_with_all_answers(
    group: Group, far: Somebody, ines: Somebody
) -> None:
    morning(group, 1)
    first = takes_test(far, wrong=6)
    assert (first.right, first.second_look) == (14, True)
    said = ines.presses("t-do", only(Preview, ines.types("/test wren reopen")).change)
    assert only(TestReopened, said).to == far.chat
    assert all(each.state == "noted" and each.outcome is None for each in far.items(Part.TEST))
    for sent in far.items(Part.TEST)[:6]:
        only(ItemShown, far.presses("test-show", sent.id))
        if sent.item.choices:
            far.presses("choose", f"{sent.id}:{sent.item.choices.index(sent.item.key.answer)}")
        else:
            far.types(right_text(sent))
    far.presses("hand-in", far.day().id)
    assert [each.outcome for each in far.items(Part.TEST)] == ["first-try"] * 20


def test_opening_again_is_undone_while_nothing_was_answered_since(
    group: Group, far: Somebody, ines: Somebody
) -> None:
    morning(group, 1)
    takes_test(far, wrong=6)
    before = [(each.state, each.outcome) for each in far.items(Part.TEST)]
    undoes(ines, does(ines, "/test wren reopen"))
    assert [(each.state, each.outcome) for each in far.items(Part.TEST)] == before
    assert far.day().notes["test_counted"] and far.day().stage == "done"


def test_a_second_look_is_offered_set_by_a_parent_and_had_once(
    group: Group, far: Somebody, ines: Somebody, tove: Somebody
) -> None:
    only(WrongCommand, tove.types("/second wren"))
    morning(group, 1)
    takes_test(far, wrong=6)
    missed = {each.template for each in far.items(Part.TEST)[:6]}
    asks = {each.item.ask for each in far.items(Part.TEST)}
    group.at(20, day=1)
    digest = next(each for each in group.tick() if isinstance(each, Digest) and each.name == "Wren")
    assert digest.second_look and "A second look" in button_labels(digest)

    shown = only(Preview, tove.presses("f-run", f"second #{far.id}"))
    assert "second look" in words_of([shown]) and "segunda mirada" in words_of([shown], "es")
    tove.presses("f-do", shown.change)
    only(WrongCommand, tove.types("/second wren"))
    group.at(8, day=2)
    said = group.tick()

    ready = next(each for each in said if isinstance(each, DayReady) and each.name == "Wren")
    assert ready.day_kind == "second-look"
    items = far.items(Part.TEST)
    assert 8 <= len(items) <= 10
    assert missed <= {each.template for each in items}
    fixed = {each.item.ask for each in items} & asks
    assert len(fixed) <= 2, "new numbers, but for a template with few draws"
    done = takes_test(far, wrong=3)
    assert not done.second_look, "there is one, not more"
    only(WrongCommand, ines.types("/second wren"))
    morning(group, 3)
    assert far.day().kind != "test"


def button_labels(message) -> str:
    from bot.chat.render import render

    return " ".join(one.label for row in render(message, "en").buttons for one in row)


def answers_again(who: Somebody, day: int, items: list) -> list:
    """Answer these right and hand the test of that day in."""
    for sent in items:
        only(ItemShown, who.presses("test-show", sent.id))
        if sent.item.choices:
            who.presses("choose", f"{sent.id}:{sent.item.choices.index(sent.item.key.answer)}")
        else:
            who.types(right_text(sent))
    return who.presses("hand-in", day)


@pytest.fixture
def tested(group: Group, far: Somebody) -> Somebody:
    """Wren, with six missed of the test of Tuesday, whose evening is over; it is Wednesday."""
    morning(group, 1)
    takes_test(far, wrong=6)
    morning(group, 2)
    return far


def test_a_test_whose_evening_is_over_is_opened_again_and_its_count_stands_until_there_is_a_new_one(
    group: Group, tested: Somebody, ines: Somebody, tove: Somebody
) -> None:
    wren = tested.id
    with transaction(group.engine) as s:
        day = days.days_between(s, wren, date(2026, 9, 15), date(2026, 9, 15))[0]
        items = days.items_of(s, day.id, Part.TEST)
        believed = memories.memories(s, wren)
    tested.starts()
    shown = only(Preview, ines.types("/test wren reopen"))
    assert "14 of 20" in words_of([shown]) and "15 September" in words_of([shown])
    said = ines.presses("t-do", shown.change)
    assert only(TestReopened, said).date == "2026-09-15"
    only(WrongCommand, ines.types("/test wren reopen"))
    assert only(NotForYou, tested.types("/define ratio")).why == "in-test"
    told = only(Digest, ines.types("/digest wren 15 september"))
    assert (told.first_try, told.out_of) == (14, 20), "the count that was read stands"
    with transaction(group.engine) as s:
        assert memories.memories(s, wren) == believed

    said = answers_again(tested, day.id, [each for each in items if each.outcome != "first-try"][:4])

    assert only(TestDone, said).right == 18
    lines = [each for each in said if isinstance(each, TestCountedAgain)]
    assert {(each.to, each.right, each.was, each.shared) for each in lines} == {
        (tove.chat, 18, 14, False),
        (ines.chat, 18, 14, False),
    }
    told = only(Digest, ines.types("/digest wren 15 september"))
    assert (told.first_try, told.out_of, told.late_answers) == (18, 20, 0)
    with transaction(group.engine) as s:
        who = people.student(s, wren)
        found = record_of(s, group.school, who, day.date, day.date, date(2026, 9, 16))
        letter = week_of(s, group.school, who, date(2026, 9, 14), group.clock.now())
        assert [(each.right, each.out_of) for each in found.tests] == [(18, 20)]
        assert [(each.right, each.out_of) for each in letter.tests] == [(18, 20)]
        after = memories.memories(s, wren)
        assert after != believed
        relearn(s, group.school, wren)
        assert memories.memories(s, wren) == after, "no item is learnt from twice"
    group.at(20, day=2)
    evening = [each for each in group.tick() if isinstance(each, Digest) and each.name == "Wren"]
    assert [each.late_answers for each in evening] == [0]


def test_opening_a_told_test_again_is_undone_or_left_as_it_is(
    group: Group, tested: Somebody, ines: Somebody
) -> None:
    wren = tested.id
    with transaction(group.engine) as s:
        day = days.days_between(s, wren, date(2026, 9, 15), date(2026, 9, 15))[0]
        before = days.items_of(s, day.id, Part.TEST)
    said = does(ines, "/test wren reopen tuesday")
    undoes(ines, said)
    with transaction(group.engine) as s:
        assert days.items_of(s, day.id, Part.TEST) == before
    assert only(NotForYou, tested.presses("test-list", day.id)).why == "gone"

    does(ines, "/test wren reopen tuesday")
    morning(group, 3)
    morning(group, 4)
    with transaction(group.engine) as s:
        stands = days.items_of(s, day.id, Part.TEST)
    assert [each.outcome for each in stands] == [each.outcome for each in before], "nobody handed it in"
    assert tested.day().kind != "test"


def test_a_test_that_had_its_second_look_is_not_opened_again(
    group: Group, tested: Somebody, ines: Somebody
) -> None:
    does(ines, "/second wren")
    assert "second look" in words_of(ines.types("/test wren reopen 15 september"))
    only(WrongCommand, ines.types("/test wren reopen 15 september"))


def test_a_test_handed_in_after_its_evening_is_told_and_learnt_from(
    group: Group, far: Somebody, tove: Somebody
) -> None:
    morning(group, 1)
    tove.presses("open-test", far.day().id)
    far.starts()
    day = far.day().id
    sent = far.items(Part.TEST)[0]
    far.answers(sent)
    group.at(20, day=1)
    group.tick()
    wren = far.id
    with transaction(group.engine) as s:
        believed = memories.memories(s, wren)

    said = far.presses("hand-in", day)

    assert only(TestDone, said).right == 1
    line = next(each for each in said if isinstance(each, TestCountedAgain) and each.to == tove.chat)
    assert (line.right, line.out_of, line.was) == (1, 20, None)
    assert "after that evening" in words_of([line]) and "aquella noche" in words_of([line], "es")
    with transaction(group.engine) as s:
        assert memories.memories(s, wren) != believed
