"""A student's history as the planner needs it, from the records."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date, timedelta
from statistics import median

from sqlalchemy.orm import Session

from bot.planner.calendar import SchoolCalendar, days_away, is_light_day
from bot.planner.history import Done, History, Paces, PastDay
from bot.planner.plan import DayKind
from bot.records import attempts, days
from bot.records.days import SchoolDay, Sent
from bot.records.memories import memories
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school.school import School
from bot.school.wishes import left_out
from bot.vocabulary import ItemId, Outcome, Part, TemplateId

REACH = timedelta(days=120)
"""How far back the planner is told, so that 60 school days are in it."""

MOVED_PAST = 2
"""Lessons beyond a test from which on it isn't asked for any more: it was passed by on purpose."""


def history_of(
    s: Session,
    school: School,
    student: Student,
    on: date,
    wishes: list[Wish],
    calendar: SchoolCalendar,
) -> History:
    """Everything before the morning of `on`."""
    since = on - REACH
    past = [day for day in days.days_between(s, student.id, since, on - timedelta(days=1)) if _counts(day)]
    number = days.day_number(s, student.id, since)
    by_day = defaultdict(list)
    for item in days.past_items(s, student.id, since, on):
        by_day[item.date].append(item)
    missteps = attempts.missteps_by_item(s, student.id, since)
    # Tests and hands-on lessons of the whole year: they don't come back when they are long past.
    marked = days.days_of_kinds(s, student.id, (DayKind.TEST, DayKind.LIGHT), on)
    skipped = left_out(wishes)
    past_days = [
        _past_day(school, day, number + n, by_day[day.date], missteps) for n, day in enumerate(past, start=1)
    ]
    return History(
        memories=memories(s, student.id),
        days=tuple(past_days),
        taught=frozenset(n for n in range(1, student.lesson) if n not in skipped),
        left_out=skipped,
        sitting=student.sitting,
        school_day=number + len(past) + 1,
        days_away=days_away(calendar, past[-1].date, on) if past else 0,
        light_day=is_light_day(calendar, on),
        unsolved=_unsolved(past_days),
        tests_done=_tests_done(school, student, marked, skipped),
        hands_on_done=frozenset(
            str(day.notes["hands_on"]) for day in marked if day.notes.get("hands_on_done")
        ),
        paces=_paces(past, by_day),
    )


def _counts(day: SchoolDay) -> bool:
    """Whether a day was one of the course; a look at where to start isn't."""
    return day.started_at is not None and day.kind != DayKind.PLACEMENT


def done_of(items: Sequence[Sent]) -> tuple[Done, ...]:
    """Items of a day as the planner takes them."""
    return tuple(
        Done(
            TemplateId(each.template),
            each.item.skills,
            each.outcome or Outcome.UNTOUCHED,
            hints=each.hints,
            part=each.part,
        )
        for each in items
        if each.part is not Part.WARM_UP
    )


def _past_day(
    school: School,
    day: SchoolDay,
    number: int,
    items: list[days.Past],
    missteps: dict[ItemId, list[str]],
) -> PastDay:
    done = tuple(
        Done(
            item.template,
            item.skills,
            item.outcome or Outcome.UNTOUCHED,
            tuple(missteps.get(item.id, ())),
            item.hints,
            item.part,
        )
        for item in items
        if item.part is not Part.WARM_UP
    )
    lesson = school.syllabus.by_id.get(day.lesson) if day.lesson else None
    return PastDay(
        day=day.date,
        number=number,
        items=done,
        lesson=lesson.n if lesson else None,
        size=_number(day.notes.get("size")),
        minutes=day.seconds / 60 if day.seconds and not day.on_paper else None,
        finished=day.ended_at is not None and not day.enough,
        days_away=_number(day.notes.get("days_away")),
    )


def _number(value: object) -> int:
    return value if isinstance(value, int) else 0


def _unsolved(past: list[PastDay]) -> tuple[TemplateId, ...]:
    if not past:
        return ()
    missed = (item.template for item in past[-1].items if item.outcome is Outcome.UNSOLVED)
    return tuple(dict.fromkeys(missed))


def _tests_done(
    school: School, student: Student, marked: list[SchoolDay], skipped: frozenset[int]
) -> frozenset[int]:
    """Tests that were handed in, and those that somebody was moved past, who began further on."""
    done = {
        _number(day.notes["test"]) for day in marked if day.notes.get("test") and day.notes.get("handed_in")
    }
    for test in school.syllabus.tests:
        beyond = sum(n not in skipped for n in range(test.after + 1, student.lesson))
        if not test.final and beyond >= MOVED_PAST:
            done.add(test.n)
    return frozenset(done)


def _paces(past: list[SchoolDay], items: dict[date, list[days.Past]]) -> Paces:
    """The student's own middle time of a review item, once five full days say something about it."""
    usual = Paces()
    shares = []
    for day in past[-20:]:
        review = sum(1 for item in items[day.date] if item.part is Part.REVIEW and item.outcome)
        if day.seconds and review >= 4 and not day.on_paper and day.ended_at:
            rest = usual.warm_up + (usual.lesson + 4 * usual.guided_item if day.lesson else 0)
            shares.append(max(0.3, (day.seconds / 60 - rest) / review))
    if len(shares) < 5:
        return usual
    return Paces(review_item=min(4.0, median(shares)))
