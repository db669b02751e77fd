"""Households, students, parents and tutors, and the chats through which they speak."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import (
    BigInteger,
    ForeignKey,
    UniqueConstraint,
    bindparam,
    delete,
    func,
    insert,
    or_,
    select,
    update,
)
from sqlalchemy.orm import Mapped, Session, aliased, mapped_column

from bot.records.base import Base, UtcDateTime, ask, change
from bot.vocabulary import ChatId, HouseholdId, PersonId, Role, StudentId


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


STUDENT_COLUMNS = (
    StudentRow.id,
    PersonRow.name,
    PersonRow.language,
    StudentRow.household_id,
    HouseholdRow.tutor_id,
    HouseholdRow.zone,
    HouseholdRow.digest_at,
    HouseholdRow.country,
    HouseholdRow.consented,
    StudentRow.push_at,
    StudentRow.week,
    StudentRow.minutes,
    StudentRow.review_items,
    StudentRow.timing,
    StudentRow.typing_seconds,
    StudentRow.lesson,
    StudentRow.sitting,
    StudentRow.first_day,
    StudentRow.paused,
    StudentRow.told,
)

_students = (
    select(*STUDENT_COLUMNS)
    .join(PersonRow, PersonRow.id == StudentRow.id)
    .join(HouseholdRow, HouseholdRow.id == StudentRow.household_id)
)
_households = select(
    HouseholdRow.id,
    HouseholdRow.name,
    HouseholdRow.tutor_id,
    HouseholdRow.zone,
    HouseholdRow.digest_at,
    HouseholdRow.country,
    HouseholdRow.consented,
)


_who = (
    select(PersonRow.id, PersonRow.name, PersonRow.language, PersonRow.roles, ChatRow.speaking_id)
    .join(ChatRow, ChatRow.person_id == PersonRow.id)
    .where(ChatRow.id == bindparam("chat"))
)
_student = _students.where(StudentRow.id == bindparam("student"))


def who(s: Session, chat: ChatId) -> Person | None:
    """Return who is at a chat, or None where nobody linked it."""
    row = ask(s, _who, chat=chat).one_or_none()
    if row is None:
        return None
    roles = frozenset(Role(role) for role in row.roles.split(",") if role)
    own = Role.STUDENT in roles and row.speaking_id is None
    speaking = row.id if own else row.speaking_id
    return Person(
        PersonId(row.id), row.name, row.language, chat, roles, speaking and StudentId(speaking), not own
    )


def student(s: Session, student_id: StudentId) -> Student:
    """Return one student. Raises NoResultFound for an id that is none."""
    return Student(*ask(s, _student, student=student_id).one())


def find_student(s: Session, student_id: int) -> Student | None:
    """Return one student, or None."""
    row = ask(s, _student, student=student_id).one_or_none()
    return Student(*row) if row else None


def household(s: Session, household_id: HouseholdId) -> Household:
    """Return one household. Raises NoResultFound for an id that is none."""
    return Household(*s.execute(_households.where(HouseholdRow.id == household_id)).one())


def households_of_tutor(s: Session, tutor: PersonId) -> list[Household]:
    """Return a tutor's households by name."""
    rows = s.execute(_households.where(HouseholdRow.tutor_id == tutor).order_by(HouseholdRow.name))
    return [Household(*row) for row in rows]


def households_of(s: Session, person: PersonId, role: Role) -> list[Household]:
    """Return the households in which a person has a role."""
    rows = s.execute(
        _households.join(MembershipRow, MembershipRow.household_id == HouseholdRow.id)
        .where(MembershipRow.person_id == person, MembershipRow.role == role)
        .order_by(HouseholdRow.name)
    )
    return [Household(*row) for row in rows]


def person_name(s: Session, person: PersonId) -> str:
    """Return somebody's first name or nickname."""
    return s.scalar(select(PersonRow.name).where(PersonRow.id == person)) or ""


