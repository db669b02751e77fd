"""Strings of mental math in a day's warm-up."""

from __future__ import annotations

import pytest
from support.group import Group, Somebody, only
from support.reading import as_typed

from bot import demo
from bot.chat.render import render
from bot.messages import HintShown, ItemShown, WhyThis
from bot.records import people
from bot.records.base import transaction
from bot.school_day.morning import STRINGS, strings
from bot.vocabulary import Part

TENTHS = "multiplying-decimals"


def reaches_the_strings(wren: Somebody) -> ItemShown:
    wren.starts()
    return only(ItemShown, wren.presses("leave-facts", 0))


def test_string_is_asked_under_its_strategy_and_has_it_as_a_hint(wren: Somebody) -> None:
    asked = reaches_the_strings(wren)
    strategy = wren.items(Part.WARM_UP)[0].because["strategy"]

    assert asked.source == strategy
    shown = only(HintShown, wren.presses("hint", asked.item))
    (held,) = [each for each in wren.group.school.course.mental_math if each.title == strategy]
    assert (shown.hint, shown.n, shown.out_of) == (held.say, 1, 1)


def test_what_has_no_card_offers_none(wren: Somebody) -> None:
    asked = reaches_the_strings(wren)

    for said in (*wren.presses("hint", asked.item), *wren.presses("about", asked.item)):
        assert isinstance(said, HintShown | WhyThis)
        labels = [button.label for row in render(said, "en").buttons for button in row]
        assert not [label for label in labels if as_typed(label).startswith("Lesson")]


@pytest.mark.parametrize("lesson", [1, 12, 60])
def test_strings_climb_and_wait_for_their_lessons(group: Group, lesson: int) -> None:
    wren = group.who(demo.WREN).id
    with transaction(group.engine) as s:
        people.change_student(s, wren, lesson=lesson)
        student = people.student(s, wren)
    course = group.school.course
    met = {each.id for each in course.lessons if each.n < lesson}
    seen = set()
    for seed in range(300):
        found = strings(group.school, student, seed)
        levels = [each.item.level for each in found]
        assert levels == sorted(levels)
        assert len(found) == STRINGS
        seen |= {each.item.template for each in found}
    opens = {course.template(name).opens_after for name in seen} - {None}
    assert opens <= met
    assert (TENTHS in opens) == (TENTHS in met)
