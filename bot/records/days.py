"""School days and their items, each whole as it was drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from typing import Any

import msgspec
from sqlalchemy import (
    ForeignKey,
    Row,
    Select,
    Text,
    UniqueConstraint,
    bindparam,
    func,
    insert,
    or_,
    select,
    update,
)
from sqlalchemy.orm import Mapped, Session, mapped_column

from bot.course.item import Item
from bot.records.base import Base, UtcDateTime, ask, change
from bot.vocabulary import DayId, ItemId, LessonId, Outcome, Part, SkillId, StudentId, TemplateId, Why


class Stage(StrEnum):
    """How far a school day has come."""

    PUSHED = "pushed"
    """Made and announced; Start was not pressed."""
    WARM_UP = "warm-up"
    TEST = "test"
    CARD = "card"
    """The lesson card was shown; guided practice waits for a press."""
    KNOWN = "known"
    """The student shows that the lesson is known already."""
    GUIDED = "guided"
    REVIEW = "review"
    EXTRA = "extra"
    HANDS_ON = "hands-on"
    DONE = "done"
    """Nothing is left to do, or the student had enough."""


class ItemState(StrEnum):
    """Where an item stands in its day."""

    WAITING = "waiting"
    SHOWN = "shown"
    DONE = "done"
    """Solved, or given up after the last try."""
    NOTED = "noted"
    """Answered in a test that isn't handed in yet."""
    PUT_BY = "put-by"
    """Left without an answer; it doesn't come up by itself again, but may be answered until the evening."""
    DROPPED = "dropped"
    """Taken out by a tutor or by a day made small; it never counts."""


