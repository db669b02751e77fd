"""Keeping pace with real life: what is offered after a bad day or on a good one, and the look at
half-year.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from bot.planner.calendar import Finish, SchoolCalendar, finish, is_light_day, school_days
from bot.planner.history import History, PastDay, Wishes
from bot.planner.load import fixed_minutes
from bot.planner.plan_day import GUIDED
from bot.planner.syllabus import Lesson, Syllabus
from bot.vocabulary import LessonId, Outcome, Part

OFFER_SMALL_AFTER, TELL_TUTOR_AFTER = 2, 3
"""Unfinished days in a row after which a small day is offered, and after which the tutor is told."""
GOOD_DAY = 0.8
"""Share of first tries on a day after which a second lesson may be offered. Common practice, no source."""
PASS_OVER = 5
"""Right answers at first try by which a lesson may be passed over."""
OFF_SEASON_DAYS = (0, 2, 4)
"""Weekdays of the off-season: Monday, Wednesday, Friday."""


@dataclass(frozen=True, slots=True)
class Offers:
    """What the morning may offer; nothing of it happens by itself.

    `catch_up` is the lesson that a light day could hold if the household is behind its plan.
    """

    small_day: bool = False
    tell_tutor: bool = False
    catch_up: LessonId | None = None


class Advice(StrEnum):
    """What the look at half-year may suggest."""

    GO_ON = "go-on"
    LEAVE_OUT_EXTRAS = "leave-out-extras"
    SLOW_DOWN = "slow-down"


@dataclass(frozen=True, slots=True)
class HalfYear:
    """The look at half-year: when the course would be done, with and without its extra lessons, and a
    suggestion."""

    advice: Advice
    finish: Finish | None
    without_extras: Finish | None


def morning_offers(syllabus: Syllabus, history: History, days_behind: int) -> Offers:
    """What to offer in the morning. `days_behind`: lesson days by which the household is behind its plan."""
    unfinished = unfinished_in_a_row(history)
    waiting = syllabus.next_after(history.taught, history.left_out)
    catch_up = history.light_day and days_behind > 0 and waiting is not None and unfinished == 0
    return Offers(
        small_day=unfinished >= OFFER_SMALL_AFTER,
        tell_tutor=unfinished >= TELL_TUTOR_AFTER,
        catch_up=waiting.id if catch_up and waiting is not None else None,
    )


def unfinished_in_a_row(history: History) -> int:
    """How many of the last opened days in a row were not finished."""
    count = 0
    for past in reversed(history.days):
        if past.finished:
            break
        count += 1
    return count


def second_lesson(syllabus: Syllabus, history: History, today: PastDay, wishes: Wishes) -> LessonId | None:
    """The lesson that could be taken today as well: all is done, most at first try, and the minutes are
    left.
    """
    if not today.finished or today.lesson is None or today.minutes is None:
        return None
    asked = [item for item in today.items if item.part in (Part.REVIEW, Part.GUIDED)]
    right = sum(item.outcome is Outcome.FIRST_TRY for item in asked)
    lesson_minutes = fixed_minutes(history.paces, True, GUIDED) - history.paces.warm_up
    if not asked or right < GOOD_DAY * len(asked) or today.minutes + lesson_minutes > wishes.minutes:
        return None
    following = syllabus.next_after(history.taught | {today.lesson}, history.left_out)
    return following.id if following is not None else None


def may_pass_over(outcomes: tuple[Outcome, ...]) -> bool:
    """Whether a lesson is known: its first five items on it were all right at first try."""
    return len(outcomes) >= PASS_OVER and all(o is Outcome.FIRST_TRY for o in outcomes[:PASS_OVER])


def is_off_season_day(day: date) -> bool:
    """Three days a week, when the household wants the off-season at all."""
    return day.weekday() in OFF_SEASON_DAYS


def days_needed(syllabus: Syllabus, history: History, extras: bool = True) -> int:
    """Lesson days still to come: one a sitting, one a test."""
    behind = history.taught | history.left_out
    left = [lesson for lesson in syllabus.lessons if lesson.n not in behind and (extras or lesson.core)]
    started = 1 if left and history.sitting == 2 else 0
    tests = sum(test.n not in history.tests_done for test in syllabus.tests)
    return sum(lesson.sittings for lesson in left) - started + tests


def days_behind(calendar: SchoolCalendar, first_day: date, today: date, lesson_days_taken: int) -> int:
    """Lesson days that the calendar held from `first_day` up to yesterday and that did not take place."""
    planned = [
        day
        for day in school_days(calendar, first_day, today - timedelta(days=1))
        if not is_light_day(calendar, day)
    ]
    return max(0, len(planned) - lesson_days_taken)


def half_year_look(
    syllabus: Syllabus,
    history: History,
    calendar: SchoolCalendar,
    today: date,
    wanted: date,
    planned: int,
    taken: int,
) -> HalfYear:
    """Where the year is heading, half-way: `wanted` is the day by which the family would like to be done.

    `planned` and `taken` are lesson days of the last weeks, as in `calendar.finish`. Go on if the middle of
    the range is in time; else leave out the extra lessons if that is enough; else slow down and let it take
    longer.
    """
    whole = finish(calendar, today, days_needed(syllabus, history), planned, taken)
    core = finish(calendar, today, days_needed(syllabus, history, extras=False), planned, taken)
    if whole is not None and _middle(whole) <= wanted:
        advice = Advice.GO_ON
    elif core is not None and _middle(core) <= wanted and core != whole:
        advice = Advice.LEAVE_OUT_EXTRAS
    else:
        advice = Advice.SLOW_DOWN
    return HalfYear(advice, whole, core)


def extra_lessons(syllabus: Syllabus, history: History) -> tuple[Lesson, ...]:
    """Lessons still to come that may be left out."""
    behind = history.taught | history.left_out
    return tuple(lesson for lesson in syllabus.lessons if not lesson.core and lesson.n not in behind)


def _middle(range_: Finish) -> date:
    return range_.early + (range_.late - range_.early) / 2
