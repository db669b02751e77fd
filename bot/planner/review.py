"""Which items come back today, and why.

Wishes come first, then what went wrong yesterday, then whatever has to be met today so that nothing is away
for too long, then the rest by worth. No solver: the worths hardly depend on each other, so taking the next
best again and again finds what a solver would, and reads better.
"""

from __future__ import annotations

from datetime import date
from heapq import heapify, heappop, heappush

from bot.planner.history import History, PastDay, Wishes
from bot.planner.syllabus import Syllabus, Template
from bot.planner.table import (
    AWAY_AT_MOST,
    Choice,
    Table,
    chance_of,
    is_picked,
    lay,
    most_of,
    reason_for,
    take,
    worth_of,
)
from bot.vocabulary import Outcome, Part, SkillId, TemplateId, Why

SAME_LESSON = 3
"""Most review items of one lesson on one day, unless nothing else is left."""
YESTERDAY_SHARE = 6
"""At most one item in so many is a miss of yesterday."""


def choose(
    day: date,
    syllabus: Syllabus,
    history: History,
    wishes: Wishes,
    count: int,
    today: int | None,
    taken: frozenset[TemplateId] = frozenset(),
) -> list[Choice]:
    """Up to `count` picks for review, in order of importance.

    `today` is the number of the lesson taught on that day; `taken` are templates that guided practice uses:
    they come with new numbers, and others are taken before them.
    Fewer than `count` come back only when too little was taught.
    """
    table = lay(day, syllabus, history, wishes, count, today, taken)
    _pinned(table, count)
    _yesterday(table, count)
    _too_long_away(table, count)
    _by_worth(table, count)
    return table.picked


def choose_sure(
    day: date,
    syllabus: Syllabus,
    history: History,
    wishes: Wishes,
    count: int,
    today: int | None,
    taken: frozenset[TemplateId] = frozenset(),
) -> list[Choice]:
    """Up to `count` picks that are likeliest to go right, of as many lessons: for the first days after a
    long break.
    """
    table = lay(day, syllabus, history, wishes, count, today, taken)
    _pinned(table, count)
    for template in sorted(
        table.open.values(), key=lambda template: (-chance_of(table, template), template.id)
    ):
        if len(table.picked) >= count:
            break
        if table.per_lesson[template.lesson] == 0:
            take(table, template, Why.SURE)
    return table.picked


def choose_weak(
    day: date,
    syllabus: Syllabus,
    history: History,
    wishes: Wishes,
    count: int,
    today: int | None,
    taken: frozenset[TemplateId] = frozenset(),
) -> list[Choice]:
    """Up to `count` picks that are least likely to go right, two of a lesson at most."""
    table = lay(day, syllabus, history, wishes, count, today, taken)
    for template in sorted(
        table.open.values(), key=lambda template: (chance_of(table, template), template.id)
    ):
        if len(table.picked) >= count:
            break
        if table.per_lesson[template.lesson] < SAME_LESSON - 1:
            take(table, template, Why.FRAGILE)
    return table.picked


def _pinned(table: Table, count: int) -> None:
    for name in table.wishes.pinned:
        template = table.open.get(name)
        if template is not None and len(table.picked) < count:
            take(table, template, Why.TUTOR_ASKED)


def _yesterday(table: Table, count: int) -> None:
    """What went wrong on the last school day comes first, as a fresh item of the same template; of many misses
    those that are worth most. After a test there is room for two even on a small day: it may show much at once.
    """
    days = table.history.days
    tested = bool(days) and any(item.part is Part.TEST for item in days[-1].items)
    room = max(2 if tested else 1, count // YESTERDAY_SHARE)
    wrong = [(name, Why.COMEBACK) for name in table.history.unsolved]
    if days:
        wrong += [(name, Why.YESTERDAY) for name in _missed(days[-1])]
    misses = [(table.open[name], why) for name, why in wrong if name in table.open]
    for template, why in sorted(misses, key=lambda miss: -worth_of(table, miss[0])):
        if room == 0 or len(table.picked) >= count or is_picked(table, template):
            continue
        if table.per_lesson[template.lesson] >= SAME_LESSON - 1:
            continue
        take(table, template, why)
        room -= 1


def _missed(past: PastDay) -> list[TemplateId]:
    return [
        item.template
        for item in past.items
        if item.outcome in (Outcome.UNSOLVED, Outcome.LATER_TRY) and item.part is not Part.WARM_UP
    ]


def _too_long_away(table: Table, count: int) -> None:
    """As many of the longest-away skills as today must hold so that none passes its limit later."""
    room = max(1, count // 2)
    for skill in _due_by_coverage(table, room):
        if len(table.picked) >= count:
            return
        if any(skill in choice.template.skills for choice in table.picked):
            continue
        template = _best_for(table, skill)
        if template is not None:
            take(table, template, Why.COVERAGE, skill)


def _due_by_coverage(table: Table, per_day: int) -> list[SkillId]:
    """Earliest limit first: the fewest skills that have to be met today if `per_day` can be met on each
    later day.
    """
    by_limit = sorted(table.away, key=lambda skill: (-table.away[skill], skill))
    must = 0
    for place, skill in enumerate(by_limit, start=1):
        days_left = max(0, AWAY_AT_MOST - table.away[skill])
        must = max(must, place - per_day * days_left)
        if place - per_day * AWAY_AT_MOST > 0 and must >= place:
            break
    return by_limit[: max(0, must)]


def _by_worth(table: Table, count: int) -> None:
    """The next best again and again; a worth only falls while picks are made, so old ones serve as bounds.

    Templates of the same skills stand in line together, by what the skills are worth, and are told apart only
    when it is their turn: most of them never come up on a day.
    """
    left_over: list[Template] = []
    line = [
        (-most_of(table, skills), alike[0].id, tuple(alike)) for skills, alike in _by_skills(table).items()
    ]
    heapify(line)
    while line and len(table.picked) < count:
        bound, name, alike = heappop(line)
        if len(alike) > 1:
            for one in alike:
                heappush(line, (-worth_of(table, one), one.id, (one,)))
            continue
        template = alike[0]
        if is_picked(table, template):
            continue
        if table.per_lesson[template.lesson] >= SAME_LESSON:
            left_over.append(template)
            continue
        worth = worth_of(table, template)
        if -worth > bound and line and -worth > line[0][0]:
            heappush(line, (-worth, name, alike))
            continue
        take(table, template, reason_for(table, template))
    for template in left_over[: count - len(table.picked)]:
        take(table, template, reason_for(table, template))


def _by_skills(table: Table) -> dict[tuple[SkillId, ...], list[Template]]:
    found: dict[tuple[SkillId, ...], list[Template]] = {}
    for template in table.open.values():
        found.setdefault(template.skills, []).append(template)
    return found


def _best_for(table: Table, skill: SkillId) -> Template | None:
    lesson = table.syllabus.by_number[table.syllabus.taught_by[skill]]
    own = [
        template for template in table.syllabus.templates_of.get(lesson.id, ()) if template.id in table.open
    ]
    fitting = [template for template in own if skill in template.skills and not is_picked(table, template)]
    if not fitting:
        fitting = [t for t in table.open.values() if skill in t.skills and not is_picked(table, t)]
    return max(fitting, key=lambda template: worth_of(table, template), default=None)
