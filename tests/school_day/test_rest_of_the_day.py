"""Paper, ways out, the phone that goes round, photos, and the evening."""

from __future__ import annotations

import pytest
from sqlalchemy import text
from support.group import Group, Somebody, only, wrong_answer

from bot import demo
from bot.happened import Left
from bot.messages import (
    BreakTaken,
    Counted,
    DayDone,
    Digest,
    FactsDone,
    FactsUnclear,
    FirstCounts,
    GivenBack,
    ItemShown,
    LanguageChosen,
    NotForYou,
    NotText,
    PaperGraded,
    PaperSheet,
    PhotoKept,
    SetDone,
    SmallDay,
    Speaking,
    StillHard,
    Unreachable,
    WhoReads,
)
from bot.records import people
from bot.records.base import transaction


def key_of(sent) -> str:
    unit = f" {sent.item.key.unit}" if sent.item.key.unit else ""
    return f"{sent.item.key.answer}{unit}"


def test_sheet_of_facts_is_answered_in_one_message(wren: Somebody) -> None:
    said = wren.starts()
    facts = next(m for m in said if type(m).__name__ == "FactsSheet").facts
    with transaction(wren.group.engine) as s:
        keys = s.execute(text("select facts from sheet where student_id = :w"), {"w": wren.id}).scalar_one()
    answers = [pair[1] for pair in __import__("json").loads(keys)]

    plain_words = only(FactsUnclear, wren.types("which sheet please"))
    too_few = only(FactsUnclear, wren.types(" ".join(answers[:-1])))
    done = only(FactsDone, wren.types(" ".join([*answers[:-1], "-"])))

    assert (plain_words.got, plain_words.wanted) == (0, 12)
    assert (too_few.got, too_few.wanted) == (11, 12)
    assert (done.right, done.out_of, [q for q, _ in done.missed]) == (11, 12, [facts[-1]])


def test_paper_answers_come_in_any_order_several_in_one_message(wren: Somebody) -> None:
    wren.gets_to_review()
    sheet = only(PaperSheet, wren.presses("paper", wren.day().id))
    items = {each.place: each for each in wren.items("review")}
    numbers = [row[0] for row in sheet.rows]
    last, first = items[numbers[-1]], items[numbers[0]]

    said = only(PaperGraded, wren.types(f"{last.place}) {key_of(last)}\n{first.place}) {key_of(first)}"))

    assert [(row[0], row[1]) for row in said.rows] == [(first.place, "right"), (last.place, "right")]
    assert set(said.left) == set(numbers) - {first.place, last.place}


@pytest.mark.parametrize("word", ["what?", "?", "huh", "qué?", "¿Cómo?"])
def test_asking_what_the_sheet_is_keeps_the_sheet(wren: Somebody, word: str) -> None:
    wren.starts()
    unclear = only(FactsUnclear, wren.types(word))
    assert unclear.got == 0
    only(FactsUnclear, wren.types("which sheet please"))  # it still waits


def test_number_that_is_not_on_the_sheet_is_said_and_changes_nothing(wren: Somebody) -> None:
    wren.gets_to_review()
    wren.presses("paper", wren.day().id)

    said = only(PaperGraded, wren.types("1) idk  77) 5"))

    assert said.unknown == (77,)


def test_small_day_has_six_review_items_and_no_lesson_and_the_lesson_waits(wren: Somebody) -> None:
    said = only(SmallDay, wren.presses("small", wren.day().id))

    assert said.review == 6
    assert (wren.day().small, wren.day().lesson) == (True, None)


def test_enough_is_open_from_the_middle_of_review_on(wren: Somebody) -> None:
    wren.gets_to_review()
    assert only(NotForYou, wren.presses("enough", wren.day().id)).why == "too-early"
    for _ in range(4):
        wren.answers(next(each for each in wren.items("review") if each.state == "shown"))

    said = only(DayDone, wren.presses("enough", wren.day().id))

    assert said.enough
    assert said.still_open == 4


