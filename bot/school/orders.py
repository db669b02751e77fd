"""Orders that a parent and a tutor may both give: days off, sick days, small days, minutes, hours, timing."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from bot.messages import LanguageChosen, Line, Message
from bot.planner.calendar import school_days
from bot.records import days, people
from bot.records.days import SchoolDay, Stage
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.asking import TUTOR, Asked, row_number
from bot.school.changes import Step, household_step, propose, student_step
from bot.school.names import ALL, list_names, name_of, take_household, take_students
from bot.school.planning import open_date
from bot.school.when import Span, fold, take_dates, take_hour
from bot.school.wishes import WishKind

LONGEST = 366
"""Days that a change may reach over."""
FEWEST_MINUTES, MOST_MINUTES = 15, 120
YES, NO = frozenset({"on", "yes", "si"}), frozenset({"off", "no"})
"""What people type to turn something on or off."""
EARLIEST, LATEST_PUSH = 6 * 60, 20 * 60
"""Minutes after midnight between which a day may be pushed; at night nothing is."""
EARLIEST_DIGEST, LATEST_DIGEST = 12 * 60, 22 * 60 + 30


def today_of(asked: Asked, students: Sequence[Student]) -> date:
    """The date where the first of some students lives."""
    return dates.today(students[0], asked.at)


def take_span(asked: Asked, text: str, students: Sequence[Student], *, needed: bool = True) -> Span | None:
    """The stretch of days that a text names, and nothing else; today or later. Raises Unclear."""
    today = today_of(asked, students)
    span, rest = take_dates(text, today)
    if rest:
        raise asked.wrong("why-not-a-date", students[0], words=rest[:60])
    if span is None:
        if needed:
            raise asked.wrong("why-date-missing", students[0])
        return None
    if span.last < span.first or (span.last - span.first).days > LONGEST:
        raise asked.wrong("why-date-order", students[0])
    if span.last < today:
        raise asked.wrong("why-date-past", students[0], date_day=span.last.isoformat())
    return span


def made_today(asked: Asked, student: Student) -> SchoolDay | None:
    """A student's day of today, if it was made and is not over."""
    day = days.day_on(asked.s, student.id, dates.today(student, asked.at))
    return day if day is not None and day.closed_at is None and day.stage is not Stage.DONE else None


def off(asked: Asked) -> list[Message]:
    """Days off, for one, several or all."""
    everybody = fold(asked.text.split(" ")[0]) in ALL
    students, rest = take_students(asked)
    span = take_span(asked, rest, students)
    assert span is not None
    if everybody and asked.side == TUTOR:
        wished = [Wish(WishKind.DAYS_OFF, {}, span.first, span.last, tutor=asked.person.id)]
    else:
        wished = [Wish(WishKind.DAYS_OFF, {}, span.first, span.last, student=each.id) for each in students]
    count = max(_school_days(asked, each, span) for each in students)
    return propose(
        asked,
        "off",
        [_spanned("line-off", span, names=list_names(asked, students), days=count)],
        wished=wished,
        steps=_free_today(asked, students, span),
    )


def _school_days(asked: Asked, student: Student, span: Span) -> int:
    calendar = dates.calendar_of(asked.s, student, span.first)
    return len(school_days(calendar, span.first, span.last))


def _spanned(key: str, span: Span, **holes: str | int | list[str]) -> Line:
    if span.first == span.last:
        return Line(f"{key}-day", {**holes, "date_day": span.first.isoformat()})
    return Line(key, {**holes, "date_from": span.first.isoformat(), "date_to": span.last.isoformat()})


def _free_today(asked: Asked, students: Sequence[Student], span: Span) -> list[Step]:
    steps: list[Step] = []
    for student in students:
        day = made_today(asked, student)
        if day is not None and span.first <= day.date <= span.last:
            steps.append({"op": "free", "student": student.id, "day": day.id})
    return steps


def sick(asked: Asked) -> list[Message]:
    """Sick days: today, or so many days from today on, or some dates."""
    students, rest = take_students(asked)
    today = today_of(asked, students)
    count = row_number(rest)
    if count is not None:
        if not 1 <= count <= 60:
            raise asked.wrong("why-sick-days", students[0])
        span: Span | None = Span(today, today + timedelta(days=count - 1))
    else:
        span = take_span(asked, rest, students, needed=False)
    span = span or Span(today, today)
    wished = [Wish(WishKind.SICK, {}, span.first, span.last, student=each.id) for each in students]
    line = _spanned("line-sick", span, names=list_names(asked, students))
    return propose(
        asked, "sick", [line, Line("line-sick-back")], wished=wished, steps=_free_today(asked, students, span)
    )


