"""What a test holds, and a second look: items by lesson from the course's blueprint, leaning towards today's
weak skills.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from math import sqrt

from bot.planner.history import History, Wishes
from bot.planner.memory import STEADY, recall
from bot.planner.plan import Because, Pick
from bot.planner.plan_day import seed_of
from bot.planner.syllabus import HARD, Lesson, Syllabus, Template, TestPlace
from bot.vocabulary import SkillId, TemplateId, Why

OLD_ENOUGH = 5
"""School days that a lesson must lie back before a test may ask for it."""
LOOK_AGAIN_BELOW = 0.8
"""Share right under which weak skills come back and a second look is offered. Common practice, no source."""
SECOND_LOOK = (8, 10)
"""Fewest and most items of a second look."""
LEAN = 2.0
"""How much more likely a lesson that was surely forgotten is asked for than one that is surely known."""


@dataclass(frozen=True, slots=True)
class Reading:
    """What a result can tell: `right` of `items`, and the 95 % Wilson interval of the share, 0 to 1."""

    right: int
    items: int
    low: float
    high: float

    @property
    def look_again(self) -> bool:
        """Whether the weak skills come back and a second look is offered."""
        return self.right < LOOK_AGAIN_BELOW * self.items


def plan_test(
    day: date, syllabus: Syllabus, place: TestPlace, history: History, wishes: Wishes, seed: int
) -> tuple[Pick, ...]:
    """The items of one student's test, easy to hard within mixed lessons.

    The blueprint's share of items is on lessons examined for the first time, each of them at least once as
    far as the number goes, the others on older ones; within both, what is weak today weighs up to twice as
    much as what is firm. Only lessons that were met, and that lie five school days back, are asked for.
    """
    met = [
        lesson for lesson in _old_enough(syllabus, history) if place.only is None or lesson.n in place.only
    ]
    if place.final:
        chosen = _by_strand(syllabus, met, place.items, day, history, wishes, seed)
        return _in_order(chosen, syllabus, day, seed, again=300)
    first = [lesson for lesson in met if place.new[0] <= lesson.n <= place.new[1]]
    older = [
        lesson
        for lesson in met
        if place.cumulative[0] <= lesson.n <= place.cumulative[1] and lesson not in first
    ]
    wanted_first = round(place.items * place.new_share) if older else place.items
    chosen = _spread(syllabus, first, wanted_first, day, history, wishes, {})
    chosen += _spread(syllabus, older, place.items - len(chosen), day, history, wishes, {})
    if len(chosen) < place.items:
        taken = {template.id: 1 for template in chosen}
        chosen += _spread(syllabus, first + older, place.items - len(chosen), day, history, wishes, taken)
    return _in_order(chosen, syllabus, day, seed, again=300)


def _by_strand(
    syllabus: Syllabus,
    met: Sequence[Lesson],
    count: int,
    day: date,
    history: History,
    wishes: Wishes,
    seed: int,
) -> list[Template]:
    """Items of a final: as many from each strand as far as it goes, and within one of many lessons of the year."""
    strands = [[lesson for lesson in met if lesson.n in strand] for strand in syllabus.strands or ()]
    groups = [group for group in strands if group] or [list(met)]
    tie = {lesson.n: seed_of(seed, day, TemplateId(lesson.id), 500) for lesson in met}
    chosen: list[Template] = []
    for place, group in enumerate(groups):
        fair = (count - len(chosen)) // (len(groups) - place)
        taken = {template.id: 1 for template in chosen}
        chosen += _spread(syllabus, group, fair, day, history, wishes, taken, tie)
    taken = {template.id: 1 for template in chosen}
    return chosen + _spread(syllabus, met, count - len(chosen), day, history, wishes, taken, tie)


def plan_second_look(
    day: date,
    syllabus: Syllabus,
    missed: Sequence[TemplateId],
    history: History,
    wishes: Wishes,
    seed: int,
) -> tuple[Pick, ...]:
    """Eight to ten items with new numbers: what was missed, then further templates of the same lessons."""
    chosen: list[Template] = []
    for name in dict.fromkeys(missed):
        template = syllabus.template.get(name)
        if template is not None and name not in wishes.dropped and len(chosen) < SECOND_LOOK[1]:
            chosen.append(template)
    lessons = [syllabus.by_id[name] for name in dict.fromkeys(template.lesson for template in chosen)]
    missing = SECOND_LOOK[0] - len(chosen)
    taken = {template.id: 1 for template in chosen}
    if missing > 0:
        chosen += _spread(syllabus, lessons, missing, day, history, wishes, taken)
    place = 0
    while chosen and len(chosen) < SECOND_LOOK[0]:  # a short lesson: the same templates with other numbers
        chosen.append(chosen[place])
        place += 1
    return _in_order(chosen, syllabus, day, seed, again=400)


def read_result(right: int, items: int) -> Reading:
    """What a count can tell of the share that is known: Wilson's interval at 95 % (16 of 20: 58 to 92 %).

    Raises ValueError unless 0 <= right <= items and items > 0.
    """
    if not 0 <= right <= items or items == 0:
        raise ValueError(f"{right} of {items} is no count of right answers")
    z = 1.959964
    share = right / items
    middle = share + z * z / (2 * items)
    spread = z * sqrt(share * (1 - share) / items + z * z / (4 * items * items))
    scale = 1 + z * z / items
    return Reading(right, items, max(0.0, (middle - spread) / scale), min(1.0, (middle + spread) / scale))


def weak_skills(
    syllabus: Syllabus, results: Mapping[TemplateId, bool], taught: frozenset[int]
) -> tuple[SkillId, ...]:
    """Skills of the items that were missed, own skills of their lessons first, in the order of the course."""
    missed = {
        skill
        for name, right in results.items()
        if not right and name in syllabus.template
        for skill in syllabus.template[name].skills
    }
    return tuple(
        skill
        for lesson in syllabus.lessons
        if lesson.n in taught
        for skill in lesson.skills
        if skill in missed
    )


def _old_enough(syllabus: Syllabus, history: History) -> list[Lesson]:
    recent = {past.lesson for past in history.days if history.school_day - past.number < OLD_ENOUGH}
    return [lesson for lesson in syllabus.lessons if lesson.n in history.taught and lesson.n not in recent]


def _spread(
    syllabus: Syllabus,
    lessons: Sequence[Lesson],
    count: int,
    day: date,
    history: History,
    wishes: Wishes,
    taken: Mapping[TemplateId, int],
    tie: Mapping[int, int] | None = None,
) -> list[Template]:
    """`count` templates over the lessons in proportion to their weight, no template twice.

    The lesson that is furthest behind its share comes next (the method of highest averages), so each lesson
    has one before any has three.
    """
    pool = {
        lesson.n: sorted(
            (
                template
                for template in syllabus.templates_of.get(lesson.id, ())
                if template.test
                and template.id not in wishes.dropped
                and template.id not in taken
                and syllabus.needed_lesson[template.id] <= history.taught
            ),
            key=lambda template: (abs(template.level - 2), template.id),
        )
        for lesson in lessons
    }
    weight = {lesson.n: _weight(lesson, day, history) for lesson in lessons}
    given = dict.fromkeys(pool, 0)
    chosen: list[Template] = []
    while len(chosen) < count:
        open_lessons = [n for n in pool if pool[n]]
        if not open_lessons:
            break
        n = max(open_lessons, key=lambda n: (weight[n] / (given[n] + 0.5), tie[n] if tie else n))
        chosen.append(pool[n].pop(0))
        given[n] += 1
    return chosen


def _weight(lesson: Lesson, day: date, history: History) -> float:
    known = [
        recall(history.memories[skill], day) if skill in history.memories else STEADY
        for skill in lesson.skills
    ]
    weakness = 1 - min(known, default=1.0)
    return 1 + (LEAN - 1) * min(1.0, weakness / (1 - STEADY / 2))


def _in_order(
    chosen: Sequence[Template], syllabus: Syllabus, day: date, seed: int, again: int
) -> tuple[Pick, ...]:
    """Easy ones first; among equals the order of the course is broken up so that neighbours differ."""
    by_level = sorted(
        enumerate(chosen),
        key=lambda row: (row[1].level == HARD, row[1].level, seed_of(seed, day, row[1].id, again)),
    )
    ordered: list[tuple[int, Template]] = []
    waiting = list(by_level)
    while waiting:
        place = next(
            (k for k, row in enumerate(waiting) if not ordered or row[1].lesson != ordered[-1][1].lesson), 0
        )
        ordered.append(waiting.pop(place))
    return tuple(
        Pick(
            template.id,
            seed_of(seed, day, template.id, again + place),
            Why.TEST,
            Because(skill=template.skills[0] if template.skills else None),
        )
        for place, template in ordered
    )
