"""Tests and second looks."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.planner.blueprint import plan_second_look, plan_test, read_result, weak_skills
from bot.planner.history import History, PastDay, Wishes
from bot.planner.memory import Memory
from bot.planner.syllabus import TestPlace
from bot.vocabulary import TemplateId

DAY = date(2026, 11, 2)
PLACE = TestPlace(3, 2, after=22, new=(13, 17), cumulative=(1, 17))
MET = History(taught=frozenset(range(1, 23)), school_day=30)


def lessons_of(course, picks):
    return [course.by_id[course.template[pick.template].lesson].n for pick in picks]


def test_a_test_keeps_its_blueprint(course):
    picks = plan_test(DAY, course, PLACE, MET, Wishes(), 7)
    lessons = lessons_of(course, picks)
    assert len(picks) == 20 and len({pick.template for pick in picks}) == 20
    assert sum(13 <= n <= 17 for n in lessons) == 8
    assert set(range(13, 18)) <= set(lessons) and max(lessons) <= 17


def test_a_lesson_of_the_last_five_school_days_is_not_examined(course):
    recent = replace(MET, days=(PastDay(DAY - timedelta(days=3), 27, lesson=17),))
    assert 17 not in lessons_of(course, plan_test(DAY, course, PLACE, recent, Wishes(), 7))


def test_weak_skills_weigh_more_within_the_bounds(course):
    skill = course.by_number[15].skills[0]
    firm = {
        s: Memory(s, 200, 5, DAY - timedelta(days=1))
        for n in range(1, 23)
        for s in course.by_number[n].skills
    }
    weak = {**firm, skill: Memory(skill, 0.5, 8, DAY - timedelta(days=40))}

    def asked(memories):
        return lessons_of(course, plan_test(DAY, course, PLACE, replace(MET, memories=memories), Wishes(), 7))

    assert asked(weak).count(15) > asked(firm).count(15)
    assert sum(13 <= n <= 17 for n in asked(weak)) == 8


@given(st.integers(0, 2**31), st.frozensets(st.integers(1, 128), min_size=8))
def test_a_test_asks_nothing_that_was_not_met(course, seed, taught):
    picks = plan_test(
        DAY, course, replace(PLACE, cumulative=(1, 128)), replace(MET, taught=taught), Wishes(), seed
    )
    assert set(lessons_of(course, picks)) <= taught
    assert picks == plan_test(
        DAY, course, replace(PLACE, cumulative=(1, 128)), replace(MET, taught=taught), Wishes(), seed
    )


@pytest.mark.parametrize("missed", [1, 5, 12])
def test_a_second_look_holds_8_to_10_items_with_new_numbers(course, missed):
    first = plan_test(DAY, course, PLACE, MET, Wishes(), 7)
    wrong = [pick.template for pick in first[:missed]]
    second = plan_second_look(DAY, course, wrong, MET, Wishes(), 7)
    assert 8 <= len(second) <= 10
    assert set(wrong[:10]) <= {pick.template for pick in second}
    assert {pick.seed for pick in first}.isdisjoint(pick.seed for pick in second)
    assert len({(pick.template, pick.seed) for pick in second}) == len(second)


def test_sixteen_of_twenty_can_be_58_to_92_percent():
    reading = read_result(16, 20)
    assert (round(100 * reading.low), round(100 * reading.high)) == (58, 92)


@pytest.mark.parametrize(("right", "again"), [(15, True), (16, False), (20, False)])
def test_a_second_look_is_offered_below_80_percent(right, again):
    assert read_result(right, 20).look_again is again


@given(st.integers(1, 40).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_the_interval_holds_the_share(count):
    right, items = count
    reading = read_result(right, items)
    assert 0 <= reading.low <= right / items <= reading.high + 1e-12 <= 1 + 1e-12


def test_no_count_is_refused():
    with pytest.raises(ValueError, match="21 of 20"):
        read_result(21, 20)


def test_weak_skills_are_those_that_were_missed(course):
    results = {
        TemplateId("lesson-3/1"): False,
        TemplateId("lesson-2/1"): True,
        TemplateId("lesson-1/2"): False,
    }
    assert weak_skills(course, results, frozenset({1, 2, 3})) == (
        *course.by_number[1].skills,
        *course.by_number[3].skills,
    )