def small(asked: Asked) -> list[Message]:
    """A small day: today's where it runs, else the next one, or that of a date."""
    students, rest = take_students(asked)
    span = take_span(asked, rest, students, needed=False)
    lines, wished, steps = [], [], []
    for student in students:
        name = name_of(asked, student)
        today = made_today(asked, student)
        if today is not None and (span is None or span.first == today.date):
            if today.small:
                raise asked.wrong("why-small-already", student, name=name)
            steps.append({"op": "small", "student": student.id, "day": today.id})
            lines.append(Line("line-small-today", {"name": name}))
            continue
        on = span or _next_span(asked, student)
        wished.append(Wish(WishKind.SMALL_DAY, {}, on.first, on.last, student=student.id))
        lines.append(_spanned("line-small", on, name=name))
    return propose(asked, "small", lines, wished=wished, steps=steps)


def _next_span(asked: Asked, student: Student) -> Span:
    on = open_date(asked.s, student, asked.at)
    if on is None:
        raise asked.wrong("why-no-day-ahead", student, name=student.name)
    return Span(on, on)


def minutes(asked: Asked) -> list[Message]:
    """How many minutes a whole day should take."""
    students, rest = take_students(asked)
    number = rest.split(" ")[0].removesuffix("min").removesuffix("m")
    count = row_number(number)
    if count is None or not FEWEST_MINUTES <= count <= MOST_MINUTES:
        raise asked.wrong("why-minutes", students[0], least=FEWEST_MINUTES, most=MOST_MINUTES)
    lines = [
        Line("line-minutes", {"name": name_of(asked, each), "minutes": count, "before": each.minutes})
        for each in students
    ]
    return propose(asked, "minutes", lines, steps=[student_step(each.id, minutes=count) for each in students])


def morning(asked: Asked) -> list[Message]:
    """The hour of the morning push."""
    students, rest = take_students(asked)
    at, left = take_hour(rest)
    if at is None or left or not EARLIEST <= at <= LATEST_PUSH:
        raise asked.wrong("why-morning", students[0], time_first=EARLIEST, time_last=LATEST_PUSH)
    late = next((each for each in students if at >= each.digest_at), None)
    if late is not None:
        raise asked.wrong("why-morning-after-digest", late, time_digest=late.digest_at)
    lines = [
        Line("line-morning", {"name": name_of(asked, each), "time_at": at, "time_before": each.push_at})
        for each in students
    ]
    return propose(asked, "morning", lines, steps=[student_step(each.id, push_at=at) for each in students])


def evening(asked: Asked) -> list[Message]:
    """The hour of a household's digest."""
    home, rest = take_household(asked)
    at, left = take_hour(rest)
    if at is None or left or not EARLIEST_DIGEST <= at <= LATEST_DIGEST:
        raise asked.wrong("why-evening", time_first=EARLIEST_DIGEST, time_last=LATEST_DIGEST)
    members = people.students_of_household(asked.s, home.id)
    late = next((each for each in members if each.household == home.id and each.push_at >= at), None)
    if late is not None:
        raise asked.wrong("why-evening-before-push", late, name=late.name, time_push=late.push_at)
    line = Line("line-evening", {"household": home.name, "time_at": at, "time_before": home.digest_at})
    return propose(asked, "evening", [line], steps=[household_step(home.id, digest_at=at)])


def timing(asked: Asked) -> list[Message]:
    """Timing of number facts, on or off; with a word on why it is optional."""
    students, rest = take_students(asked)
    word = fold(rest.strip())
    if word not in YES | NO:
        raise asked.wrong("why-timing", students[0])
    on = word in YES
    key = "line-timing-on" if on else "line-timing-off"
    steps = [student_step(each.id, timing=on) for each in students]
    lines = [Line(key, {"names": list_names(asked, students)})]
    return propose(asked, "timing", lines, steps=steps, notes=[Line("note-timing")] if on else ())


LANGUAGES = {"en": "en", "english": "en", "ingles": "en", "es": "es", "spanish": "es", "espanol": "es"}
"""What people type for a language."""


def language(asked: Asked) -> list[Message]:
    """The language in which whoever asks is spoken to."""
    word = fold(asked.text.strip())
    chosen = LANGUAGES.get(word)
    if word and chosen is None:
        raise asked.wrong("why-language")
    if chosen is None:
        choices = tuple(dict.fromkeys(LANGUAGES.values()))
        return [LanguageChosen(to=asked.person.chat, choices=choices, side=asked.side)]
    people.set_language(asked.s, asked.person.id, chosen)
    return [LanguageChosen(to=asked.person.chat, language=chosen, side=asked.side)]
