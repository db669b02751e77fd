"""What households, people and chats are: the tables, and the frozen data that use cases see."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import BigInteger, ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.vocabulary import ChatId, HouseholdId, PersonId, Role, StudentId

EARLY = datetime.fromisoformat("2000-01-01T00:00:00+00:00")
"""A `next_look` that is always due."""


class HouseholdRow(Base):
    """A family. It belongs to one tutor; `consented` follows the newest row of consent."""

    __tablename__ = "household"

    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    tutor_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    zone: Mapped[str]
    digest_at: Mapped[int]
    country: Mapped[str] = mapped_column(default="")
    consented: Mapped[bool] = mapped_column(default=False)
    made_at: Mapped[datetime] = mapped_column(UtcDateTime)


class PersonRow(Base):
    """Somebody we know by a first name or nickname, and nothing more."""

    __tablename__ = "person"

    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    language: Mapped[str] = mapped_column(default="en")
    roles: Mapped[str] = mapped_column(default="")
    """All roles held; kept in step with memberships by this module, so that a reply needs one query."""
    made_at: Mapped[datetime] = mapped_column(UtcDateTime)


class MembershipRow(Base):
    """A person's role in a household. A child with two homes is a student in both."""

    __tablename__ = "membership"
    __table_args__ = (UniqueConstraint("person_id", "household_id", "role"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    household_id: Mapped[int] = mapped_column(ForeignKey("household.id"), index=True)
    role: Mapped[str]


class StudentRow(Base):
    """What the day needs to know of a student. Minutes of the clock count from midnight, household time."""

    __tablename__ = "student"

    id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    household_id: Mapped[int] = mapped_column(ForeignKey("household.id"), index=True)
    push_at: Mapped[int] = mapped_column(default=8 * 60)
    week: Mapped[str] = mapped_column(default="1111200")
    """Monday to Sunday: 1 a school day, 2 the light one, 0 free."""
    minutes: Mapped[int] = mapped_column(default=45)
    review_items: Mapped[int | None]
    """Set by the tutor; absent: the planner moves the size."""
    timing: Mapped[bool] = mapped_column(default=False)
    typing_seconds: Mapped[float | None]
    """Seconds to copy ten numbers, measured once."""
    lesson: Mapped[int] = mapped_column(default=1)
    """The number of the lesson that comes next; 0 is before the first."""
    sitting: Mapped[int] = mapped_column(default=1)
    first_day: Mapped[date | None]
    paused: Mapped[bool] = mapped_column(default=False)
    told: Mapped[bool] = mapped_column(default=False)
    """Has been told who reads what."""
    next_look: Mapped[datetime] = mapped_column(UtcDateTime, index=True)
    """When the clock has to look again; only narrows its query. Whatever changes hour or day rewrites it."""


class ChatRow(Base):
    """A chat that somebody linked, and which student is speaking there just now."""

    __tablename__ = "chat"

    id: Mapped[int] = mapped_column(BigInteger, primary_key=True, autoincrement=False)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    speaking_id: Mapped[int | None] = mapped_column(ForeignKey("student.id"))
    spoke_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    linked_at: Mapped[datetime] = mapped_column(UtcDateTime)
    blocked: Mapped[bool] = mapped_column(default=False)


@dataclass(frozen=True, slots=True)
class Household:
    """A family as the use cases see it. `digest_at` is minutes after midnight in `zone`."""

    id: HouseholdId
    name: str
    tutor: PersonId
    zone: str
    digest_at: int
    country: str
    consented: bool


@dataclass(frozen=True, slots=True)
class Student:
    """A student with what the day needs of the household."""

    id: StudentId
    name: str
    language: str
    household: HouseholdId
    tutor: PersonId
    zone: str
    digest_at: int
    country: str
    consented: bool
    push_at: int
    week: str
    minutes: int
    review_items: int | None
    timing: bool
    typing_seconds: float | None
    lesson: int
    sitting: int
    first_day: date | None
    paused: bool
    told: bool


@dataclass(frozen=True, slots=True)
class Person:
    """Who is at a chat. `speaking` is the student whose words count there now, if any."""

    id: PersonId
    name: str
    language: str
    chat: ChatId
    roles: frozenset[Role]
    speaking: StudentId | None
    shared: bool
    """The chat is a grown-up's, handed over to `speaking`."""


@dataclass(frozen=True, slots=True)
class Reachable:
    """A person's chat, for messages to them. `speaking`: the student who holds the phone just now."""

    person: PersonId
    name: str
    language: str
    chat: ChatId
    speaking: StudentId | None
    blocked: bool


@dataclass(frozen=True, slots=True)
class Member:
    """Somebody of a household, and whether a chat of theirs is linked."""

    person: PersonId
    name: str
    role: Role
    linked: bool
