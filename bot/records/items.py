"""The items of school days, each whole as it was drawn."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

import msgspec
from sqlalchemy import Row, Select, bindparam, func, insert, or_, select
from sqlalchemy.orm import Session

from bot.course.item import Item
from bot.records.base import ask, change
from bot.records.day_tables import Fresh, ItemRow, ItemState, Past, SchoolDayRow, Sent
from bot.vocabulary import DayId, ItemId, LessonId, Outcome, Part, SkillId, StudentId, TemplateId, Why

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
_decode_because = msgspec.json.Decoder(dict[str, object]).decode


def _sent(row: Row[Any]) -> Sent:
    values = dict(row._mapping)
    values["day"] = values.pop("day_id")
    values["student"] = values.pop("student_id")
    values["part"] = Part(values["part"])
    values["why"] = Why(values["why"])
    values["because"] = _decode_because(values["because"])
    values["item"] = _decode_item(values.pop("data"))
    values["state"] = ItemState(values["state"])
    values["outcome"] = values["outcome"] and Outcome(values["outcome"])
    return Sent(**values)


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
