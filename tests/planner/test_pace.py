"""Offers of a morning, the second lesson, and the look at half-year."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from bot.planner.calendar import SchoolCalendar
from bot.planner.history import Done, History, PastDay, Wishes
from bot.planner.pace import (
    Advice,
    days_behind,
    days_needed,
    extra_lessons,
    half_year_look,
    is_off_season_day,
    may_pass_over,
    morning_offers,
    second_lesson,
)
from bot.planner.syllabus import TestPlace
from bot.vocabulary import Outcome, TemplateId

MONDAY = date(2026, 9, 7)


def days(*finished):
    return tuple(PastDay(MONDAY + timedelta(days=n), n + 1, finished=done) for n, done in enumerate(finished))


@pytest.mark.parametrize(
    ("finished", "small", "told"),
    [
        ((), False, False),
        ((False,), False, False),
        ((False, True, False), False, False),
        ((True, False, False), True, False),
        ((False, False, False), True, True),
    ],
)
def test_a_small_day_is_offered_after_two_unfinished_ones_and_the_tutor_told_after_three(
    course, finished, small, told
):
    offers = morning_offers(course, History(days=days(*finished)), days_behind=0)
    assert (offers.small_day, offers.tell_tutor) == (small, told)


@pytest.mark.parametrize(
    ("light", "behind", "catch_up"),
    [(True, 2, "lesson-1"), (True, 0, None), (False, 2, None)],
)
def test_catch_up_is_offered_on_the_light_day_only(course, light, behind, catch_up):
    assert morning_offers(course, History(light_day=light), behind).catch_up == catch_up


def good_day(right=10, wrong=0, minutes=20.0, finished=True):
    outcomes = [Outcome.FIRST_TRY] * right + [Outcome.UNSOLVED] * wrong
    items = tuple(Done(TemplateId("lesson-1/1"), (), outcome) for outcome in outcomes)
    return PastDay(MONDAY, 1, items, lesson=1, size=8, minutes=minutes, finished=finished)


@pytest.mark.parametrize(
    ("day", "lesson"),
    [
        (good_day(), "lesson-2"),
        (good_day(right=7, wrong=3), None),
        (good_day(minutes=40), None),
        (good_day(finished=False), None),
    ],
)
def test_a_second_lesson_needs_a_good_day_with_minutes_left(course, day, lesson):
    assert second_lesson(course, History(), day, Wishes(minutes=45)) == lesson


def test_five_right_answers_pass_a_lesson_over():
    right = (Outcome.FIRST_TRY,)
    assert may_pass_over(right * 5)
    assert not may_pass_over(right * 4)
    assert not may_pass_over((Outcome.LATER_TRY, *right * 5))


def test_off_season_is_three_days_a_week():
    assert sum(is_off_season_day(MONDAY + timedelta(days=n)) for n in range(7)) == 3


def test_days_needed_count_sittings_and_tests(course):
    assert days_needed(course, History()) == 128 + 13
    assert days_needed(course, History(), extras=False) == 116 + 12
    assert len(extra_lessons(course, History())) == 12
    tested = replace(course, tests=(TestPlace(1, 1, 11, (1, 6), (1, 6)),))
    assert days_needed(tested, History(taught=frozenset(range(1, 127)))) == 2 + 1


def test_days_behind_count_lesson_days_only():
    # Two full weeks hold eight lesson days.
    assert days_behind(SchoolCalendar(), MONDAY, MONDAY + timedelta(days=14), 5) == 3


@pytest.mark.parametrize(
    ("weeks", "advice"), [(60, Advice.GO_ON), (17, Advice.LEAVE_OUT_EXTRAS), (10, Advice.SLOW_DOWN)]
)
def test_half_year_says_go_on_leave_out_or_slow_down(course, weeks, advice):
    half = History(taught=frozenset(range(1, 65)))
    look = half_year_look(
        course, half, SchoolCalendar(), MONDAY, MONDAY + timedelta(weeks=weeks), planned=72, taken=72
    )
    assert look.advice is advice
    assert look.without_extras.early < look.finish.early
