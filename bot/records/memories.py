"""What we believe of each skill of each student: one row a skill, rebuilt from gradings at any time."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from sqlalchemy import ForeignKey, delete, insert, select
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.planner.memory import Memory
from bot.records.base import Base
from bot.vocabulary import SkillId, StudentId


class MemoryRow(Base):
    """One skill of one student."""

    __tablename__ = "memory"

    student_id: Mapped[int] = mapped_column(ForeignKey("student.id"), primary_key=True)
    skill: Mapped[str] = mapped_column(primary_key=True)
    stability: Mapped[float]
    difficulty: Mapped[float]
    last: Mapped[date]
    met: Mapped[int]
    missed: Mapped[int]


def memories(s: Session, student: StudentId) -> dict[SkillId, Memory]:
    """Return all that is believed of a student, by skill."""
    rows = s.execute(
        select(
            MemoryRow.skill,
            MemoryRow.stability,
            MemoryRow.difficulty,
            MemoryRow.last,
            MemoryRow.met,
            MemoryRow.missed,
        ).where(MemoryRow.student_id == student)
    )
    return {SkillId(row.skill): Memory(*row) for row in rows}


def keep_memories(s: Session, student: StudentId, changed: Iterable[Memory]) -> None:
    """Store what is believed now of some skills; the others stay as they are."""
    rows = [
        {
            "student_id": student,
            "skill": memory.skill,
            "stability": memory.stability,
            "difficulty": memory.difficulty,
            "last": memory.last,
            "met": memory.met,
            "missed": memory.missed,
        }
        for memory in changed
    ]
    if not rows:
        return
    s.execute(
        delete(MemoryRow).where(
            MemoryRow.student_id == student, MemoryRow.skill.in_([row["skill"] for row in rows])
        )
    )
    s.execute(insert(MemoryRow), rows)


def forget_memories(s: Session, student: StudentId) -> None:
    """Remove all that is believed, to rebuild it from what happened."""
    s.execute(delete(MemoryRow).where(MemoryRow.student_id == student))
