"""What is adjusted for one student holds in day, sheet and test, and no other child hears of it."""

from __future__ import annotations

import pytest
from support.group import Group, Somebody, only
from support.steering import does, undoes, words_of

from bot import demo
from bot.messages import (
    AdjustmentsShown,
    DayReady,
    FamilyChanged,
    KeyPaper,
    NoSuchCommand,
    SheetPaper,
    WrongCommand,
)
from bot.records import sheets
from bot.records.base import transaction
from bot.school import adjustments
from bot.vocabulary import Part


def next_morning(group: Group, day: int = 1) -> list[object]:
    group.at(19, 5, day=day - 1)
    group.tick()
    group.at(8, day=day)
    return list(group.tick())


@pytest.fixture
def tove(group: Group, wren: Somebody) -> Somebody:
    return group.who(demo.TOVE)


def test_fewer_items_in_the_review(group: Group, wren: Somebody, tove: Somebody) -> None:
    does(tove, "/adjust wren fewer")
    next_morning(group)
    sol = group.who(demo.SOL)
    mine, theirs = len(wren.items(Part.REVIEW)), len(sol.items(Part.REVIEW))
    assert mine == 6 < theirs
    done = does(tove, "/adjust wren fewer off")
    assert any(isinstance(each, FamilyChanged) for each in done)  # the tutor hears of it
    assert theirs == len(sol.items(Part.REVIEW))


def test_more_time_makes_the_day_smaller_and_says_how_long_it_takes(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    does(tove, "/adjust wren time")
    said = [each for each in next_morning(group) if isinstance(each, DayReady)]
    with_time = next(each for each in said if each.to == wren.chat)
    assert with_time.minutes <= 50  # the family's 45, although each item takes half as long again
    assert len(wren.items(Part.REVIEW)) <= len(group.who(demo.SOL).items(Part.REVIEW))


@pytest.mark.parametrize(
    ("word", "timed"), [("", True), ("time", False), ("dictated", False), ("untimed", False)]
)
def test_number_facts_are_not_timed_with_more_time_or_answers_said_aloud(
    group: Group, wren: Somebody, tove: Somebody, word: str, timed: bool
) -> None:
    does(tove, "/timing wren on")
    if word:
        does(tove, f"/adjust wren {word}")
    for day in (1, 2):
        next_morning(group, day)
        with transaction(group.engine) as s:
            sheet = sheets.sheet_of_day(s, wren.day().id)
        if sheet is not None:
            assert sheet.timed is timed
            return
    raise AssertionError("no sheet of facts in two days")


def test_big_type_and_answers_said_aloud_are_on_the_sheet(tove: Somebody) -> None:
    plain = only(SheetPaper, tove.types("/sheet wren"))
    assert not plain.big and not plain.dictated
    does(tove, "/adjust wren big")
    does(tove, "/adjust wren dictated")
    sheet = only(SheetPaper, tove.types("/sheet wren"))
    assert sheet.big and sheet.dictated and only(KeyPaper, tove.types("/key wren")).big
    assert not only(SheetPaper, tove.types("/sheet sol")).big


def test_a_calculator_is_named_at_every_item_of_the_next_day(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    does(tove, "/adjust wren calculator")
    assert all(row.calculator for row in only(SheetPaper, tove.types("/sheet wren tomorrow")).rows)
    next_morning(group)
    assert all(each.item.calculator for each in wren.items(Part.REVIEW) + wren.items(Part.GUIDED))
    assert not all(each.item.calculator for each in group.who(demo.SOL).items(Part.REVIEW))


def test_a_test_asks_fewer_items_from_its_whole_length() -> None:
    picks = list(range(20))
    assert adjustments.fewer(picks, frozenset()) == picks
    chosen = adjustments.fewer(picks, frozenset({"fewer"}))
    assert len(chosen) == 12 and len(set(chosen)) == 12
    assert chosen[0] == 0 and chosen[-1] >= 18 and chosen == sorted(chosen)
    assert adjustments.fewer([7], frozenset({"fewer"})) == [7]


def test_it_is_shown_with_a_button_each_to_grown_ups_and_to_no_child(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    done = does(tove, "/adjust wren big")
    for grown_up in (tove, group.who(demo.INES)):
        shown = only(AdjustmentsShown, grown_up.types("/adjust wren"))
        assert shown.on == ("big",) and set(shown.off) == {"time", "fewer", "dictated", "calculator"}
    for child in (wren, group.who(demo.SOL)):
        only(NoSuchCommand, child.types("/adjust wren"))
    assert only(AdjustmentsShown, tove.types("/adjust sol")).on == ()
    only(WrongCommand, group.who(demo.ANSELM).types("/adjust wren big"))
    for command in ("/mine", "/day", "/help"):
        assert "big" not in words_of(group.who(demo.SOL).types(command)).lower()
    undoes(tove, done)
    assert only(AdjustmentsShown, tove.types("/adjust wren")).on == ()


@pytest.mark.parametrize("words", ["zzz", "big zzz", "big off now"])
def test_a_word_that_is_none_changes_nothing(tove: Somebody, words: str) -> None:
    only(WrongCommand, tove.types(f"/adjust wren {words}"))
    assert only(AdjustmentsShown, tove.types("/adjust wren")).on == ()
