"""Attempts and gradings: added, never changed. The newest grading of an attempt counts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import BigInteger, ForeignKey, Row, Text, UniqueConstraint, func, or_, select
from sqlalchemy.orm import Mapped, Session, aliased, mapped_column

from bot.records.base import Base, UtcDateTime, add
from bot.records.day_tables import ItemRow, ItemState, SchoolDayRow, Unmarked
from bot.vocabulary import AttemptId, DayId, ItemId, Outcome, Part, StudentId, Verdict

CHECKER = "checker"
"""`by` of a grading that the program made; else it is the person's id."""


class AttemptRow(Base):
    """One reply to one item, exactly as typed.

    What we made of the reply is a grading of its own, so that a tutor's *accept* adds a grading and history
    stays as it was.
    """

    __tablename__ = "attempt"
    __table_args__ = (UniqueConstraint("update_id", "item_id"),)  # one message may answer several items

    id: Mapped[int] = mapped_column(primary_key=True)
    item_id: Mapped[int] = mapped_column(ForeignKey("item.id"), index=True)
    update_id: Mapped[int] = mapped_column(BigInteger)
    typed: Mapped[str] = mapped_column(Text)
    hints: Mapped[int]
    """Hints taken before this attempt."""
    at: Mapped[datetime] = mapped_column(UtcDateTime)


class GradingRow(Base):
    """What the checker, or a tutor, made of an attempt."""

    __tablename__ = "grading"

    id: Mapped[int] = mapped_column(primary_key=True)
    attempt_id: Mapped[int] = mapped_column(ForeignKey("attempt.id"), index=True)
    verdict: Mapped[str]
    read_as: Mapped[str] = mapped_column(Text)
    reason: Mapped[str]
    misstep: Mapped[str | None]
    free: Mapped[bool] = mapped_column(default=False)
    """Costs no try."""
    by: Mapped[str]
    at: Mapped[datetime] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Attempt:
    """A reply with its newest grading."""

    id: AttemptId
    item: ItemId
    typed: str
    hints: int
    at: datetime
    verdict: Verdict
    read_as: str
    reason: str
    misstep: str | None
    free: bool
    by: str


def add_attempt(s: Session, item: ItemId, update: int, typed: str, hints: int, at: datetime) -> AttemptId:
    """Store one reply to one item."""
    made = add(s, AttemptRow, item_id=item, update_id=update, typed=typed, hints=hints, at=at)
    return AttemptId(made)


def add_grading(
    s: Session,
    attempt: AttemptId,
    verdict: Verdict,
    at: datetime,
    *,
    read_as: str = "",
    reason: str = "",
    misstep: str | None = None,
    free: bool = False,
    by: str = CHECKER,
) -> None:
    """Store what was made of an attempt; earlier gradings of it stay and no longer count."""
    add(
        s,
        GradingRow,
        attempt_id=attempt,
        verdict=verdict,
        read_as=read_as,
        reason=reason,
        misstep=misstep,
        free=free,
        by=by,
        at=at,
    )


_newest = select(func.max(GradingRow.id)).group_by(GradingRow.attempt_id)
_attempts = (
    select(
        AttemptRow.id,
        AttemptRow.item_id,
        AttemptRow.typed,
        AttemptRow.hints,
        AttemptRow.at,
        GradingRow.verdict,
        GradingRow.read_as,
        GradingRow.reason,
        GradingRow.misstep,
        GradingRow.free,
        GradingRow.by,
    )
    .join(GradingRow, GradingRow.attempt_id == AttemptRow.id)
    .order_by(AttemptRow.id)
)


def _attempt(row: Row[Any]) -> Attempt:
    id_, item, typed, hints, at, verdict, *rest = row
    return Attempt(id_, item, typed, hints, at, Verdict(verdict), *rest)


def attempts_of(s: Session, item: ItemId) -> list[Attempt]:
    """Return the attempts at an item in order, each with the grading that counts."""
    newest = _newest.join(AttemptRow, AttemptRow.id == GradingRow.attempt_id).where(
        AttemptRow.item_id == item
    )
    rows = s.execute(_attempts.where(AttemptRow.item_id == item, GradingRow.id.in_(newest)))
    return [_attempt(row) for row in rows]


def unmarked(s: Session, students: Sequence[StudentId], first: date, last: date) -> list[Unmarked]:
    """Return the days of a range with review items that nobody answered or marked, and how many."""
    answered = select(AttemptRow.id).where(AttemptRow.item_id == ItemRow.id).exists()
    rows = s.execute(
        select(
            SchoolDayRow.student_id,
            SchoolDayRow.date,
            SchoolDayRow.on_paper,
            SchoolDayRow.closed_at.is_not(None),
            func.count(),
        )
        .join(ItemRow, ItemRow.day_id == SchoolDayRow.id)
        .where(
            SchoolDayRow.student_id.in_(students),
            SchoolDayRow.date.between(first, last),
            ItemRow.part == Part.REVIEW,
            ItemRow.state != ItemState.DROPPED,
            or_(ItemRow.outcome.is_(None), ItemRow.outcome == Outcome.UNTOUCHED),
            ~answered,
        )
        .group_by(SchoolDayRow.id)
        .order_by(SchoolDayRow.date, SchoolDayRow.student_id)
    )
    return [Unmarked(*row) for row in rows]


