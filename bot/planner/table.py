"""What lies open while one day's review is chosen: which templates may be asked, and what each is worth.

The worth of a skill is how much likelier it is to be known some weeks from now if it is practised today; it
counts more while the skill was met in few items so far, since what is believed of it is then little more
than a guess.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from math import exp

from bot.planner.history import History, Wishes
from bot.planner.load import FEWEST
from bot.planner.memory import Memory, gain, recall
from bot.planner.plan import Because
from bot.planner.syllabus import EASY, HARD, MIDDLE, Syllabus, Template
from bot.vocabulary import Outcome, SkillId, TemplateId, Why

AWAY_AT_MOST = 45
"""School days that a skill once taught may be out of sight."""
AHEAD_DAYS = 40
"""Calendar days ahead for which practice is meant to hold."""
RELIED_ON = 50.0
"""Days of stability that are relied on at most: how well the memory model fits school skills isn't known,
and a student who forgets at once rather than little by little loses most by long waits.
"""
WAITING, WAITS_AT_MOST = 0.8, 12
"""How much more a skill counts for each day since it was last met, shared out over the items that the day holds, and
for how many days at most: the fewer items, the more it pays to let some time pass first.
"""
SOON = 5
"""Lessons ahead whose prerequisites are looked after."""
RECENT_DAYS = 5
"""School days for which a lesson counts as recent."""
A_WHILE = 5
"""Days after which we may say that a skill was not met for a while."""
AGAIN_TODAY = 1 / 60
"""What a further practice on the same day is still worth against the first, for each item that the day
holds.
"""
FEW = 1.0
"""How much more a skill counts that was met in few items so far, for each item that the day holds."""
MISSED = 1.5
"""How much more a skill counts that was always missed, against one that never was."""

EVEN = 33.0
"""How much more a skill counts whose unit was met in fewer items a skill than all units were: the power to which that
ratio is raised, shared out over the items that the day holds. Else the last units of the year end with the least
practice and are forgotten first, most where a day holds little.
"""
FALTERING, OF_LATE, TAKEN_ON_TRUST = 10.0, 25, 5
"""How much more a skill counts whose unit went right less often than all units did: e to this power for a share (0 to
1) that lies below theirs; over how many school days, and with how many items as usual counted beside what came.
"""


@dataclass(frozen=True, slots=True)
class Choice:
    """A template that was picked for review, with its reason and the chance (0 to 1) that it goes right at
    once.
    """

    template: Template
    why: Why
    because: Because
    chance: float


@dataclass(slots=True)
class Table:
    """What lies open while the picks of one day are made; filled once, then read and marked."""

    day: date
    syllabus: Syllabus
    history: History
    wishes: Wishes
    today: int | None
    open: dict[TemplateId, Template]
    worth: dict[SkillId, float]
    chance: dict[SkillId, float]
    away: dict[SkillId, int]
    last_used: dict[TemplateId, int]
    missteps: dict[SkillId, str]
    soon: frozenset[SkillId]
    picked: list[Choice]
    per_lesson: Counter[str]
    count: int
    taken: frozenset[TemplateId]


def lay(
    day: date,
    syllabus: Syllabus,
    history: History,
    wishes: Wishes,
    count: int,
    today: int | None,
    taken: frozenset[TemplateId],
) -> Table:
    """Work out what may be asked on that day and what each skill's practice is worth."""
    # A lesson that was met may have fallen out of the course since.
    met = (history.taught | ({today} if today is not None else frozenset())) & syllabus.by_number.keys()
    needed = syllabus.needed_lesson
    table = Table(
        day=day,
        syllabus=syllabus,
        history=history,
        wishes=wishes,
        today=today,
        open={
            template.id: template
            for template in syllabus.templates
            if template.review
            and needed[template.id] <= met
            and not _is_later(template, syllabus, history, today)
            and template.id not in wishes.dropped
            and wishes.dropped_skills.isdisjoint(template.skills)
        },
        worth={},
        chance={},
        away={},
        last_used={},
        missteps=_own_missteps(history),
        soon=_needed_soon(syllabus, met),
        picked=[],
        per_lesson=Counter(),
        count=count,
        taken=taken,
    )
    for past in history.days:
        for item in past.items:
            table.last_used[item.template] = past.number
    _see_skills(table, met)
    return table


