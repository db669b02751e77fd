"""What a tutor looks at: one student's day, the plan for a day, an item with all that was typed."""

from __future__ import annotations

from bot.course.item import plain_text
from bot.messages import DayShown, ItemLine, Line, Message, PlanShown, RecordShown
from bot.planner.plan import DropReason
from bot.records import attempts, days
from bot.records.attempts import CHECKER
from bot.records.days import SchoolDay, Sent
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates, overview
from bot.school.asking import Asked
from bot.school.digest import week_signs
from bot.school.drawing import short
from bot.school.names import take_student
from bot.school.planning import open_date, plan_for
from bot.school.when import fold, take_dates
from bot.school.wishes import WishKind
from bot.tutoring import ahead
from bot.tutoring.listing import drawn, items_at, keep, label, own_planned, take_numbers, title_of
from bot.vocabulary import LessonId, Part

SHOWN_PARTS = (Part.GUIDED, Part.REVIEW, Part.TEST)
"""Parts of a day that are listed with numbers."""
WEEK = frozenset({"week", "semana"})
MOST_ITEMS = 30
MOST_TYPED = 60


def today(asked: Asked) -> list[Message]:
    """Each student's day in a line; with a name, one student's in full."""
    if not asked.text.strip():
        return overview.today(asked)
    student, rest = take_student(asked)
    on = dates.today(student, asked.at)
    span, left = take_dates(rest, on, past=True)
    if left:
        raise asked.wrong("why-not-a-date", student, words=left[:60])
    day = days.day_on(asked.s, student.id, span.first if span else on)
    if day is None and span is not None and span.first != on:
        raise asked.wrong("why-no-day-then", student, name=student.name, date_day=span.first.isoformat())
    return [day_shown(asked, student, day)]


def day_shown(asked: Asked, student: Student, day: SchoolDay | None) -> DayShown:
    """One student's day with its items."""
    row = overview.day_row(asked, student)
    on = day.date if day else dates.today(student, asked.at)
    if day is None:
        return DayShown(to=asked.person.chat, row=row, date=on.isoformat())
    listed = [each for each in days.items_of(asked.s, day.id) if each.part in SHOWN_PARTS]
    tried = attempts.attempts_of_day(asked.s, day.id)
    lines = []
    for sent in listed[:MOST_ITEMS]:
        typed = tried.get(sent.id, [])
        lines.append(_line(sent, typed[-1].typed if typed else ""))
    return DayShown(
        to=asked.person.chat,
        row=row,
        date=on.isoformat(),
        minutes=round(day.seconds / 60),
        items=tuple(lines),
        more=max(0, len(listed) - MOST_ITEMS),
        week=week_signs(asked.s, student, on),
    )


def _line(sent: Sent, typed: str) -> ItemLine:
    return ItemLine(
        n=label(sent.part, sent.place),
        part=sent.part.value,
        title=sent.item.lesson_title,
        ask=short(sent.item.ask),
        stands=sent.outcome.value if sent.outcome else sent.state.value,
        typed=typed[:MOST_TYPED],
        with_tutor=sent.with_tutor,
    )


