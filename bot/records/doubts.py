"""Doubts that no item's own state tells: reported items, working nobody could judge, kinds that many missed."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from sqlalchemy import ForeignKey, and_, func, insert, or_, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.records.days import ItemRow, SchoolDayRow
from bot.records.people import HouseholdRow, StudentRow
from bot.vocabulary import ItemId, Outcome, PersonId, StudentId


class DoubtKind(StrEnum):
    """Why somebody should look."""

    ASKED = "asked"
    """The student asked about an item; the item itself tells that, the row tells since when."""
    REPORTED = "reported"
    """The student thinks that the item is wrong."""
    WORKING = "working"
    """Lines were sent that the checker could not judge."""
    MANY_MISSED = "many-missed"
    """Several students left the same kind of item unsolved."""


class DoubtRow(Base):
    """One doubt. Of a student's item, or of a template for all students of a tutor."""

    __tablename__ = "doubt"

    id: Mapped[int] = mapped_column(primary_key=True)
    kind: Mapped[str]
    tutor_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    student_id: Mapped[int | None] = mapped_column(ForeignKey("student.id"), index=True)
    item_id: Mapped[int | None] = mapped_column(ForeignKey("item.id"), index=True)
    template: Mapped[str]
    at: Mapped[datetime] = mapped_column(UtcDateTime)
    cleared_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Doubt:
    """A doubt that waits."""

    id: int
    kind: DoubtKind
    student: StudentId | None
    item: ItemId | None
    template: str
    at: datetime


def add_doubt(
    s: Session,
    kind: DoubtKind,
    tutor: PersonId,
    template: str,
    at: datetime,
    *,
    student: StudentId | None = None,
    item: ItemId | None = None,
) -> bool:
    """Note a doubt; False where the same waits already, or was cleared for this item before."""
    same = (
        DoubtRow.item_id == item
        if item is not None
        else and_(DoubtRow.tutor_id == tutor, DoubtRow.template == template, DoubtRow.cleared_at.is_(None))
    )
    if s.scalar(select(func.count()).where(DoubtRow.kind == kind, same)):
        return False
    s.execute(
        insert(DoubtRow).values(
            kind=kind, tutor_id=tutor, student_id=student, item_id=item, template=template, at=at
        )
    )
    return True


def open_doubts(s: Session, tutor: PersonId, students: Collection[StudentId]) -> list[Doubt]:
    """Return what waits for a tutor, the oldest first; of items only those of the students given."""
    rows = s.execute(
        select(
            DoubtRow.id,
            DoubtRow.kind,
            DoubtRow.student_id,
            DoubtRow.item_id,
            DoubtRow.template,
            DoubtRow.at,
        )
        .where(
            DoubtRow.cleared_at.is_(None),
            or_(
                DoubtRow.student_id.in_(students),
                and_(DoubtRow.student_id.is_(None), DoubtRow.tutor_id == tutor),
            ),
        )
        .order_by(DoubtRow.at, DoubtRow.id)
    )
    return [Doubt(row[0], DoubtKind(row[1]), *row[2:]) for row in rows]


def students_who_missed(
    s: Session, tutor: PersonId, templates: Collection[str], since: date
) -> dict[str, int]:
    """Return how many students of a tutor left an item of each template unsolved since a day."""
    rows = s.execute(
        select(ItemRow.template, func.count(ItemRow.student_id.distinct()))
        .join(SchoolDayRow, SchoolDayRow.id == ItemRow.day_id)
        .join(StudentRow, StudentRow.id == ItemRow.student_id)
        .join(HouseholdRow, HouseholdRow.id == StudentRow.household_id)
        .where(
            HouseholdRow.tutor_id == tutor,
            SchoolDayRow.date >= since,
            ItemRow.template.in_(templates),
            ItemRow.outcome == Outcome.UNSOLVED.value,
        )
        .group_by(ItemRow.template)
    )
    return {row[0]: row[1] for row in rows}


def kinds_waiting(s: Session, tutor: PersonId) -> set[str]:
    """Return the templates that wait for a tutor because many missed them."""
    return set(
        s.scalars(
            select(DoubtRow.template).where(
                DoubtRow.kind == DoubtKind.MANY_MISSED,
                DoubtRow.tutor_id == tutor,
                DoubtRow.cleared_at.is_(None),
            )
        )
    )


def cleared_since(s: Session, tutor: PersonId, template: str) -> datetime | None:
    """Return when a kind that many missed was last cleared; None where it never was."""
    return s.scalar(
        select(func.max(DoubtRow.cleared_at)).where(
            DoubtRow.kind == DoubtKind.MANY_MISSED, DoubtRow.tutor_id == tutor, DoubtRow.template == template
        )
    )


def clear_item(s: Session, item: ItemId, at: datetime) -> None:
    """What a student asked about an item was looked at."""
    s.execute(
        update(DoubtRow)
        .where(DoubtRow.item_id == item, DoubtRow.kind == DoubtKind.ASKED, DoubtRow.cleared_at.is_(None))
        .values(cleared_at=at)
    )


def clear_doubt(s: Session, doubt: int, at: datetime) -> None:
    """A doubt was looked at."""
    s.execute(
        update(DoubtRow).where(DoubtRow.id == doubt, DoubtRow.cleared_at.is_(None)).values(cleared_at=at)
    )
