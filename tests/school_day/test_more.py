"""More than the day holds: a lesson passed over, a second lesson, practice that was asked for."""

from __future__ import annotations

from support.group import Somebody, only, wrong_answer
from support.steering import words_of

from bot import demo
from bot.messages import (
    CardShown,
    DayDone,
    Digest,
    ExtraDone,
    HandsOnShown,
    ItemShown,
    NotForYou,
    NothingToPractise,
)
from bot.records import people
from bot.records.base import transaction
from bot.vocabulary import Part


def student_of(wren: Somebody):
    with transaction(wren.group.engine) as s:
        return people.student(s, wren.id)


def gets_to_card(wren: Somebody) -> None:
    wren.starts()
    while wren.day().stage == "warm-up":
        shown = [each for each in wren.items("warm-up") if each.state == "shown"]
        wren.presses("leave", shown[0].id) if shown else wren.presses("leave-facts", 0)


def sits_the_test(wren: Somebody) -> None:
    wren.group.who(demo.TOVE).presses("open-test", wren.day().id)
    wren.starts()
    wren.presses("test-list", wren.day().id)
    wren.presses("hand-in", wren.day().id)


def finishes(wren: Somebody) -> DayDone:
    """Everything right, to the end of the day."""
    wren.gets_to_review()
    said = []
    for _ in range(40):
        if wren.day().stage == "done":
            return only(DayDone, said)
        shown = [each for each in wren.items("review") if each.state == "shown"]
        said = wren.answers(shown[0]) if shown else wren.presses("go", wren.day().id)
    raise AssertionError("the day never ended")


def test_five_right_answers_pass_a_lesson_over(wren: Somebody) -> None:
    gets_to_card(wren)
    before = student_of(wren).lesson
    wren.presses("known", wren.day().id)

    for _ in range(5):
        said = wren.answers(next(each for each in wren.items("known") if each.state == "shown"))

    assert student_of(wren).lesson == before + 1
    assert wren.items("guided") == []
    assert only(ItemShown, said).part == "review"
    assert only(ItemShown, said).lead.kind == "known"


def test_first_miss_leads_back_to_the_lesson_and_counts_for_nothing(wren: Somebody) -> None:
    gets_to_card(wren)
    before = student_of(wren).lesson
    wren.presses("known", wren.day().id)
    first = next(each for each in wren.items("known") if each.state == "shown")

    if first.item.choices:
        wrong = next(n for n, c in enumerate(first.item.choices) if c != first.item.key.answer)
        said = wren.presses("choose", f"{first.id}:{wrong}")
    else:
        said = wren.types(wrong_answer(first))

    assert student_of(wren).lesson == before
    assert only(ItemShown, said).part == "guided"


def test_good_day_with_time_left_offers_one_more_lesson(wren: Somebody) -> None:
    done = finishes(wren)
    assert done.second

    said = wren.presses("second", wren.day().id)

    assert only(CardShown, said).title == done.second
    wren.presses("go", wren.day().id)
    for _ in range(4):
        wren.answers(next(e for e in wren.items("guided") if e.state == "shown"))
    assert student_of(wren).lesson == 3
    assert wren.day().stage == "done"


def test_practice_asked_for_never_counts_against_anybody(wren: Somebody) -> None:
    finishes(wren)
    wren.presses("more", wren.day().id)
    items = wren.items("extra")
    for _ in items:
        wren.presses("hint", next(e for e in wren.items("extra") if e.state == "shown").id)
        said = wren.answers(next(e for e in wren.items("extra") if e.state == "shown"))

    assert only(ExtraDone, said).out_of == len(items) >= 8
    wren.group.at(19)
    digest = next(m for m in wren.group.tick() if isinstance(m, Digest) and m.name == "Wren")
    assert digest.out_of == len(wren.items("review"))


def test_practice_of_a_lesson_by_words_of_its_title(wren: Somebody) -> None:
    finishes(wren)

    nothing = only(NothingToPractise, wren.types("/more zebra"))
    said = only(ItemShown, wren.types("/more rounding"))

    assert nothing.titles == ("Place value and rounding",)
    assert said.source in ("", "Place value and rounding")


def test_hands_on_lesson_is_offered_on_its_light_day_only(wren: Somebody) -> None:
    assert only(NotForYou, wren.presses("hands-on", wren.day().id)).why == "gone"
    with transaction(wren.group.engine) as s:
        people.change_student(s, wren.id, lesson=14, week="1121100")
    wren.starts()
    wren.group.at(8, day=1)
    wren.group.tick()
    sits_the_test(wren)
    wren.group.at(8, day=2)  # the light day
    wren.group.tick()

    done = finishes(wren)
    shown = only(HandsOnShown, wren.presses("hands-on", wren.day().id))

    assert done.hands_on == shown.title
    assert only(ItemShown, wren.presses("answers", wren.day().id)).part == "hands-on"
    said = [wren.answers(each) for each in wren.items(Part.HANDS_ON)]
    end = only(DayDone, said[-1])
    assert end.task_done == shown.title and not end.hands_on
    text = words_of([end])
    assert f"All your answers for {shown.title} are in." in text
    assert "at first go" not in text, "the day's count was said before"