def plan(asked: Asked) -> list[Message]:
    """What the next day, or the day that is named, is going to hold; a day that was made is shown as it is."""
    student, rest = take_student(asked)
    if fold(rest.strip()) in WEEK:
        return ahead.week(asked, student)
    on = dates.today(student, asked.at)
    span, left = take_dates(rest, on)
    if left:
        raise asked.wrong("why-not-a-date", student, words=left[:60])
    chosen = span.first if span else open_date(asked.s, student, asked.at)
    if chosen is None:
        raise asked.wrong("why-no-day-ahead", student, name=student.name)
    made = days.day_on(asked.s, student.id, chosen)
    if made is not None:
        return [day_shown(asked, student, made)]
    if chosen < on:
        raise asked.wrong("why-no-day-then", student, name=student.name, date_day=chosen.isoformat())
    if not dates.has_school(asked.s, student, chosen):
        raise asked.wrong("why-no-school", student, name=student.name, date_day=chosen.isoformat())
    proposed, wishes = plan_for(asked.s, asked.school, student, chosen)
    listed = drawn(asked, proposed)
    keep(asked, student, chosen, {each.label: each.pick.template for each in listed})
    notes = [_wish_line(asked, wish) for wish in wishes]
    notes += [
        Line("note-not-taught", {"title": title_of(asked, each.template)})
        for each in proposed.dropped
        if each.reason is DropReason.NOT_TAUGHT and each.template
    ]
    if proposed.test is not None:
        notes.append(Line("note-test", {"n": proposed.test}))
    return [
        PlanShown(
            to=asked.person.chat,
            student=student.id,
            name=student.name,
            date=chosen.isoformat(),
            day_kind=proposed.kind.value,
            lesson=asked.school.title(proposed.lesson) if proposed.lesson else "",
            sitting=proposed.sitting,
            minutes=round(proposed.minutes),
            family_minutes=student.minutes,
            items=tuple(each.line for each in (*own_planned(proposed, wishes), *listed)),
            notes=tuple(each for each in notes if each is not None),
        )
    ]


def _wish_line(asked: Asked, wish: Wish) -> Line | None:
    """A wish that the plan follows, in a line; None for one that doesn't touch the plan."""
    template, skill = wish.what.get("template"), wish.what.get("skill")
    match wish.kind:
        case WishKind.PIN | WishKind.DROP:
            return Line(f"wish-{wish.kind}", {"title": title_of(asked, str(template))})
        case WishKind.MORE | WishKind.FEWER | WishKind.DROP_SKILL:
            return Line(f"wish-{wish.kind}", {"title": asked.school.skill_title(str(skill))})
        case WishKind.OWN_ITEM | WishKind.OWN_LESSON:
            return Line(f"wish-{wish.kind}", {"title": str(wish.what.get("title", ""))})
        case (
            WishKind.SMALL_DAY | WishKind.NO_LESSON | WishKind.PRINTED | WishKind.TEST | WishKind.SECOND_LOOK
        ):
            return Line(f"wish-{wish.kind}")
    return None


def item(asked: Asked) -> list[Message]:
    """One item of the latest day with all that was typed, and how each answer was graded."""
    student, rest = take_student(asked)
    on = dates.today(student, asked.at)
    span, words = take_dates(rest, on, past=True)
    labels, left = take_numbers(words)
    if len(labels) != 1 or left:
        raise asked.wrong("why-one-number", student, name=student.name)
    day = days.day_on(asked.s, student.id, span.first) if span else days.newest_day(asked.s, student.id)
    if day is None:
        raise asked.wrong("why-no-day-yet", student, name=student.name)
    (sent,) = items_at(asked, student, day, labels)
    return [record(asked, student, day, sent)]


def record(asked: Asked, student: Student, day: SchoolDay, sent: Sent) -> RecordShown:
    """An item with all that was typed: (attempt, typed, read as, verdict, misstep's question, hints, by a tutor)."""
    says = {misstep.name: misstep.say for misstep in sent.item.key.missteps}
    rows = tuple(
        (
            each.id,
            each.typed[:200],
            each.read_as,
            each.verdict.value,
            says.get(each.misstep or "", ""),
            each.hints,
            each.by != CHECKER,
        )
        for each in attempts.attempts_of(asked.s, sent.id)[-8:]
    )
    return RecordShown(
        to=asked.person.chat,
        item=sent.id,
        student=student.id,
        name=student.name,
        n=label(sent.part, sent.place),
        date=day.date.isoformat(),
        title=asked.school.title(LessonId(sent.lesson)),
        ask=plain_text(sent.item.ask),
        answer=sent.item.answer_shown,
        outcome=sent.outcome.value if sent.outcome else "",
        why=sent.why.value,
        attempts=rows,
    )
