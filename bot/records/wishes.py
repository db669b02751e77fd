"""A tutor's changes, laid over content and plan: each is shown first, can be undone, and has its days.

A change is one line or press of a tutor, with its preview; it holds one or more wishes. Until it is
confirmed its wishes do nothing; once it is undone they do nothing again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

import msgspec
from sqlalchemy import ForeignKey, Row, Select, Text, insert, or_, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.vocabulary import HouseholdId, PersonId, StudentId


class ChangeRow(Base):
    """One thing that a tutor (or a parent, for days off and small days) decided."""

    __tablename__ = "change"

    id: Mapped[int] = mapped_column(primary_key=True)
    by_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    verb: Mapped[str]
    preview: Mapped[str] = mapped_column(Text)
    """The message that showed it, as stored; said again when it is confirmed or undone."""
    before: Mapped[str] = mapped_column(Text, default="{}")
    """What stood before, for changes that overwrite something."""
    made_at: Mapped[datetime] = mapped_column(UtcDateTime)
    confirmed_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    undone_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


class WishRow(Base):
    """One wish, for one student, a household, or all students of a tutor."""

    __tablename__ = "wish"

    id: Mapped[int] = mapped_column(primary_key=True)
    change_id: Mapped[int] = mapped_column(ForeignKey("change.id"), index=True)
    kind: Mapped[str]
    student_id: Mapped[int | None] = mapped_column(ForeignKey("student.id"), index=True)
    household_id: Mapped[int | None] = mapped_column(ForeignKey("household.id"), index=True)
    tutor_id: Mapped[int | None] = mapped_column(ForeignKey("person.id"), index=True)
    what: Mapped[str] = mapped_column(Text, default="{}")
    starts: Mapped[date]
    ends: Mapped[date | None]
    """Last day on which it holds; absent: until undone."""
    active: Mapped[bool] = mapped_column(default=False)


@dataclass(frozen=True, slots=True)
class Wish:
    """A wish as the use cases see it. `ends` is the last day on which it holds."""

    kind: str
    what: dict[str, object]
    starts: date
    ends: date | None = None
    student: StudentId | None = None
    household: HouseholdId | None = None
    tutor: PersonId | None = None
    id: int = 0
    change: int = 0


@dataclass(frozen=True, slots=True)
class Change:
    """A tutor's decision with its preview and wishes. `preview` and `before` are data of the use case."""

    id: int
    by: PersonId
    verb: str
    preview: str
    before: dict[str, object]
    made_at: datetime
    confirmed_at: datetime | None
    undone_at: datetime | None


_decode = msgspec.json.Decoder(dict[str, object]).decode
_wishes: Select[Any] = select(
    WishRow.kind,
    WishRow.what,
    WishRow.starts,
    WishRow.ends,
    WishRow.student_id,
    WishRow.household_id,
    WishRow.tutor_id,
    WishRow.id,
    WishRow.change_id,
)


def _wish(row: Row[Any]) -> Wish:
    kind, what, *rest = row
    return Wish(str(kind), _decode(str(what)), *rest)


def propose(
    s: Session,
    by: PersonId,
    verb: str,
    wishes: Sequence[Wish],
    at: datetime,
    *,
    preview: str = "",
    before: dict[str, object] | None = None,
) -> int:
    """Store a change that does nothing yet; return its id."""
    change = s.execute(
        insert(ChangeRow)
        .values(
            by_id=by,
            verb=verb,
            preview=preview,
            before=msgspec.json.encode(before or {}).decode(),
            made_at=at,
        )
        .returning(ChangeRow.id)
    ).scalar_one()
    if wishes:
        s.execute(
            insert(WishRow),
            [
                {
                    "change_id": change,
                    "kind": wish.kind,
                    "student_id": wish.student,
                    "household_id": wish.household,
                    "tutor_id": wish.tutor,
                    "what": msgspec.json.encode(wish.what).decode(),
                    "starts": wish.starts,
                    "ends": wish.ends,
                }
                for wish in wishes
            ],
        )
    return int(change)


def find_change(s: Session, change: int) -> Change | None:
    """Return a change, or None."""
    row = s.execute(
        select(
            ChangeRow.id,
            ChangeRow.by_id,
            ChangeRow.verb,
            ChangeRow.preview,
            ChangeRow.before,
            ChangeRow.made_at,
            ChangeRow.confirmed_at,
            ChangeRow.undone_at,
        ).where(ChangeRow.id == change)
    ).one_or_none()
    if row is None:
        return None
    id_, by, verb, preview, before, *times = row
    return Change(id_, PersonId(by), verb, preview, _decode(before), *times)


