from __future__ import annotations

import re

from support.group import Group, Somebody, only
from support.steering import does, stored, undoes, words_of

from bot.messages import (
    CannotUndo,
    Changed,
    Choose,
    FamilyChanged,
    HoldsShown,
    PlanShown,
    Preview,
    TakenBack,
    WrongCommand,
)
from bot.planner.plan import DayKind
from bot.records.days import ItemState
from bot.vocabulary import Part, Why


def plan(ines: Somebody, of: str = "wren") -> PlanShown:
    return only(PlanShown, ines.types(f"/plan {of}"))


def asks(shown: PlanShown, part: str = "review") -> list[str]:
    return [item.ask for item in shown.items if item.part == part]


def tuesday(group: Group, wren: Somebody) -> list[str]:
    """What Tuesday's review asks, once Monday was closed and the next day was pushed."""
    group.at(19)
    group.tick()
    group.at(8, day=1)
    group.tick()
    return [sent.template for sent in wren.items(Part.REVIEW)]


def test_the_plan_that_is_shown_is_the_day_that_is_made(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    group.at(19)
    group.tick()
    group.at(20)
    shown = plan(ines)
    group.at(8, day=1)
    group.tick()
    made = worked.items(Part.REVIEW)
    assert [item.n for item in shown.items if item.part == "review"] == [str(sent.place) for sent in made]
    assert [item.title for item in shown.items if item.part == "review"] == [
        sent.item.lesson_title for sent in made
    ]
    assert len(asks(shown, "guided")) == len(worked.items(Part.GUIDED))


def test_nothing_changes_before_do_it(worked: Somebody, ines: Somebody, group: Group) -> None:
    before = stored(group.engine)
    shown = only(Preview, ines.types("/drop wren 2"))
    assert stored(group.engine) == before
    ines.presses("t-leave", shown.change)
    assert stored(group.engine) == before


def test_a_dropped_item_is_not_asked_and_the_day_is_one_shorter(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    before = plan(ines)
    gone = before.items[[item.n for item in before.items].index("2")]
    does(ines, "/drop wren 2")
    after = plan(ines)
    assert gone.ask not in asks(after)
    assert len(asks(after)) == len(asks(before)) - 1


def test_undo_brings_the_plan_back_as_it_was(worked: Somebody, ines: Somebody) -> None:
    before = plan(ines)
    done = does(ines, "/drop wren 2 3")
    only(TakenBack, undoes(ines, done))
    assert plan(ines).items == before.items


def test_undo_by_command_takes_back_the_newest(worked: Somebody, ines: Somebody) -> None:
    does(ines, "/minutes wren 30")
    does(ines, "/minutes sol 60")
    taken = only(TakenBack, ines.types("/undo"))
    assert "Sol" in words_of([taken])
    taken = only(TakenBack, ines.types("/undo"))
    assert "Wren" in words_of([taken])
    assert only(CannotUndo, ines.types("/undo")).why == "none"


def test_undo_holds_for_a_day_and_no_longer(worked: Somebody, ines: Somebody, group: Group) -> None:
    done = only(Changed, does(ines, "/minutes wren 30"))
    group.at(10, 1, day=1)
    assert only(CannotUndo, ines.presses("t-undo", done.change)).why == "late"


def test_a_preview_from_the_day_before_does_nothing(ines: Somebody, group: Group) -> None:
    shown = only(Preview, ines.types("/minutes wren 30"))
    group.at(9, day=2)
    assert only(CannotUndo, ines.presses("t-do", shown.change)).why == "old"


def test_added_items_come_tomorrow_for_certain(worked: Somebody, ines: Somebody, group: Group) -> None:
    before = plan(ines)
    does(ines, "/add wren, sol times tables 2")
    after = plan(ines)
    assert len(asks(after)) == len(asks(before)) + 2
    templates = tuesday(group, worked)
    asked_for = [sent for sent in worked.items(Part.REVIEW) if sent.why is Why.TUTOR_ASKED]
    assert len(asked_for) >= 2
    assert {sent.lesson for sent in asked_for} == {asked_for[0].lesson}
    assert len(templates) == len(asks(after))


def test_a_lesson_that_was_not_met_cannot_be_added(ines: Somebody, group: Group) -> None:
    last = group.school.course.lessons[-1]
    refused = only(WrongCommand, ines.types(f"/add wren {last.title.lower()}"))
    assert refused.why.key == "why-not-met"


def test_a_swap_keeps_the_length_of_the_day(worked: Somebody, ines: Somebody) -> None:
    before = plan(ines)
    does(ines, "/swap wren 2")
    after = plan(ines)
    assert len(asks(after)) == len(asks(before))
    assert asks(after) != asks(before)


def test_what_was_missed_is_repeated_with_new_numbers(worked: Somebody, ines: Somebody, group: Group) -> None:
    missed = [sent for sent in worked.items(Part.REVIEW) if sent.outcome == "unsolved"]
    does(ines, "/repeat wren missed")
    assert {sent.template for sent in missed} <= set(tuesday(group, worked))
    again = [sent for sent in worked.items(Part.REVIEW) if sent.template == missed[0].template]
    assert again[0].item.ask != missed[0].item.ask


def test_a_number_means_the_item_that_was_shown_under_it(worked: Somebody, ines: Somebody) -> None:
    shown = plan(ines)
    by_number = {item.n: item.ask for item in shown.items}
    does(ines, "/drop wren 2")
    second = only(Preview, ines.types("/drop wren 5"))
    assert by_number["5"][:40] in words_of([second])


def test_a_number_that_is_not_there_is_said_so(worked: Somebody, ines: Somebody) -> None:
    refused = only(WrongCommand, ines.types("/drop wren 77"))
    assert refused.why.key == "why-no-number"


def test_an_item_of_today_that_was_not_seen_can_be_dropped_and_comes_back_on_undo(
    worked: Somebody, ines: Somebody
) -> None:
    waiting = next(sent for sent in worked.items(Part.REVIEW) if sent.state is ItemState.WAITING)
    done = does(ines, f"/drop wren {waiting.place} today")
    assert worked.item(waiting.id).state is ItemState.DROPPED
    undoes(ines, done)
    assert worked.item(waiting.id).state is ItemState.WAITING


def test_an_item_that_was_done_is_not_dropped(worked: Somebody, ines: Somebody) -> None:
    assert only(WrongCommand, ines.types("/drop wren 1 today")).why.key == "why-item-done"


def test_an_item_can_be_added_to_a_day_that_runs(worked: Somebody, ines: Somebody) -> None:
    before = len(worked.items(Part.REVIEW))
    done = does(ines, "/add wren times tables today")
    assert len(worked.items(Part.REVIEW)) == before + 1
    undoes(ines, done)
    assert len(worked.items(Part.REVIEW)) == before


def test_a_change_that_something_overtook_does_nothing(worked: Somebody, ines: Somebody) -> None:
    current = next(sent for sent in worked.items(Part.REVIEW) if sent.state is ItemState.WAITING)
    shown = only(Preview, ines.types(f"/drop wren {current.place} today"))
    for _ in range(20):
        open_now = [sent for sent in worked.items(Part.REVIEW) if sent.state is ItemState.SHOWN]
        if any(sent.id == current.id for sent in open_now):
            break
        worked.answers(open_now[0])
        worked.presses("on")
    assert only(CannotUndo, ines.presses("t-do", shown.change)).why == "stale"


def test_pinned_items_come_each_day(worked: Somebody, ines: Somebody, group: Group) -> None:
    shown = only(Preview, ines.types("/pin wren times tables"))
    ines.presses("t-do", shown.change)
    tuesday(group, worked)
    assert any(sent.why is Why.TUTOR_ASKED for sent in worked.items(Part.REVIEW))
    group.at(19, day=1)
    group.tick()
    group.at(8, day=2)
    group.tick()
    assert any(sent.why is Why.TUTOR_ASKED for sent in worked.items(Part.REVIEW))


def test_number_of_items_holds_from_the_next_day_on(worked: Somebody, ines: Somebody, group: Group) -> None:
    does(ines, "/items wren 5")
    assert len(asks(plan(ines))) == 5
    does(ines, "/items wren auto")
    assert len(asks(plan(ines))) > 5


def test_review_only_leaves_the_lesson_for_later(worked: Somebody, ines: Somebody, group: Group) -> None:
    assert plan(ines).lesson
    does(ines, "/review wren")
    assert not plan(ines).lesson


def test_days_off_for_all_hold_for_every_student(ines: Somebody, group: Group) -> None:
    done = does(ines, "/off all tomorrow - wed")
    for name in ("wren", "sol", "juniper"):
        assert plan(ines, name).date == "2026-09-17"
    undoes(ines, done)
    assert plan(ines).date == "2026-09-15"


def test_a_day_off_can_be_opened_again(ines: Somebody, group: Group) -> None:
    does(ines, "/off wren wed")
    assert only(WrongCommand, ines.types("/plan wren wed")).why.key == "why-no-school"
    does(ines, "/open wren wed")
    assert only(PlanShown, ines.types("/plan wren wed")).day_kind == DayKind.LESSON


def test_sick_today_excuses_what_was_not_done(worked: Somebody, ines: Somebody) -> None:
    done = does(ines, "/sick wren")
    outcomes = {sent.outcome for sent in worked.items(Part.REVIEW)}
    assert "excused" in outcomes and None not in outcomes
    undoes(ines, done)
    assert None in {sent.outcome for sent in worked.items(Part.REVIEW)}


def test_a_small_day_today_keeps_what_was_done(worked: Somebody, ines: Somebody) -> None:
    before = worked.items(Part.REVIEW)
    done = does(ines, "/small wren")
    after = worked.items(Part.REVIEW)
    assert len(after) == 6
    assert [sent.id for sent in before if sent.state is ItemState.DONE] == [
        sent.id for sent in after if sent.state is ItemState.DONE
    ]
    undoes(ines, done)
    assert worked.items(Part.REVIEW) == before


def test_a_name_that_fits_nobody_is_asked_about_and_changes_nothing(ines: Somebody, group: Group) -> None:
    before = stored(group.engine)
    asked = only(Choose, ines.types("/minutes wrne 30"))
    assert asked.question.key == "ask-did-you-mean" and asked.options == ("Wren (Bramble)",)
    assert stored(group.engine) == before
    shown = only(Preview, ines.presses("t-pick", f"{asked.ref}.0"))
    assert "Wren" in words_of([shown])
    assert stored(group.engine) == before


def test_the_beginning_of_a_name_will_do(ines: Somebody) -> None:
    assert "Juniper" in words_of([only(Preview, ines.types("/minutes jun 30"))])


def test_a_household_stands_for_its_students(ines: Somebody) -> None:
    text = words_of([only(Preview, ines.types("/minutes bramble 30"))])
    assert "Sol" in text and "Wren" in text and "Juniper" not in text


def test_a_name_that_two_have_is_asked_with_the_household(ines: Somebody, group: Group) -> None:
    does(ines, "/student quill Wren shared")
    asked = only(Choose, ines.types("/minutes wren 30"))
    assert asked.question.key == "ask-several"
    assert asked.options == ("Wren (Bramble)", "Wren (Quill)")
    narrowed = only(Preview, ines.types("/minutes wren quill 30"))
    assert "Wren (Quill)" in words_of([narrowed])


def test_an_older_question_is_not_answered_by_a_newer_one(ines: Somebody) -> None:
    first = only(Choose, ines.types("/minutes wrne 30"))
    only(Choose, ines.types("/minutes soll 60"))
    said = ines.presses("t-pick", f"{first.ref}.0")
    assert not [each for each in said if isinstance(each, Preview)]


def test_several_lessons_with_a_word_are_offered(ines: Somebody, group: Group) -> None:
    asked = only(Choose, ines.types("/lesson wren numbers"))
    assert len(asked.options) > 1
    assert all(re.search("number", title, re.IGNORECASE) for title in asked.options)


def test_what_holds_for_a_while_can_be_ended_early_and_that_be_undone(
    worked: Somebody, ines: Somebody, group: Group
) -> None:
    does(ines, "/pin wren times tables")
    group.at(10, day=3)
    ((wish, line),) = only(HoldsShown, ines.types("/holds wren")).rows
    assert line.key == "holds-pin"
    done = does(ines, f"/end {wish}")
    group.at(11, day=4)
    assert only(HoldsShown, ines.types("/holds wren")).rows == ()
    group.at(9, day=4)
    undoes(ines, done)
    assert len(only(HoldsShown, ines.types("/holds wren")).rows) == 1


def test_what_a_parent_changes_is_told_to_the_tutor(ines: Somebody, tove: Somebody) -> None:
    said = does(tove, "/off wren tomorrow")
    told = only(FamilyChanged, said)
    assert told.to == ines.chat and told.name == "Tove" and not told.back
    assert only(FamilyChanged, undoes(tove, said)).back
