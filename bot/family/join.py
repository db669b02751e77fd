"""How people get in: a single-use link shows for whom it is, and links only after *Yes*."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy.orm import Session

from bot.family import consent
from bot.happened import Pressed
from bot.messages import (
    InviteShown,
    LinkLeft,
    LinkUsed,
    Message,
    PhoneMoved,
    StudentWaits,
    Welcome,
)
from bot.records import invites, outbox, people
from bot.records.invites import Invite
from bot.school.school import School
from bot.vocabulary import ChatId, HouseholdId, PersonId, Role, StudentId

FIRST = (Role.TUTOR, Role.PARENT, Role.GRADER, Role.STUDENT)
"""What a person is called who is several."""


def first_tutor(s: Session, name: str, at: datetime, *, instead_of: str | None = None) -> str:
    """Make the link of a tutor, and the tutor where there is none of that name; return its token.

    For a tutor who exists it is a link for another phone. `instead_of`: the tutor whose households this one
    takes over, at once. Raises LookupError where there is no tutor of that name, ValueError for an empty name.
    """
    if not name.strip():
        raise ValueError("a tutor needs a name")
    known = people.tutors(s)
    tutor = _tutor_named(known, name)
    if tutor is None:
        tutor = people.add_person(s, name, at, tutor=True)
    if instead_of is not None:
        before = _tutor_named(known, instead_of)
        if before is None:
            raise LookupError(instead_of)
        for home in people.households_of_tutor(s, before):
            people.change_household(s, home.id, tutor_id=tutor)
    return invites.make_invite(s, tutor, None, at)


def _tutor_named(known: list[tuple[PersonId, str]], name: str) -> PersonId | None:
    wanted = name.strip()[:40].casefold()
    return next((person for person, called in known if called.casefold() == wanted), None)


def start_link(s: Session, school: School, chat: ChatId, token: str, at: datetime) -> list[Message]:
    """A link was opened: say for whom it is, and ask. Nothing changes."""
    invite = invites.find_invite(s, token[:64], at)
    if invite is None:
        return [LinkUsed(to=chat)]
    taken = _taken(s, chat, invite)
    if taken is not None:
        return [taken]
    role, home = _as_what(s, invite.person)
    return [
        InviteShown(
            to=chat,
            token=token,
            name=people.person_name(s, invite.person),
            role=role,
            household=people.household(s, home).name if home else "",
            by=people.person_name(s, invite.by) if invite.by else "",
        )
    ]


def _taken(s: Session, chat: ChatId, invite: Invite) -> Message | None:
    """A chat that belongs to somebody else keeps its owner, or a parent would lose theirs to a child's link."""
    owner = people.who(s, chat)
    if owner is None:
        return None
    if owner.id == invite.person:
        return LinkUsed(to=chat, why="same", name=owner.name)
    return LinkUsed(to=chat, why="other", name=owner.name)


def _as_what(s: Session, person: PersonId) -> tuple[str, HouseholdId | None]:
    """What somebody is called, and the household in which they are that."""
    roles = people.roles_of(s, person)
    role = next((each for each in FIRST if each in roles), Role.STUDENT)
    homes = [home for home, held in people.memberships_of(s, person) if held is role]
    return role.value, homes[0] if homes else None


def take_stranger_press(s: Session, school: School, what: Pressed) -> list[Message] | None:
    """*Yes* or *No* under a link, in a chat that nobody linked yet; None for another button.

    The button carries the token, which only somebody who was sent the link has.
    """
    if what.verb == "f-no":
        return [LinkLeft(to=what.chat)]
    if what.verb != "f-yes":
        return None
    invite = invites.find_invite(s, what.ref, what.at)
    if invite is None:
        return [LinkUsed(to=what.chat)]
    taken = _taken(s, what.chat, invite)
    if taken is not None:
        return [taken]
    if not invites.use_invite(s, invite.id, what.chat, what.at):
        return [LinkUsed(to=what.chat)]
    return _linked(s, what.chat, invite, what.at)


def _linked(s: Session, chat: ChatId, invite: Invite, at: datetime) -> list[Message]:
    said: list[Message] = []
    before = people.reach(s, invite.person)
    if before is not None and before.chat != chat:
        outbox.withdraw(s, before.chat)
        said.append(PhoneMoved(to=before.chat, name=before.name))
    people.link(s, chat, invite.person, at)
    person = people.who(s, chat)
    assert person is not None
    said = [*_greet(s, chat, invite.person), *said]
    role, home = _as_what(s, invite.person)
    if home is not None:
        of = people.household(s, home)
        if of.tutor != invite.person:
            said += consent.tell_tutor(
                s, of.tutor, "linked", person.name, of.name, role=role, person=invite.person
            )
    return said


def _greet(s: Session, chat: ChatId, person_id: PersonId) -> list[Message]:
    """The first words: to a parent with the question of consent, to a student only once that is given."""
    person = people.who(s, chat)
    assert person is not None
    if Role.STUDENT in person.roles:
        student = people.student(s, StudentId(person_id))
        people.change_student(s, student.id, next_look=people.EARLY)
        if not student.consented:
            return [StudentWaits(to=chat, name=person.name)]
        told = consent.tell_student(s, student)
        return told or [Welcome(to=chat, name=person.name, roles=("student",))]
    homes = people.households_of(s, person_id, Role.PARENT)
    students = people.students_of_parent(s, person_id)
    if person.roles == {Role.GRADER}:
        students = [
            each
            for home in people.households_of(s, person_id, Role.GRADER)
            for each in people.students_of_household(s, home.id)
        ]
    welcome = Welcome(
        to=chat,
        name=person.name,
        roles=tuple(sorted(role.value for role in person.roles)),
        tutor=people.person_name(s, homes[0].tutor) if homes else "",
        students=tuple(each.name for each in students),
        agreed=bool(homes) and all(home.consented for home in homes),
    )
    return [welcome, *(consent.ask(s, person, home) for home in homes if not home.consented)]
