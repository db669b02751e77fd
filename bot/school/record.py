"""What a family keeps of any stretch of days: days and minutes, lessons, tests, standards, work samples."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from sqlalchemy.orm import Session

from bot.course.lesson import Lesson
from bot.course.standards import standards
from bot.messages import RecordDay, RecordLesson, RecordOf, RecordSample, RecordTest, UnitStanding
from bot.planner.closing import Standing, standing_of
from bot.planner.plan import DayKind
from bot.records import days, files, people
from bot.records.days import Past, SchoolDay
from bot.records.memories import memories
from bot.records.people import Student
from bot.school.school import School
from bot.school.spreadsheet import csv_text
from bot.school.standing import COUNTED, count_up, lessons_met
from bot.school.weekly import lessons_by_day, test_of
from bot.vocabulary import LessonId

COLUMNS = """\
All files: CSV after RFC 4180 (commas, double quotes, CR LF), UTF-8, the first line holds the names below.
A cell that a spreadsheet might take for a formula begins with an apostrophe. Dates are ISO 8601, in the family's own
time zone.

days.csv       one line a school day that was opened
  date         the day
  kind         lesson, light, review-only, small, gentle, test, off-season: what kind of day it was
  lessons      titles of the lessons that were met, with "; " between them
  minutes      time at work: gaps between replies of up to ten minutes, added up and rounded; 0 on a day on paper
  on_paper     yes where the review was done on paper, so that nobody took the time
  items        items of guided practice and mixed review, without excused ones
  solved       how many of them were solved, at first go or later
lessons.csv    one line a lesson, on the day on which it was first met
  date, number, unit, lesson, standards (codes with spaces between them)
tests.csv      one line a test that was handed in
  date, test, right, items
standards.csv  one line a standard that one of the lessons meets
  code         of the Common Core State Standards for Mathematics (2010)
  gist         what it asks, in our own words
  lessons      titles of the lessons, with "; " between them
