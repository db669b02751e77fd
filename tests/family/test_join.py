from __future__ import annotations

from datetime import timedelta

import pytest
from support.group import Group, Somebody, only
from support.steering import does, stored, undoes, words_of

from bot import demo, family
from bot.messages import (
    ConsentAsked,
    InviteShown,
    LinkLeft,
    LinkUsed,
    NotLinked,
    PeopleShown,
    PhoneMoved,
    StudentWaits,
    TakenBack,
    TutorTold,
    Welcome,
    WrongCommand,
)
from bot.records import people
from bot.records.base import transaction
from bot.vocabulary import Role


def test_the_first_tutor_comes_by_a_link_from_the_command_line(new, group: Group) -> None:
    phone = new.phone()
    with transaction(group.engine) as s:
        token = family.first_tutor(s, "Rosalind", group.clock.now())
    shown = only(InviteShown, phone.types(f"/start {token}"))
    assert (shown.name, shown.role) == ("Rosalind", "tutor")
    welcome = only(Welcome, phone.presses("f-yes", token))
    assert welcome.roles == ("tutor",)
    assert "needs" in dict(words_commands(welcome))


def words_commands(message: object) -> tuple[tuple[str, str], ...]:
    from bot.chat.render import render

    return render(message, "en").commands or ()  # type: ignore[arg-type]


def test_opening_a_link_changes_nothing_before_yes(new, rosalind: Somebody, group: Group) -> None:
    token = new.link_of(rosalind, "/parent hazel Robin")
    before = stored(group.engine)
    phone = new.phone()
    only(InviteShown, phone.types(f"/start {token}"))
    only(LinkLeft, phone.presses("f-no", ""))
    assert stored(group.engine) == before
    only(InviteShown, phone.types(f"/start {token}"))


def test_a_parent_who_joins_is_asked_for_consent_and_the_tutor_is_told(new, rosalind: Somebody) -> None:
    token = new.link_of(rosalind, "/parent hazel Robin")
    does(rosalind, "/student hazel Linnet shared")
    phone = new.phone()
    phone.types(f"/start {token}")
    said = phone.presses("f-yes", token)
    assert [type(each) for each in said] == [Welcome, ConsentAsked, TutorTold]
    told = only(TutorTold, said)
    assert told.to == rosalind.chat and told.what == "linked"
    words_of(said)


def test_a_link_works_once(new, rosalind: Somebody) -> None:
    token = new.link_of(rosalind, "/parent hazel Robin")
    new.opens(token)
    assert only(LinkUsed, new.phone().types(f"/start {token}")).why == "over"


def test_a_link_ends_after_seven_days(new, rosalind: Somebody, group: Group) -> None:
    token = new.link_of(rosalind, "/parent hazel Robin")
    group.clock.at += timedelta(days=7, seconds=1)
    phone = new.phone()
    assert only(LinkUsed, phone.types(f"/start {token}")).why == "over"
    assert only(LinkUsed, phone.presses("f-yes", token)).why == "over"


def test_a_new_link_ends_the_older_one(new, rosalind: Somebody) -> None:
    older = new.link_of(rosalind, "/parent hazel Robin")
    newer = new.link_of(rosalind, "/invite robin")
    assert only(LinkUsed, new.phone().types(f"/start {older}")).why == "over"
    new.opens(newer)


@pytest.mark.parametrize("token", ["x", "", "0" * 64, "'; drop table person; --", "ñ" * 30, "a" * 3000])
def test_a_token_that_was_never_made_opens_nothing(new, group: Group, token: str) -> None:
    before = stored(group.engine)
    phone = new.phone()
    said = phone.types(f"/start {token}") + phone.presses("f-yes", token)
    assert {type(each) for each in said} <= {LinkUsed, NotLinked}
    assert stored(group.engine) == before


def test_a_chat_that_belongs_to_somebody_keeps_its_owner(new, rosalind: Somebody, group: Group) -> None:
    """A parent who opens a child's link on their own phone would lose theirs."""
    robin = new.opens(new.link_of(rosalind, "/parent hazel Robin"))
    token = new.link_of(rosalind, "/student hazel Linnet own")
    before = stored(group.engine)
    assert only(LinkUsed, robin.types(f"/start {token}")).why == "other"
    assert only(LinkUsed, robin.presses("f-yes", token)).why == "other"
    assert stored(group.engine) == before


def test_a_change_of_phone_lets_the_old_one_go(new, rosalind: Somebody, group: Group) -> None:
    robin = new.opens(new.link_of(rosalind, "/parent hazel Robin"))
    token = new.link_of(rosalind, "/invite robin")
    phone = new.phone()
    phone.types(f"/start {token}")
    moved = only(PhoneMoved, phone.presses("f-yes", token))
    assert moved.to == robin.chat and moved.why == "moved"
    only(NotLinked, robin.types("/today"))
    assert phone.types("/privacy")


def test_the_tutor_can_undo_a_link(new, rosalind: Somebody) -> None:
    token = new.link_of(rosalind, "/parent hazel Robin")
    phone = new.phone()
    phone.types(f"/start {token}")
    told = only(TutorTold, phone.presses("f-yes", token))
    shown = rosalind.presses("t-run", f"unlink @{told.person}")
    said = rosalind.presses("t-do", shown[0].change)  # type: ignore[attr-defined]
    assert only(PhoneMoved, said).to == phone.chat
    only(NotLinked, phone.types("/today"))


