"""Photos and work samples: rows here, bytes in files beside the database."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import ForeignKey, func, insert, select, update
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.records.base import Base, UtcDateTime
from bot.vocabulary import DayId, StudentId


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo that was kept as a work sample: when, of which day, and where it is to be had."""

    id: int
    day: DayId | None
    date: date
    caption: str
    file_id: str
    path: str | None
    """Where its bytes are below the folder of photos; None until they were fetched, empty where they can't be had."""


class FileRow(Base):
    """One photo that a student sent. `path` is set once the bytes were fetched."""

    __tablename__ = "file"

    id: Mapped[int] = mapped_column(primary_key=True)
    student_id: Mapped[int] = mapped_column(ForeignKey("student.id"), index=True)
    day_id: Mapped[int | None] = mapped_column(ForeignKey("school_day.id"))
    date: Mapped[date]
    file_id: Mapped[str]
    """The chat service's name of it."""
    album: Mapped[str] = mapped_column(default="")
    caption: Mapped[str] = mapped_column(default="")
    path: Mapped[str | None]
    sent_at: Mapped[datetime] = mapped_column(UtcDateTime)


def add_file(
    s: Session,
    student: StudentId,
    day: DayId | None,
    on: date,
    file_id: str,
    at: datetime,
    *,
    album: str = "",
    caption: str = "",
) -> int:
    """Note a photo whose bytes are still to be fetched; return its id."""
    made = s.execute(
        insert(FileRow)
        .values(
            student_id=student,
            day_id=day,
            date=on,
            file_id=file_id,
            album=album,
            caption=caption[:200],
            sent_at=at,
        )
        .returning(FileRow.id)
    )
    return int(made.scalar_one())


def count_files(s: Session, student: StudentId, on: date) -> int:
    """Return how many photos of a student are noted for a date."""
    return s.scalar(select(func.count()).where(FileRow.student_id == student, FileRow.date == on)) or 0


def count_by_day(
    s: Session, students: Sequence[StudentId], first: date, last: date
) -> dict[tuple[StudentId, date], int]:
    """Return how many photos some students sent on each day of a range, where there are any."""
    rows = s.execute(
        select(FileRow.student_id, FileRow.date, func.count())
        .where(
            FileRow.student_id.in_(students),
            FileRow.date.between(first, last),
            FileRow.path.is_distinct_from(""),
        )
        .group_by(FileRow.student_id, FileRow.date)
    )
    return {(StudentId(student), on): count for student, on, count in rows}


def album_seen(s: Session, student: StudentId, album: str) -> bool:
    """Tell whether a photo of that album came before."""
    return bool(s.scalar(select(func.count()).where(FileRow.student_id == student, FileRow.album == album)))


def unfetched(s: Session, limit: int = 20) -> list[tuple[int, str]]:
    """Return (id, file_id) of photos whose bytes are not here yet."""
    rows = s.execute(
        select(FileRow.id, FileRow.file_id).where(FileRow.path.is_(None)).order_by(FileRow.id).limit(limit)
    )
    return [(row[0], row[1]) for row in rows]


def fetched(s: Session, file: int, path: str) -> None:
    """Note where the bytes of a photo are; an empty path: they can't be had."""
    s.execute(update(FileRow).where(FileRow.id == file).values(path=path))


def files_of_day(s: Session, day: DayId) -> list[tuple[int, str, str | None]]:
    """Return (id, caption, path) of a day's photos in order."""
    rows = s.execute(
        select(FileRow.id, FileRow.caption, FileRow.path).where(FileRow.day_id == day).order_by(FileRow.id)
    )
    return [(row[0], row[1], row[2]) for row in rows]


def newest_date(s: Session, student: StudentId) -> date | None:
    """Return the date of a student's newest photo, or None."""
    return s.scalar(select(func.max(FileRow.date)).where(FileRow.student_id == student))


def files_on(s: Session, student: StudentId, on: date) -> list[tuple[str, str]]:
    """Return (the chat service's name, caption) of a student's photos of a date, in order."""
    rows = s.execute(
        select(FileRow.file_id, FileRow.caption)
        .where(FileRow.student_id == student, FileRow.date == on, FileRow.path.is_distinct_from(""))
        .order_by(FileRow.id)
    )
    return [(row[0], row[1]) for row in rows]


def files_between(s: Session, student: StudentId, first: date, last: date) -> list[Photo]:
    """Return a student's photos of a range, both ends in, in order."""
    rows = s.execute(
        select(FileRow.id, FileRow.day_id, FileRow.date, FileRow.caption, FileRow.file_id, FileRow.path)
        .where(FileRow.student_id == student, FileRow.date.between(first, last))
        .order_by(FileRow.date, FileRow.id)
    )
    return [Photo(*row) for row in rows]
