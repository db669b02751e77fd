"""Where a new student starts."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.planner.placement import FEWEST, MOST, Answer, next_item, placed

DAY = date(2026, 8, 31)


def ask_all(course, knows, limit=MOST):
    answers = []
    while (pick := next_item(course, answers, DAY, 1)) is not None and len(answers) < limit:
        lesson = course.by_id[course.template[pick.template].lesson].n
        answers.append(Answer(pick.template, knows(lesson)))
    return answers


def test_who_knows_nothing_starts_at_the_beginning(course):
    found = placed(course, ask_all(course, lambda n: False))
    assert course.by_id[found.start].n <= 3 and found.sure > 0.8 and not found.patch


def test_who_knows_everything_has_nowhere_to_start(course):
    answers = ask_all(course, lambda n: True)
    found = placed(course, answers)
    assert found.start is None or course.by_id[found.start].n >= 122
    assert len(answers) >= FEWEST


@settings(max_examples=8, deadline=None)
@given(st.integers(0, 128))
def test_nobody_starts_far_before_a_clean_edge(course, edge):
    found = placed(course, ask_all(course, lambda n: n <= edge))
    assert found.done and FEWEST <= found.asked <= MOST
    assert (course.by_id[found.start].n if found.start else 129) >= edge - 5


def first_lack(course, edge):
    """The first lesson for whose three successors less than 70 % of the prerequisites lie within the edge."""
    for n in range(1, 129):
        needed = [m for lesson in course.lessons[n : n + 3] for m in lesson.prerequisites]
        if needed and sum(m <= edge for m in needed) < 0.7 * len(needed):
            return n
    return 129


@pytest.mark.parametrize("edge", [0, 9, 25, 40, 56, 71, 90, 107, 128])
def test_the_start_is_near_the_first_lesson_whose_successors_lack_their_ground(course, edge):
    found = placed(course, ask_all(course, lambda n: n <= edge))
    assert abs((course.by_id[found.start].n if found.start else 129) - first_lack(course, edge)) <= 5


def test_a_gap_below_the_edge_is_patched(course):
    gap = 41
    found = placed(course, ask_all(course, lambda n: n <= 70 and n != gap))
    answers = ask_all(course, lambda n: n <= 70 and n != gap)
    if any(a.template.startswith(f"lesson-{gap}/") for a in answers):
        assert set(course.by_number[gap].skills) <= set(found.patch)
    direct = [*answers, Answer(course.templates_of["lesson-41"][0].id, False)]
    assert set(course.by_number[gap].skills) <= set(placed(course, direct).patch)


def test_it_can_be_broken_off_and_taken_up_again(course):
    def knows(n):
        return n <= 30

    first = ask_all(course, knows, limit=7)
    assert first == ask_all(course, knows)[:7]
    assert not placed(course, first).done


def test_no_answers_say_start_at_the_beginning_and_not_sure(course):
    assert placed(course, ()).sure < 0.5


def test_no_template_is_asked_twice(course):
    names = [answer.template for answer in ask_all(course, lambda n: n % 3 != 0 and n < 80)]
    assert len(set(names)) == len(names) <= MOST
