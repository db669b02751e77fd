"""The day's plan: invariants for any student, and the rules of the day's shape."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.planner.history import Wishes
from bot.planner.load import MOST
from bot.planner.plan import DayKind, DropReason, WarmUp
from bot.planner.syllabus import TestPlace
from bot.planner.table import AWAY_AT_MOST
from bot.vocabulary import LessonId, SkillId, TemplateId, Why

lives = settings(
    max_examples=15,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


@lives
@given(
    seed=st.integers(0, 10_000),
    knows=st.floats(0.1, 1.0),
    days=st.integers(1, 60),
    minutes=st.sampled_from([30, 45, 60]),
    items=st.none() | st.integers(0, 30),
    away=st.integers(0, 15),
)
def test_nothing_is_asked_before_it_was_taught_and_no_item_comes_twice(
    make_child, seed, knows, days, minutes, items, away
):
    child = make_child(seed=seed, knows=knows, wishes=Wishes(minutes=minutes, review_items=items))
    for number in range(days):
        if number == days - 1:
            child.is_away(away)
        taught = set(child.taught)
        plan = child.live()
        if plan.lesson:
            taught.add(child.syllabus.by_id[plan.lesson].n)
        picks = [pick.template for pick in (*plan.guided, *plan.review)]
        assert all(child.syllabus.needed_lesson[name] <= taught for name in picks)
        review = [pick.template for pick in plan.review]
        assert len(set(review)) == len(review)
        drawn = [(pick.template, pick.seed) for pick in (*plan.guided, *plan.review)]
        assert len(set(drawn)) == len(drawn)


@lives
@given(
    seed=st.integers(0, 10_000),
    knows=st.floats(0.1, 1.0),
    minutes=st.sampled_from([30, 45, 60]),
    days=st.integers(1, 60),
)
def test_no_day_is_over_the_load(make_child, seed, knows, minutes, days):
    child = make_child(seed=seed, knows=knows, wishes=Wishes(minutes=minutes))
    for _ in range(days):
        plan = child.live()
        assert len(plan.review) <= MOST
        assert plan.minutes <= minutes or len(plan.review) <= 6


@lives
@given(seed=st.integers(0, 10_000), knows=st.floats(0.2, 1.0), items=st.integers(0, 48))
def test_a_wished_number_of_items_is_kept(make_child, seed, knows, items):
    child = make_child(seed=seed, knows=knows)
    for _ in range(30):
        child.live()
    assert len(child.plan(Wishes(review_items=items)).review) == items


@settings(max_examples=6, deadline=None, suppress_health_check=list(HealthCheck))
@given(seed=st.integers(0, 10_000), knows=st.floats(0.3, 1.0), items=st.sampled_from([6, 8, 12, 24]))
def test_nothing_taught_is_away_for_longer_than_45_school_days(make_child, seed, knows, items):
    child = make_child(seed=seed, knows=knows, wishes=Wishes(review_items=items))
    seen: dict[SkillId, int] = {}
    for number in range(1, 181):
        plan = child.live()
        for pick in (*plan.guided, *plan.review):
            for skill in child.syllabus.template[pick.template].skills:
                assert number - seen.get(skill, number) <= AWAY_AT_MOST
                seen[skill] = number
        assert all(number - last <= AWAY_AT_MOST for last in seen.values())


@lives
@given(seed=st.integers(0, 10_000), knows=st.floats(0.0, 1.0), days=st.integers(0, 40))
def test_the_same_inputs_give_the_same_plan(make_child, seed, knows, days):
    one, other = make_child(seed=seed, knows=knows), make_child(seed=seed, knows=knows)
    for _ in range(days):
        one.live()
        other.live()
    assert one.plan() == other.plan() == one.plan()


def test_seeds_differ_between_students_days_and_templates(make_child):
    plans = [make_child(seed=seed).live() for seed in (1, 2)]
    seeds = [pick.seed for plan in plans for pick in (*plan.guided, *plan.review)]
    assert len(set(seeds)) == len(seeds)


def test_yesterdays_misses_come_first_as_fresh_items(child):
    for _ in range(25):
        child.live()
    missed = {item.template for item in child.days[-1].items if item.outcome == "unsolved"}
    review = child.plan().review
    why = [pick.why for pick in review]
    back = [pick for pick in review if pick.why is Why.YESTERDAY]
    assert missed and 1 <= len(back) <= 2
    assert why[: len(back)] == [Why.YESTERDAY] * len(back)
    assert {pick.template for pick in back} <= missed


def test_what_stayed_unsolved_comes_back(child):
    for _ in range(25):
        child.live()
    name = TemplateId("lesson-3/2")
    history = replace(child.history(), unsolved=(name,))
    from bot.planner.plan_day import plan_day

    first = plan_day(child.day, child.syllabus, history, Wishes(), 1).review[0]
    assert (first.template, first.why) == (name, Why.COMEBACK)


def test_neighbours_need_different_methods(make_child):
    child = make_child(knows=1.0)
    for _ in range(60):
        child.live()
    lessons = [child.syllabus.template[pick.template].lesson for pick in child.plan().review]
    assert len(lessons) >= 8
    assert all(one != other for one, other in pairwise(lessons))


def test_a_day_ends_on_something_sure(make_child):
    child = make_child(knows=0.9)
    for _ in range(60):
        child.live()
    assert child.plan().review[-1].why in (Why.SURE, Why.COVERAGE, Why.TODAY)


def test_every_pick_says_why_and_since_when(child):
    for _ in range(40):
        child.live()
    for pick in child.plan().review:
        assert pick.because.skill in child.syllabus.template[pick.template].skills
        assert pick.why is Why.TODAY or pick.because.days_since is not None


def test_due_is_only_said_of_what_was_not_met_for_a_while(child):
    for _ in range(60):
        child.live()
        for pick in child.plan().review:
            assert pick.why is not Why.DUE or pick.because.days_since is None or pick.because.days_since >= 5


def test_a_lesson_brings_four_guided_items_of_its_own(child):
    plan = child.live()
    assert plan.kind is DayKind.LESSON and plan.lesson == "lesson-1"
    assert [child.syllabus.template[pick.template].lesson for pick in plan.guided] == ["lesson-1"] * 4


def test_two_sittings_take_two_days_with_half_the_review(child):
    child.taught |= set(range(1, 20))
    first = child.live()
    second = child.live()
    assert (first.lesson, first.sitting, second.lesson, second.sitting) == ("lesson-20", 1, "lesson-20", 2)
    assert len(first.review) == 6 and child.plan().lesson == "lesson-21"


def test_what_the_second_day_teaches_is_not_asked_on_the_first(child):
    """Neither in guided practice nor in review, even where the tutor wants more of the lesson's skills."""
    course = child.syllabus
    own = course.templates_of["lesson-20"]
    later = {template.id for template in own[2:]}
    child.syllabus = replace(
        course, templates=tuple(replace(t, sitting=2) if t.id in later else t for t in course.templates)
    )
    child.taught |= set(range(1, 20))
    more = Wishes(more_of=frozenset(course.by_id["lesson-20"].skills))
    first = child.live(more)
    second = child.live(more)
    assert first.lesson == second.lesson == "lesson-20"
    assert {pick.template for pick in first.guided} == {template.id for template in own[:2]}
    assert later.isdisjoint(pick.template for pick in first.review)
    assert later <= {pick.template for pick in second.guided}