def wishes_of(s: Session, change: int) -> list[Wish]:
    """Return the wishes of a change."""
    return [_wish(row) for row in s.execute(_wishes.where(WishRow.change_id == change))]


def confirm(s: Session, change: int, at: datetime) -> bool:
    """Let a change take effect; False where it was confirmed before."""
    done = s.execute(
        update(ChangeRow)
        .where(ChangeRow.id == change, ChangeRow.confirmed_at.is_(None))
        .values(confirmed_at=at)
    )
    if done.rowcount:  # type: ignore[attr-defined]
        s.execute(update(WishRow).where(WishRow.change_id == change).values(active=True))
    return bool(done.rowcount)  # type: ignore[attr-defined]


def undo(s: Session, change: int, at: datetime) -> bool:
    """Take a change back; False where it was not in force."""
    done = s.execute(
        update(ChangeRow)
        .where(ChangeRow.id == change, ChangeRow.confirmed_at.is_not(None), ChangeRow.undone_at.is_(None))
        .values(undone_at=at)
    )
    if done.rowcount:  # type: ignore[attr-defined]
        s.execute(update(WishRow).where(WishRow.change_id == change).values(active=False))
    return bool(done.rowcount)  # type: ignore[attr-defined]


def find_wish(s: Session, wish: int) -> Wish | None:
    """Return a wish, in force or not, or None."""
    row = s.execute(_wishes.where(WishRow.id == wish)).one_or_none()
    return None if row is None else _wish(row)


def end_wish(s: Session, wish: int, last: date | None) -> None:
    """Let a wish hold until a day and no longer; None: until it is undone."""
    s.execute(update(WishRow).where(WishRow.id == wish).values(ends=last))


def wishes_for(
    s: Session, student: StudentId, household: HouseholdId, tutor: PersonId, first: date, last: date
) -> list[Wish]:
    """Return the wishes in force for a student on any day of a range, the oldest first."""
    rows = s.execute(
        _wishes.where(
            WishRow.active,
            or_(WishRow.student_id == student, WishRow.household_id == household, WishRow.tutor_id == tutor),
            WishRow.starts <= last,
            or_(WishRow.ends.is_(None), WishRow.ends >= first),
        ).order_by(WishRow.id)
    )
    return [_wish(row) for row in rows]


def households_wishing(s: Session, kind: str, on: date) -> list[HouseholdId]:
    """Return the households with a wish of a kind in force on a day."""
    rows = s.scalars(
        select(WishRow.household_id)
        .where(
            WishRow.active,
            WishRow.kind == kind,
            WishRow.household_id.is_not(None),
            WishRow.starts <= on,
            or_(WishRow.ends.is_(None), WishRow.ends >= on),
        )
        .distinct()
    )
    return [HouseholdId(row) for row in rows if row is not None]


def newest_change(s: Session, by: PersonId) -> Change | None:
    """Return the change that somebody confirmed last and didn't undo."""
    newest = s.scalar(
        select(ChangeRow.id)
        .where(ChangeRow.by_id == by, ChangeRow.confirmed_at.is_not(None), ChangeRow.undone_at.is_(None))
        .order_by(ChangeRow.confirmed_at.desc(), ChangeRow.id.desc())
        .limit(1)
    )
    return None if newest is None else find_change(s, newest)


def note_before(s: Session, change: int, before: dict[str, object]) -> None:
    """Note what stood before a change, as found at the moment in which it took effect."""
    s.execute(
        update(ChangeRow).where(ChangeRow.id == change).values(before=msgspec.json.encode(before).decode())
    )


def recent_changes(s: Session, by: PersonId, since: datetime, limit: int = 10) -> list[Change]:
    """Return what somebody confirmed since a moment and didn't undo, the newest first."""
    ids = s.scalars(
        select(ChangeRow.id)
        .where(ChangeRow.by_id == by, ChangeRow.confirmed_at >= since, ChangeRow.undone_at.is_(None))
        .order_by(ChangeRow.confirmed_at.desc(), ChangeRow.id.desc())
        .limit(limit)
    )
    return [change for each in ids if (change := find_change(s, each)) is not None]
