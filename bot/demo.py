"""The people of the demo: our own invented study group at Harrow Mill, linked and with consent given."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from bot.messages import Message, Welcome
from bot.records import invites, outbox, people
from bot.records.people import PersonRow
from bot.vocabulary import ChatId, PersonId, Role

ZONE = "America/New_York"
START = datetime(2026, 9, 14, 7, 58, tzinfo=ZoneInfo(ZONE)).astimezone(UTC)
"""A Monday morning, two minutes before the first push."""
CONSENT = 1
"""The version of the consent's wording that the demo's parents agreed to."""


@dataclass(frozen=True, slots=True)
class Phone:
    """One person's phone in the demo."""

    chat: ChatId
    first_name: str
    last_name: str
    about: str


INES = Phone(ChatId(1001), "Ines", "Okafor-Lund", "tutor")
TOVE = Phone(ChatId(1002), "Tove", "Bramble", "parent of Wren and Sol")
WREN = Phone(ChatId(1003), "Wren", "Bramble", "student, 12")
SOL = Phone(ChatId(1004), "Sol", "Bramble", "student, 13")
ANSELM = Phone(ChatId(1005), "Anselm", "Quill", "parent of Juniper, 12, who uses this phone")
PHONES = (WREN, TOVE, INES, SOL, ANSELM)
"""In the order in which the phone page shows them."""


def is_seeded(s: Session) -> bool:
    """Tell whether the demo's people are there already."""
    return bool(s.scalar(select(func.count()).select_from(PersonRow)))


def seed(s: Session, at: datetime) -> None:
    """Make the demo's people, link their chats and record the parents' consent. Does nothing a second time."""
    if is_seeded(s):
        return
    ines = _person(s, INES, at, tutor=True)
    bramble = people.add_household(s, "Bramble", ines, ZONE, at)
    quill = people.add_household(s, "Quill", ines, ZONE, at)
    for phone, home, role in (
        (TOVE, bramble, Role.PARENT),
        (WREN, bramble, Role.STUDENT),
        (SOL, bramble, Role.STUDENT),
        (ANSELM, quill, Role.PARENT),
    ):
        person = _person(s, phone, at)
        people.add_member(s, person, home, role, at)
        if role is Role.PARENT:
            invites.set_consent(s, home, person, CONSENT, at, given=True)
    juniper = people.add_person(s, "Juniper", at)
    people.add_member(s, juniper, quill, Role.STUDENT, at)
    outbox.put(s, _welcomes(), at)


def _welcomes() -> list[Message]:
    """What the grown-ups find on their phones; it offers them their commands."""
    ines = INES.first_name
    return [
        Welcome(to=INES.chat, key="demo/welcome/ines", name=ines, roles=("tutor",)),
        _welcome_parent(TOVE, ("Wren", "Sol")),
        _welcome_parent(ANSELM, ("Juniper",)),
    ]


def _welcome_parent(phone: Phone, students: tuple[str, ...]) -> Message:
    return Welcome(
        to=phone.chat,
        key=f"demo/welcome/{phone.first_name}",
        name=phone.first_name,
        roles=("parent",),
        tutor=INES.first_name,
        students=students,
        agreed=True,
    )


def _person(s: Session, phone: Phone, at: datetime, *, tutor: bool = False) -> PersonId:
    person = people.add_person(s, phone.first_name, at, tutor=tutor)
    people.link(s, phone.chat, person, at)
    return person
