"""What a school day and its items are: the tables, and the frozen data that use cases see."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from sqlalchemy import ForeignKey, Text, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from bot.course.item import Item
from bot.records.base import Base, UtcDateTime
from bot.vocabulary import DayId, ItemId, LessonId, Outcome, Part, SkillId, StudentId, TemplateId, Why


class Stage(StrEnum):
    """How far a school day has come."""

    PUSHED = "pushed"
    """Made and announced; Start was not pressed."""
    WARM_UP = "warm-up"
    TEST = "test"
    PLACING = "placing"
    """A look at where to start is under way."""
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


@dataclass(frozen=True, slots=True)
class Unmarked:
    """A day with review items that nobody answered or marked: how many."""

    student: StudentId
    date: date
    on_paper: bool
    closed: bool
    items: int


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
