"""Sheets of number facts: rows of facts in one message, answered in one message."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import msgspec
from sqlalchemy import ForeignKey, Text, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.vocabulary import DayId, StudentId


class SheetRow(Base):
    """One sheet, as drawn, and how it was answered. Facts and keys never change once it was sent."""

    __tablename__ = "sheet"

    id: Mapped[int] = mapped_column(primary_key=True)
    day_id: Mapped[int] = mapped_column(ForeignKey("school_day.id"), index=True)
    student_id: Mapped[int] = mapped_column(ForeignKey("student.id"), index=True)
    stage: Mapped[str]
    facts: Mapped[str] = mapped_column(Text)
    """Pairs of question and key."""
    typed: Mapped[str | None] = mapped_column(Text)
    right: Mapped[int | None]
    missed: Mapped[str] = mapped_column(Text, default="[]")
    """Questions that went wrong or were left out."""
    timed: Mapped[bool] = mapped_column(default=False)
    per_minute: Mapped[float | None]
    """Right answers a minute, typing time taken off; absent where untimed or over ten minutes."""
    answered_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of number facts as (question, key) pairs."""

    id: int
    day: DayId
    student: StudentId
    stage: str
    facts: tuple[tuple[str, str], ...]
    typed: str | None
    right: int | None
    missed: tuple[str, ...]
    timed: bool
    per_minute: float | None
    answered_at: datetime | None


_columns = (
    SheetRow.id,
    SheetRow.day_id,
    SheetRow.student_id,
    SheetRow.stage,
    SheetRow.facts,
    SheetRow.typed,
    SheetRow.right,
    SheetRow.missed,
    SheetRow.timed,
    SheetRow.per_minute,
    SheetRow.answered_at,
)
_decode = msgspec.json.Decoder(tuple[tuple[str, str], ...]).decode


def add_sheet(
    s: Session,
    day: DayId,
    student: StudentId,
    stage: str,
    facts: tuple[tuple[str, str], ...],
    *,
    timed: bool = False,
) -> int:
    """Store a sheet about to be shown; return its id."""
    made = s.execute(
        insert(SheetRow)
        .values(
            day_id=day,
            student_id=student,
            stage=stage,
            facts=msgspec.json.encode(facts).decode(),
            timed=timed,
        )
        .returning(SheetRow.id)
    )
    return int(made.scalar_one())


def _sheet(row: tuple[object, ...]) -> Sheet:
    id_, day, student, stage, facts, typed, right, missed, *rest = row
    kept = tuple(msgspec.json.decode(str(missed), type=list[str]))
    return Sheet(id_, day, student, stage, _decode(str(facts)), typed, right, kept, *rest)  # type: ignore[arg-type]


def find_sheet(s: Session, sheet: int) -> Sheet | None:
    """Return a sheet, or None."""
    row = s.execute(select(*_columns).where(SheetRow.id == sheet)).one_or_none()
    return _sheet(tuple(row)) if row else None


def sheet_of_day(s: Session, day: DayId) -> Sheet | None:
    """Return the newest sheet of a day, or None."""
    row = s.execute(
        select(*_columns).where(SheetRow.day_id == day).order_by(SheetRow.id.desc()).limit(1)
    ).one_or_none()
    return _sheet(tuple(row)) if row else None


def answer_sheet(
    s: Session,
    sheet: int,
    typed: str,
    missed: Sequence[str],
    right: int,
    per_minute: float | None,
    at: datetime,
) -> None:
    """Store how a sheet was answered."""
    s.execute(
        update(SheetRow)
        .where(SheetRow.id == sheet)
        .values(
            typed=typed,
            right=right,
            missed=msgspec.json.encode(list(missed)).decode(),
            per_minute=per_minute,
            answered_at=at,
        )
    )


def answered_sheets(s: Session, student: StudentId, count: int = 60) -> list[Sheet]:
    """Return a student's answered sheets, the newest first."""
    rows = s.execute(
        select(*_columns)
        .where(SheetRow.student_id == student, SheetRow.answered_at.is_not(None))
        .order_by(SheetRow.id.desc())
        .limit(count)
    )
    return [_sheet(tuple(row)) for row in rows]
