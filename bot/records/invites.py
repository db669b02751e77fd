"""Single-use links by which a person's chat becomes theirs, and the consent of a parent."""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import BigInteger, ForeignKey, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.records.people import HouseholdRow
from bot.vocabulary import ChatId, HouseholdId, PersonId

LASTS = timedelta(days=7)
"""How long a link can be used (common practice, no source)."""


class InviteRow(Base):
    """A link for one person. Only its token's hash is kept, so that a copy of the database opens nothing."""

    __tablename__ = "invite"

    id: Mapped[int] = mapped_column(primary_key=True)
    token_hash: Mapped[str] = mapped_column(unique=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    by_id: Mapped[int | None] = mapped_column(ForeignKey("person.id"))
    """Who made it; absent: the command line."""
    made_at: Mapped[datetime] = mapped_column(UtcDateTime)
    expires_at: Mapped[datetime] = mapped_column(UtcDateTime)
    used_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    used_by: Mapped[int | None] = mapped_column(BigInteger)
    revoked_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


class ConsentRow(Base):
    """A parent agreed to what is kept and why, in the wording of that version; or took it back."""

    __tablename__ = "consent"

    id: Mapped[int] = mapped_column(primary_key=True)
    household_id: Mapped[int] = mapped_column(ForeignKey("household.id"), index=True)
    parent_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    version: Mapped[int]
    given: Mapped[bool]
    at: Mapped[datetime] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Invite:
    """A link that can be used."""

    id: int
    person: PersonId
    by: PersonId | None
    expires_at: datetime


def _hash(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()


def make_invite(s: Session, person: PersonId, by: PersonId | None, at: datetime) -> str:
    """Make a link's token (22 characters of A-Za-z0-9_-) for a person; older links of theirs end."""
    revoke(s, person, at)
    token = secrets.token_urlsafe(16)
    s.execute(
        insert(InviteRow).values(
            token_hash=_hash(token), person_id=person, by_id=by, made_at=at, expires_at=at + LASTS
        )
    )
    return token


def revoke(s: Session, person: PersonId, at: datetime) -> None:
    """End all links of a person that were not used."""
    s.execute(
        update(InviteRow)
        .where(InviteRow.person_id == person, InviteRow.used_at.is_(None), InviteRow.revoked_at.is_(None))
        .values(revoked_at=at)
    )


def find_invite(s: Session, token: str, at: datetime) -> Invite | None:
    """Return the invite of a token if it can be used now."""
    return _find(s, InviteRow.token_hash == _hash(token), at)


def invite(s: Session, invite_id: int, at: datetime) -> Invite | None:
    """Return an invite if it can be used now."""
    return _find(s, InviteRow.id == invite_id, at)


def waits(s: Session, person: PersonId, at: datetime) -> bool:
    """Tell whether a link of a person's waits to be opened."""
    return _find(s, InviteRow.person_id == person, at) is not None


def _find(s: Session, which: object, at: datetime) -> Invite | None:
    row = s.execute(
        select(InviteRow.id, InviteRow.person_id, InviteRow.by_id, InviteRow.expires_at).where(
            which,  # type: ignore[arg-type]
            InviteRow.used_at.is_(None),
            InviteRow.revoked_at.is_(None),
            InviteRow.expires_at > at,
        )
    ).one_or_none()
    return Invite(*row) if row else None


def use_invite(s: Session, invite_id: int, chat: ChatId, at: datetime) -> bool:
    """Use an invite up; False where somebody was quicker."""
    done = s.execute(
        update(InviteRow)
        .where(InviteRow.id == invite_id, InviteRow.used_at.is_(None), InviteRow.revoked_at.is_(None))
        .values(used_at=at, used_by=chat)
    )
    return bool(done.rowcount)  # type: ignore[attr-defined]


def set_consent(
    s: Session, household: HouseholdId, parent: PersonId, version: int, at: datetime, *, given: bool
) -> None:
    """Record a parent's consent or its withdrawal; the household follows the newest."""
    s.execute(
        insert(ConsentRow).values(
            household_id=household, parent_id=parent, version=version, given=given, at=at
        )
    )
    s.execute(update(HouseholdRow).where(HouseholdRow.id == household).values(consented=given))


def consents(s: Session, household: HouseholdId) -> list[tuple[PersonId, int, bool, datetime]]:
    """Return (parent, version, given, when) of all consents and withdrawals, in order."""
    rows = s.execute(
        select(ConsentRow.parent_id, ConsentRow.version, ConsentRow.given, ConsentRow.at)
        .where(ConsentRow.household_id == household)
        .order_by(ConsentRow.id)
    )
    return [(PersonId(row[0]), row[1], row[2], row[3]) for row in rows]
