"""The coming days as they look today."""

from __future__ import annotations

from datetime import timedelta

from bot.planner.history import Wishes
from bot.planner.outlook import plan_ahead
from bot.planner.plan import DayKind
from bot.vocabulary import LessonId


def week(child):
    return [(child.day + timedelta(days=n), n == 4) for n in range(5)]


def test_the_first_day_is_the_days_own_plan(child):
    for _ in range(20):
        child.live()
    assert (
        plan_ahead(week(child), child.syllabus, child.history(), child.wishes, child.seed)[0] == child.plan()
    )


def test_a_week_holds_four_lessons_in_order_and_a_light_day(child):
    for _ in range(5):
        child.live()
    plans = plan_ahead(week(child), child.syllabus, child.history(), child.wishes, child.seed)
    # Lesson 5 takes two sittings.
    assert [(plan.lesson, plan.sitting) for plan in plans] == [
        ("lesson-4", 1),
        ("lesson-5", 1),
        ("lesson-5", 2),
        ("lesson-6", 1),
        (None, 1),
    ]
    assert plans[-1].kind is DayKind.LIGHT


def test_a_chosen_lesson_belongs_to_the_first_day_only(child):
    wishes = Wishes(lesson=LessonId("lesson-2"))
    plans = plan_ahead(week(child)[:3], child.syllabus, child.history(), wishes, child.seed)
    assert [plan.lesson for plan in plans] == ["lesson-2", "lesson-1", "lesson-3"]
