"""School days, and with them their items (`items.py`), so that a use case needs one import."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime
from typing import Any

import msgspec
from sqlalchemy import Row, bindparam, func, insert, select, update
from sqlalchemy.orm import Session

from bot.records.base import ask, change
from bot.records.day_tables import Fresh, ItemRow, ItemState, Past, SchoolDay, SchoolDayRow, Sent, Stage
from bot.records.items import (
    add_items,
    change_item,
    count_items,
    doubtful_items,
    find_item,
    item,
    items_of,
    last_place,
    next_item,
    past_items,
)
from bot.vocabulary import DayId, LessonId, StudentId

__all__ = [
    "Fresh",
    "ItemRow",
    "ItemState",
    "Past",
    "SchoolDay",
    "SchoolDayRow",
    "Sent",
    "Stage",
    "add_day",
    "add_items",
    "change_day",
    "change_item",
    "close_day",
    "count_items",
    "day",
    "day_number",
    "day_on",
    "days_between",
    "days_of_kinds",
    "doubtful_items",
    "find_day",
    "find_item",
    "item",
    "items_of",
    "last_days",
    "last_place",
    "newest_day",
    "next_item",
    "note_day",
    "past_items",
]

_day_columns = (
    SchoolDayRow.id,
    SchoolDayRow.student_id,
    SchoolDayRow.date,
    SchoolDayRow.kind,
    SchoolDayRow.lesson,
    SchoolDayRow.sitting,
    SchoolDayRow.stage,
    SchoolDayRow.notes,
    SchoolDayRow.small,
    SchoolDayRow.enough,
    SchoolDayRow.on_paper,
    SchoolDayRow.late,
    SchoolDayRow.opened_at,
    SchoolDayRow.started_at,
    SchoolDayRow.ended_at,
    SchoolDayRow.closed_at,
    SchoolDayRow.seconds,
    SchoolDayRow.last_reply_at,
)
_decode_notes = msgspec.json.Decoder(dict[str, object]).decode


def _day(row: Row[Any]) -> SchoolDay:
    values = dict(row._mapping)
    values["student"] = values.pop("student_id")
    values["stage"] = Stage(values["stage"])
    values["notes"] = _decode_notes(values["notes"])
    return SchoolDay(**values)


def add_day(
    s: Session,
    student: StudentId,
    day: date,
    kind: str,
    lesson: LessonId | None,
    now: datetime,
    *,
    sitting: int = 1,
    small: bool = False,
    late: bool = False,
    notes: dict[str, object] | None = None,
) -> DayId | None:
    """Make a student's day; None where that date has one already."""
    if s.scalar(select(SchoolDayRow.id).where(SchoolDayRow.student_id == student, SchoolDayRow.date == day)):
        return None
    made = s.execute(
        insert(SchoolDayRow)
        .values(
            student_id=student,
            date=day,
            kind=kind,
            lesson=lesson,
            sitting=sitting,
            stage=Stage.PUSHED,
            small=small,
            late=late,
            notes=msgspec.json.encode(notes or {}).decode(),
            opened_at=now,
        )
        .returning(SchoolDayRow.id)
    )
    return DayId(made.scalar_one())


_day_by_id = select(*_day_columns).where(SchoolDayRow.id == bindparam("day"))
_day_by_date = select(*_day_columns).where(
    SchoolDayRow.student_id == bindparam("student"), SchoolDayRow.date == bindparam("on")
)
_newest_day = (
    select(*_day_columns)
    .where(SchoolDayRow.student_id == bindparam("student"))
    .order_by(SchoolDayRow.date.desc())
    .limit(1)
)


def day(s: Session, day_id: DayId) -> SchoolDay:
    """Return one day. Raises NoResultFound for an id that is none."""
    return _day(ask(s, _day_by_id, day=day_id).one())


def find_day(s: Session, day_id: int) -> SchoolDay | None:
    """Return one day, or None."""
    row = ask(s, _day_by_id, day=day_id).one_or_none()
    return _day(row) if row else None


def day_on(s: Session, student: StudentId, on: date) -> SchoolDay | None:
    """Return a student's day of a date, or None."""
    row = ask(s, _day_by_date, student=student, on=on).one_or_none()
    return _day(row) if row else None


def newest_day(s: Session, student: StudentId) -> SchoolDay | None:
    """Return a student's latest day, closed or not; None before the first."""
    row = ask(s, _newest_day, student=student).one_or_none()
    return _day(row) if row else None


def days_between(s: Session, student: StudentId, first: date, last: date) -> list[SchoolDay]:
    """Return the days of a range, both ends in, in order."""
    rows = s.execute(
        select(*_day_columns)
        .where(SchoolDayRow.student_id == student, SchoolDayRow.date.between(first, last))
        .order_by(SchoolDayRow.date)
    )
    return [_day(row) for row in rows]


def last_days(s: Session, student: StudentId, before: date, count: int) -> list[SchoolDay]:
    """Return up to `count` days before a date, the newest first."""
    rows = s.execute(
        select(*_day_columns)
        .where(SchoolDayRow.student_id == student, SchoolDayRow.date < before)
        .order_by(SchoolDayRow.date.desc())
        .limit(count)
    )
    return [_day(row) for row in rows]


def days_of_kinds(s: Session, student: StudentId, kinds: Sequence[str], before: date) -> list[SchoolDay]:
    """Return all days of some kinds before a date, in order."""
    rows = s.execute(
        select(*_day_columns)
        .where(SchoolDayRow.student_id == student, SchoolDayRow.kind.in_(kinds), SchoolDayRow.date < before)
        .order_by(SchoolDayRow.date)
    )
    return [_day(row) for row in rows]


def day_number(s: Session, student: StudentId, before: date) -> int:
    """Return how many started days a student had before a date."""
    found = s.scalar(
        select(func.count()).where(
            SchoolDayRow.student_id == student,
            SchoolDayRow.date < before,
            SchoolDayRow.started_at.is_not(None),
        )
    )
    return found or 0


def change_day(s: Session, day_id: DayId, **values: object) -> None:
    """Change columns of a day."""
    change(s, SchoolDayRow, day_id, values)


def note_day(s: Session, of: SchoolDay, **notes: object) -> None:
    """Add to what the day remembers beside its columns."""
    change_day(s, of.id, notes=msgspec.json.encode({**of.notes, **notes}).decode())


def close_day(s: Session, day_id: DayId, now: datetime) -> bool:
    """Close a day; False where it was closed before."""
    done = s.execute(
        update(SchoolDayRow)
        .where(SchoolDayRow.id == day_id, SchoolDayRow.closed_at.is_(None))
        .values(closed_at=now)
    )
    return bool(done.rowcount)  # type: ignore[attr-defined]
