"""A student's own small view: my week, my best, my map. Only ever against oneself."""

from __future__ import annotations

from datetime import date, datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import MapPicture, Message, MyBest, MyView, MyWeek
from bot.records import days, sheets
from bot.records.people import Student
from bot.school import dates
from bot.school.digest import week_signs
from bot.school.record import units_of
from bot.school.school import School
from bot.school.standing import count_up, day_counts, lessons_met
from bot.vocabulary import ChatId, LessonId, Outcome, Part

REACH = timedelta(days=366)


def view(s: Session, school: School, student: Student, to: ChatId, at: datetime) -> list[Message]:
    """What a student sees first: the week in a row of signs, and three buttons."""
    on = dates.today(student, at)
    made = days.days_between(s, student.id, dates.monday_of(on), on)
    met = [name for day in made for name in lessons_met(day)]
    return [
        MyView(
            to=to,
            name=student.name,
            week=week_signs(s, student, on),
            lessons=tuple(school.title(name) for name in dict.fromkeys(met)),
        )
    ]


def week(s: Session, school: School, student: Student, to: ChatId, at: datetime) -> list[Message]:
    """The week so far as a picture."""
    on = dates.today(student, at)
    rows = [day_counts(s, day) for day in days.days_between(s, student.id, dates.monday_of(on), on)]
    return [
        MyWeek(
            to=to,
            name=student.name,
            monday=dates.monday_of(on).isoformat(),
            signs=week_signs(s, student, on),
            days=tuple(row for row in rows if sum(row[1:])),
        )
    ]


def best(s: Session, school: School, student: Student, to: ChatId, at: datetime) -> list[Message]:
    """A student's own best: number facts, a day's first tries, and lessons that began badly and now go well."""
    answered = sheets.answered_sheets(s, student.id)
    rated = [each.per_minute for each in answered if each.per_minute] if student.timing else []
    right = max(((each.right or 0, len(each.facts)) for each in answered), default=None)
    on = dates.today(student, at)
    return [
        MyBest(
            to=to,
            name=student.name,
            facts=right,
            per_minute=max(rated, default=None),
            day=_best_day(s, student, on),
            turned=_turned(s, school, student, on),
        )
    ]


def _best_day(s: Session, student: Student, on: date) -> tuple[str, int, int] | None:
    """The day with most first tries in its review: (date, first tries, items)."""
    by_day: dict[date, list[days.Past]] = {}
    for item in days.past_items(s, student.id, on - REACH, on + timedelta(days=1)):
        if item.part is Part.REVIEW:
            by_day.setdefault(item.date, []).append(item)
    found = [(count_up(items), day) for day, items in by_day.items()]
    good = [(counts.first_try, counts.asked, day) for counts, day in found if counts.first_try]
    if not good:
        return None
    first, asked, day = max(good)
    return day.isoformat(), first, asked


def _turned(s: Session, school: School, student: Student, on: date) -> tuple[str, ...]:
    """Lessons with a miss at first whose last three items went right at first go; the newest first."""
    outcomes: dict[LessonId, list[Outcome]] = {}
    for item in days.past_items(s, student.id, on - REACH, on + timedelta(days=1)):
        if item.part in (Part.GUIDED, Part.REVIEW) and item.outcome in (
            Outcome.FIRST_TRY,
            Outcome.LATER_TRY,
            Outcome.UNSOLVED,
        ):
            earlier = outcomes.pop(item.lesson, [])
            outcomes[item.lesson] = [*earlier, item.outcome]
    turned = [
        school.title(name)
        for name, found in reversed(outcomes.items())
        if len(found) >= 4
        and all(each is Outcome.FIRST_TRY for each in found[-3:])
        and any(each is not Outcome.FIRST_TRY for each in found[:-3])
    ]
    return tuple(turned[:3])


def map_(s: Session, school: School, student: Student, to: ChatId, at: datetime) -> list[Message]:
    """What sits and what comes back, unit by unit, as a picture."""
    units = tuple(units_of(s, school, student, dates.today(student, at)))
    return [MapPicture(to=to, name=student.name, units=units, own=True)]


SHOWS = {"week": week, "best": best, "map": map_}
"""What each button of the view opens."""
