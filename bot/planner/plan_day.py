"""One student's day, from what lies behind and what is wished: the same inputs give the same plan."""

from __future__ import annotations

from datetime import date
from hashlib import blake2b

from bot.planner.closing import due_test, of_strand, strand_due
from bot.planner.history import History, Wishes
from bot.planner.load import (
    FEWEST,
    GENTLE_ITEMS,
    OFF_SEASON_MINUTES,
    SMALL_DAY_ITEMS,
    day_size,
    fixed_minutes,
    review_size,
)
from bot.planner.order import arrange
from bot.planner.plan import DayKind, DayPlan, Dropped, DropReason, Pick, WarmUp
from bot.planner.review import choose, choose_sure
from bot.planner.syllabus import Lesson, Syllabus, Template, TestPlace
from bot.planner.table import Choice
from bot.vocabulary import TemplateId, Why

GUIDED = 4
"""Guided items of a lesson: two walked, two alone."""
AWAY, LONG_AWAY = 3, 10
"""School days away after which the first day back is review only, and after which the way back is gentle."""
GENTLE_DAYS = 3
"""Days that the gentle way back takes."""


def plan_day(day: date, syllabus: Syllabus, history: History, wishes: Wishes, seed: int) -> DayPlan:
    """Plan one student's school day.

    `seed` is the student's own number; with the day and the template it fixes each item's draw. Nothing is
    asked before it was taught, nothing piles up: a missed day's lesson waits and its review comes in its
    turn.
    """
    test = due_test(syllabus, history)
    kind = _kind(history, wishes, test)
    lesson = _lesson_of(syllabus, history, wishes) if kind is DayKind.LESSON else None
    if kind is DayKind.LESSON and lesson is None:
        kind = DayKind.LIGHT
    strand = strand_due(syllabus, history) if kind is DayKind.LIGHT else None

    guided = _guided(syllabus, lesson, history, wishes)
    count = _count(kind, history, wishes, lesson, len(guided))
    own_items = min(wishes.own_items, count) if wishes.review_items is None else wishes.own_items
    pick = choose_sure if kind is DayKind.GENTLE else choose
    picks = pick(
        day,
        syllabus,
        history,
        wishes if strand is None else of_strand(syllabus, wishes, strand),
        max(0, count - wishes.own_items),
        lesson.n if lesson else None,
        frozenset(template.id for template in guided),
    )
    review = arrange(picks)
    return DayPlan(
        day=day,
        kind=kind,
        warm_up=_warm_up(history) if kind is not DayKind.OFF_SEASON else (),
        lesson=lesson.id if lesson else None,
        sitting=history.sitting if lesson else 1,
        guided=tuple(Pick(template.id, seed_of(seed, day, template.id), Why.TODAY) for template in guided),
        review=tuple(_pick(choice, seed, day, guided) for choice in review),
        test=test.n if test and kind is DayKind.TEST else None,
        hands_on=_hands_on(syllabus, history) if kind is DayKind.LIGHT else None,
        strand=strand,
        own_items=own_items,
        size=_size(kind, history, wishes),
        minutes=round(
            fixed_minutes(history.paces, lesson is not None, len(guided))
            + (len(review) + own_items) * history.paces.review_item,
            1,
        ),
        dropped=_dropped(syllabus, history, wishes, kind, lesson, count),
    )


def seed_of(seed: int, day: date, template: TemplateId, again: int = 0) -> int:
    """The draw's seed (31 bits) of a template on a day; `again` counts further draws of it on that day."""
    digest = blake2b(f"{seed}/{day.isoformat()}/{template}/{again}".encode(), digest_size=4).digest()
    return int.from_bytes(digest) >> 1


def _kind(history: History, wishes: Wishes, test: TestPlace | None) -> DayKind:
    if wishes.off_season:
        return DayKind.OFF_SEASON
    if wishes.small_day:
        return DayKind.SMALL
    way_back = [history.days_away, *(past.days_away for past in history.days[1 - GENTLE_DAYS :])]
    if max(way_back) >= LONG_AWAY:
        return DayKind.GENTLE
    if history.days_away >= AWAY or wishes.no_lesson:
        return DayKind.REVIEW_ONLY
    if test is not None:
        return DayKind.TEST
    if history.light_day and wishes.lesson is None:
        return DayKind.LIGHT
    return DayKind.LESSON


