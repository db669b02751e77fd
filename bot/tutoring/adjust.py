"""What the next day holds: add, drop, swap, repeat."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from bot.course.draw import draw
from bot.course.lesson import Lesson
from bot.messages import Line, Message
from bot.planner.plan import DayKind, DayPlan
from bot.planner.plan_day import seed_of
from bot.records import days
from bot.records.days import ItemState, SchoolDay, Sent
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.asking import Asked
from bot.school.changes import Step, propose
from bot.school.drawing import short
from bot.school.effects import add_step, item_step
from bot.school.names import find_lesson, name_of, take_student, take_students
from bot.school.orders import made_today
from bot.school.planning import open_date, plan_for
from bot.school.when import Span, fold, take_dates
from bot.school.wishes import WishKind, in_force, left_out, texts
from bot.tutoring.listing import Planned, drawn, items_at, label, planned_at, take_numbers
from bot.vocabulary import Outcome, Part, TemplateId

MOST_ITEMS = 48
MOST_ADDED = 12
MOST_LINES = 8


@dataclass(frozen=True, slots=True)
class Target:
    """The day that a change is for: to come, or made already."""

    on: date
    made: SchoolDay | None


def target(asked: Asked, student: Student, span: Span | None) -> Target:
    """The day that is meant: the one named, else the next that was not made. Raises Unclear."""
    if span is None:
        on = open_date(asked.s, student, asked.at)
        if on is None:
            raise asked.wrong("why-no-day-ahead", student, name=student.name)
        return Target(on, None)
    made = days.day_on(asked.s, student.id, span.first)
    if made is not None:
        if made_today(asked, student) is None:
            raise asked.wrong("why-day-over", student, name=student.name, date_day=span.first.isoformat())
        return Target(span.first, made)
    if not dates.has_school(asked.s, student, span.first):
        raise asked.wrong("why-no-school", student, name=student.name, date_day=span.first.isoformat())
    return Target(span.first, None)


def day_and_rest(asked: Asked, students: Sequence[Student], rest: str) -> tuple[Span | None, str]:
    today = dates.today(students[0], asked.at)
    span, left = take_dates(rest, today)
    if span is not None and span.last < today:
        raise asked.wrong("why-date-past", students[0], date_day=span.last.isoformat())
    return span, left


def _wish(student: Student, kind: WishKind, on: date, **what: object) -> Wish:
    return Wish(kind, what, on, on, student=student.id)


def _sized(plan: DayPlan, change: int) -> int:
    return max(0, min(MOST_ITEMS, len(plan.review) + plan.own_items + change))


def _compared(
    asked: Asked, student: Student, on: date, wished: Sequence[Wish], before: DayPlan
) -> tuple[list[Line], list[Line]]:
    """What a change does to a day's plan, item by item; and about how long the day is then."""
    after, _ = plan_for(asked.s, asked.school, student, on, further=wished)
    had, has = drawn(asked, before), drawn(asked, after)
    out, come = _missing(had, has), _missing(has, had)
    lines = [_item_line("line-out", each) for each in out] + [_item_line("line-in", each) for each in come]
    more = len(lines) - MOST_LINES
    if more > 0:
        lines = [*lines[:MOST_LINES], Line("line-more", {"count": more})]
    if after.lesson != before.lesson:
        key = "line-no-lesson" if after.lesson is None else "line-new-lesson"
        lines.append(Line(key, {"title": asked.school.title(after.lesson or before.lesson or "")}))
    minutes = round(after.minutes)
    notes = []
    if minutes != round(before.minutes):
        notes = [Line("note-minutes", {"name": student.name, "minutes": minutes, "family": student.minutes})]
    return lines, notes


def _missing(here: Sequence[Planned], there: Sequence[Planned]) -> list[Planned]:
    """The items of one plan that another lacks; a kind that comes twice is two."""
    left = Counter((each.part, each.pick.template) for each in there)
    missing = []
    for each in here:
        kind = (each.part, each.pick.template)
        if left[kind]:
            left[kind] -= 1
        else:
            missing.append(each)
    return missing


def _item_line(key: str, each: Planned) -> Line:
    return Line(key, {"title": each.item.lesson_title, "ask": short(each.item.ask, 70)})


def _head(asked: Asked, student: Student, on: date) -> Line:
    return Line("line-day-of", {"name": name_of(asked, student), "date_day": on.isoformat()})


def open_templates(asked: Asked, student: Student, lesson: Lesson, on: date, today: str | None) -> list[str]:
    """Templates of a lesson that may be asked on a day, easy ones first. Raises Unclear where it wasn't met."""
    skipped = left_out(in_force(asked.s, student, on))
    met = {n for n in range(1, student.lesson) if n not in skipped}
    if today is not None and today in asked.school.syllabus.by_id:
        met.add(asked.school.syllabus.by_id[today].n)  # type: ignore[index]
    syllabus = asked.school.syllabus
    own = [
        each for each in syllabus.templates_of.get(lesson.id, ()) if syllabus.needed_lesson[each.id] <= met
    ]
    if not own:
        raise asked.wrong("why-not-met", student, name=student.name, title=lesson.title)
    return [each.id for each in sorted(own, key=lambda each: each.level)]