class SchoolDayRow(Base):
    """One student's day. There is one a date."""

    __tablename__ = "school_day"
    __table_args__ = (UniqueConstraint("student_id", "date"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    student_id: Mapped[int] = mapped_column(ForeignKey("student.id"), index=True)
    date: Mapped[date]
    kind: Mapped[str]
    lesson: Mapped[str | None]
    sitting: Mapped[int] = mapped_column(default=1)
    stage: Mapped[str]
    notes: Mapped[str] = mapped_column(Text, default="{}")
    """What else the plan said: warm-up kinds, minutes, what was dropped."""
    small: Mapped[bool] = mapped_column(default=False)
    enough: Mapped[bool] = mapped_column(default=False)
    """Ended by choice before everything was done."""
    on_paper: Mapped[bool] = mapped_column(default=False)
    late: Mapped[bool] = mapped_column(default=False)
    """The push was missed by our fault."""
    opened_at: Mapped[datetime] = mapped_column(UtcDateTime)
    started_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    ended_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    closed_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    seconds: Mapped[int] = mapped_column(default=0)
    """Time at work: gaps between replies of up to ten minutes, added up."""
    last_reply_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


class ItemRow(Base):
    """One item of a day. `data` holds all that was drawn, so editing a lesson never rewrites history."""

    __tablename__ = "item"

    id: Mapped[int] = mapped_column(primary_key=True)
    day_id: Mapped[int] = mapped_column(ForeignKey("school_day.id"), index=True)
    student_id: Mapped[int] = mapped_column(ForeignKey("student.id"), index=True)
    part: Mapped[str]
    place: Mapped[int]
    """Order within the part; also the item's number on the sheet."""
    template: Mapped[str]
    lesson: Mapped[str]
    skills: Mapped[str] = mapped_column(Text)
    why: Mapped[str]
    because: Mapped[str] = mapped_column(Text, default="{}")
    data: Mapped[str] = mapped_column(Text)
    state: Mapped[str]
    outcome: Mapped[str | None]
    tries: Mapped[int] = mapped_column(default=0)
    """Wrong tries so far."""
    hints: Mapped[int] = mapped_column(default=0)
    helps: Mapped[int] = mapped_column(default=0)
    """How often help was asked for."""
    steps_shown: Mapped[int] = mapped_column(default=0)
    unread: Mapped[int] = mapped_column(default=0)
    """Replies in a row that could not be read."""
    not_started: Mapped[bool] = mapped_column(default=False)
    """The free word on an answer that is the question again was said."""
    missed_after_hint: Mapped[bool] = mapped_column(default=False)
    """A wrong try followed a hint, so the worked solution is open."""
    with_tutor: Mapped[bool] = mapped_column(default=False)
    solution_shown: Mapped[bool] = mapped_column(default=False)
    comeback_of: Mapped[int | None]


@dataclass(frozen=True, slots=True)
class SchoolDay:
    """A school day as the use cases see it. Times are UTC, `date` is the household's."""

    id: DayId
    student: StudentId
    date: date
    kind: str
    lesson: LessonId | None
    sitting: int
    stage: Stage
    notes: dict[str, object]
    small: bool
    enough: bool
    on_paper: bool
    late: bool
    opened_at: datetime
    started_at: datetime | None
    ended_at: datetime | None
    closed_at: datetime | None
    seconds: int
    last_reply_at: datetime | None


@dataclass(frozen=True, slots=True)
class Sent:
    """An item of a day: what was drawn, and how it stands."""

    id: ItemId
    day: DayId
    student: StudentId
    part: Part
    place: int
    template: TemplateId
    lesson: LessonId
    why: Why
    because: dict[str, object]
    item: Item
    state: ItemState
    outcome: Outcome | None
    tries: int
    hints: int
    helps: int
    steps_shown: int
    unread: int
    not_started: bool
    missed_after_hint: bool
    with_tutor: bool
    solution_shown: bool
    comeback_of: ItemId | None


@dataclass(frozen=True, slots=True)
class Fresh:
    """An item about to be stored."""

    part: Part
    place: int
    item: Item
    why: Why
    because: dict[str, object]
    comeback_of: ItemId | None = None


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
_item_columns = (
    ItemRow.id,
    ItemRow.day_id,
    ItemRow.student_id,
    ItemRow.part,
    ItemRow.place,
    ItemRow.template,
    ItemRow.lesson,
    ItemRow.why,
    ItemRow.because,
    ItemRow.data,
    ItemRow.state,
    ItemRow.outcome,
    ItemRow.tries,
    ItemRow.hints,
    ItemRow.helps,
    ItemRow.steps_shown,
    ItemRow.unread,
    ItemRow.not_started,
    ItemRow.missed_after_hint,
    ItemRow.with_tutor,
    ItemRow.solution_shown,
    ItemRow.comeback_of,
)
_decode_item = msgspec.json.Decoder(Item).decode
_decode_notes = msgspec.json.Decoder(dict[str, object]).decode


def _day(row: Row[Any]) -> SchoolDay:
    values = dict(row._mapping)
    values["student"] = values.pop("student_id")
    values["stage"] = Stage(values["stage"])
    values["notes"] = _decode_notes(values["notes"])
    return SchoolDay(**values)


def _sent(row: Row[Any]) -> Sent:
    values = dict(row._mapping)
    values["day"] = values.pop("day_id")
    values["student"] = values.pop("student_id")
    values["part"] = Part(values["part"])
    values["why"] = Why(values["why"])
    values["because"] = _decode_notes(values["because"])
    values["item"] = _decode_item(values.pop("data"))
    values["state"] = ItemState(values["state"])
    values["outcome"] = values["outcome"] and Outcome(values["outcome"])
    return Sent(**values)


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


def add_items(s: Session, day: DayId, student: StudentId, fresh: Sequence[Fresh]) -> list[ItemId]:
    """Store items of a day, whole as drawn, in the order given."""
    if not fresh:
        return []
    made = s.execute(
        insert(ItemRow).returning(ItemRow.id, sort_by_parameter_order=True),
        [
            {
                "day_id": day,
                "student_id": student,
                "part": each.part,
                "place": each.place,
                "template": each.item.template,
                "lesson": each.item.lesson,
                "skills": ",".join(each.item.skills),
                "why": each.why,
                "because": msgspec.json.encode(each.because).decode(),
                "data": msgspec.json.encode(each.item).decode(),
                "state": ItemState.WAITING,
                "comeback_of": each.comeback_of,
            }
            for each in fresh
        ],
    )
    return [ItemId(row.id) for row in made]


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


_items: Select[Any] = select(*_item_columns)
_item_by_id = _items.where(ItemRow.id == bindparam("item"))
_next_item = (
    _items.where(
        ItemRow.day_id == bindparam("day"),
        ItemRow.part == bindparam("part"),
        ItemRow.state.in_((ItemState.WAITING, ItemState.SHOWN)),
    )
    .order_by(ItemRow.place, ItemRow.id)
    .limit(1)
)
_count_items = select(func.count().filter(ItemRow.state == ItemState.DONE), func.count()).where(
    ItemRow.day_id == bindparam("day"),
    ItemRow.part == bindparam("part"),
    ItemRow.state != ItemState.DROPPED,
)


def item(s: Session, item_id: ItemId) -> Sent:
    """Return one item. Raises NoResultFound for an id that is none."""
    return _sent(ask(s, _item_by_id, item=item_id).one())


def find_item(s: Session, item_id: int) -> Sent | None:
    """Return one item, or None."""
    row = ask(s, _item_by_id, item=item_id).one_or_none()
    return _sent(row) if row else None


def items_of(s: Session, day_id: DayId, part: Part | None = None, *, dropped: bool = False) -> list[Sent]:
    """Return the items of a day, or of one part of it, in order; those that were dropped only if asked for."""
    query = _items.where(ItemRow.day_id == day_id)
    if not dropped:
        query = query.where(ItemRow.state != ItemState.DROPPED)
    if part is not None:
        query = query.where(ItemRow.part == part)
    rows = s.execute(query.order_by(ItemRow.place, ItemRow.id))
    found = [_sent(row) for row in rows]
    order = list(Part)
    return sorted(found, key=lambda each: (order.index(each.part), each.place))


def next_item(s: Session, day_id: DayId, part: Part) -> Sent | None:
    """Return the first item of a part that still has to be done; what was put off comes last."""
    row = ask(s, _next_item, day=day_id, part=part).one_or_none()
    return _sent(row) if row else None


def count_items(s: Session, day_id: DayId, part: Part) -> tuple[int, int]:
    """Return how many items of a part are done, and how many there are."""
    row = ask(s, _count_items, day=day_id, part=part).one()
    return row[0], row[1]


def last_place(s: Session, day_id: DayId, part: Part) -> int:
    """Return the highest place in a part, 0 where it is empty."""
    return (
        s.scalar(select(func.max(ItemRow.place)).where(ItemRow.day_id == day_id, ItemRow.part == part)) or 0
    )


def change_item(s: Session, item_id: ItemId, **values: object) -> None:
    """Change how an item stands; what was drawn never changes."""
    if "data" in values:
        raise KeyError("an item keeps what was drawn")
    change(s, ItemRow, item_id, values)


@dataclass(frozen=True, slots=True)
class Past:
    """An item of an earlier day, as planning and digests need it."""

    id: ItemId
    date: date
    part: Part
    template: TemplateId
    lesson: LessonId
    skills: tuple[SkillId, ...]
    why: Why
    state: ItemState
    outcome: Outcome | None
    tries: int
    hints: int


def past_items(s: Session, student: StudentId, since: date, before: date) -> list[Past]:
    """Return items of the days from `since` up to, not including, `before`; nothing drawn is decoded."""
    rows = s.execute(
        select(
            ItemRow.id,
            SchoolDayRow.date,
            ItemRow.part,
            ItemRow.template,
            ItemRow.lesson,
            ItemRow.skills,
            ItemRow.why,
            ItemRow.state,
            ItemRow.outcome,
            ItemRow.tries,
            ItemRow.hints,
        )
        .join(SchoolDayRow, SchoolDayRow.id == ItemRow.day_id)
        .where(
            ItemRow.student_id == student,
            SchoolDayRow.date >= since,
            SchoolDayRow.date < before,
            ItemRow.state != ItemState.DROPPED,
        )
        .order_by(SchoolDayRow.date, ItemRow.place, ItemRow.id)
    )
    return [
        Past(
            ItemId(row.id),
            row.date,
            Part(row.part),
            TemplateId(row.template),
            LessonId(row.lesson),
            tuple(SkillId(skill) for skill in row.skills.split(",") if skill),
            Why(row.why),
            ItemState(row.state),
            row.outcome and Outcome(row.outcome),
            row.tries,
            row.hints,
        )
        for row in rows
    ]


def doubtful_items(s: Session, students: Sequence[StudentId], unread: int = 2) -> list[Sent]:
    """Return items that were passed to the tutor, or that got that many unreadable replies, the oldest first."""
    rows = s.execute(
        _items.where(
            ItemRow.student_id.in_(students),
            or_(ItemRow.with_tutor, ItemRow.unread >= unread),
            ItemRow.state != ItemState.DROPPED,
        ).order_by(ItemRow.id)
    )
    return [_sent(row) for row in rows]
