"""What holds for a while: pinned items, more or less of a skill, how many items, days without a lesson."""

from __future__ import annotations

from datetime import timedelta

from bot.course.draw import draw
from bot.messages import Line, Message
from bot.planner.plan_day import seed_of
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.asking import Asked, row_number
from bot.school.changes import propose, student_step
from bot.school.drawing import short
from bot.school.names import find_lesson, name_of, take_students
from bot.school.orders import take_span
from bot.school.planning import open_date, plan_for
from bot.school.when import Span, fold
from bot.school.wishes import WishKind
from bot.tutoring.adjust import MOST_ITEMS, day_and_rest, open_templates, target
from bot.vocabulary import TemplateId

PINNED_DAYS = 14
"""Days that a pin or extra practice lasts where no dates are given (common practice, no source)."""


def pin(asked: Asked) -> list[Message]:
    """One kind of item each day for a while: two weeks, or the days that are named."""
    students, rest = take_students(asked)
    span, words = day_and_rest(asked, students, rest)
    said = asked.text[: len(asked.text) - len(rest)]
    days_said = f" {span.first.isoformat()} - {span.last.isoformat()}" if span else ""
    lesson = find_lesson(asked, words, lambda title: f"{said}{title}{days_said}")
    lines, wished = [], []
    for student in students:
        first = open_date(asked.s, student, asked.at)
        if first is None:
            raise asked.wrong("why-no-day-ahead", student, name=student.name)
        lasts = span or Span(first, first + timedelta(days=PINNED_DAYS - 1))
        plan, _ = plan_for(asked.s, asked.school, student, first)
        own = open_templates(asked, student, lesson, first, plan.lesson)
        template = own[len(own) // 2]
        start = max(first, lasts.first)
        wished.append(Wish(WishKind.PIN, {"template": template}, start, lasts.last, student=student.id))
        item = draw(
            asked.school.course, TemplateId(template), seed_of(student.id, start, TemplateId(template))
        )
        holes: dict[str, str | int | list[str]] = {
            "name": name_of(asked, student),
            "title": lesson.title,
            "ask": short(item.ask, 70),
            "date_from": start.isoformat(),
            "date_to": lasts.last.isoformat(),
        }
        lines.append(Line("line-pin", holes))
    return propose(asked, "pin", lines, wished=wished)


_LESS = {"less", "fewer", "menos"}
_NONE = {"none", "no", "nada", "ninguno"}
_MORE = {"more", "mas"}


def practice(asked: Asked) -> list[Message]:
    """More of a lesson's skills in the review, or less, or none, for two weeks or the days that are named."""
    students, rest = take_students(asked)
    word, _, after = rest.partition(" ")
    kind, key = WishKind.MORE, "line-practice-more"
    if fold(word) in _LESS:
        kind, key, rest = WishKind.FEWER, "line-practice-less", after
    elif fold(word) in _NONE:
        kind, key, rest = WishKind.DROP_SKILL, "line-practice-none", after
    elif fold(word) in _MORE:
        rest = after
    span, words = day_and_rest(asked, students, rest)
    said = asked.text[: len(asked.text) - len(rest)]
    days_said = f" {span.first.isoformat()} - {span.last.isoformat()}" if span else ""
    lesson = find_lesson(asked, words, lambda title: f"{said}{title}{days_said}")
    today = dates.today(students[0], asked.at)
    lasts = span or Span(today, today + timedelta(days=PINNED_DAYS))
    if kind is WishKind.MORE:
        for student in students:
            open_templates(asked, student, lesson, lasts.first, None)
    wished = [
        Wish(kind, {"skill": skill}, lasts.first, lasts.last, student=student.id)
        for student in students
        for skill in lesson.skills
    ]
    line = Line(
        key,
        {
            "names": [name_of(asked, each) for each in students],
            "title": lesson.title,
            "date_to": lasts.last.isoformat(),
        },
    )
    return propose(asked, "practice", [line], wished=wished)


def items(asked: Asked) -> list[Message]:
    """How many review items a day holds, from now on; "auto" leaves it to the student's own times."""
    students, rest = take_students(asked)
    word = fold(rest.strip())
    auto = word in ("auto", "automatico")
    count = None if auto else row_number(word)
    if not auto and (count is None or count > MOST_ITEMS):
        raise asked.wrong("why-items", students[0], most=MOST_ITEMS)
    lines = []
    for each in students:
        holes: dict[str, str | int | list[str]] = {"name": name_of(asked, each)}
        if count is not None:
            holes["count"] = count
        lines.append(Line("line-items-auto" if auto else "line-items", holes))
    steps = [student_step(each.id, review_items=count) for each in students]
    return propose(asked, "items", lines, steps=steps)


def review(asked: Asked) -> list[Message]:
    """No lesson on the next day, or on the days that are named: review only."""
    students, rest = take_students(asked)
    span = take_span(asked, rest, students, needed=False)
    lines, wished = [], []
    for student in students:
        on = span
        if on is None:
            where = target(asked, student, None)
            on = Span(where.on, where.on)
        wished.append(Wish(WishKind.NO_LESSON, {}, on.first, on.last, student=student.id))
        key = "line-review-day" if on.first == on.last else "line-review"
        lines.append(
            Line(
                key,
                {
                    "name": name_of(asked, student),
                    "date_day": on.first.isoformat(),
                    "date_from": on.first.isoformat(),
                    "date_to": on.last.isoformat(),
                },
            )
        )
    return propose(asked, "review", lines, wished=wished)
