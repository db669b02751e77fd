"""Every kind of day has a digest that reads well, on the evening and on demand, in one message of twelve lines."""

from __future__ import annotations

import pytest
from support.group import Group, Somebody, only
from support.steering import does, words_of

from bot import demo
from bot.chat.render import render
from bot.messages import Digest, MarksShown, NoDay, OpenInFull, WeekPicture
from bot.records import days
from bot.records.base import transaction
from bot.vocabulary import Part


@pytest.fixture
def tove(group: Group, wren: Somebody) -> Somebody:
    group.at(9)
    return group.who(demo.TOVE)


def evening(group: Group, day: int = 0) -> Digest:
    group.at(19, 5, day=day)
    found = [m for m in group.tick() if isinstance(m, Digest) and m.name == "Wren"]
    assert len(found) == 1
    for language in ("en", "es"):
        text = render(found[0], language).text
        assert text.startswith(("Wren", "Today", "Lo de hoy")), text
        assert len(text.splitlines()) <= 12 + 4, text  # twelve lines and the empty ones between
    return found[0]


def test_a_day_not_opened(group: Group, wren: Somebody, tove: Somebody) -> None:
    digest = evening(group)
    assert digest.variant == "nothing-started"
    assert "wasn’t opened" in words_of([digest])


def test_a_day_off_that_was_made_free_after_its_push(group: Group, wren: Somebody, tove: Somebody) -> None:
    does(tove, "/off wren today")
    digest = evening(group)
    assert digest.variant == "day-off"
    assert "had the day off" in words_of([digest]) and "tuvo el día libre" in words_of([digest], "es")


def test_a_day_only_on_paper(group: Group, wren: Somebody, tove: Somebody) -> None:
    wren.gets_to_review()
    wren.presses("paper", wren.day().id)
    waiting = only(Digest, tove.types("/digest wren"))
    assert waiting.variant == "paper-waiting" and "/marks" in words_of([waiting])
    only(MarksShown, tove.types("/marks wren 2"))
    digest = evening(group)
    count = len(wren.items(Part.REVIEW))
    assert digest.variant == "only-paper"
    assert f"worked on paper: {count - 1} of {count}" in words_of([digest])
    full = only(OpenInFull, tove.presses("in-full", digest.day))
    assert len(full.items) == 1


def test_all_right(group: Group, wren: Somebody, tove: Somebody) -> None:
    wren.gets_to_review()
    while shown := [each for each in wren.items(Part.REVIEW) if each.state == "shown"]:
        group.later(20)
        wren.answers(shown[0])
        wren.presses("on")
    digest = evening(group)
    assert digest.variant == "all-right" and not digest.talk
    assert "every one at first go" in words_of([digest])


def test_a_test_that_is_not_handed_in(group: Group, wren: Somebody, tove: Somebody) -> None:
    with transaction(group.engine) as s:
        day = wren.day()
        for each in days.items_of(s, day.id):
            days.change_item(s, each.id, state="dropped")
        days.change_day(s, day.id, kind="test", started_at=group.clock.now())
        days.note_day(s, days.day(s, day.id), test=1, test_open=True)
    digest = evening(group)
    assert digest.variant == "test-begun" and "hasn’t handed it in" in words_of([digest])


def test_trouble_of_ours_is_said_first_and_as_ours(group: Group) -> None:
    group.at(8)
    group.tick()
    group.at(19, 5)
    group.tick()
    group.at(18, 30, day=1)  # we were away all day
    group.tick()
    digest = evening(group, day=1)
    assert digest.variant == "our-fault"
    assert "our fault" in words_of([digest])


def test_any_day_can_be_asked_for_with_its_week_and_a_day_without_school_says_so(
    group: Group, wren: Somebody, tove: Somebody
) -> None:
    evening(group)
    group.at(9, day=3)
    digest = only(Digest, tove.types("/digest wren 14 sep"))
    assert "(Monday 14 September)" in words_of([digest])
    assert only(WeekPicture, tove.presses("week", digest.day)).monday == "2026-09-14"
    missing = tove.types("/digest wren 13 sep")
    assert any(isinstance(each, NoDay) for each in missing) and words_of(missing)


def test_a_miss_whose_fresh_one_went_right_is_told_so(group: Group, wren: Somebody, tove: Somebody) -> None:
    first = wren.gets_to_review()
    wren.presses("hint", first.id)
    for _ in range(2):
        wren.presses("hint", first.id)
    wren.presses("show", first.id)
    wren.presses("go", wren.day().id)
    for _ in range(40):
        shown = [each for each in wren.items(Part.REVIEW) if each.state == "shown"]
        wren.answers(shown[0]) if shown else wren.presses("go", wren.day().id)
        if wren.day().stage == "done":
            break
    (fresh,) = [each for each in wren.items(Part.REVIEW) if each.comeback_of == first.id]
    assert fresh.outcome == "first-try"

    digest = evening(group)
    assert [(each.item, each.put_right) for each in digest.open_items] == [(first.id, True)]
    assert "a fresh one like it went right" in words_of([digest])
    assert "otro parecido salió bien" in words_of([digest], "es")
    assert "Still open" not in words_of([digest])