def attempts_of_day(s: Session, day: DayId) -> dict[ItemId, list[Attempt]]:
    """Return all attempts of a day by item."""
    items = select(ItemRow.id).where(ItemRow.day_id == day)
    newest = _newest.join(AttemptRow, AttemptRow.id == GradingRow.attempt_id).where(
        AttemptRow.item_id.in_(items)
    )
    found: dict[ItemId, list[Attempt]] = {}
    for row in s.execute(_attempts.where(AttemptRow.item_id.in_(items), GradingRow.id.in_(newest))):
        attempt = _attempt(row)
        found.setdefault(attempt.item, []).append(attempt)
    return found


def find_attempt(s: Session, attempt: int) -> Attempt | None:
    """Return one attempt with the grading that counts, or None."""
    newest = select(func.max(GradingRow.id)).where(GradingRow.attempt_id == attempt)
    row = s.execute(
        _attempts.where(AttemptRow.id == attempt, GradingRow.id == newest.scalar_subquery())
    ).one_or_none()
    return _attempt(row) if row else None


_later = aliased(GradingRow)
_regraded = (
    select(1)
    .select_from(_later)
    .where(_later.attempt_id == GradingRow.attempt_id, _later.id > GradingRow.id)
    .exists()
)
"""Whether a newer grading of the same attempt counts instead: then an accepted answer names no misstep."""


def missteps_since(s: Session, student: StudentId, since: datetime) -> list[tuple[str, str, datetime]]:
    """Return (misstep, template, when) of a student's wrong answers since a moment, oldest first."""
    rows = s.execute(
        select(GradingRow.misstep, ItemRow.template, AttemptRow.at)
        .join(AttemptRow, AttemptRow.id == GradingRow.attempt_id)
        .join(ItemRow, ItemRow.id == AttemptRow.item_id)
        .where(
            ItemRow.student_id == student,
            GradingRow.misstep.is_not(None),
            GradingRow.verdict == Verdict.WRONG,
            AttemptRow.at >= since,
            ~_regraded,
        )
        .order_by(AttemptRow.at)
    )
    return [(row[0] or "", row[1], row[2]) for row in rows]


def missteps_by_item(s: Session, student: StudentId, since: date) -> dict[ItemId, list[str]]:
    """Return the missteps named at a student's items of days from a date on."""
    rows = s.execute(
        select(AttemptRow.item_id, GradingRow.misstep)
        .join(GradingRow, GradingRow.attempt_id == AttemptRow.id)
        .join(ItemRow, ItemRow.id == AttemptRow.item_id)
        .join(SchoolDayRow, SchoolDayRow.id == ItemRow.day_id)
        .where(
            ItemRow.student_id == student,
            SchoolDayRow.date >= since,
            GradingRow.misstep.is_not(None),
            GradingRow.verdict == Verdict.WRONG,
            ~_regraded,
        )
        .order_by(GradingRow.id)
    )
    found: dict[ItemId, list[str]] = {}
    for item, misstep in rows:
        found.setdefault(item, []).append(misstep or "")
    return found


def counted_alike(
    s: Session, students: Sequence[StudentId], template: str, typed: str, since: datetime
) -> list[ItemId]:
    """Return items of a template at which the same text was typed since a moment and counted."""
    newest = _newest.subquery()
    rows = s.execute(
        select(AttemptRow.item_id)
        .join(GradingRow, GradingRow.attempt_id == AttemptRow.id)
        .join(ItemRow, ItemRow.id == AttemptRow.item_id)
        .where(
            ItemRow.student_id.in_(students),
            ItemRow.template == template,
            AttemptRow.typed == typed,
            AttemptRow.at >= since,
            GradingRow.verdict == Verdict.RIGHT,
            GradingRow.id.in_(select(newest.c[0])),
        )
    )
    return [ItemId(row[0]) for row in rows]


def turned_down_alike(s: Session, students: Sequence[StudentId], typed: str, since: datetime) -> list[ItemId]:
    """Return items at which the same text was typed since a moment and, as graded now, didn't count."""
    newest = _newest.subquery()
    rows = s.execute(
        select(AttemptRow.item_id)
        .join(GradingRow, GradingRow.attempt_id == AttemptRow.id)
        .join(ItemRow, ItemRow.id == AttemptRow.item_id)
        .where(
            ItemRow.student_id.in_(students),
            AttemptRow.typed == typed,
            AttemptRow.at >= since,
            GradingRow.verdict != Verdict.RIGHT,
            GradingRow.id.in_(select(newest.c[0])),
        )
    )
    return [ItemId(row[0]) for row in rows]
