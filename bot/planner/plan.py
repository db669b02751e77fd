"""A day plan: what the planner proposes for one student and date, with the reason for every item."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from bot.vocabulary import LessonId, SkillId, TemplateId, Why


class DayKind(StrEnum):
    """The shape of a school day."""

    LESSON = "lesson"
    LIGHT = "light"
    """Review only, once a week; room to catch up."""
    REVIEW_ONLY = "review-only"
    """The first day after three or more school days away, or as wished."""
    SMALL = "small"
    """Six review items, no lesson."""
    TEST = "test"
    GENTLE = "gentle"
    """After ten or more school days away: few items, sure ones first, no lesson."""
    OFF_SEASON = "off-season"
    """Keeps things alive between courses, about ten minutes."""
    PLACEMENT = "placement"
    """A look at where to start; nothing is taught and nothing counted."""


class WarmUp(StrEnum):
    """The pieces of a warm-up; two a day, by turns."""

    NUMBER_FACTS = "number-facts"
    MENTAL_MATH = "mental-math"
    PUZZLE = "puzzle"


@dataclass(frozen=True, slots=True)
class Because:
    """What makes the reason of a pick plain: the skill it is for, days since it was last met, a misstep's
    name.

    `days_since` counts calendar days; None if the skill was never met in an item.
    """

    skill: SkillId | None = None
    days_since: int | None = None
    misstep: str | None = None


@dataclass(frozen=True, slots=True)
class Pick:
    """One item of the plan: draw `template` with `seed`."""

    template: TemplateId
    seed: int
    why: Why
    because: Because = Because()


class DropReason(StrEnum):
    """Why something that would have stood in the plan doesn't."""

    NO_TIME = "no-time"
    """Would not have fitted the family's minutes."""
    TUTOR = "tutor"
    """The tutor dropped it."""
    DAYS_AWAY = "days-away"
    """Days were missed; what they held isn't made up for, it comes in its turn."""
    NOT_TAUGHT = "not-taught"
    """Wished for, but it needs a lesson that wasn't met yet."""
    SMALL_DAY = "small-day"


@dataclass(frozen=True, slots=True)
class Dropped:
    """A lesson, a template or a number of review items that was left out of the day, and why."""

    reason: DropReason
    lesson: LessonId | None = None
    template: TemplateId | None = None
    items: int = 0


@dataclass(frozen=True, slots=True)
class DayPlan:
    """One student's day.

    `review` stands in the order in which it is asked; `minutes` is an estimate of the whole. `size` is the
    number of review items a full day holds for this student by now, to be kept with the day: the next plan
    builds on it. `test` is the number of the test that is due.
    """

    day: date
    kind: DayKind
    warm_up: tuple[WarmUp, ...] = ()
    lesson: LessonId | None = None
    sitting: int = 1
    guided: tuple[Pick, ...] = ()
    review: tuple[Pick, ...] = ()
    test: int | None = None
    hands_on: str | None = None
    strand: int | None = None
    """On a day of the week of review: its strand, counted from 0."""
    own_items: int = 0
    size: int = 0
    minutes: float = 0.0
    dropped: tuple[Dropped, ...] = ()
