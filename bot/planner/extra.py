"""More practice, when the student asks for it: it counts for memory and never against anybody."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from bot.planner.history import History, Wishes
from bot.planner.order import arrange
from bot.planner.pace import PASS_OVER
from bot.planner.plan import Because, Pick
from bot.planner.plan_day import seed_of
from bot.planner.review import choose, choose_weak
from bot.planner.syllabus import EASY, Syllabus
from bot.planner.table import Choice
from bot.vocabulary import LessonId, TemplateId, Why

TEN = 10


@dataclass(frozen=True, slots=True)
class More:
    """What is asked for: items of one lesson, of what's weak, or a mix of ten (neither)."""

    lesson: LessonId | None = None
    weak: bool = False
    items: int = TEN


def plan_extra(
    day: date,
    syllabus: Syllabus,
    history: History,
    wishes: Wishes,
    more: More,
    seed: int,
    used_today: frozenset[TemplateId] = frozenset(),
) -> tuple[Pick, ...]:
    """Items for extra practice, in order. Those of `used_today` give way to others that are worth as much,
    and come with new numbers.

    A lesson that wasn't met yet gives nothing.
    """
    if more.lesson is not None:
        chosen = _of_lesson(syllabus, history, wishes, more.lesson, more.items, used_today)
    else:
        pick = choose_weak if more.weak else choose
        chosen = arrange(
            pick(day, syllabus, replace(history, unsolved=()), wishes, more.items, None, used_today)
        )
    return tuple(
        Pick(
            choice.template.id,
            seed_of(seed, day, choice.template.id, again=100 + place),
            Why.EXTRA,
            choice.because,
        )
        for place, choice in enumerate(chosen)
    )


def pass_over_items(syllabus: Syllabus, lesson: LessonId, day: date, seed: int) -> tuple[Pick, ...]:
    """Five items of a lesson by which a student may show that it is known already; its hardest templates
    first.
    """
    own = sorted(syllabus.templates_of.get(lesson, ()), key=lambda template: (-template.level, template.id))
    return tuple(
        Pick(own[place % len(own)].id, seed_of(seed, day, own[place % len(own)].id, 200 + place), Why.TODAY)
        for place in range(PASS_OVER if own else 0)
    )


def _of_lesson(
    syllabus: Syllabus,
    history: History,
    wishes: Wishes,
    lesson: LessonId,
    items: int,
    used_today: frozenset[TemplateId],
) -> list[Choice]:
    if lesson not in syllabus.by_id or syllabus.by_id[lesson].n not in history.taught:
        return []
    own = [
        template
        for template in syllabus.templates_of.get(lesson, ())
        if template.id not in wishes.dropped and syllabus.needed_lesson[template.id] <= history.taught
    ]
    own.sort(
        key=lambda template: (template.id in used_today, template.level != EASY, template.level, template.id)
    )
    because = Because(skill=syllabus.by_id[lesson].skills[0])
    return [Choice(own[place % len(own)], Why.EXTRA, because, 1.0) for place in range(items if own else 0)]
