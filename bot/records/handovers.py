"""Households on their way from one tutor to another: a link, opened by a tutor, taken once."""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import ForeignKey, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.vocabulary import HouseholdId, PersonId

LASTS = timedelta(days=7)
"""How long a link can be used (common practice, no source)."""
MARK = "h-"
"""How the payload of such a link begins."""
LETTERS = 24
"""Of such a payload; that of an invite has fewer."""


class HandoverRow(Base):
    """A household offered to whichever tutor opens the link first. Only the token's hash is kept."""

    __tablename__ = "handover"

    id: Mapped[int] = mapped_column(primary_key=True)
    token_hash: Mapped[str] = mapped_column(unique=True)
    household_id: Mapped[int] = mapped_column(ForeignKey("household.id"), index=True)
    from_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    opened_by: Mapped[int | None] = mapped_column(ForeignKey("person.id"))
    """The tutor who opened the link last; nobody else can take it."""
    expires_at: Mapped[datetime] = mapped_column(UtcDateTime)
    ended_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    """Taken, or taken back."""


@dataclass(frozen=True, slots=True)
class Handover:
    """An offer that can still be taken."""

    id: int
    household: HouseholdId
    by: PersonId
    opened_by: PersonId | None


def _hash(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()


def offer(s: Session, household: HouseholdId, by: PersonId, at: datetime) -> tuple[int, str]:
    """Offer a household; return the offer's number and the link's payload. Older offers of it end."""
    s.execute(
        update(HandoverRow)
        .where(HandoverRow.household_id == household, HandoverRow.ended_at.is_(None))
        .values(ended_at=at)
    )
    token = MARK + secrets.token_urlsafe(16)
    made = s.execute(
        insert(HandoverRow)
        .values(token_hash=_hash(token), household_id=household, from_id=by, expires_at=at + LASTS)
        .returning(HandoverRow.id)
    )
    return int(made.scalar_one()), token


def find_token(s: Session, token: str, at: datetime) -> Handover | None:
    """Return the offer of a link's payload, if it can still be taken."""
    return _find(s, HandoverRow.token_hash == _hash(token), at)


def find_offer(s: Session, number: int, at: datetime) -> Handover | None:
    """Return an offer by its number, if it can still be taken."""
    return _find(s, HandoverRow.id == number, at)


def _find(s: Session, which: object, at: datetime) -> Handover | None:
    row = s.execute(
        select(HandoverRow.id, HandoverRow.household_id, HandoverRow.from_id, HandoverRow.opened_by).where(
            which,  # type: ignore[arg-type]
            HandoverRow.ended_at.is_(None),
            HandoverRow.expires_at > at,
        )
    ).one_or_none()
    return Handover(*row) if row else None


def opened(s: Session, number: int, by: PersonId) -> None:
    """Note which tutor opened the link."""
    s.execute(update(HandoverRow).where(HandoverRow.id == number).values(opened_by=by))


def end(s: Session, number: int, at: datetime) -> bool:
    """Use an offer up, or take it back; False where that was done before."""
    done = s.execute(
        update(HandoverRow)
        .where(HandoverRow.id == number, HandoverRow.ended_at.is_(None))
        .values(ended_at=at)
    )
    return bool(done.rowcount)  # type: ignore[attr-defined]
