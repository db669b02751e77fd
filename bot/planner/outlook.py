"""The coming days as they look today: each is planned as if those before it went as expected."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from bot.planner.history import WINDOW, Done, History, PastDay, Wishes
from bot.planner.memory import Evidence, recall, remember_item
from bot.planner.plan import DayPlan, Pick
from bot.planner.plan_day import plan_day
from bot.planner.syllabus import Syllabus
from bot.vocabulary import Outcome, Part

LIKELY = 0.5
"""Chance from which an item is expected to go right at first try."""


def plan_ahead(
    days: Sequence[tuple[date, bool]], syllabus: Syllabus, history: History, wishes: Wishes, seed: int
) -> tuple[DayPlan, ...]:
    """A plan for each of the coming school days, given as (date, whether it is the light day), in order.

    Only the first is a promise. The wishes of today are taken to stay in force, but for a chosen lesson, a
    small day and pinned items, which belong to the first day.
    """
    plans: list[DayPlan] = []
    for day, light in days:
        plan = plan_day(day, syllabus, replace(history, light_day=light), wishes, seed)
        plans.append(plan)
        history = _as_expected(syllabus, history, plan)
        wishes = replace(wishes, lesson=None, small_day=False, pinned=())
    return tuple(plans)


def _as_expected(syllabus: Syllabus, history: History, plan: DayPlan) -> History:
    memories = dict(history.memories)
    done: list[Done] = []
    for part, picks in ((Part.GUIDED, plan.guided), (Part.REVIEW, plan.review)):
        for pick in picks:
            skills = syllabus.template[pick.template].skills
            outcome = _expected(history, pick, plan.day, syllabus)
            told = Evidence(outcome)
            memories |= remember_item(memories, skills, syllabus.contained_in, told, plan.day)
            done.append(Done(pick.template, skills, outcome, part=part))
    lesson = syllabus.by_id[plan.lesson] if plan.lesson is not None else None
    finished = lesson is not None and plan.sitting >= lesson.sittings
    past = PastDay(
        plan.day,
        history.school_day,
        tuple(done),
        lesson.n if lesson is not None else None,
        plan.size,
        days_away=history.days_away,
    )
    return replace(
        history,
        memories=memories,
        days=(*history.days, past)[-WINDOW:],
        taught=history.taught | ({lesson.n} if lesson is not None and finished else frozenset()),
        sitting=history.sitting if lesson is None else 1 if finished else 2,
        school_day=history.school_day + 1,
        days_away=0,
        unsolved=(),
        tests_done=history.tests_done | ({plan.test} if plan.test is not None else frozenset()),
        hands_on_done=history.hands_on_done | ({plan.hands_on} if plan.hands_on is not None else frozenset()),
    )


def _expected(history: History, pick: Pick, day: date, syllabus: Syllabus) -> Outcome:
    chance = 1.0
    for skill in syllabus.template[pick.template].skills:
        if skill in history.memories:
            chance *= recall(history.memories[skill], day)
    return Outcome.FIRST_TRY if chance >= LIKELY else Outcome.LATER_TRY