def students_of_household(s: Session, household_id: HouseholdId) -> list[Student]:
    """Return the students at home there, by name; also those whose first home is another."""
    rows = s.execute(
        _students.join(MembershipRow, MembershipRow.person_id == StudentRow.id)
        .where(MembershipRow.household_id == household_id, MembershipRow.role == Role.STUDENT)
        .order_by(PersonRow.name)
    )
    return [Student(*row) for row in rows]


def students_of_tutor(s: Session, tutor: PersonId) -> list[Student]:
    """Return all students of a tutor by household and name."""
    rows = s.execute(
        _students.where(HouseholdRow.tutor_id == tutor).order_by(HouseholdRow.name, PersonRow.name)
    )
    return [Student(*row) for row in rows]


def students_of_parent(s: Session, parent: PersonId) -> list[Student]:
    """Return the students of all households in which somebody is a parent, by name."""
    mine = select(MembershipRow.household_id).where(
        MembershipRow.person_id == parent, MembershipRow.role == Role.PARENT
    )
    theirs = select(MembershipRow.person_id).where(
        MembershipRow.household_id.in_(mine), MembershipRow.role == Role.STUDENT
    )
    rows = s.execute(_students.where(StudentRow.id.in_(theirs)).order_by(PersonRow.name))
    return [Student(*row) for row in rows]


def is_grown_up_of(s: Session, person: PersonId, student_id: StudentId) -> bool:
    """Tell whether somebody is a parent or the tutor of a student."""
    known = find_student(s, student_id)
    if known is None:
        return False
    return known.tutor == person or any(each.id == student_id for each in students_of_parent(s, person))


@dataclass(frozen=True, slots=True)
class Reachable:
    """A person's chat, for messages to them. `speaking`: the student who holds the phone just now."""

    person: PersonId
    name: str
    language: str
    chat: ChatId
    speaking: StudentId | None
    blocked: bool


_reachable = select(
    PersonRow.id, PersonRow.name, PersonRow.language, ChatRow.id, ChatRow.speaking_id, ChatRow.blocked
).join(ChatRow, ChatRow.person_id == PersonRow.id)


def parents_of(s: Session, student_id: StudentId) -> list[Reachable]:
    """Return the linked chats of all parents of a student, in the order in which they came."""
    homes = select(MembershipRow.household_id).where(
        MembershipRow.person_id == student_id, MembershipRow.role == Role.STUDENT
    )
    parents = select(MembershipRow.person_id).where(
        MembershipRow.household_id.in_(homes), MembershipRow.role == Role.PARENT
    )
    rows = s.execute(_reachable.where(PersonRow.id.in_(parents)).order_by(PersonRow.id))
    return [Reachable(*row) for row in rows]


def reach(s: Session, person: PersonId | StudentId) -> Reachable | None:
    """Return a person's own chat, or None where they have none."""
    row = s.execute(_reachable.where(PersonRow.id == person)).first()
    return Reachable(*row) if row else None


def chat_of_student(s: Session, student_id: StudentId) -> tuple[ChatId, bool] | None:
    """Return where a student is met, and whether that is a grown-up's phone; None where there is no chat."""
    own = reach(s, student_id)
    if own is not None:
        return own.chat, False
    for parent in parents_of(s, student_id):
        if not parent.blocked:
            return parent.chat, True
    return None


def chats_around(s: Session, student_id: StudentId) -> list[ChatId]:
    """Return the chats in which a student's day is spoken of: their own and their parents'."""
    own = reach(s, student_id)
    return [each.chat for each in ([own] if own else []) + parents_of(s, student_id)]


def shares_phone(s: Session, chat: ChatId) -> list[Student]:
    """Return the students without a chat of their own who speak on a parent's phone."""
    row = s.execute(select(ChatRow.person_id).where(ChatRow.id == chat)).one_or_none()
    if row is None:
        return []
    return [each for each in students_of_parent(s, PersonId(row.person_id)) if reach(s, each.id) is None]


def speak(s: Session, chat: ChatId, student_id: StudentId | None, at: datetime) -> None:
    """Note who is speaking at a chat; None gives the phone back."""
    s.execute(update(ChatRow).where(ChatRow.id == chat).values(speaking_id=student_id, spoke_at=at))