def _is_later(template: Template, syllabus: Syllabus, history: History, today: int | None) -> bool:
    """Whether a template of today's lesson waits for the lesson's second day."""
    if today is None or template.sitting == 1:
        return False
    lesson = syllabus.by_number[today]
    return template.lesson == lesson.id and template.sitting > history.sitting


def most_of(table: Table, skills: Sequence[SkillId]) -> float:
    """What an item of these skills is worth at most."""
    return sum(table.worth.get(skill, 0.05) for skill in skills)


def worth_of(table: Table, template: Template) -> float:
    """Summed over the item's skills; a template used today or lately, or of the wrong level, counts a little
    less.
    """
    worth = most_of(table, template.skills)
    since = table.history.school_day - table.last_used.get(template.id, -100)
    if since < 10:
        worth *= 0.9 + 0.01 * since
    if template.id in table.taken:
        worth *= 0.9
    chance = chance_of(table, template)
    if (chance < 0.6 and template.level == HARD) or (chance > 0.9 and template.level == EASY):
        worth *= 0.95
    return worth


def chance_of(table: Table, template: Template) -> float:
    chance = {EASY: 1.0, MIDDLE: 0.95, HARD: 0.9}.get(template.level, 0.95)
    for skill in template.skills:
        chance *= table.chance.get(skill, 1.0)
    return chance


def reason_for(table: Table, template: Template) -> Why:
    if table.today is not None and template.lesson == table.syllabus.by_number[table.today].id:
        return Why.TODAY
    skill = _main_skill(table, template)
    if skill is None or skill not in table.chance:
        return Why.MIXED_IN
    if skill in table.missteps:
        return Why.MISSTEP
    lesson = table.syllabus.taught_by[skill]
    if any(past.lesson == lesson for past in table.history.days[-RECENT_DAYS:]):
        return Why.RECENT
    memory = table.history.memories.get(skill)
    if memory is not None and memory.met >= 3 and memory.missed * 3 >= memory.met:
        return Why.FRAGILE
    if skill in table.soon:
        return Why.PREREQUISITE
    away = memory is None or (table.day - memory.last).days >= A_WHILE
    return Why.DUE if away and table.chance[skill] < 0.9 else Why.MIXED_IN


def take(table: Table, template: Template, why: Why, skill: SkillId | None = None) -> None:
    skill = skill or _main_skill(table, template)
    memory = table.history.memories.get(skill) if skill is not None else None
    because = Because(
        skill=skill,
        days_since=(table.day - memory.last).days if memory is not None else None,
        misstep=table.missteps.get(skill) if skill is not None else None,
    )
    table.picked.append(Choice(template, why, because, chance_of(table, template)))
    table.per_lesson[template.lesson] += 1
    for practised in template.skills:
        if practised in table.worth:
            table.worth[practised] *= min(0.5, AGAIN_TODAY * table.count)


def is_picked(table: Table, template: Template) -> bool:
    return any(choice.template.id == template.id for choice in table.picked)


def _main_skill(table: Table, template: Template) -> SkillId | None:
    """The skill that the pick is for: the one whose practice is worth most."""
    return max(template.skills, key=lambda skill: table.worth.get(skill, 0.0), default=None)


