from __future__ import annotations

from support.group import Group, Somebody, only
from support.steering import does, stored, undoes, words_of

from bot import demo
from bot.messages import (
    AskWithdraw,
    ConsentAsked,
    ConsentGiven,
    ConsentLater,
    DayReady,
    Digest,
    NotForYou,
    PhoneForStudent,
    Privacy,
    TutorTold,
    WhoReads,
    Withdrawn,
)
from bot.records import invites, outbox, people
from bot.records.base import transaction
from bot.records.outbox import State


def household(new, rosalind: Somebody) -> tuple[Somebody, Somebody]:
    """Robin, a parent who was asked and didn't answer yet, and Linnet with a chat of her own."""
    robin = new.opens(new.link_of(rosalind, "/parent hazel Robin"))
    linnet = new.opens(new.link_of(rosalind, "/student hazel Linnet own"))
    return robin, linnet


def question(parent: Somebody) -> ConsentAsked:
    return only(ConsentAsked, parent.types("/agree"))


def test_nothing_is_pushed_before_a_parent_agreed(new, rosalind: Somebody, group: Group) -> None:
    robin, linnet = household(new, rosalind)
    for day in range(3):
        group.at(8, 1, day=day)
        said = group.tick()
        assert not [each for each in said if each.to in (robin.chat, linnet.chat)]
    assert [type(each) for each in linnet.types("/day")] == [NotForYou]
    assert [type(each) for each in linnet.types("42")] == [NotForYou]


def test_consent_says_in_one_message_what_is_kept_who_reads_it_and_how_it_ends(
    new, rosalind: Somebody
) -> None:
    robin, _ = household(new, rosalind)
    text = words_of([question(robin)])
    for word in (
        "What is kept",
        "Why",
        "Who reads it",
        "ten a day",
        "/withdraw",
        "erased",
        "differ from place to place",
    ):
        assert word in text, word
    assert "Linnet" in text and "Rosalind" in text


def test_after_consent_the_student_is_told_who_reads_what_before_the_first_day(
    new, rosalind: Somebody, group: Group
) -> None:
    robin, linnet = household(new, rosalind)
    group.at(12)
    said = robin.presses("f-agree", question(robin).household)
    given = only(ConsentGiven, said)
    assert given.firsts == (("Linnet", "2026-09-15", 480, "own"),)
    reads = only(WhoReads, said)
    assert reads.to == linnet.chat and reads.parents == ("Robin",) and reads.tutor == "Rosalind"
    assert only(TutorTold, said).to == rosalind.chat
    assert not [each for each in group.tick() if each.to == linnet.chat]
    group.at(8, 1, day=1)
    pushed = [each for each in group.tick() if each.to == linnet.chat]
    assert [type(each) for each in pushed] == [DayReady]


def test_a_student_whose_own_link_waits_is_not_promised_to_the_parents_phone(
    new, rosalind: Somebody, group: Group
) -> None:
    robin, _ = household(new, rosalind)
    new.link_of(rosalind, "/student hazel Alba own")
    does(rosalind, "/student hazel Teo shared")

    given = only(ConsentGiven, robin.presses("f-agree", question(robin).household))

    assert {name: where for name, _, _, where in given.firsts} == {
        "Linnet": "own",
        "Alba": "link",
        "Teo": "shared",
    }
    assert "a chat of Alba’s own" in words_of([given])


def test_consent_before_the_hour_of_the_push_begins_the_same_day(
    new, rosalind: Somebody, group: Group
) -> None:
    group.at(7)
    robin, linnet = household(new, rosalind)
    robin.presses("f-agree", question(robin).household)
    group.at(8, 1)
    assert [type(each) for each in group.tick() if each.to == linnet.chat] == [DayReady]


def test_a_student_on_a_parents_phone_is_announced_there(new, rosalind: Somebody, group: Group) -> None:
    robin = new.opens(new.link_of(rosalind, "/parent hazel Robin"))
    does(rosalind, "/student hazel Linnet shared")
    robin.presses("f-agree", question(robin).household)
    group.at(8, 1, day=1)
    assert only(PhoneForStudent, [each for each in group.tick() if each.to == robin.chat]).name == "Linnet"


def test_not_now_sends_nothing_and_the_question_can_be_had_again(
    new, rosalind: Somebody, group: Group
) -> None:
    robin, _ = household(new, rosalind)
    said = robin.presses("f-not-now", question(robin).household)
    only(ConsentLater, said)
    assert only(TutorTold, said).what == "not-now"
    group.at(8, 1, day=1)
    assert not [each for each in group.tick() if each.to == robin.chat]
    assert question(robin)


def test_a_child_may_read_who_reads_what_before_anybody_agreed(new, rosalind: Somebody, group: Group) -> None:
    robin, linnet = household(new, rosalind)
    before = stored(group.engine)
    read = only(WhoReads, linnet.types("/privacy"))
    assert (read.name, read.parents) == ("Linnet", ("Robin",)) and words_of([read])
    assert only(NotForYou, linnet.types("/paper")).why == "no-consent"
    assert stored(group.engine) == before  # and the greeting still comes on the first day
    robin.presses("f-agree", question(robin).household)
    assert only(WhoReads, linnet.types("/privacy")).name == "Linnet"