def phone_held_by(s: Session, student_id: StudentId) -> tuple[ChatId, PersonId, datetime | None] | None:
    """Return the grown-up's chat on which a student is speaking, whose it is, and when they last spoke."""
    row = s.execute(
        select(ChatRow.id, ChatRow.person_id, ChatRow.spoke_at).where(ChatRow.speaking_id == student_id)
    ).first()
    return None if row is None else (ChatId(row.id), PersonId(row.person_id), row.spoke_at)


def block(s: Session, chat: ChatId, *, blocked: bool) -> None:
    """Note that a person blocked the bot, or took the block away."""
    s.execute(update(ChatRow).where(ChatRow.id == chat).values(blocked=blocked))


def change_student(s: Session, student_id: StudentId, **values: object) -> None:
    """Change columns of a student; the clock then looks again at once, since the hour may have moved."""
    known = set(StudentRow.__table__.columns.keys())
    if unknown := set(values) - known:
        raise KeyError(f"a student has no {', '.join(sorted(unknown))}")
    if not values.keys() <= {"lesson", "sitting", "told", "typing_seconds", "next_look"}:
        values.setdefault("next_look", EARLY)
    change(s, StudentRow, student_id, values)


def change_household(s: Session, household_id: HouseholdId, **values: object) -> None:
    """Change columns of a household and let the clock look again at its students."""
    s.execute(update(HouseholdRow).where(HouseholdRow.id == household_id).values(**values))
    s.execute(update(StudentRow).where(StudentRow.household_id == household_id).values(next_look=EARLY))


def add_person(s: Session, name: str, at: datetime, language: str = "en", *, tutor: bool = False) -> PersonId:
    """Add somebody. Names are stored as given, at most 40 characters."""
    roles = Role.TUTOR.value if tutor else ""
    made = s.execute(
        insert(PersonRow)
        .values(name=name.strip()[:40], language=language, roles=roles, made_at=at)
        .returning(PersonRow.id)
    )
    return PersonId(made.scalar_one())


def add_household(
    s: Session, name: str, tutor: PersonId, zone: str, at: datetime, digest_at: int = 19 * 60
) -> HouseholdId:
    """Add a family of a tutor, without members or consent yet."""
    made = s.execute(
        insert(HouseholdRow)
        .values(name=name.strip()[:40], tutor_id=tutor, zone=zone, digest_at=digest_at, made_at=at)
        .returning(HouseholdRow.id)
    )
    return HouseholdId(made.scalar_one())


def add_member(s: Session, person: PersonId, household_id: HouseholdId, role: Role, at: datetime) -> None:
    """Give a person a role in a household; a student's first home also makes the student."""
    s.execute(insert(MembershipRow).values(person_id=person, household_id=household_id, role=role))
    _renew_roles(s, person)
    if role is Role.STUDENT and s.get(StudentRow, person) is None:
        s.execute(insert(StudentRow).values(id=person, household_id=household_id, next_look=at))


def remove_member(s: Session, person: PersonId, household_id: HouseholdId, role: Role) -> None:
    """Take a role away; what the person did stays."""
    s.execute(
        delete(MembershipRow).where(
            MembershipRow.person_id == person,
            MembershipRow.household_id == household_id,
            MembershipRow.role == role,
        )
    )
    _renew_roles(s, person)


def _renew_roles(s: Session, person: PersonId) -> None:
    held = set(s.scalars(select(MembershipRow.role).where(MembershipRow.person_id == person)))
    before = s.scalar(select(PersonRow.roles).where(PersonRow.id == person)) or ""
    if Role.TUTOR in before.split(","):
        held.add(Role.TUTOR.value)
    s.execute(update(PersonRow).where(PersonRow.id == person).values(roles=",".join(sorted(held))))


