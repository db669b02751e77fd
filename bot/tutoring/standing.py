"""How a student stands: a map of skills, the pace of the course, and an agenda for a live lesson."""

from __future__ import annotations

from collections import defaultdict
from datetime import timedelta

from bot.course.draw import draw
from bot.course.item import plain_text
from bot.messages import AgendaPoint, AgendaShown, MapPicture, MapShown, Message, PaceShown
from bot.planner.closing import Standing
from bot.planner.plan_day import seed_of
from bot.records import attempts, days
from bot.records.days import Past
from bot.records.people import Student
from bot.school import dates, pacing
from bot.school.asking import Asked
from bot.school.names import take_student
from bot.school.planning import open_date
from bot.school.record import lessons_by_unit, units_of
from bot.school.when import fold
from bot.vocabulary import LessonId, Outcome, TemplateId, Verdict

LATELY = timedelta(days=14)
PICTURE = frozenset({"picture", "imagen"})
POINTS = 3
"""Skills that an agenda holds."""


def map_(asked: Asked) -> list[Message]:
    """Lessons by unit: steady, shaky, not met."""
    student, rest = take_student(asked)
    if fold(rest) in PICTURE:
        units_then = tuple(units_of(asked.s, asked.school, student, dates.today(student, asked.at)))
        return [MapPicture(to=asked.person.chat, name=student.name, units=units_then)]
    if rest:
        raise asked.wrong("why-only-a-name", student)
    on = dates.today(student, asked.at)
    units = []
    for title, lessons in lessons_by_unit(asked.s, asked.school, student, on):
        steady, shaky, not_met = (
            tuple(each for each, stands in lessons if stands is wanted) for wanted in Standing
        )
        units.append((title, steady, shaky, not_met))
    coming = asked.school.lesson_at(student.lesson)
    return [
        MapShown(
            to=asked.person.chat,
            student=student.id,
            name=student.name,
            units=tuple(units),
            lesson=coming.title if coming else "",
        )
    ]


def pace(asked: Asked) -> list[Message]:
    """How far a student is, how many lesson days took place, and the range of the finish."""
    student, rest = take_student(asked)
    if rest:
        raise asked.wrong("why-only-a-name", student)
    on = dates.today(student, asked.at)
    now = pacing.heading(asked.s, asked.school, student, on)
    coming = asked.school.lesson_at(student.lesson)
    course = asked.school.course
    return [
        PaceShown(
            to=asked.person.chat,
            student=student.id,
            name=student.name,
            lesson=coming.title if coming else "",
            n=coming.n if coming else len(course.lessons),
            out_of=sum(len(unit.lessons) for unit in course.units),
            written=len(course.lessons),
            week=student.week,
            taken=now.taken,
            planned=now.planned,
            early=now.range.early.isoformat() if now.range else "",
            late=now.range.late.isoformat() if now.range else "",
            left=now.left,
        )
    ]


def agenda(asked: Asked) -> list[Message]:
    """For a live lesson: what went well, and up to three skills with a wrong answer as typed and a fresh item."""
    student, rest = take_student(asked)
    if rest:
        raise asked.wrong("why-only-a-name", student)
    on = dates.today(student, asked.at)
    past = days.past_items(asked.s, student.id, on - LATELY, on + timedelta(days=1))
    missed: dict[LessonId, list[Past]] = defaultdict(list)
    well: dict[LessonId, list[bool]] = defaultdict(list)
    for each in past:
        if each.template not in asked.school.syllabus.template or each.outcome is None:
            continue
        if each.outcome in (Outcome.UNSOLVED, Outcome.LATER_TRY):
            missed[each.lesson].append(each)
        if each.outcome in (Outcome.FIRST_TRY, Outcome.LATER_TRY, Outcome.UNSOLVED):
            well[each.lesson].append(each.outcome is Outcome.FIRST_TRY)
    worst = sorted(missed, key=lambda name: (-_weight(missed[name]), name))[:POINTS]
    good = [name for name, firsts in well.items() if all(firsts) and len(firsts) >= 2]
    return [
        AgendaShown(
            to=asked.person.chat,
            student=student.id,
            name=student.name,
            well=tuple(asked.school.title(name) for name in good[:3]),
            points=tuple(_point(asked, student, name, missed[name]) for name in worst),
        )
    ]


def _weight(items: list[Past]) -> int:
    return sum(2 if each.outcome is Outcome.UNSOLVED else 1 for each in items)


def _point(asked: Asked, student: Student, lesson: LessonId, items: list[Past]) -> AgendaPoint:
    worst = next((each for each in reversed(items) if each.outcome is Outcome.UNSOLVED), items[-1])
    sent = days.item(asked.s, worst.id)
    wrong = [each for each in attempts.attempts_of(asked.s, sent.id) if each.verdict is Verdict.WRONG]
    says = {misstep.name: misstep.say for misstep in sent.item.key.missteps}
    named = next((each.misstep for each in reversed(wrong) if each.misstep), None)
    on = open_date(asked.s, student, asked.at) or dates.today(student, asked.at)
    seed = seed_of(student.id, on, TemplateId(sent.template), again=3)
    fresh = draw(asked.school.course, sent.template, seed)
    return AgendaPoint(
        title=asked.school.title(lesson),
        ask=plain_text(sent.item.ask),
        typed=wrong[-1].typed[:60] if wrong else "",
        say=says.get(named or "", ""),
        fresh=plain_text(fresh.ask),
        answer=fresh.answer_shown,
    )
