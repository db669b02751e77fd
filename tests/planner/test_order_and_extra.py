"""The order of the day's items, and more of them when asked for."""

from __future__ import annotations

from datetime import date
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from bot.planner.extra import More, pass_over_items, plan_extra
from bot.planner.history import Wishes
from bot.planner.order import arrange
from bot.planner.plan import Because
from bot.planner.syllabus import Template
from bot.planner.table import Choice
from bot.vocabulary import LessonId, SkillId, TemplateId, Why


def choice(number, lesson, chance, why=Why.DUE):
    template = Template(
        TemplateId(f"{lesson}/{number}"), LessonId(f"{lesson}"), (SkillId(f"skill-{lesson}"),)
    )
    return Choice(template, why, Because(), chance)


choices = st.lists(
    st.tuples(
        st.integers(1, 12),
        st.floats(0, 1),
        st.sampled_from([Why.DUE, Why.DUE, Why.COVERAGE, Why.YESTERDAY, Why.TUTOR_ASKED]),
    ),
    max_size=24,
).map(lambda rows: [choice(n, *row) for n, row in enumerate(rows)])


@given(choices)
def test_arranging_loses_and_adds_nothing(picks):
    assert sorted(c.template.id for c in arrange(picks)) == sorted(c.template.id for c in picks)


@given(choices)
def test_wishes_stand_before_yesterdays_misses_and_these_before_the_rest(picks):
    rank = {Why.TUTOR_ASKED: 0, Why.YESTERDAY: 1}
    ranks = [rank.get(c.why, 2) for c in arrange(picks)]
    assert [r for r in ranks if r < 2] == ranks[: sum(r < 2 for r in ranks)]


def test_easy_start_hardest_in_the_middle_sure_end():
    ordered = arrange([choice(n, n, n / 10) for n in range(10)])
    chances = [c.chance for c in ordered]
    lowest = chances.index(min(chances))
    assert 3 <= lowest <= 6
    assert chances[0] >= 0.8 and chances[-1] == 0.9
    assert chances[:lowest] == sorted(chances[:lowest], reverse=True)
    assert ordered[-1].why is Why.SURE


@given(st.permutations([choice(n, n // 3, n / 12) for n in range(12)]))
def test_items_of_one_lesson_are_kept_apart(picks):
    assert all(one.template.lesson != other.template.lesson for one, other in pairwise(arrange(picks)))


def test_a_mix_of_ten_is_extra_and_from_what_was_taught(child):
    for _ in range(30):
        child.live()
    picks = plan_extra(child.day, child.syllabus, child.history(), Wishes(), More(), 1)
    assert len(picks) == 10 and {pick.why for pick in picks} == {Why.EXTRA}
    assert all(child.syllabus.needed_lesson[pick.template] <= child.taught for pick in picks)


def test_extra_draws_differ_from_the_days_own(child):
    for _ in range(30):
        child.live()
    plan = child.plan()
    picks = plan_extra(child.day, child.syllabus, child.history(), Wishes(), More(), 1)
    assert {pick.seed for pick in plan.review}.isdisjoint(pick.seed for pick in picks)


def test_weak_means_what_is_least_likely_to_go_right(child):
    for _ in range(40):
        child.live()
    from bot.planner.memory import recall

    def mean(picks):
        skills = [pick.because.skill for pick in picks]
        return sum(recall(child.memories[skill], child.day) for skill in skills) / len(skills)

    weak = plan_extra(child.day, child.syllabus, child.history(), Wishes(), More(weak=True), 1)
    mix = plan_extra(child.day, child.syllabus, child.history(), Wishes(), More(), 1)
    assert mean(weak) < mean(mix)


def test_more_of_a_lesson_is_of_that_lesson_and_of_none_not_met(child):
    for _ in range(10):
        child.live()
    asked = More(lesson=LessonId("lesson-4"), items=6)
    picks = plan_extra(child.day, child.syllabus, child.history(), Wishes(), asked, 1)
    assert {child.syllabus.template[pick.template].lesson for pick in picks} == {"lesson-4"}
    far = More(lesson=LessonId("lesson-90"))
    assert plan_extra(child.day, child.syllabus, child.history(), Wishes(), far, 1) == ()


def test_five_items_may_pass_a_lesson_over(course):
    picks = pass_over_items(course, LessonId("lesson-12"), date(2026, 9, 7), 1)
    assert len(picks) == len({pick.seed for pick in picks}) == 5
    assert {course.template[pick.template].lesson for pick in picks} == {"lesson-12"}
