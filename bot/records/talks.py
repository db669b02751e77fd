"""What families said after sitting down: did it, still hard, not tonight."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import ForeignKey, UniqueConstraint, func, select
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime, insert_or_skip
from bot.vocabulary import ItemId, PersonId, StudentId


class TalkRow(Base):
    """One press under a digest; the same press twice is one."""

    __tablename__ = "talk"
    __table_args__ = (UniqueConstraint("item_id", "how", "by_id"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    student_id: Mapped[int] = mapped_column(ForeignKey("student.id"), index=True)
    item_id: Mapped[int] = mapped_column(ForeignKey("item.id"))
    skill: Mapped[str]
    how: Mapped[str]
    by_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    at: Mapped[datetime] = mapped_column(UtcDateTime)


def note(
    s: Session, student: StudentId, item: ItemId, skill: str, how: str, by: PersonId, at: datetime
) -> bool:
    """Note a press; False where it was noted before."""
    before = s.scalar(
        select(func.count()).where(TalkRow.item_id == item, TalkRow.how == how, TalkRow.by_id == by)
    )
    if before:
        return False
    row = {"student_id": student, "item_id": item, "skill": skill, "how": how, "by_id": by, "at": at}
    insert_or_skip(s, TalkRow, [row])
    return True


def count(s: Session, student: StudentId, skill: str, how: str) -> int:
    """Return how often a family said that of a skill."""
    query = select(func.count()).where(
        TalkRow.student_id == student, TalkRow.skill == skill, TalkRow.how == how
    )
    return s.scalar(query) or 0


def still_hard_since(s: Session, student: StudentId, since: datetime) -> list[tuple[str, int]]:
    """Return (skill, how often) of what a family found still hard since a moment, the most often first."""
    rows = s.execute(
        select(TalkRow.skill, func.count())
        .where(TalkRow.student_id == student, TalkRow.how == "still-hard", TalkRow.at >= since)
        .group_by(TalkRow.skill)
        .order_by(func.count().desc(), TalkRow.skill)
    )
    return [(row[0], row[1]) for row in rows]
