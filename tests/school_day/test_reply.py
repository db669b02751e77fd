"""A student replies: what costs a try, what doesn't, and what comes next."""

from __future__ import annotations

from dataclasses import replace

import msgspec
from sqlalchemy import update
from support.group import Somebody, only, wrong_answer

from bot.messages import (
    AlreadyDone,
    CannotRead,
    HintShown,
    ItemShown,
    NotYet,
    SetDone,
    Solution,
    Together,
)
from bot.records.base import transaction
from bot.records.day_tables import ItemRow


def typed_item(wren: Somebody):
    """The first review item whose answer is typed; choices before it are answered."""
    sent = wren.gets_to_review()
    while sent.item.choices:
        said = wren.answers(sent)
        shown = [m for m in said if isinstance(m, ItemShown)]
        if not shown:
            wren.presses("go", only(SetDone, said).day)
        sent = next(each for each in wren.items() if each.state == "shown" and each.part == "review")
    return sent


def test_right_answer_brings_the_next_item_in_the_same_message(wren: Somebody) -> None:
    sent = wren.gets_to_review()

    said = wren.answers(sent)

    assert wren.item(sent.id).outcome == "first-try"
    assert [type(m) for m in said] in ([ItemShown], [SetDone])
    assert said[0].lead.kind == "right"


def test_wrong_answer_costs_a_try_and_says_so_kindly(wren: Somebody) -> None:
    sent = typed_item(wren)

    said = only(NotYet, wren.types(wrong_answer(sent)))

    assert wren.item(sent.id).tries == 1
    assert (said.go, said.last_go, said.show) == (1, False, False)


def test_asking_for_help_in_words_gives_the_hint_and_costs_nothing(wren: Somebody) -> None:
    sent = typed_item(wren)

    said = only(HintShown, wren.types("idk"))

    assert (said.n, said.hint) == (1, sent.item.hints[0])
    assert (wren.item(sent.id).tries, wren.item(sent.id).helps) == (0, 1)


def test_unreadable_reply_costs_nothing_and_the_second_in_a_row_offers_the_tutor(wren: Somebody) -> None:
    sent = typed_item(wren)

    first = only(CannotRead, wren.types("(((("))
    second = only(CannotRead, wren.types("))))"))

    assert (first.again, second.again) == (False, True)
    assert wren.item(sent.id).tries == 0


def test_worked_solution_opens_after_a_wrong_try_that_followed_a_hint(wren: Somebody) -> None:
    sent = typed_item(wren)
    assert wren.presses("show", sent.id)[0].why == "not-earned"
    wren.presses("hint", sent.id)

    said = only(NotYet, wren.types(wrong_answer(sent)))

    assert said.show
    assert only(Solution, wren.presses("show", sent.id)).comes_back


def test_worked_solution_opens_at_the_first_asking_where_there_is_no_hint(wren: Somebody) -> None:
    wren.starts()
    wren.presses("leave-facts", 0)
    sent = next(each for each in wren.items("warm-up") if each.state == "shown")
    bare = msgspec.json.encode(replace(sent.item, hints=())).decode()
    with transaction(wren.group.engine) as s:
        s.execute(update(ItemRow).where(ItemRow.id == sent.id).values(data=bare))
    assert not wren.item(sent.id).item.hints
    assert wren.presses("show", sent.id)[0].why == "not-earned"

    assert only(HintShown, wren.types("idk")).show
    only(Solution, wren.presses("show", sent.id))


def test_leaving_a_warm_up_twice_brings_the_next_one_once(wren: Somebody) -> None:
    wren.starts()
    wren.presses("leave-facts", 0)
    sent = next(each for each in wren.items("warm-up") if each.state == "shown")

    assert only(ItemShown, wren.presses("leave", sent.id)).lead.kind == "left"
    assert [m.why for m in wren.presses("leave", sent.id)] == ["gone"]


def test_show_me_stands_under_a_hint_only_where_it_opens(wren: Somebody) -> None:
    wren.starts()
    while wren.day().stage == "warm-up":
        shown = [each for each in wren.items("warm-up") if each.state == "shown"]
        wren.presses("leave", shown[0].id) if shown else wren.presses("leave-facts", 0)
    wren.presses("go", wren.day().id)
    sent = next(each for each in wren.items("guided") if each.state == "shown")
    hints: list[HintShown] = []
    while not (hints and hints[-1].show):
        hints += [m for m in wren.presses("step", sent.id) if isinstance(m, HintShown)]

    assert not any(each.show for each in hints[:-1])
    only(Solution, wren.presses("show", sent.id))


def test_third_wrong_answer_ends_the_item_and_a_fresh_one_comes_back(wren: Somebody) -> None:
    sent = typed_item(wren)
    before = len(wren.items("review"))

    wren.types(wrong_answer(sent))
    wren.types(wrong_answer(sent) + "1")
    only(Together, wren.types(wrong_answer(sent) + "2"))

    again = [each for each in wren.items("review") if each.comeback_of == sent.id]
    assert wren.item(sent.id).outcome == "unsolved"
    assert (len(again), len(wren.items("review"))) == (1, before + 1)
    assert again[0].template == sent.template
    assert again[0].item.ask != sent.item.ask


def test_solved_after_a_wrong_try_is_a_later_try(wren: Somebody) -> None:
    sent = typed_item(wren)
    wren.types(wrong_answer(sent))

    said = wren.answers(sent)

    assert wren.item(sent.id).outcome == "later-try"
    assert said[0].lead.kind == "right-later"


def test_reply_to_an_older_message_answers_that_item(wren: Somebody) -> None:
    first = typed_item(wren)
    message = wren.group.message_ids[wren.chat]
    wren.presses("later", first.id)

    wren.types(first.item.key.answer + (f" {first.item.key.unit}" if first.item.key.unit else ""), message)

    assert wren.item(first.id).outcome == "first-try"


def test_answer_to_an_item_that_is_done_counts_for_nothing(wren: Somebody) -> None:
    first = typed_item(wren)
    message = wren.group.message_ids[wren.chat]
    wren.answers(first)

    said = wren.types(wrong_answer(first), replying_to=message)

    assert isinstance(said[0], AlreadyDone)
    assert wren.item(first.id).outcome == "first-try"


def test_two_quick_answers_do_not_grade_an_item_nobody_saw(wren: Somebody) -> None:
    sent = typed_item(wren)
    written = wren.group.clock.at
    wren.group.later(5)
    wren.answers(sent)  # the next item arrives five seconds after the second answer was written
    now = wren.group.clock.at
    wren.group.clock.at = written

    said = wren.types(wrong_answer(sent))

    wren.group.clock.at = now
    assert isinstance(said[0], AlreadyDone)
    assert all(each.tries == 0 for each in wren.items("review"))


def test_typing_instead_of_pressing_go_on_is_taken_as_the_press(wren: Somebody) -> None:
    wren.starts()
    while wren.day().stage == "warm-up":
        shown = [each for each in wren.items("warm-up") if each.state == "shown"]
        wren.presses("leave", shown[0].id) if shown else wren.presses("leave-facts", 0)
    assert wren.day().stage == "card"

    said = wren.types("ok")

    assert only(ItemShown, said).part == "guided"
