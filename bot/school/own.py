"""Tutors' own lessons beside the course: learned when they are needed, and laid over a day's plan when wished."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from sqlalchemy.orm import Session

from bot.course.lesson import Lesson
from bot.course.own import learn_lesson
from bot.planner.history import Paces
from bot.planner.load import FEWEST, fixed_minutes
from bot.planner.plan import DayKind, DayPlan, Pick
from bot.planner.plan_day import GUIDED, seed_of
from bot.records import own
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school.school import School
from bot.school.wishes import WishKind, of_kind
from bot.vocabulary import LessonId, TemplateId, Why


def learn(s: Session, school: School) -> None:
    """Make all lessons that tutors kept drawable here. One look at a number where nothing is new."""
    state = own.lessons_state(s)
    if school.learned.get("own") == state:
        return
    for _, text in own.lesson_texts(s, school.course.own.keys()):
        learn_lesson(school.course, text)
    school.learned["own"] = state


def lesson_wished(school: School, wishes: Sequence[Wish]) -> Lesson | None:
    """The lesson of the tutor's own that is wished for a day; None where none is, or it can't be drawn any more."""
    for wish in reversed(of_kind(wishes, WishKind.OWN_LESSON)):
        found = school.course.own.get(LessonId(str(wish.what.get("lesson"))))
        if found is not None and found.cards and found.examples:
            return found
    return None


def lay_over(school: School, student: Student, on: date, plan: DayPlan, wishes: Sequence[Wish]) -> DayPlan:
    """The plan with the tutor's own lesson in it, if one is wished; the course's lesson waits that day.

    Review gives way as far as the family's minutes ask for it. A small day, a gentle one and a day in the holidays
    stay what they are.
    """
    lesson = lesson_wished(school, wishes)
    if lesson is None or plan.kind is not DayKind.REVIEW_ONLY:
        return plan
    guided = guided_picks(lesson, student, on)
    paces = Paces()
    fixed = fixed_minutes(paces, True, len(guided))
    review = plan.review
    if not of_kind(wishes, WishKind.REVIEW_ITEMS) and student.review_items is None:
        fits = int((student.minutes - fixed) / paces.review_item) - plan.own_items
        review = review[: max(FEWEST - plan.own_items, fits, 0)]
    return replace(
        plan,
        kind=DayKind.LESSON,
        lesson=lesson.id,
        sitting=1,
        guided=guided,
        review=review,
        minutes=round(fixed + (len(review) + plan.own_items) * paces.review_item, 1),
        dropped=tuple(each for each in plan.dropped if each.lesson is None),
    )


def guided_picks(lesson: Lesson, student: Student, on: date) -> tuple[Pick, ...]:
    """Four items of a lesson, easy ones first; a short lesson gives some kinds twice, with other numbers."""
    ordered = sorted(lesson.templates, key=lambda template: template.level)
    rounds = [(template, again) for again in range(GUIDED) for template in ordered][:GUIDED]
    rounds.sort(key=lambda each: each[0].level)
    return tuple(
        Pick(each.id, seed_of(student.id, on, TemplateId(each.id), 10 + again), Why.TODAY)
        for each, again in rounds
    )
