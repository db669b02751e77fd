"""A household goes to another tutor: offered by a link, taken by a press, told to everybody whom it concerns."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy.orm import Session

from bot.happened import Pressed
from bot.messages import HandoverAsked, HandoverTold, Line, Message, NotForYou
from bot.records import handovers, people
from bot.records.handovers import Handover
from bot.records.people import Person
from bot.school.asking import Asked, child_speaks, row_number
from bot.school.changes import Did, Scene, Step, propose
from bot.school.names import take_household
from bot.vocabulary import HouseholdId, Role


def hand_over(asked: Asked) -> list[Message]:
    """Offer a household to another tutor; nothing changes until they take it."""
    home, rest = take_household(asked)
    if rest:
        raise asked.wrong("why-only-a-name")
    names = [
        each.name for each in people.students_of_household(asked.s, home.id) if each.household == home.id
    ]
    step: Step = {"op": "handover", "household": home.id}
    line = Line("line-handover", {"household": home.name, "names": names or [home.name]})
    return propose(asked, "handover", [line], steps=[step], notes=[Line("note-handover")])


def _offer(scene: Scene, step: Step) -> Did:
    home = people.household(scene.s, HouseholdId(int(str(step["household"]))))
    number, token = handovers.offer(scene.s, home.id, scene.person.id, scene.at)
    link = f"https://t.me/{scene.school.bot_name}?start={token}"
    return Did({**step, "offer": number}, link=link, name=home.name)


def _take_back(scene: Scene, step: Step) -> list[Message] | None:
    """The link ends; a household that was taken stays where it is, and can be handed back."""
    return [] if handovers.end(scene.s, int(str(step["offer"])), scene.at) else None


OFFER = (_offer, _take_back)
"""The effect of offering a household."""


def open_link(s: Session, person: Person | None, token: str, at: datetime) -> list[Message] | None:
    """Somebody opened such a link; None where the payload is of another kind or nobody linked the chat."""
    if not token.startswith(handovers.MARK) or len(token) != handovers.LETTERS or person is None:
        return None
    if child_speaks(person):
        return [NotForYou(to=person.chat, why="grown-up")]
    if Role.TUTOR not in person.roles:
        return [NotForYou(to=person.chat, why="other")]
    found = handovers.find_token(s, token, at)
    if found is None:
        return [HandoverTold(to=person.chat, why="gone")]
    home = people.household(s, found.household)
    if home.tutor == person.id:
        return [HandoverTold(to=person.chat, why="own", household=home.name)]
    if home.tutor != found.by:
        return [HandoverTold(to=person.chat, why="gone")]
    handovers.opened(s, found.id, person.id)
    return [
        HandoverAsked(
            to=person.chat,
            offer=found.id,
            household=home.name,
            students=tuple(each.name for each in people.students_of_household(s, home.id)),
            tutor=people.person_name(s, found.by),
        )
    ]


def pressed(s: Session, person: Person, what: Pressed) -> list[Message]:
    """*Take over*, or *Not now*: only for the tutor who opened the link."""
    found = handovers.find_offer(s, row_number(what.ref) or 0, what.at)
    if found is None or found.opened_by != person.id:
        return [HandoverTold(to=person.chat, why="gone")]
    home = people.household(s, found.household)
    if home.tutor != found.by or home.tutor == person.id:
        return [HandoverTold(to=person.chat, why="gone")]
    if what.verb != "t-take":
        return [HandoverTold(to=person.chat, why="left", household=home.name)]
    handovers.end(s, found.id, what.at)
    people.change_household(s, home.id, tutor_id=person.id)
    return [HandoverTold(to=person.chat, why="taken", household=home.name), *_tell(s, person, found)]


def _tell(s: Session, person: Person, found: Handover) -> list[Message]:
    """The tutor before and the parents hear of it; nobody whose phone a child is holding."""
    home = people.household(s, found.household)
    before = people.reach(s, found.by)
    told: list[Message] = []
    if before is not None and before.speaking is None:
        told.append(HandoverTold(to=before.chat, why="given", household=home.name, tutor=person.name))
    for member in people.members_of(s, home.id):
        phone = people.reach(s, member.person) if member.role is Role.PARENT else None
        if phone is not None and phone.speaking is None and phone.person not in (person.id, found.by):
            told.append(HandoverTold(to=phone.chat, why="parent", household=home.name, tutor=person.name))
    return told