def _count_at_end(text: str) -> tuple[int, str]:
    """A number of items at the end of some words ("fractions 3"); 1 where there is none."""
    words, _, last = text.rpartition(" ")
    if words and last.isdecimal():
        return min(int(last[:4]), MOST_ADDED), words.strip()
    return 1, text


def add(asked: Asked) -> list[Message]:
    """Further items of a lesson, on the next day or on a day that is named."""
    students, rest = take_students(asked)
    span, words = day_and_rest(asked, students, rest)
    count, words = _count_at_end(words)
    if count < 1:
        raise asked.wrong("why-count", students[0], most=MOST_ADDED)
    said = asked.text[: len(asked.text) - len(rest)]
    tail = f" {count}" if count > 1 else ""
    day = f" {span.first.isoformat()}" if span else ""
    lesson = find_lesson(asked, words, lambda title: f"{said}{title}{tail}{day}")
    lines: list[Line] = []
    notes: list[Line] = []
    wished: list[Wish] = []
    steps: list[Step] = []
    for student in students:
        where = target(asked, student, span)
        lines.append(_head(asked, student, where.on))
        if where.made is not None:
            more, added = _add_to_made(asked, student, where.made, lesson, count)
            steps += more
            lines += added
            continue
        plan, _ = plan_for(asked.s, asked.school, student, where.on)
        _refuse_test(asked, student, plan)
        own = _pins(asked, student, where.on, plan, _by_turns(asked, student, lesson, plan)[:count])
        own.append(_wish(student, WishKind.REVIEW_ITEMS, where.on, count=_sized(plan, count)))
        more_lines, more_notes = _compared(asked, student, where.on, own, plan)
        wished += own
        lines += more_lines
        notes += more_notes
    return propose(asked, "add", lines, wished=wished, steps=steps, notes=notes)


def _refuse_test(asked: Asked, student: Student, plan: DayPlan) -> None:
    if plan.kind is DayKind.TEST:
        raise asked.wrong("why-test-day", student, name=student.name, date_day=plan.day.isoformat())


def _by_turns(asked: Asked, student: Student, lesson: Lesson, plan: DayPlan) -> list[str]:
    """A lesson's templates, those first that the plan doesn't hold; round and round, easy ones first."""
    own = open_templates(asked, student, lesson, plan.day, plan.lesson)
    taken = {each.template for each in (*plan.review, *plan.guided)}
    order = sorted(own, key=lambda each: each in taken)
    return [each for _ in range(MOST_ADDED) for each in order]


def _pins(asked: Asked, student: Student, on: date, plan: DayPlan, templates: Sequence[str]) -> list[Wish]:
    """Wishes that ask each of these templates once more than the plan does."""
    planned = Counter(str(each.template) for each in plan.review)
    pinned = Counter(texts(in_force(asked.s, student, on), WishKind.PIN, "template"))
    wanted = Counter(templates)
    return [
        _wish(student, WishKind.PIN, on, template=template)
        for template, count in wanted.items()
        for _ in range(max(1, planned[template] + count - pinned[template]))
    ]


def _add_to_made(
    asked: Asked, student: Student, day: SchoolDay, lesson: Lesson, count: int
) -> tuple[list[Step], list[Line]]:
    there = days.items_of(asked.s, day.id, dropped=True)
    seen = {each.item.ask for each in there}
    own = open_templates(asked, student, lesson, day.date, day.lesson)
    order = sorted(own, key=lambda each: any(other.template == each for other in there))
    steps, lines = [], []
    for n in range(count):
        template = order[n % len(order)]
        for again in range(1, 9):
            seed = seed_of(student.id, day.date, TemplateId(template), again=again)
            item = draw(asked.school.course, TemplateId(template), seed)
            if item.ask not in seen:
                break
        seen.add(item.ask)
        steps.append(add_step(student, day, template, seed))
        lines.append(Line("line-in", {"title": item.lesson_title, "ask": short(item.ask, 70)}))
    return steps, lines


def drop(asked: Asked) -> list[Message]:
    """Leave items out: of the next day's plan, or of today's day as far as they were not seen."""
    student, rest = take_student(asked)
    span, words = day_and_rest(asked, [student], rest)
    labels, left = take_numbers(words)
    if not labels or left:
        raise asked.wrong("why-numbers", student, name=student.name)
    where = target(asked, student, span)
    head = _head(asked, student, where.on)
    if where.made is not None:
        sents = items_at(asked, student, where.made, labels)
        steps = [_drop_made(asked, student, sent) for sent in sents]
        lines = [_sent_line("line-out", sent) for sent in sents]
        return propose(asked, "drop", [head, *lines], steps=steps)
    plan, _ = plan_for(asked.s, asked.school, student, where.on)
    out = planned_at(asked, student, where.on, labels)
    wished = [_wish(student, WishKind.DROP, where.on, template=each.pick.template) for each in out]
    fewer = sum(1 for each in out if each.part is Part.REVIEW)
    if fewer:
        wished.append(_wish(student, WishKind.REVIEW_ITEMS, where.on, count=_sized(plan, -fewer)))
    lines, notes = _compared(asked, student, where.on, wished, plan)
    return propose(asked, "drop", [head, *lines], wished=wished, notes=notes)


