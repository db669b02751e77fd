"""Households, students, parents and tutors, and the chats through which they speak.

What changes them is in `members.py` and stands here as well, so that a use case needs one import.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import bindparam, func, select
from sqlalchemy.orm import Session, aliased

from bot.records.base import ask
from bot.records.members import (
    add_household,
    add_member,
    add_person,
    block,
    change_household,
    change_student,
    link,
    remove_household,
    remove_member,
    set_language,
    speak,
    unlink,
)
from bot.records.people_tables import (
    EARLY,
    ChatRow,
    Household,
    HouseholdRow,
    Member,
    MembershipRow,
    Person,
    PersonRow,
    Reachable,
    Student,
    StudentRow,
)
from bot.vocabulary import ChatId, HouseholdId, PersonId, Role, StudentId

__all__ = [
    "EARLY",
    "STUDENT_COLUMNS",
    "ChatRow",
    "Household",
    "HouseholdRow",
    "Member",
    "MembershipRow",
    "Person",
    "PersonRow",
    "Reachable",
    "Student",
    "StudentRow",
    "add_household",
    "add_member",
    "add_person",
    "block",
    "change_household",
    "change_student",
    "chat_of_student",
    "chats_around",
    "due_students",
    "find_student",
    "household",
    "households_of",
    "households_of_tutor",
    "is_grown_up_of",
    "languages",
    "link",
    "members_of",
    "memberships_of",
    "parents_of",
    "person_name",
    "phone_held_by",
    "reach",
    "remove_household",
    "remove_member",
    "roles_of",
    "same_name",
    "set_language",
    "shares_phone",
    "speak",
    "student",
    "students_of_household",
    "students_of_parent",
    "students_of_tutor",
    "tutors",
    "unlink",
    "who",
]

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


def phone_held_by(s: Session, student_id: StudentId) -> tuple[ChatId, PersonId, datetime | None] | None:
    """Return the grown-up's chat on which a student is speaking, whose it is, and when they last spoke."""
    row = s.execute(
        select(ChatRow.id, ChatRow.person_id, ChatRow.spoke_at).where(ChatRow.speaking_id == student_id)
    ).first()
    return None if row is None else (ChatId(row.id), PersonId(row.person_id), row.spoke_at)


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
