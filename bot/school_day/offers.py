"""What a finished day may offer: something to do with one's hands, a second lesson."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.planner.history import PastDay, Wishes
from bot.planner.pace import morning_offers
from bot.planner.pace import second_lesson as planned_second
from bot.planner.plan import DayKind
from bot.records import days, people
from bot.records.days import SchoolDay
from bot.school import dates, pacing
from bot.school.history import done_of, history_of
from bot.school.school import School
from bot.school.wishes import in_force
from bot.school_day.asking import Here
from bot.vocabulary import LessonId


def hands_on_offered(school: School, day: SchoolDay) -> str:
    """Title of the hands-on lesson that a day offers, or nothing."""
    task = day.notes.get("hands_on")
    if not task or day.notes.get("hands_on_begun"):
        return ""
    return school.course.hands_on_lesson(str(task)).title


def second_lesson_offered(s: Session, here: Here, day: SchoolDay) -> str:
    """Title of the lesson that could be taken today as well, on a good day; or nothing."""
    lesson = second_of(s, here, day)
    return here.school.title(lesson) if lesson else ""


def second_of(s: Session, here: Here, day: SchoolDay) -> LessonId | None:
    """The lesson that could be taken today as well: all went well, and the family's minutes are not used up."""
    if day.enough or day.small or day.notes.get("second") or day.closed_at is not None:
        return None
    if day.kind == DayKind.LIGHT and day.lesson is None:
        return _catch_up(s, here, day)
    lesson = here.school.lesson_still_here(day.lesson)
    if lesson is None:
        return None
    wishes = in_force(s, here.student, day.date)
    fresh = people.student(s, here.student.id)
    calendar = dates.calendar_of(s, fresh, day.date)
    history = history_of(s, here.school, fresh, day.date, wishes, calendar)
    today = PastDay(
        day=day.date,
        number=history.school_day,
        items=done_of(days.items_of(s, day.id)),
        lesson=lesson.n,
        minutes=day.seconds / 60,
    )
    return planned_second(here.school.syllabus, history, today, Wishes(minutes=fresh.minutes))


def _catch_up(s: Session, here: Here, day: SchoolDay) -> LessonId | None:
    """On the light day, a lesson that waits, where the household is behind its calendar. It is an offer only."""
    fresh = people.student(s, here.student.id)
    late = pacing.behind(s, fresh, day.date)
    if not late:
        return None
    wishes = in_force(s, fresh, day.date)
    calendar = dates.calendar_of(s, fresh, day.date)
    history = history_of(s, here.school, fresh, day.date, wishes, calendar)
    return morning_offers(here.school.syllabus, history, late).catch_up
