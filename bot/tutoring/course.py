"""The course and the calendar: days, weeks, pauses, the lesson that comes next, pages of the tutor's own."""

from __future__ import annotations

import re

from bot.messages import Line, Message
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school.asking import Asked
from bot.school.changes import propose, student_step
from bot.school.names import ALL, find_lesson, list_names, name_of, take_students
from bot.school.orders import take_span, today_of
from bot.school.when import fold, take_week
from bot.school.wishes import WishKind

_URL = re.compile(r"(https?://[^\s<>\"]{4,300})\s*$", re.IGNORECASE)


def open_(asked: Asked) -> list[Message]:
    """School in spite of a holiday, or of a day off that was set before."""
    students, rest = take_students(asked)
    span = take_span(asked, rest, students)
    assert span is not None
    for student in students:
        if span.first == span.last and student.week[span.first.weekday()] == "0":
            raise asked.wrong(
                "why-not-a-school-weekday", student, name=student.name, date_day=span.first.isoformat()
            )
    wished = [Wish(WishKind.SCHOOL_ON, {}, span.first, span.last, student=each.id) for each in students]
    key = "line-open-day" if span.first == span.last else "line-open"
    holes: dict[str, str | int | list[str]] = {
        "names": list_names(asked, students),
        "date_day": span.first.isoformat(),
        "date_from": span.first.isoformat(),
        "date_to": span.last.isoformat(),
    }
    return propose(asked, "open", [Line(key, holes)], wished=wished)


def week(asked: Asked) -> list[Message]:
    """Which days of the week are school days, and which is the light one."""
    students, rest = take_students(asked)
    signs = take_week(rest)
    if signs is None:
        raise asked.wrong("why-week", students[0])
    lines = [
        Line("line-week", {"name": name_of(asked, each), "week": signs, "week_before": each.week})
        for each in students
    ]
    return propose(asked, "week", lines, steps=[student_step(each.id, week=signs) for each in students])


def begin(asked: Asked) -> list[Message]:
    """The first day of a student who has not started yet."""
    students, rest = take_students(asked)
    span = take_span(asked, rest, students)
    assert span is not None
    for student in students:
        if student.first_day is not None and student.first_day < today_of(asked, [student]):
            raise asked.wrong("why-begun", student, name=student.name, date_day=student.first_day.isoformat())
    lines = [
        Line("line-begin", {"names": list_names(asked, students), "date_day": span.first.isoformat()}),
    ]
    first = span.first.isoformat()
    return propose(asked, "begin", lines, steps=[student_step(each.id, first_day=first) for each in students])


def pause(asked: Asked) -> list[Message]:
    """No days until it is resumed."""
    return _paused(asked, paused=True)


def resume(asked: Asked) -> list[Message]:
    """Days again."""
    return _paused(asked, paused=False)


def _paused(asked: Asked, *, paused: bool) -> list[Message]:
    students, rest = take_students(asked)
    if rest:
        raise asked.wrong("why-only-a-name", students[0])
    moving = [each for each in students if each.paused is not paused]
    if not moving:
        raise asked.wrong("why-paused-already" if paused else "why-not-paused", students[0])
    key = "line-pause" if paused else "line-resume"
    steps = [student_step(each.id, paused=paused) for each in moving]
    return propose(asked, "pause", [Line(key, {"names": list_names(asked, moving)})], steps=steps)


def lesson(asked: Asked) -> list[Message]:
    """Move students to a lesson: it comes next, those before it count as met, those after it come again."""
    students, rest = take_students(asked)
    said = asked.text[: len(asked.text) - len(rest)]
    chosen = find_lesson(asked, rest, lambda title: f"{said}{title}", lessons=asked.school.course.lessons)
    lines = []
    for student in students:
        between = abs(chosen.n - student.lesson)
        key = (
            "line-lesson"
            if not between
            else "line-lesson-on"
            if chosen.n > student.lesson
            else "line-lesson-back"
        )
        lines.append(
            Line(
                key,
                {"name": name_of(asked, student), "title": chosen.title, "n": chosen.n, "count": between},
            )
        )
    steps = [student_step(each.id, lesson=chosen.n, sitting=1) for each in students]
    return propose(asked, "lesson", lines, steps=steps)


def skip(asked: Asked) -> list[Message]:
    """Leave a lesson out: it is neither taught nor asked about."""
    students, rest = take_students(asked)
    said = asked.text[: len(asked.text) - len(rest)]
    chosen = find_lesson(asked, rest, lambda title: f"{said}{title}", lessons=asked.school.course.lessons)
    today = today_of(asked, students)
    wished = [
        Wish(WishKind.LEAVE_OUT, {"lessons": [chosen.n]}, today, None, student=each.id) for each in students
    ]
    line = Line("line-skip", {"names": list_names(asked, students), "title": chosen.title, "n": chosen.n})
    needs = [each.title for each in asked.school.course.lessons if set(each.needs) & set(chosen.skills)]
    notes = [Line("note-skip-needed", {"names": needs[:4]})] if needs else []
    return propose(asked, "skip", [line], wished=wished, notes=notes)


def link(asked: Asked) -> list[Message]:
    """A page or video of the tutor's own beside a lesson; for everybody, or for those who are named."""
    found = _URL.search(asked.text)
    if not found:
        raise asked.wrong("why-url")
    url, words = found[1], asked.text[: found.start()].strip()
    students, title = _named_or_all(asked, words)
    chosen = find_lesson(
        asked, title, lambda exact: f"{_named(students)}{exact} {url}", lessons=asked.school.course.lessons
    )
    what: dict[str, object] = {"lesson": chosen.id, "url": url}
    if students:
        today = today_of(asked, students)
        wished = [Wish(WishKind.LINK, what, today, None, student=each.id) for each in students]
        line = Line("line-link", {"names": list_names(asked, students), "title": chosen.title, "url": url})
    else:
        wished = [Wish(WishKind.LINK, what, asked.at.date(), None, tutor=asked.person.id)]
        line = Line("line-link-all", {"title": chosen.title, "url": url})
    return propose(asked, "link", [line], wished=wished)


def _named_or_all(asked: Asked, words: str) -> tuple[list[Student], str]:
    """Students at the front of some words, if the words begin with one; none means everybody."""
    first = fold(words.split(" ")[0].split(",")[0]) if words else ""
    named = {fold(each.name) for each in asked.students} | {fold(each.name) for each in asked.households}
    if first in ALL:
        return [], words.partition(" ")[2]
    if first in named or first.startswith("#"):
        part = Asked(
            asked.s,
            asked.school,
            asked.person,
            asked.at,
            asked.update,
            asked.side,
            asked.name,
            words,
        )
        return take_students(part)
    return [], words


def _named(students: list[Student]) -> str:
    return ", ".join(f"#{each.id}" for each in students) + " " if students else ""