def _see_skills(table: Table, met: frozenset[int]) -> None:
    history, wishes = table.history, table.wishes
    for n in met:
        for skill in table.syllabus.by_number[n].skills:
            memory = history.memories.get(skill)
            if memory is None:
                table.chance[skill] = 0.7 if n == table.today else 0.5
                table.worth[skill] = 0.25
                continue
            table.chance[skill] = recall(memory, table.day)
            worth = gain(memory, table.day, AHEAD_DAYS, RELIED_ON)
            waited = min(WAITS_AT_MOST, (table.day - memory.last).days)
            worth *= 1 + WAITING * waited / max(1, table.count)
            worth *= 1 + FEW * table.count / (memory.met + 1)
            worth *= 1 + MISSED * (memory.missed + 0.5) / (memory.met + 1)
            if skill in table.soon:
                worth *= 1.2
            if skill in table.missteps:
                worth *= 1.3
            if skill in wishes.more_of:
                worth *= 3
            if skill in wishes.fewer_of:
                worth /= 3
            table.worth[skill] = worth
    _even_out(table, met)
    seen = _last_seen(table)
    if table.today is not None:
        seen.update(dict.fromkeys(table.syllabus.by_number[table.today].skills, history.school_day))
    table.away = {
        skill: history.school_day - seen.get(skill, history.school_day - AWAY_AT_MOST - 1)
        for skill in table.worth
    }


def _even_out(table: Table, met: frozenset[int]) -> None:
    """Raise the worth of units that had little practice so far or went right less often of late, lower the others."""
    memories = table.history.memories
    units: dict[int, list[Memory]] = defaultdict(list)
    for n in met:
        lesson = table.syllabus.by_number[n]
        units[lesson.unit] += [memories[skill] for skill in lesson.skills if skill in memories]
    usual = _items_a_skill(held for unit in units.values() for held in unit)
    behind = _behind(table)
    for unit, held in units.items():
        practice = (usual / _items_a_skill(held)) ** (EVEN / max(FEWEST, table.count))
        factor = practice * exp(FALTERING * behind.get(unit, 0.0))
        for memory in held:
            table.worth[memory.skill] *= factor


def _behind(table: Table) -> dict[int, float]:
    """How far each unit's share of items that went right at first try lies below that of all units, of late."""
    asked: Counter[int] = Counter()
    right: Counter[int] = Counter()
    for past in table.history.days[-OF_LATE:]:
        for item in past.items:
            template = table.syllabus.template.get(item.template)
            if template is None or template.lesson not in table.syllabus.by_id:
                continue
            if item.outcome in (Outcome.UNTOUCHED, Outcome.EXCUSED):
                continue
            unit = table.syllabus.by_id[template.lesson].unit
            asked[unit] += 1
            right[unit] += item.outcome is Outcome.FIRST_TRY
    usual = right.total() / max(1, asked.total())
    return {
        unit: usual - (right[unit] + TAKEN_ON_TRUST * usual) / (count + TAKEN_ON_TRUST)
        for unit, count in asked.items()
    }


def _items_a_skill(memories: Iterable[Memory]) -> float:
    """In how many items each of the skills was met on average; one more than that, so that it is never 0."""
    items = [held.met for held in memories]
    return 1 + sum(items) / max(1, len(items))


def _last_seen(table: Table) -> dict[SkillId, int]:
    """Number of the school day on which each skill was last met, in an item or as its lesson."""
    seen: dict[SkillId, int] = {}
    for past in table.history.days:
        lesson = table.syllabus.by_number.get(past.lesson or 0)
        if lesson is not None:
            for skill in lesson.skills:
                seen[skill] = past.number
        for item in past.items:
            if item.outcome not in (Outcome.UNTOUCHED, Outcome.EXCUSED):
                for skill in item.skills:
                    seen[skill] = past.number
    return seen


def _own_missteps(history: History) -> dict[SkillId, str]:
    """Missteps that came up more than once in the days at hand, by skill."""
    count: Counter[tuple[SkillId, str]] = Counter()
    for past in history.days:
        for item in past.items:
            for misstep in item.missteps:
                for skill in item.skills:
                    count[skill, misstep] += 1
    return {
        skill: misstep
        for (skill, misstep), times in sorted(count.items(), key=lambda row: row[1])
        if times > 1
    }


def _needed_soon(syllabus: Syllabus, met: frozenset[int]) -> frozenset[SkillId]:
    ahead = [lesson for lesson in syllabus.lessons if lesson.n not in met][:SOON]
    return frozenset(
        skill
        for lesson in ahead
        for n in lesson.prerequisites
        if n in met
        for skill in syllabus.by_number[n].skills
    )
