"""What the planner is told: what one student did and is believed to know, and what the tutor wishes for the
day.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from bot.planner.memory import Memory
from bot.vocabulary import LessonId, Outcome, Part, SkillId, TemplateId

WINDOW = 60
"""School days that a history should reach back, so that coverage (45 school days) can be kept."""


@dataclass(frozen=True, slots=True)
class Done:
    """One item of a past school day as it ended, comebacks and extra practice included."""

    template: TemplateId
    skills: tuple[SkillId, ...]
    outcome: Outcome
    missteps: tuple[str, ...] = ()
    hints: int = 0
    part: Part = Part.REVIEW


@dataclass(frozen=True, slots=True)
class PastDay:
    """One school day that lies behind: a day that was opened, whether or not it was finished.

    `number` counts school days from 1, without gaps for days off; `lesson` is the lesson that was met, if
    any; `size` is what `DayPlan.size` said, 0 on small, gentle and other short days; `minutes` is how long
    the day took, None if unknown (pauses over ten minutes left out); `finished` is False if items were left
    untouched.
    """

    day: date
    number: int
    items: tuple[Done, ...] = ()
    lesson: int | None = None
    size: int = 0
    minutes: float | None = None
    finished: bool = True
    days_away: int = 0


@dataclass(frozen=True, slots=True)
class Paces:
    """The student's own middle times, in minutes. The defaults are assumed, not measured."""

    review_item: float = 1.4
    lesson: float = 9.0
    guided_item: float = 2.0
    warm_up: float = 6.0


@dataclass(frozen=True, slots=True)
class History:
    """One student up to the morning of the day that is planned.

    `days`: the last `WINDOW` school days or more, oldest first. `taught`: numbers of the lessons that count
    as met (by lesson, placement or passing over). `left_out`: lessons that won't be taught. `sitting`: 1 or
    2, the sitting of the next lesson that comes next. `school_day`: the number of the day that is planned,
    from 1. `days_away`: school days since the last one that was opened, 0 if it was the one before.
    `unsolved`: templates left unsolved on the last opened day, or so far today when the day is planned anew.
    `tests_done`, `hands_on_done`: places already behind.
    """

    memories: Mapping[SkillId, Memory] = field(default_factory=dict)
    days: tuple[PastDay, ...] = ()
    taught: frozenset[int] = frozenset()
    left_out: frozenset[int] = frozenset()
    sitting: int = 1
    school_day: int = 1
    days_away: int = 0
    light_day: bool = False
    unsolved: tuple[TemplateId, ...] = ()
    tests_done: frozenset[int] = frozenset()
    hands_on_done: frozenset[str] = frozenset()
    paces: Paces = Paces()


@dataclass(frozen=True, slots=True)
class Wishes:
    """The tutor's and family's wishes in force on that day. None means: as the planner thinks best.

    `pinned` templates come first, in this order. `own_items` is how many items of the tutor's own the day
    holds; they take the place of review items. `review_items` sets the number of review items (0 to 48),
    over the planner's own. `minutes` is what the family sets for a whole day. `lesson` puts that lesson
    first in line; `no_lesson`, `small_day`, `off_season` are the day's shape.
    """

    pinned: tuple[TemplateId, ...] = ()
    dropped: frozenset[TemplateId] = frozenset()
    dropped_skills: frozenset[SkillId] = frozenset()
    more_of: frozenset[SkillId] = frozenset()
    fewer_of: frozenset[SkillId] = frozenset()
    own_items: int = 0
    review_items: int | None = None
    minutes: int = 45
    lesson: LessonId | None = None
    no_lesson: bool = False
    small_day: bool = False
    off_season: bool = False