def test_a_student_with_a_chat_of_their_own_waits_for_a_parent(new, rosalind: Somebody) -> None:
    token = new.link_of(rosalind, "/student hazel Linnet own")
    phone = new.phone()
    phone.types(f"/start {token}")
    said = phone.presses("f-yes", token)
    only(StudentWaits, said)
    words_of(said)


def test_where_a_student_works_is_chosen_by_the_tutor_with_a_word_on_age_rules(
    new, rosalind: Somebody
) -> None:
    shown = rosalind.types("/student hazel Linnet")[0]
    text = words_of([shown])
    assert "age rules" in text and "No age is kept" in text
    (_, shared), (own, other) = shown.ways  # type: ignore[attr-defined]
    assert (shared, other) == ("button-parents-phone", "button-own-phone")
    assert rosalind.presses("t-do", own)[0].link  # type: ignore[attr-defined]


def test_nobody_is_made_twice_by_pressing_both_ways(new, rosalind: Somebody) -> None:
    shown = rosalind.types("/student hazel Linnet")[0]
    rosalind.presses("t-do", shown.change)  # type: ignore[attr-defined]
    rosalind.presses("t-do", shown.ways[1][0])  # type: ignore[attr-defined]
    (home,) = only(PeopleShown, rosalind.types("/people")).households
    assert [row.name for row in home[4]] == ["Linnet"]


def test_a_parent_who_is_the_tutor_needs_no_link(new, rosalind: Somebody, group: Group) -> None:
    does(rosalind, "/parent hazel me")
    with transaction(group.engine) as s:
        person = people.who(s, rosalind.chat)
    assert person is not None and person.roles == {Role.TUTOR, Role.PARENT}
    assert only(ConsentAsked, rosalind.types("/agree")).household


def test_somebody_who_was_added_by_mistake_is_taken_out_again(new, rosalind: Somebody) -> None:
    done = does(rosalind, "/parent hazel Robin")
    token = done[0].link.partition("?start=")[2]  # type: ignore[attr-defined]
    only(TakenBack, undoes(rosalind, done))
    assert only(LinkUsed, new.phone().types(f"/start {token}")).why == "over"
    (home,) = only(PeopleShown, rosalind.types("/people")).households
    assert home[4] == ()


def test_a_household_with_people_stays_when_its_making_is_undone(new, rosalind: Somebody) -> None:
    done = does(rosalind, "/household Alder")
    does(rosalind, "/parent alder Robin")
    taken = only(TakenBack, undoes(rosalind, done))
    assert taken.kept


def test_two_of_one_name_in_a_household_need_a_nickname(new, rosalind: Somebody) -> None:
    does(rosalind, "/parent hazel Robin")
    assert only(WrongCommand, rosalind.types("/parent hazel robin")).why.key == "why-same-name"


def test_a_child_with_two_homes_is_read_about_in_both(new, rosalind: Somebody, group: Group) -> None:
    does(rosalind, "/student hazel Linnet shared")
    with transaction(group.engine) as s:
        linnet = people.students_of_tutor(s, people.who(s, rosalind.chat).id)[0].id  # type: ignore[union-attr]
    does(rosalind, "/household Alder")
    does(rosalind, f"/student alder #{linnet}")
    robin = new.opens(new.link_of(rosalind, "/parent alder Robin"))
    with transaction(group.engine) as s:
        mine = people.students_of_parent(s, people.who(s, robin.chat).id)  # type: ignore[union-attr]
    assert [each.id for each in mine] == [linnet]


def test_one_who_takes_over_has_the_households_and_the_one_before_has_none(new, group: Group) -> None:
    with transaction(group.engine) as s:
        token = family.first_tutor(s, "Marek", group.clock.now(), instead_of="ines")
    marek = new.opens(token)
    assert {name for name, *_ in only(PeopleShown, marek.types("/people")).households} == {"Bramble", "Quill"}
    refused = only(WrongCommand, group.who(demo.INES).types("/people"))
    assert refused.why.key == "why-no-households"


def test_a_tutor_of_that_name_gets_a_link_for_another_phone(new, group: Group) -> None:
    with transaction(group.engine) as s:
        token = family.first_tutor(s, "ines", group.clock.now())
    phone = new.opens(token)
    assert only(PeopleShown, phone.types("/people"))
    only(NotLinked, group.who(demo.INES).types("/people"))


def test_a_tutor_who_takes_over_from_nobody_is_told(group: Group) -> None:
    with transaction(group.engine) as s, pytest.raises(LookupError):
        family.first_tutor(s, "Marek", group.clock.now(), instead_of="Nobody")


def test_a_chat_that_nobody_linked_gets_one_line_and_changes_nothing(new, group: Group) -> None:
    before = stored(group.engine)
    phone = new.phone()
    for said in (
        phone.types("hello"),
        phone.types("/today"),
        phone.types("/start"),
        phone.presses("start", 1),
    ):
        assert [type(each) for each in said] == [NotLinked]
    assert stored(group.engine) == before