def test_a_day_is_planned_although_a_lesson_that_was_met_fell_out_of_the_course(child):
    """A file that a tutor is just changing may have a fault; the others' days go on."""
    for _ in range(20):
        child.live()
    met = child.syllabus.by_number[max(child.taught)]
    child.syllabus = replace(
        child.syllabus,
        lessons=tuple(lesson for lesson in child.syllabus.lessons if lesson.n != met.n),
        templates=tuple(t for t in child.syllabus.templates if set(t.skills).isdisjoint(met.skills)),
    )
    plan = child.live()
    assert plan.review and met.id not in {
        child.syllabus.template[pick.template].lesson for pick in plan.review
    }


def test_the_fifth_day_is_light(child):
    kinds = [child.live().kind for _ in range(5)]
    assert kinds == [DayKind.LESSON] * 4 + [DayKind.LIGHT]


def test_warm_up_takes_turns(child):
    assert child.live().warm_up == (WarmUp.NUMBER_FACTS, WarmUp.MENTAL_MATH)
    assert child.live().warm_up == (WarmUp.NUMBER_FACTS, WarmUp.PUZZLE)


def test_after_three_days_away_comes_a_day_of_review_only(child):
    for _ in range(12):
        child.live()
    child.is_away(2)
    assert child.plan().kind in (DayKind.LESSON, DayKind.LIGHT)
    child.is_away(3)
    plan = child.live()
    assert plan.kind is DayKind.REVIEW_ONLY
    assert [drop.reason for drop in plan.dropped if drop.lesson] == [DropReason.DAYS_AWAY]
    assert child.plan().kind in (DayKind.LESSON, DayKind.LIGHT)