@pytest.mark.parametrize("word", ["stop", "I need a break!", "¿Puedo parar?", "ya no quiero más", "im tired"])
def test_who_asks_to_stop_gets_a_break_and_ways_on_and_nothing_is_graded(wren: Somebody, word: str) -> None:
    wren.starts()
    assert only(BreakTaken, wren.types(word)).item is None  # in the middle of the sheet of facts
    first = wren.gets_to_review()
    said = only(BreakTaken, wren.types(word))
    assert (said.item, said.enough, said.small) == (first.id, False, False)
    assert only(ItemShown, wren.presses("again", first.id)).item == first.id
    for _ in range(4):
        wren.answers(next(each for each in wren.items("review") if each.state == "shown"))
    wren.presses("go", wren.day().id)  # the next set
    assert only(BreakTaken, wren.types(word)).enough
    with transaction(wren.group.engine) as s:
        typed = [one for (one,) in s.execute(text("select typed from attempt"))]
    assert word not in typed


def test_what_is_answered_after_the_digest_counts_for_its_day(wren: Somebody) -> None:
    sent = wren.gets_to_review()
    message = wren.group.message_ids[wren.chat]
    wren.group.at(19)
    wren.group.tick()
    wren.group.at(8, day=1)
    wren.group.tick()

    said = wren.types(key_of(sent), replying_to=message) if not sent.item.choices else wren.answers(sent)

    assert only(Counted, said).right
    assert wren.item(sent.id).outcome == "first-try"


def test_digest_counts_equal_a_recount_in_sql(wren: Somebody) -> None:
    sent = wren.gets_to_review()
    while sent.item.choices:
        wren.answers(sent)
        sent = next(each for each in wren.items("review") if each.state == "shown")
    wren.types(wrong_answer(sent))
    wren.answers(sent)
    wren.group.at(19)

    digest = next(m for m in wren.group.tick() if isinstance(m, Digest) and m.name == "Wren")

    with transaction(wren.group.engine) as s:
        rows = s.execute(
            text(
                "select outcome, count(*) from item where student_id = :w and part = 'review' "
                "and state <> 'dropped' group by outcome"
            ),
            {"w": wren.id},
        )
        counted = dict(tuple(row) for row in rows)
    assert digest.first_try == counted.get("first-try", 0)
    assert digest.later_try == counted.get("later-try", 0)
    assert digest.unsolved == counted.get("unsolved", 0)
    assert digest.untouched == counted.get("untouched", 0)
    assert digest.out_of == sum(counted.values())


def test_shared_phone_goes_to_the_child_and_back(group: Group) -> None:
    group.at(8)
    group.tick()
    anselm = group.who(demo.ANSELM)
    with transaction(group.engine) as s:
        juniper = s.execute(text("select id from person where name = 'Juniper'")).scalar_one()

    taken = anselm.presses("speak", juniper)
    while_speaking = anselm.presses("digest", anselm.day().id)
    back = anselm.presses("back")

    assert [type(m) for m in taken[:2]] == [WhoReads, Speaking]
    assert only(NotForYou, while_speaking).why == "grown-up"
    assert only(GivenBack, back).name == "Anselm"


def test_digest_waits_while_a_child_holds_the_phone(group: Group) -> None:
    group.at(8)
    group.tick()
    anselm = group.who(demo.ANSELM)
    with transaction(group.engine) as s:
        juniper = s.execute(text("select id from person where name = 'Juniper'")).scalar_one()
    group.at(18, 50)
    anselm.presses("speak", juniper)
    group.at(19)
    held = [m for m in group.tick() if m.to == demo.ANSELM.chat]

    back = anselm.presses("back")

    assert held == []
    assert [type(m).__name__ for m in back] == ["GivenBack", "DigestLine"]