def _lesson_of(syllabus: Syllabus, history: History, wishes: Wishes) -> Lesson | None:
    if wishes.lesson is not None and wishes.lesson in syllabus.by_id:
        return syllabus.by_id[wishes.lesson]
    return syllabus.next_after(history.taught, history.left_out)


def _guided(
    syllabus: Syllabus, lesson: Lesson | None, history: History, wishes: Wishes
) -> tuple[Template, ...]:
    """Up to four items of the lesson's own templates, easy to hard. The first of two sittings has only what its
    card taught; the second begins with what is new on that day.
    """
    if lesson is None:
        return ()
    met = history.taught | {lesson.n}
    own = [
        template
        for template in syllabus.templates_of.get(lesson.id, ())
        if template.guided
        and template.id not in wishes.dropped
        and syllabus.needed_lesson[template.id] <= met
    ]
    if history.sitting < lesson.sittings:
        own = [template for template in own if template.sitting <= history.sitting]
    elif lesson.sittings == 2:
        own.sort(key=lambda template: -template.sitting)
    return tuple(sorted(own[:GUIDED], key=lambda template: template.level))


def _count(kind: DayKind, history: History, wishes: Wishes, lesson: Lesson | None, guided: int) -> int:
    match kind:
        case DayKind.SMALL:
            return SMALL_DAY_ITEMS
        case DayKind.GENTLE:
            return GENTLE_ITEMS
        case DayKind.OFF_SEASON:
            return max(FEWEST, int(OFF_SEASON_MINUTES / history.paces.review_item))
        case DayKind.TEST:
            return 0
        case _:
            size = day_size(history, wishes, lesson is not None, guided)
            if lesson is not None and lesson.sittings == 2 and wishes.review_items is None:
                return max(FEWEST, size // 2)
            return size


def _size(kind: DayKind, history: History, wishes: Wishes) -> int:
    full = kind in (DayKind.LESSON, DayKind.LIGHT, DayKind.REVIEW_ONLY)
    return review_size(history, wishes.minutes) if full else 0


def _hands_on(syllabus: Syllabus, history: History) -> str | None:
    for place in syllabus.hands_on:
        if place.id not in history.hands_on_done and place.after in history.taught:
            return place.id
    return None


def _warm_up(history: History) -> tuple[WarmUp, ...]:
    second = WarmUp.MENTAL_MATH if history.school_day % 2 else WarmUp.PUZZLE
    return (WarmUp.NUMBER_FACTS, second)


def _pick(choice: Choice, seed: int, day: date, guided: tuple[Template, ...]) -> Pick:
    name = choice.template.id
    again = 1 if choice.template in guided else 0  # other numbers than an hour ago
    return Pick(name, seed_of(seed, day, name, again), choice.why, choice.because)


def _dropped(
    syllabus: Syllabus, history: History, wishes: Wishes, kind: DayKind, lesson: Lesson | None, count: int
) -> tuple[Dropped, ...]:
    dropped: list[Dropped] = []
    waiting = syllabus.next_after(history.taught, history.left_out)
    if kind in (DayKind.SMALL, DayKind.REVIEW_ONLY, DayKind.GENTLE) and waiting is not None:
        reason = {DayKind.SMALL: DropReason.SMALL_DAY, DayKind.REVIEW_ONLY: DropReason.DAYS_AWAY}.get(
            kind, DropReason.DAYS_AWAY
        )
        if kind is DayKind.REVIEW_ONLY and history.days_away < AWAY:
            reason = DropReason.TUTOR
        dropped.append(Dropped(reason, lesson=waiting.id))
    full = review_size(history, wishes.minutes)
    if kind in (DayKind.LESSON, DayKind.LIGHT) and wishes.review_items is None and count < full:
        dropped.append(Dropped(DropReason.NO_TIME, items=full - count))
    met = history.taught | ({lesson.n} if lesson else frozenset())
    for name in wishes.pinned:
        if name in syllabus.template and not syllabus.needed_lesson[name] <= met:
            dropped.append(Dropped(DropReason.NOT_TAUGHT, template=name))
    dropped += [Dropped(DropReason.TUTOR, template=name) for name in sorted(wishes.dropped)]
    return tuple(dropped)
