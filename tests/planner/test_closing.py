"""The end of the year: every lesson, then a strand of review a day, then the final in two parts; and study lists."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from bot.planner.blueprint import plan_test
from bot.planner.closing import Standing, due_after_today, standing_of, strand_due, study_list
from bot.planner.history import Done, History, PastDay, Wishes
from bot.planner.memory import Memory
from bot.planner.plan import DayKind
from bot.planner.plan_day import plan_day
from bot.planner.syllabus import Syllabus, TestPlace
from bot.vocabulary import Outcome, Part

DAY = date(2027, 6, 7)
LAST = 128
STRANDS = tuple(frozenset(range(first, LAST + 1, 5)) for first in range(1, 6))
ORDINARY = TestPlace(21, 11, after=LAST, new=(113, 120), cumulative=(1, 120))
PART_A = TestPlace(22, 11, after=LAST, new=(121, 128), cumulative=(1, LAST), final=True)
PART_B = replace(PART_A, n=23, only=frozenset(range(2, 40, 2)))
LESSON = PastDay(DAY, 170, lesson=LAST)


def reviewed(course: Syllabus, n: int) -> PastDay:
    template = course.templates[n]
    item = Done(template.id, template.skills, Outcome.FIRST_TRY, part=Part.REVIEW)
    return PastDay(DAY + timedelta(days=n), 171 + n, (item,))


def ended(course: Syllabus, days: int, done: frozenset[int] = frozenset({21})) -> History:
    """A student who met every lesson, with so many days of review since."""
    behind = (LESSON, *(reviewed(course, n) for n in range(days)))
    return History(taught=frozenset(range(1, LAST + 1)), days=behind, school_day=171 + days, tests_done=done)


def closing(course: Syllabus) -> Syllabus:
    return replace(course, tests=(ORDINARY, PART_A, PART_B), strands=STRANDS)


def test_a_week_of_review_by_strand_then_the_final_on_two_days(course: Syllabus) -> None:
    year = closing(course)
    assert plan_day(DAY, year, ended(course, 0, frozenset()), Wishes(), 7).test == 21
    for n in range(5):
        plan = plan_day(DAY, year, ended(course, n), Wishes(), 7)
        assert (plan.kind, plan.strand, plan.test) == (DayKind.LIGHT, n, None)
        asked = {course.by_id[course.template[pick.template].lesson].n for pick in plan.review}
        assert len(plan.review) >= 6 and asked <= STRANDS[n]
    assert plan_day(DAY, year, ended(course, 5), Wishes(), 7).test == 22
    assert plan_day(DAY, year, ended(course, 5, frozenset({21, 22})), Wishes(), 7).test == 23
    after = plan_day(DAY, year, ended(course, 9, frozenset({21, 22, 23})), Wishes(), 7)
    assert (after.kind, after.strand, after.test) == (DayKind.LIGHT, None, None)


def test_no_strand_while_a_lesson_waits(course: Syllabus) -> None:
    year = closing(course)
    history = replace(ended(course, 2), taught=frozenset(range(1, LAST)))
    assert strand_due(year, history) is None
    assert plan_day(DAY, year, history, Wishes(), 7).lesson == course.by_number[LAST].id
    assert strand_due(year, replace(history, left_out=frozenset({LAST}))) == 2


def test_a_day_without_review_is_no_day_of_the_week_of_review(course: Syllabus) -> None:
    history = ended(course, 2)
    assert strand_due(closing(course), replace(history, days=(*history.days, PastDay(DAY, 180)))) == 2


def test_what_the_tutor_pinned_comes_on_a_strands_day_too(course: Syllabus) -> None:
    outside = next(t for t in course.templates if course.by_id[t.lesson].n not in STRANDS[0])
    plan = plan_day(DAY, closing(course), ended(course, 0), Wishes(pinned=(outside.id,)), 7)
    assert plan.strand == 0 and outside.id in {pick.template for pick in plan.review}


def test_a_final_asks_all_strands_alike_and_the_whole_year(course: Syllabus) -> None:
    year = closing(course)
    history = replace(ended(course, 0), days=())
    picks = plan_test(DAY, year, PART_A, history, Wishes(), 7)
    lessons = [course.by_id[course.template[pick.template].lesson].n for pick in picks]
    assert len({pick.template for pick in picks}) == 20
    assert [sum(n in strand for n in lessons) for strand in STRANDS] == [4, 4, 4, 4, 4]
    assert len(set(lessons)) == 20 and min(lessons) < 40 < 90 < max(lessons)
    assert plan_test(DAY, year, PART_A, history, Wishes(), 8) != picks  # two versions, always


def test_a_part_with_a_calculator_keeps_to_its_lessons(course: Syllabus) -> None:
    picks = plan_test(DAY, closing(course), PART_B, replace(ended(course, 0), days=()), Wishes(), 7)
    lessons = {course.by_id[course.template[pick.template].lesson].n for pick in picks}
    assert len(picks) == 20 and PART_B.only is not None and lessons <= PART_B.only


def memory(skill, stability: float) -> Memory:
    return Memory(skill, stability, 5.0, DAY - timedelta(days=10), 4, 1)


def test_a_study_list_names_the_new_and_the_weakest_first(course: Syllabus) -> None:
    place = TestPlace(3, 2, after=22, new=(13, 17), cumulative=(1, 17))
    stability = {3: 1.0, 15: 0.2, 20: 0.1, 5: 400.0}
    held = {s: memory(s, days) for n, days in stability.items() for s in course.by_number[n].skills}
    history = History(taught=frozenset(range(1, 23)), memories=held)
    found = study_list(course, place, history, DAY)
    assert found.new == tuple(course.by_number[n].id for n in range(13, 18))
    assert found.look_again == (course.by_number[15].id, course.by_number[3].id)  # 20 isn't asked for yet


def test_a_study_list_is_short(course: Syllabus) -> None:
    place = TestPlace(3, 2, after=22, new=(13, 17), cumulative=(1, 17))
    held = {s: memory(s, 0.1) for n in range(1, 18) for s in course.by_number[n].skills}
    history = History(taught=frozenset(range(1, 23)), memories=held)
    assert len(study_list(course, place, history, DAY).look_again) == 5


def test_a_test_is_announced_the_day_before(course: Syllabus) -> None:
    place = TestPlace(1, 1, after=11, new=(1, 6), cumulative=(1, 6))
    year = replace(closing(course), tests=(place, PART_A))
    history = History(taught=frozenset(range(1, 11)))
    assert due_after_today(year, history, 11, None) == place
    assert due_after_today(year, history, None, None) is None
    last = ended(course, 4, frozenset({1}))
    assert due_after_today(year, last, None, 4) == PART_A
    assert due_after_today(year, ended(course, 3, frozenset({1})), None, 3) is None


def test_a_skill_is_steady_only_where_all_of_it_is(course: Syllabus) -> None:
    one, two = course.by_number[4].skills[0], course.by_number[9].skills[0]
    firm, weak = memory(one, 400.0), memory(two, 0.2)
    assert standing_of({}, (one, two), DAY) is Standing.NOT_MET
    assert standing_of({one: firm}, (one,), DAY) is Standing.STEADY
    assert standing_of({one: firm}, (one, two), DAY) is Standing.SHAKY
    assert standing_of({one: firm, two: weak}, (one, two), DAY) is Standing.SHAKY
