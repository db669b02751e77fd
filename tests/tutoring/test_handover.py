"""A household goes to another tutor only by the link, only once, and everybody whom it concerns is told."""

from __future__ import annotations

import pytest
from support.group import Group, Somebody, only
from support.steering import does, stored, undoes, words_of

from bot import demo
from bot.messages import Changed, HandoverAsked, HandoverTold, NotForYou, NotLinked, Preview, WrongCommand
from bot.records import people
from bot.records.base import transaction
from bot.vocabulary import ChatId

OTHER = ChatId(7002)
THIRD = ChatId(7003)


@pytest.fixture
def corin(group: Group) -> Somebody:
    """Another tutor, without households; and a third."""
    with transaction(group.engine) as s:
        for name, chat in (("Corin", OTHER), ("Rosalind", THIRD)):
            people.link(s, chat, people.add_person(s, name, group.clock.now(), tutor=True), group.clock.now())
    return Somebody(group, OTHER)


def payload(said: list) -> str:
    link = only(Changed, said).link
    assert link.startswith("https://t.me/evensum_bot?start=h-")
    return link.partition("start=")[2]


def tutor_of(group: Group) -> str:
    with transaction(group.engine) as s:
        home = next(
            each
            for tutor, _ in people.tutors(s)
            for each in people.households_of_tutor(s, tutor)
            if each.name == "Bramble"
        )
        return people.person_name(s, home.tutor)


def test_a_household_goes_over_with_the_press_and_all_are_told(
    group: Group, ines: Somebody, corin: Somebody
) -> None:
    token = payload(does(ines, "/handover bramble"))
    assert tutor_of(group) == "Ines"
    asked = only(HandoverAsked, corin.types(f"/start {token}"))
    assert asked.students == ("Sol", "Wren") and words_of([asked]) and words_of([asked], "es")
    only(HandoverTold, corin.presses("t-not-now", asked.offer))
    assert tutor_of(group) == "Ines"

    said = corin.presses("t-take", asked.offer)

    assert tutor_of(group) == "Corin"
    assert {each.to: each.why for each in said} == {  # type: ignore[attr-defined]
        OTHER: "taken",
        demo.INES.chat: "given",
        demo.TOVE.chat: "parent",
    }
    assert words_of(said) and words_of(said, "es")
    only(WrongCommand, ines.types("/plan wren zzz"))
    assert "Wren" not in words_of(ines.types("/needs")) + words_of(ines.types("/today"))
    assert "Wren" in words_of(corin.types("/today"))
    only(Preview, corin.types("/minutes wren 30"))


def test_the_link_works_once_and_not_after_it_was_taken_back_or_too_late(
    group: Group, ines: Somebody, corin: Somebody
) -> None:
    done = does(ines, "/handover bramble")
    undoes(ines, done)
    assert only(HandoverTold, corin.types(f"/start {payload(done)}")).why == "gone"
    done = does(ines, "/handover bramble")
    asked = only(HandoverAsked, corin.types(f"/start {payload(done)}"))
    corin.presses("t-take", asked.offer)
    before = stored(group.engine)
    assert only(HandoverTold, corin.presses("t-take", asked.offer)).why == "gone"
    assert only(HandoverTold, Somebody(group, THIRD).types(f"/start {payload(done)}")).why == "gone"
    assert stored(group.engine) == before
    late = payload(does(corin, "/handover bramble"))
    group.at(8, day=8)
    assert only(HandoverTold, ines.types(f"/start {late}")).why == "gone"


def test_nobody_takes_a_household_without_the_link(
    group: Group, ines: Somebody, tove: Somebody, wren: Somebody, corin: Somebody
) -> None:
    token = payload(does(ines, "/handover bramble"))
    before = stored(group.engine)
    only(HandoverTold, Somebody(group, THIRD).presses("t-take", 1))
    only(NotForYou, tove.types(f"/start {token}"))
    only(NotForYou, wren.presses("t-take", 1))
    assert not isinstance(wren.types(f"/start {token}")[0], HandoverAsked)
    assert not isinstance(Somebody(group, ChatId(7999)).types(f"/start {token}")[0], HandoverAsked)
    only(NotLinked, Somebody(group, ChatId(7999)).presses("t-take", 1))
    assert only(HandoverTold, ines.types(f"/start {token}")).why == "own"
    only(WrongCommand, corin.types("/handover bramble"))
    assert stored(group.engine) == before
    # Somebody else opened it since: only the last one may take it.
    asked = only(HandoverAsked, corin.types(f"/start {token}"))
    only(HandoverAsked, Somebody(group, THIRD).types(f"/start {token}"))
    assert only(HandoverTold, corin.presses("t-take", asked.offer)).why == "gone"
    assert tutor_of(group) == "Ines"