samples.csv    one line a photo of work that was sent
  date, lessons (titles of that day's lessons), caption

Record rules differ from place to place; please look up those of yours.
"""
"""What stands in the files, column by column."""


def minutes_of(day: SchoolDay) -> int:
    """A day's time at work in whole minutes, so that a column of them adds up to its total."""
    return (day.seconds + 30) // 60


def record_of(s: Session, school: School, student: Student, first: date, last: date, today: date) -> RecordOf:
    """The record of the days from `first` to `last`, both in, from the rows as they stand."""
    opened = [
        day
        for day in days.days_between(s, student.id, first, last)
        if day.started_at is not None and day.kind != DayKind.PLACEMENT
    ]
    items: dict[date, list[Past]] = {}
    for item in days.past_items(s, student.id, first, last + timedelta(days=1)):
        items.setdefault(item.date, []).append(item)
    lessons = list(_lessons(s, school, student, first, last, opened))
    return RecordOf(
        student=student.id,
        name=student.name,
        household=people.household(s, student.household).name,
        tutor=people.person_name(s, student.tutor),
        first=first.isoformat(),
        last=last.isoformat(),
        course=school.course.title,
        days=tuple(_day(school, day, items.get(day.date, [])) for day in opened),
        lessons=tuple(lessons),
        tests=tuple(_test(s, school, day) for day in opened if day.notes.get("test_counted")),
        hands_on=tuple(_hands_on(school, opened)),
        standards=tuple(_standards(school, lessons)),
        work=tuple(samples_of(s, school, student, first, last)),
        units=tuple(units_of(s, school, student, today)),
        met_by=lessons_by_day(s, student.id, first, last),
    )


def samples_of(
    s: Session, school: School, student: Student, first: date, last: date
) -> Iterable[RecordSample]:
    """The photos of some days, each with the lessons of the day that it belongs to."""
    for photo, lesson in photos_of(s, school, student, first, last):
        yield RecordSample(photo.date.isoformat(), lesson, photo.caption, photo.path or "")


def photos_of(
    s: Session, school: School, student: Student, first: date, last: date
) -> list[tuple[files.Photo, str]]:
    """The photos of some days, with the titles of that day's lessons."""
    titles: dict[int | None, str] = {}
    for day in days.days_between(s, student.id, first, last):
        names = lessons_met(day) or ([day.lesson] if day.lesson else [])
        titles[day.id] = ", ".join(school.title(name) for name in names)
    return [(each, titles.get(each.day, "")) for each in files.files_between(s, student.id, first, last)]


def _day(school: School, day: SchoolDay, items: Iterable[Past]) -> RecordDay:
    counts = count_up(items, COUNTED)
    return RecordDay(
        date=day.date.isoformat(),
        kind=day.kind,
        lessons=tuple(school.title(name) for name in lessons_met(day)),
        minutes=minutes_of(day),
        on_paper=day.on_paper,
        items=counts.asked,
        solved=counts.first_try + counts.later_try,
    )


def _lessons(
    s: Session, school: School, student: Student, first: date, last: date, opened: Iterable[SchoolDay]
) -> Iterable[RecordLesson]:
    """Each lesson on the day on which it was first met in the range."""
    seen: set[LessonId] = set()
    for day in opened:
        for name in lessons_met(day):
            if name in seen:
                continue
            seen.add(name)
            lesson = _written(school, name)
            unit = next((each.title for each in school.course.units if lesson and each.n == lesson.unit), "")
            yield RecordLesson(
                date=day.date.isoformat(),
                n=lesson.n if lesson else 0,
                unit=unit,
                title=school.title(name),
                standards=lesson.standards if lesson else (),
            )


def _written(school: School, name: LessonId) -> Lesson | None:
    try:
        return school.course.lesson(name)
    except LookupError:  # a lesson that left the course was met all the same
        return None


def _test(s: Session, school: School, day: SchoolDay) -> RecordTest:
    test = test_of(s, school, day)
    return RecordTest(test.date, test.title, test.right, test.out_of)


def _hands_on(school: School, opened: Iterable[SchoolDay]) -> Iterable[tuple[str, str]]:
    for day in opened:
        if day.notes.get("hands_on_done"):
            task = next(
                (each for each in school.course.hands_on if each.id == day.notes.get("hands_on")), None
            )
            yield day.date.isoformat(), task.title if task else ""


def _standards(school: School, lessons: Iterable[RecordLesson]) -> Iterable[tuple[str, str, tuple[str, ...]]]:
    by_code: dict[str, list[str]] = {}
    for lesson in lessons:
        for code in lesson.standards:
            by_code.setdefault(code, []).append(lesson.title)
    known = standards()
    for code in sorted(by_code, key=_in_order):
        yield code, known[code].gist if code in known else "", tuple(by_code[code])


def _in_order(code: str) -> tuple[object, ...]:
    """Codes by grade, domain and number: 6.NS.C.9 stands before 6.NS.C.10."""
    return tuple(
        (not part.isdecimal(), int(part) if part.isdecimal() else 0, part) for part in code.split(".")
    )


def units_of(s: Session, school: School, student: Student, today: date) -> Iterable[UnitStanding]:
    """Unit by unit what the student stands on today, a state for each lesson in the order of the course."""
    for title, stands in lessons_by_unit(s, school, student, today):
        yield UnitStanding(title, tuple(standing.value.replace("-", " ") for _, standing in stands))


def lessons_by_unit(
    s: Session, school: School, student: Student, today: date
) -> Iterable[tuple[str, list[tuple[str, Standing]]]]:
    """Each unit's title, and the titles of its written lessons with how each stands today."""
    believed = memories(s, student.id)
    for unit in school.course.units:
        written = [lesson for name in unit.lessons if (lesson := _written(school, name)) is not None]
        if written:
            stands = [(each.title, standing_of(believed, each.skills, today)) for each in written]
            yield unit.title, stands


def tables_of(record: RecordOf) -> tuple[tuple[str, bytes], ...]:
    """The record as files for a spreadsheet, with one that says what the columns hold."""
    tables: dict[str, list[list[object]]] = {
        "days": [["date", "kind", "lessons", "minutes", "on_paper", "items", "solved"]],
        "lessons": [["date", "number", "unit", "lesson", "standards"]],
        "tests": [["date", "test", "right", "items"]],
        "standards": [["code", "gist", "lessons"]],
        "samples": [["date", "lessons", "caption"]],
    }
    for day in record.days:
        on_paper = "yes" if day.on_paper else "no"
        tables["days"].append(
            [day.date, day.kind, "; ".join(day.lessons), day.minutes, on_paper, day.items, day.solved]
        )
    for lesson in record.lessons:
        tables["lessons"].append(
            [lesson.date, lesson.n, lesson.unit, lesson.title, " ".join(lesson.standards)]
        )
    for test in record.tests:
        tables["tests"].append([test.date, test.title, test.right, test.out_of])
    for code, gist, titles in record.standards:
        tables["standards"].append([code, gist, "; ".join(titles)])
    tables["samples"] += [[each.date, each.lesson, each.caption] for each in record.work]
    made = [(f"{name}.csv", csv_text(lines).encode()) for name, lines in tables.items()]
    return (*made, ("columns.txt", COLUMNS.encode()))