def test_silent_phone_counts_as_given_back(group: Group) -> None:
    group.at(8)
    group.tick()
    anselm = group.who(demo.ANSELM)
    with transaction(group.engine) as s:
        juniper = s.execute(text("select id from person where name = 'Juniper'")).scalar_one()
    anselm.presses("speak", juniper)
    group.at(12)

    said = [m for m in group.tick() if m.to == demo.ANSELM.chat]

    assert only(GivenBack, said).by_itself


def test_button_of_another_students_item_does_nothing(wren: Somebody) -> None:
    sol = wren.group.who(demo.SOL)
    theirs = sol.gets_to_review()

    said = wren.presses("hint", theirs.id)

    assert only(NotForYou, said).why == "other"
    assert sol.item(theirs.id).hints == 0


def test_stranger_reads_and_changes_nothing(wren: Somebody) -> None:
    stranger = wren.group.who(demo.Phone(4711, "Nobody", "", ""))  # type: ignore[arg-type]

    for said in (stranger.types("7"), stranger.presses("start", wren.day().id), stranger.types("/day")):
        assert [type(m).__name__ for m in said] == ["NotLinked"]


def test_photos_are_kept_ten_a_day_and_an_album_gets_one_answer(wren: Somebody) -> None:
    first = wren.sends("photo", file_id="a", album="x")
    second = wren.sends("photo", file_id="b", album="x")
    for n in range(8):
        wren.sends("photo", file_id=f"c{n}")
    full = wren.sends("photo", file_id="d")

    assert only(PhotoKept, first).first
    assert second == []
    assert only(PhotoKept, full).full
    with transaction(wren.group.engine) as s:
        assert s.execute(text("select count(*) from file")).scalar_one() == 10


def test_sticker_and_edited_message_get_a_kind_word_and_grade_nothing(wren: Somebody) -> None:
    sent = wren.gets_to_review()

    assert only(NotText, wren.sends("sticker")).what == "sticker"
    assert only(FirstCounts, wren.edits("42")).open
    assert wren.item(sent.id).tries == 0


def test_still_hard_twice_on_one_skill_reaches_the_tutor_once(wren: Somebody) -> None:
    tove = wren.group.who(demo.TOVE)
    items = wren.items("review")
    skill = items[0].item.skills[0]
    same = next(each for each in [*items[1:], *wren.items("guided")] if each.item.skills[0] == skill)

    once = tove.presses("talk-still-hard", items[0].id)
    twice = tove.presses("talk-still-hard", same.id)
    again = tove.presses("talk-still-hard", same.id)

    assert [type(m).__name__ for m in once] == ["TalkNoted"]
    assert only(StillHard, twice).student == "Wren"
    assert [type(m).__name__ for m in again] == ["TalkNoted"]


def test_review_comes_in_sets_of_four(wren: Somebody) -> None:
    wren.gets_to_review()

    said = [wren.answers(next(e for e in wren.items("review") if e.state == "shown")) for _ in range(4)]

    assert [type(m[0]) for m in said] == [ItemShown, ItemShown, ItemShown, SetDone]
    assert said[-1][0].may_stop


def test_student_chooses_the_language(wren: Somebody) -> None:
    assert only(LanguageChosen, wren.types("/language")).choices == ("en", "es")

    me = wren.id
    only(LanguageChosen, wren.presses("language", "es"))

    with transaction(wren.group.engine) as s:
        assert people.student(s, me).language == "es"


def test_button_with_a_number_that_no_row_can_have_does_nothing(wren: Somebody) -> None:
    for ref in ("99999999999999999999", "-1", "x", ""):
        assert [type(m).__name__ for m in wren.presses("hint", ref)] == ["NotForYou"], ref


def test_tutor_hears_once_a_day_that_somebody_blocked_the_bot(wren: Somebody) -> None:
    now = wren.group.clock.now()

    said = wren.group.happens(Left(wren.group.update(), demo.TOVE.chat, now))

    assert (only(Unreachable, said).to, only(Unreachable, said).name) == (demo.INES.chat, "Tove")
    assert wren.group.happens(Left(wren.group.update(), demo.TOVE.chat, now, back=True)) == []
