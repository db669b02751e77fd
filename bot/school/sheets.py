"""A day's review as a sheet of paper: of a day that was made, or of one to come, whose items then stand fast."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime

import msgspec
from sqlalchemy.orm import Session

from bot.course.item import Item, Level
from bot.messages import Line, SheetRow
from bot.records import days, wishes
from bot.records.days import Fresh
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school.adjustments import of_student, with_calculator
from bot.school.drawing import draw_all, steps_of
from bot.school.planning import plan_for
from bot.school.school import School
from bot.school.wishes import WishKind, in_force, of_kind
from bot.vocabulary import LessonId, Part, PersonId, Why

LINES = {Level.EASY: 2, Level.MIDDLE: 3, Level.HARD: 4}
"""Ruled lines to write on below an item, by how hard it is (common practice, no source)."""

LETTER_COUNTRIES = frozenset({"US", "CA", "MX", "PH", "CO", "CL", "VE", "GT", "CR", "PA", "SV", "DO", "PR"})
"""Where paper is Letter (8.5 by 11 inches) rather than A4 of ISO 216; from memory. A word in the command decides."""


class Printed(msgspec.Struct, frozen=True):
    """An item that stands on a sheet for a day to come, whole as drawn."""

    item: Item
    why: Why
    because: dict[str, object]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet's rows, numbered as in the chat. `fixed`: they were chosen just now and stand fast from here on."""

    rows: tuple[SheetRow, ...]
    lesson: LessonId | None
    fixed: bool = False
    adjusted: frozenset[str] = frozenset()


def sheet_for(
    s: Session, school: School, student: Student, on: date, by: PersonId, at: datetime, side: str = ""
) -> Sheet:
    """The review of a day as a sheet; for a day to come the planner's choice of now is kept for it.

    Without rows where that day has no review. `side` is whose commands can take a printed sheet back.
    """
    adjusted = of_student(s, student, on)
    made = days.day_on(s, student.id, on)
    if made is not None:
        items = days.items_of(s, made.id, Part.REVIEW)
        return Sheet(
            tuple(_row(each.place, each.item, made.lesson) for each in items), made.lesson, False, adjusted
        )
    plan, in_force_then = plan_for(s, school, student, on)
    kept = printed(in_force_then)
    fixed = kept is None
    if kept is None:
        kept = [*own_items(in_force_then, plan.own_items), *draw_all(school, plan.review, Part.REVIEW)]
        kept = with_calculator(kept, adjusted)
        if kept:
            _keep(s, student, on, kept, by, at, side)
    rows = tuple(_row(n, each.item, plan.lesson) for n, each in enumerate(kept, start=1))
    return Sheet(rows, plan.lesson, fixed and bool(rows), adjusted)


def paper_size(student: Student) -> str:
    """The paper that is usual where a household lives: "a4" or "letter"."""
    return "letter" if student.country in LETTER_COUNTRIES else "a4"


def without_answers(rows: Iterable[SheetRow]) -> tuple[SheetRow, ...]:
    """The rows as they go on the sheet itself."""
    return tuple(msgspec.structs.replace(row, answer="", unit="", steps=()) for row in rows)


def own_items(wished: Sequence[Wish], count: int) -> list[Fresh]:
    """The tutor's own items for a day, as many as have room."""
    return [
        Fresh(
            Part.REVIEW,
            0,
            msgspec.convert(wish.what["item"], type=Item),
            Why.TUTOR_ASKED,
            {"by": str(wish.what.get("tutor", ""))},
        )
        for wish in of_kind(wished, WishKind.OWN_ITEM)[:count]
    ]


def printed(wished: Iterable[Wish]) -> list[Fresh] | None:
    """The review as it was printed for a day; None where nothing was."""
    kept = of_kind(wished, WishKind.PRINTED)
    if not kept:
        return None
    rows = msgspec.convert(kept[-1].what["items"], type=list[Printed])
    return [Fresh(Part.REVIEW, 0, each.item, each.why, each.because) for each in rows]


def is_printed(s: Session, student: Student, on: date) -> bool:
    """Whether a sheet for a day to come was made."""
    return printed(in_force(s, student, on)) is not None


def _keep(
    s: Session, student: Student, on: date, rows: Sequence[Fresh], by: PersonId, at: datetime, side: str
) -> None:
    items = msgspec.to_builtins([Printed(each.item, each.why, each.because) for each in rows])
    line = Line("line-printed", {"name": student.name, "date_day": on.isoformat()})
    change = wishes.propose(
        s,
        by,
        "sheet",
        [Wish(WishKind.PRINTED, {"items": items}, on, on, student=student.id)],
        at,
        preview=msgspec.json.encode([line]).decode(),
        before={"steps": [], "side": side, "final": False},
    )
    wishes.confirm(s, change, at)


def _row(number: int, item: Item, lesson: LessonId | None) -> SheetRow:
    return SheetRow(
        n=number,
        ask=item.ask,
        source="" if item.lesson == lesson else item.lesson_title,
        figure=item.figure,
        choices=item.choices,
        lines=0 if item.choices else LINES[item.level],
        calculator=item.calculator,
        answer=item.answer_shown,
        unit=item.unit_shown,
        steps=steps_of(item),
    )