def link(s: Session, chat: ChatId, person: PersonId, at: datetime) -> None:
    """Link a chat to a person; a chat they had before is let go (a change of phone)."""
    s.execute(delete(ChatRow).where(or_(ChatRow.person_id == person, ChatRow.id == chat)))
    s.execute(insert(ChatRow).values(id=chat, person_id=person, linked_at=at))


def unlink(s: Session, person: PersonId) -> None:
    """Let a person's chat go."""
    s.execute(delete(ChatRow).where(ChatRow.person_id == person))


@dataclass(frozen=True, slots=True)
class Member:
    """Somebody of a household, and whether a chat of theirs is linked."""

    person: PersonId
    name: str
    role: Role
    linked: bool


def members_of(s: Session, household_id: HouseholdId) -> list[Member]:
    """Return the people of a household, parents first, by name."""
    rows = s.execute(
        select(PersonRow.id, PersonRow.name, MembershipRow.role, ChatRow.id.is_not(None))
        .join(MembershipRow, MembershipRow.person_id == PersonRow.id)
        .outerjoin(ChatRow, ChatRow.person_id == PersonRow.id)
        .where(MembershipRow.household_id == household_id)
        .order_by(MembershipRow.role, PersonRow.name)
    )
    return [Member(PersonId(row[0]), row[1], Role(row[2]), bool(row[3])) for row in rows]


def memberships_of(s: Session, person: PersonId) -> list[tuple[HouseholdId, Role]]:
    """Return the households of a person and the role in each."""
    rows = s.execute(
        select(MembershipRow.household_id, MembershipRow.role)
        .where(MembershipRow.person_id == person)
        .order_by(MembershipRow.id)
    )
    return [(HouseholdId(row[0]), Role(row[1])) for row in rows]


def roles_of(s: Session, person: PersonId) -> frozenset[Role]:
    """Return all roles that a person has anywhere."""
    roles = s.scalar(select(PersonRow.roles).where(PersonRow.id == person)) or ""
    return frozenset(Role(role) for role in roles.split(",") if role)


def tutors(s: Session) -> list[tuple[PersonId, str]]:
    """Return all tutors by name."""
    rows = s.execute(select(PersonRow.id, PersonRow.name, PersonRow.roles).order_by(PersonRow.name))
    return [(PersonId(row[0]), row[1]) for row in rows if Role.TUTOR in row[2].split(",")]


def set_language(s: Session, person: PersonId, language: str) -> None:
    """Set the language in which somebody is spoken to."""
    s.execute(update(PersonRow).where(PersonRow.id == person).values(language=language))


def remove_household(s: Session, household_id: HouseholdId) -> bool:
    """Remove a household without members; False where it has some."""
    if members_of(s, household_id):
        return False
    s.execute(delete(HouseholdRow).where(HouseholdRow.id == household_id))
    return True


def same_name(s: Session, household_id: HouseholdId, name: str) -> bool:
    """Tell whether a household already has somebody of that name."""
    other = aliased(PersonRow)
    found = s.scalar(
        select(func.count())
        .select_from(MembershipRow)
        .join(other, other.id == MembershipRow.person_id)
        .where(MembershipRow.household_id == household_id, func.lower(other.name) == name.strip().lower())
    )
    return bool(found)


def due_students(s: Session, now: datetime, limit: int = 500) -> Sequence[Student]:
    """Return students whose `next_look` has come, the longest waiting first."""
    rows = s.execute(
        _students.where(StudentRow.next_look <= now)
        .order_by(StudentRow.next_look, StudentRow.id)
        .limit(limit)
    )
    return [Student(*row) for row in rows]


EARLY = datetime.fromisoformat("2000-01-01T00:00:00+00:00")
"""A `next_look` that is always due."""


def languages(s: Session, chats: Sequence[ChatId]) -> dict[ChatId, str]:
    """Return in which language to speak to chats; one that nobody linked is left out."""
    if not chats:
        return {}
    rows = s.execute(
        select(ChatRow.id, PersonRow.language)
        .join(PersonRow, PersonRow.id == ChatRow.person_id)
        .where(ChatRow.id.in_(chats))
    )
    return {ChatId(chat): language for chat, language in rows}