def test_after_ten_days_away_the_way_back_is_gentle(child):
    for _ in range(20):
        child.live()
    child.is_away(10)
    kinds = [child.live().kind for _ in range(4)]
    assert kinds[:3] == [DayKind.GENTLE] * 3 and kinds[3] is not DayKind.GENTLE
    assert len(child.days[-4].items) == 8


def test_a_small_day_has_six_items_and_no_lesson(child):
    for _ in range(12):
        child.live()
    plan = child.plan(Wishes(small_day=True))
    assert (plan.kind, plan.lesson, len(plan.review)) == (DayKind.SMALL, None, 6)
    assert plan.dropped[0].reason is DropReason.SMALL_DAY


def test_off_season_takes_about_ten_minutes(child):
    for _ in range(30):
        child.live()
    plan = child.plan(Wishes(off_season=True))
    assert (plan.kind, plan.lesson, plan.warm_up) == (DayKind.OFF_SEASON, None, ())
    assert 6 <= plan.minutes - 6.0 <= 11


def test_a_test_takes_its_day(with_tests, make_child):
    child = make_child()
    child.syllabus = with_tests(TestPlace(1, 1, after=11, new=(1, 6), cumulative=(1, 6)))
    child.taught |= set(range(1, 12))
    plan = child.plan()
    assert (plan.kind, plan.test, plan.lesson, plan.review) == (DayKind.TEST, 1, None, ())


def test_pinned_items_come_first_and_dropped_ones_not_at_all(child):
    for _ in range(20):
        child.live()
    pinned = (TemplateId("lesson-2/3"), TemplateId("lesson-4/1"))
    skill = child.syllabus.by_number[5].skills[0]
    wishes = Wishes(
        pinned=pinned, dropped_skills=frozenset({skill}), dropped=frozenset({TemplateId("lesson-1/1")})
    )
    plan = child.plan(wishes)
    assert [pick.template for pick in plan.review[:2]] == list(pinned)
    assert {pick.why for pick in plan.review[:2]} == {Why.TUTOR_ASKED}
    assert all(skill not in child.syllabus.template[pick.template].skills for pick in plan.review)
    assert [drop.template for drop in plan.dropped if drop.reason is DropReason.TUTOR] == ["lesson-1/1"]


def test_a_pinned_item_that_was_not_taught_is_named_not_asked(child):
    plan = child.plan(Wishes(pinned=(TemplateId("lesson-90/1"),)))
    assert plan.dropped[-1].template == "lesson-90/1"
    assert plan.dropped[-1].reason is DropReason.NOT_TAUGHT


def test_more_of_a_skill_brings_more_of_it(make_child):
    def share(child, wishes):
        days = [child.live(wishes) for _ in range(10)]
        picks = [pick for day in days for pick in day.review]
        return sum(skill in child.syllabus.template[pick.template].skills for pick in picks)

    child = make_child()
    skill = child.syllabus.by_number[3].skills[0]
    fewer, more = make_child(), make_child()
    for _ in range(20):
        fewer.live()
        more.live()
    assert share(more, Wishes(more_of=frozenset({skill}))) > share(fewer, Wishes(fewer_of=frozenset({skill})))


def test_own_items_take_the_place_of_review(child):
    for _ in range(20):
        child.live()
    plan = child.plan(Wishes(own_items=3))
    assert plan.own_items == 3 and len(plan.review) == len(child.plan().review) - 3


def test_a_chosen_lesson_is_taught_even_on_a_light_day(child):
    for _ in range(4):
        child.live()
    assert child.plan(Wishes(lesson=LessonId("lesson-5"))).lesson == "lesson-5"
