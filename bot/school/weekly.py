"""A student's week as its letter tells it: what was met, what looks firm, what comes; from the rows as they stand."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import MissedItem, WeekOf, WeekTest, YearSoFar
from bot.planner.calendar import school_days
from bot.planner.memory import STEADY, recall
from bot.planner.plan import DayKind
from bot.records import attempts, days
from bot.records.days import SchoolDay, Sent
from bot.records.memories import memories
from bot.records.people import Student
from bot.school import dates, pacing
from bot.school.digest import week_signs
from bot.school.planning import open_date, plans_ahead
from bot.school.school import School
from bot.school.standing import day_counts, lessons_met
from bot.school.testing import test_title
from bot.vocabulary import LessonId, Outcome, Part, SkillId, StudentId, Verdict

WEEK = timedelta(days=7)
FIRM_PARTS = (Part.GUIDED, Part.REVIEW, Part.TEST)
ANSWERED = (Outcome.FIRST_TRY, Outcome.LATER_TRY, Outcome.UNSOLVED)


def week_of(s: Session, school: School, student: Student, monday: date, at: datetime) -> WeekOf:
    """A student's week; what is firm is judged as of now, since it is about what to do next."""
    on = dates.today(student, at)
    sunday = monday + timedelta(days=6)
    made = [day for day in days.days_between(s, student.id, monday, sunday) if day.kind != DayKind.PLACEMENT]
    opened = [day for day in made if day.started_at is not None]
    steady, shaky = _standing(s, school, student, monday, on)
    range_ = pacing.heading(s, school, student, on).range if opened else None
    calendar = dates.calendar_of(s, student, monday)
    return WeekOf(
        student=student.id,
        name=student.name,
        monday=monday.isoformat(),
        signs=week_signs(s, student, monday if on > sunday else min(on, sunday)),
        days=tuple(day_counts(s, day) for day in opened),
        opened=len(opened),
        planned=max(len(opened), len(school_days(calendar, monday, min(on, sunday)))),
        minutes=round(sum(day.seconds for day in opened) / 60),
        untimed=sum(1 for day in opened if day.on_paper),
        learned=tuple(dict.fromkeys(school.title(name) for day in opened for name in lessons_met(day))),
        steady=steady,
        shaky=shaky,
        tests=tuple(test_of(s, school, day) for day in opened if day.notes.get("test_counted")),
        coming=_coming(s, school, student, monday + WEEK, at) if on <= sunday + WEEK else (),
        early=range_.early.isoformat() if range_ else "",
        late=range_.late.isoformat() if range_ else "",
    )


def _standing(
    s: Session, school: School, student: Student, monday: date, on: date
) -> tuple[tuple[tuple[str, int], ...], tuple[tuple[str, int], ...]]:
    """Lessons that were asked about in a week: firm ones, and shaky ones, the shakiest first."""
    believed = memories(s, student.id)
    asked: dict[LessonId, set[SkillId]] = {}
    for item in days.past_items(s, student.id, monday, monday + WEEK):
        if item.part in FIRM_PARTS and item.outcome in ANSWERED:
            asked.setdefault(item.lesson, set()).update(item.skills)
    steady: list[tuple[str, int]] = []
    shaky: list[tuple[float, str, int]] = []
    for lesson, skills in asked.items():
        held = [believed[skill] for skill in skills if skill in believed]
        if not held:
            continue
        title, answers = school.title(lesson), min(memory.met for memory in held)
        weakest = min(recall(memory, on) for memory in held)
        if weakest >= STEADY:
            steady.append((title, answers))
        else:
            shaky.append((weakest, title, answers))
    return tuple(steady), tuple((title, answers) for _, title, answers in sorted(shaky))


def test_of(s: Session, school: School, day: SchoolDay) -> WeekTest:
    """A test that was counted, with the items that went wrong."""
    tried = attempts.attempts_of_day(s, day.id)
    items = days.items_of(s, day.id, Part.TEST)
    number = day.notes.get("test")
    return WeekTest(
        title=test_title(school, number),
        date=day.date.isoformat(),
        right=sum(1 for each in items if each.outcome is Outcome.FIRST_TRY),
        out_of=sum(1 for each in items if each.outcome is not Outcome.EXCUSED),
        missed=tuple(
            _missed(each, tried.get(each.id, ())) for each in items if each.outcome is Outcome.UNSOLVED
        ),
    )


def _missed(sent: Sent, tried: Sequence[attempts.Attempt]) -> MissedItem:
    typed = [each.typed for each in tried if each.verdict is not Verdict.HELP]
    return MissedItem(
        title=sent.item.lesson_title,
        ask=sent.item.ask,
        answered=typed[-1][:80] if typed else "",
        answer=sent.item.answer_shown,
    )


def _coming(
    s: Session, school: School, student: Student, monday: date, at: datetime
) -> tuple[tuple[str, str, str, str], ...]:
    """The days of a week to come as they look today; each is planned as if those before it went as expected."""
    first = open_date(s, student, at)
    if first is None or first > monday + timedelta(days=6):
        return ()
    plans = plans_ahead(s, school, student, first, last=monday + timedelta(days=6))
    return tuple(
        (
            plan.day.isoformat(),
            plan.kind.value,
            school.title(plan.lesson) if plan.lesson else "",
            test_title(school, plan.test) if plan.test else "",
        )
        for plan in plans
        if plan.day >= monday
    )


def year_so_far(s: Session, school: School, student: Student, on: date) -> YearSoFar | None:
    """Lessons met day by day since the first day; None before it."""
    if student.first_day is None or student.first_day > on:
        return None
    range_ = pacing.heading(s, school, student, on).range
    wanted, _ = pacing.wanted_finish(s, student, on)
    return YearSoFar(
        start=student.first_day.isoformat(),
        end=(wanted or on).isoformat(),
        lessons=len(school.course.lessons),
        done=lessons_by_day(s, student.id, student.first_day, on),
        early=range_.early.isoformat() if range_ else "",
        late=range_.late.isoformat() if range_ else "",
    )


def lessons_by_day(s: Session, student: StudentId, first: date, last: date) -> tuple[tuple[str, int], ...]:
    """How many different lessons were met by each day of a range."""
    met: set[LessonId] = set()
    found = [(first.isoformat(), 0)]
    for day in days.days_between(s, student, first, last):
        before = len(met)
        met.update(lessons_met(day))
        if len(met) > before:
            found.append((day.date.isoformat(), len(met)))
    return tuple(found)