def _sent_line(key: str, sent: Sent) -> Line:
    return Line(key, {"title": sent.item.lesson_title, "ask": short(sent.item.ask, 70)})


def _drop_made(asked: Asked, student: Student, sent: Sent) -> Step:
    if sent.state is not ItemState.WAITING:
        key = "why-item-done" if sent.state is ItemState.DONE else "why-item-open"
        raise asked.wrong(key, student, n=label(sent.part, sent.place), name=student.name)
    return item_step(sent, state=ItemState.DROPPED)


def swap(asked: Asked) -> list[Message]:
    """Another item in place of one: of the lesson that is named, else of its own."""
    student, rest = take_student(asked)
    span, words = day_and_rest(asked, [student], rest)
    labels, wanted = take_numbers(words)
    if len(labels) != 1:
        raise asked.wrong("why-one-number", student, name=student.name)
    where = target(asked, student, span)
    day = f" {span.first.isoformat()}" if span else ""
    if where.made is not None:
        return _swap_made(asked, student, where.made, labels[0], wanted, day)
    plan, _ = plan_for(asked.s, asked.school, student, where.on)
    (out,) = planned_at(asked, student, where.on, labels)
    wished = [_wish(student, WishKind.DROP, where.on, template=out.pick.template)]
    if out.part is Part.REVIEW:
        lesson = _wanted_lesson(asked, student, labels[0], wanted, out.item.lesson, day)
        others = [t for t in _by_turns(asked, student, lesson, plan) if t != out.pick.template]
        wished += _pins(asked, student, where.on, plan, others[:1])
    lines, notes = _compared(asked, student, where.on, wished, plan)
    return propose(asked, "swap", [_head(asked, student, where.on), *lines], wished=wished, notes=notes)


def _wanted_lesson(asked: Asked, student: Student, number: str, wanted: str, own: str, day: str) -> Lesson:
    if wanted:
        return find_lesson(asked, wanted, lambda title: f"#{student.id} {number} {title}{day}")
    try:
        return asked.school.course.lesson(own)
    except LookupError:
        raise asked.wrong("why-swap-for-what", student, name=student.name) from None


def _swap_made(
    asked: Asked, student: Student, made: SchoolDay, number: str, wanted: str, day: str
) -> list[Message]:
    (sent,) = items_at(asked, student, made, [number])
    step = _drop_made(asked, student, sent)
    lesson = _wanted_lesson(asked, student, number, wanted, sent.lesson, day)
    steps, lines = _add_to_made(asked, student, made, lesson, 1)
    out = _sent_line("line-out", sent)
    return propose(asked, "swap", [_head(asked, student, made.date), out, *lines], steps=[step, *steps])


def repeat(asked: Asked) -> list[Message]:
    """Items of the latest day once more, with new numbers, on the next day: some, or all that were missed."""
    student, rest = take_student(asked)
    newest = days.newest_day(asked.s, student.id)
    if newest is None:
        raise asked.wrong("why-no-day-yet", student, name=student.name)
    span, words = day_and_rest(asked, [student], rest)
    labels, left = take_numbers(words)
    if fold(left) in ("missed", "wrong", "unsolved", "fallados") and not labels:
        sents = [each for each in days.items_of(asked.s, newest.id) if each.outcome is Outcome.UNSOLVED]
        if not sents:
            raise asked.wrong("why-nothing-missed", student, name=student.name)
    elif labels and not left:
        sents = items_at(asked, student, newest, labels)
    else:
        raise asked.wrong("why-numbers", student, name=student.name)
    where = target(asked, student, span)
    if where.made is not None:
        raise asked.wrong("why-repeat-today", student, name=student.name)
    templates = list(dict.fromkeys(each.template for each in sents if each.template in _known(asked)))
    if not templates:
        raise asked.wrong("why-cannot-repeat", student, name=student.name)
    plan, _ = plan_for(asked.s, asked.school, student, where.on)
    _refuse_test(asked, student, plan)
    planned = {each.template for each in plan.review}
    fresh = [each for each in templates if each not in planned]
    wished = [_wish(student, WishKind.PIN, where.on, template=each) for each in templates]
    if fresh:
        wished.append(_wish(student, WishKind.REVIEW_ITEMS, where.on, count=_sized(plan, len(fresh))))
    lines, notes = _compared(asked, student, where.on, wished, plan)
    already = (
        [Line("note-in-already", {"count": len(templates) - len(fresh)})]
        if len(fresh) < len(templates)
        else []
    )
    return propose(
        asked, "repeat", [_head(asked, student, where.on), *lines], wished=wished, notes=[*already, *notes]
    )


def _known(asked: Asked) -> frozenset[str]:
    return frozenset(asked.school.syllabus.template)
