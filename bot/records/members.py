"""Who comes, goes and changes: people, their households, roles and chats."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import delete, insert, or_, select, update
from sqlalchemy.orm import Session

from bot.records.base import change
from bot.records.people_tables import EARLY, ChatRow, HouseholdRow, MembershipRow, PersonRow, StudentRow
from bot.vocabulary import ChatId, HouseholdId, PersonId, Role, StudentId


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


def speak(s: Session, chat: ChatId, student_id: StudentId | None, at: datetime) -> None:
    """Note who is speaking at a chat; None gives the phone back."""
    s.execute(update(ChatRow).where(ChatRow.id == chat).values(speaking_id=student_id, spoke_at=at))


def block(s: Session, chat: ChatId, *, blocked: bool) -> None:
    """Note that a person blocked the bot, or took the block away."""
    s.execute(update(ChatRow).where(ChatRow.id == chat).values(blocked=blocked))


def set_language(s: Session, person: PersonId, language: str) -> None:
    """Set the language in which somebody is spoken to."""
    s.execute(update(PersonRow).where(PersonRow.id == person).values(language=language))


def remove_household(s: Session, household_id: HouseholdId) -> bool:
    """Remove a household without members; False where it has some."""
    if s.scalar(select(MembershipRow.id).where(MembershipRow.household_id == household_id).limit(1)):
        return False
    s.execute(delete(HouseholdRow).where(HouseholdRow.id == household_id))
    return True