def test_agreeing_twice_is_recorded_once(new, rosalind: Somebody, group: Group) -> None:
    robin, _ = household(new, rosalind)
    home = question(robin).household
    robin.presses("f-agree", home)
    assert only(ConsentGiven, robin.presses("f-agree", home)).already
    with transaction(group.engine) as s:
        assert len(invites.consents(s, home)) == 1


def test_a_second_parent_need_not_agree_again(new, rosalind: Somebody) -> None:
    robin, _ = household(new, rosalind)
    robin.presses("f-agree", question(robin).household)
    alder = new.opens(new.link_of(rosalind, "/parent hazel Alder"))
    assert only(ConsentGiven, alder.types("/agree")).already
    assert only(Privacy, alder.types("/privacy")).agreed == ("Robin", "2026-09-14")


def test_withdrawing_is_asked_about_first(group: Group) -> None:
    tove = group.who(demo.TOVE)
    before = stored(group.engine)
    asked = only(AskWithdraw, tove.types("/withdraw"))
    tove.presses("f-stay", asked.household)
    assert stored(group.engine) == before


def test_withdrawal_stops_everything_at_once(group: Group) -> None:
    tove, wren = group.who(demo.TOVE), group.who(demo.WREN)
    group.tick()
    with transaction(group.engine) as s:
        asked_for = people.who(s, wren.chat)
        assert asked_for is not None
        message = WhoReads(to=wren.chat, key="waits", name="Wren", tutor="Ines")
        outbox.put(s, [message], group.clock.now())
    home = only(AskWithdraw, tove.types("/withdraw")).household
    with transaction(group.engine) as s:
        outbox.put(s, [WhoReads(to=wren.chat, key="waits-too", name="Wren", tutor="Ines")], group.clock.now())
        from bot.family import consent

        person = people.who(s, tove.chat)
        assert person is not None
        said = consent.withdraw(s, person, str(home), group.clock.now())
        assert outbox.count(s).get(State.WAITING, 0) == 0
    only(Withdrawn, said)
    assert only(TutorTold, said).what == "withdrawn"
    assert [type(each) for each in wren.types("42")] == [NotForYou]
    group.at(19)
    assert not [each for each in group.tick() if each.to in (tove.chat, wren.chat)]
    group.at(8, day=1)
    assert not [each for each in group.tick() if each.to in (tove.chat, wren.chat)]


def test_withdrawal_takes_the_phone_out_of_a_childs_hands(group: Group) -> None:
    anselm = group.who(demo.ANSELM)
    group.tick()
    home = only(AskWithdraw, anselm.types("/withdraw")).household
    (student, _), *_ = anselm.types("/hand")[0].students  # type: ignore[attr-defined]
    anselm.presses("speak", student)
    assert [type(each) for each in anselm.presses("f-withdraw", home)] == [NotForYou]
    anselm.presses("back")
    only(Withdrawn, anselm.presses("f-withdraw", home))
    group.at(8, day=1)
    assert not [each for each in group.tick() if each.to == anselm.chat]


def test_after_withdrawal_a_parent_may_agree_again(group: Group) -> None:
    tove = group.who(demo.TOVE)
    home = only(AskWithdraw, tove.types("/withdraw")).household
    tove.presses("f-withdraw", home)
    tove.presses("f-agree", only(ConsentAsked, tove.types("/agree")).household)
    with transaction(group.engine) as s:
        assert [given for _, _, given, _ in invites.consents(s, home)] == [True, False, True]
        assert people.household(s, home).consented


def test_a_parent_turns_timing_on_with_a_word_on_why_it_is_optional(group: Group) -> None:
    tove = group.who(demo.TOVE)
    shown = tove.types("/timing wren on")[0]
    assert "optional" in words_of([shown])
    done = tove.presses("f-do", shown.change)  # type: ignore[attr-defined]
    wren = group.who(demo.WREN).id
    with transaction(group.engine) as s:
        assert people.student(s, wren).timing
    undoes(tove, done)
    with transaction(group.engine) as s:
        assert not people.student(s, wren).timing


def test_a_parent_reads_the_digest_of_any_day(group: Group) -> None:
    tove = group.who(demo.TOVE)
    group.tick()
    group.at(19)
    group.tick()
    group.at(9, day=1)
    told = only(Digest, tove.types("/digest wren yesterday"))
    assert told.date == "2026-09-14" and told.on_demand
    assert only(Digest, tove.types("/digest wren mon")).date == "2026-09-14"


def test_a_parent_gives_a_day_off_and_takes_it_back(group: Group) -> None:
    tove = group.who(demo.TOVE)
    group.at(9)
    done = does(tove, "/off all tomorrow")
    wren = group.who(demo.WREN)
    group.at(8, 1, day=1)
    assert not [each for each in group.tick() if each.to == wren.chat]
    undoes(tove, done)
    assert only(DayReady, [each for each in group.tick() if each.to == wren.chat])


def test_a_parent_sets_the_hour_of_the_digest(group: Group) -> None:
    tove = group.who(demo.TOVE)
    group.tick()
    does(tove, "/evening 18:15")
    group.at(18, 14)
    assert not [each for each in group.tick() if isinstance(each, Digest)]
    group.at(18, 16)
    assert {each.name for each in group.tick() if isinstance(each, Digest)} == {"Wren", "Sol"}


def test_a_parent_chooses_a_language_and_is_answered_in_it(group: Group) -> None:
    tove = group.who(demo.TOVE)
    tove.types("/language español")
    with transaction(group.engine) as s:
        assert people.languages(s, [tove.chat]) == {tove.chat: "es"}
