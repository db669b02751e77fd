"""Who needs the tutor now: ranked, with the reasons."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from bot.messages import Line, Message, NeedRow, NeedsShown
from bot.records import attempts, days, people, talks
from bot.records.days import SchoolDay
from bot.records.people import Student
from bot.school import dates
from bot.school.asking import Asked
from bot.school.standing import count_up
from bot.school.waiting_pages import pages_waiting
from bot.tutoring.doubts import Waiting, waiting

LATELY = timedelta(days=14)
SAME_MISSTEP = 3
"""How often one misstep comes up in two weeks before it is named (common practice, no source)."""
HARD_ITEMS, HARD_SHARE = 10, 0.4
"""Of at least so many review items of the last three days, the share unsolved that is named."""
IN_A_ROW = 2
"""Days not opened, or not finished, in a row that are named."""


@dataclass(frozen=True, slots=True)
class Reason:
    """One reason, and how much it weighs against others."""

    weight: int
    line: Line


def needs(asked: Asked) -> list[Message]:
    """Students with reasons, the most pressing first; how many need nothing; how many doubts wait."""
    if not asked.students:
        raise asked.wrong("why-no-students")
    doubts = waiting(asked)
    found = [(student, _reasons(asked, student, doubts)) for student in asked.students]
    ranked = sorted(
        ((student, reasons) for student, reasons in found if reasons),
        key=lambda each: (-sum(reason.weight for reason in each[1]), each[0].name),
    )
    rows = tuple(
        NeedRow(
            student.id,
            student.name,
            asked.household_of(student),
            tuple(reason.line for reason in sorted(reasons, key=lambda r: -r.weight)[:4]),
        )
        for student, reasons in ranked
    )
    return [
        NeedsShown(
            to=asked.person.chat,
            rows=rows,
            quiet=len(found) - len(rows),
            doubts=len(doubts),
            pages=len(pages_waiting(asked.s, asked.students, asked.at)),
        ),
    ]


def _reasons(asked: Asked, student: Student, doubts: Sequence[Waiting]) -> list[Reason]:
    reasons = []
    if not student.consented:
        return [Reason(20, Line("need-consent"))]
    where = people.chat_of_student(asked.s, student.id)
    if where is None:
        return [Reason(20, Line("need-phone"))]
    phone = people.who(asked.s, where[0])
    reached = people.reach(asked.s, phone.id) if phone else None
    if reached is not None and reached.blocked:
        reasons.append(Reason(60, Line("need-blocked", {"name": reached.name})))
    asked_for = [each for each in doubts if each.sent is not None and each.sent.student == student.id]
    if asked_for:
        reasons.append(Reason(50 + 5 * len(asked_for), Line("need-doubts", {"count": len(asked_for)})))
    if student.paused:
        return [*reasons, Reason(1, Line("need-paused"))]
    on = dates.today(student, asked.at)
    past = days.last_days(asked.s, student.id, on + timedelta(days=1), 5)
    reasons += _from_days([day for day in past if day.closed_at is not None])
    reasons += _from_items(asked, student, on)
    reasons += _from_family(asked, student)
    return reasons


def _from_days(closed: Sequence[SchoolDay]) -> list[Reason]:
    """Days not opened and days left, in a row; the newest come first."""
    reasons = []
    unopened = _in_a_row(
        [day.started_at is None and not day.late and not day.notes.get("off") for day in closed]
    )
    if unopened >= IN_A_ROW:
        reasons.append(Reason(30 + 5 * unopened, Line("need-not-opened", {"count": unopened})))
    left = _in_a_row([day.started_at is not None and (day.enough or day.ended_at is None) for day in closed])
    if left >= IN_A_ROW:
        reasons.append(Reason(15 + 5 * left, Line("need-left", {"count": left})))
    if closed and closed[0].late and closed[0].started_at is None:
        reasons.append(Reason(25, Line("need-our-fault")))
    return reasons


def _in_a_row(signs: Sequence[bool]) -> int:
    return next((n for n, sign in enumerate(signs) if not sign), len(signs))


def _from_items(asked: Asked, student: Student, on: date) -> list[Reason]:
    reasons = []
    since = asked.at - LATELY
    named = Counter(name for name, _, _ in attempts.missteps_since(asked.s, student.id, since))
    for name, count in named.most_common(1):
        note = asked.school.course.missteps.get(name)
        if count >= SAME_MISSTEP:
            title = asked.school.title(note.lesson) if note else name.replace("-", " ")
            said = note.say if note else name.replace("-", " ")
            holes: dict[str, str | int | list[str]] = {"count": count, "title": title, "say": said}
            reasons.append(Reason(10 + 3 * count, Line("need-misstep", holes)))
    recent = days.past_items(asked.s, student.id, on - timedelta(days=4), on + timedelta(days=1))
    counts = count_up(recent)
    tried = counts.first_try + counts.later_try + counts.unsolved
    if tried >= HARD_ITEMS and counts.unsolved >= HARD_SHARE * tried:
        holes = {"unsolved": counts.unsolved, "out_of": tried}
        reasons.append(Reason(25, Line("need-hard", holes)))
    if asked.school.lesson_at(student.lesson) is None:
        reasons.append(Reason(12, Line("need-no-lesson")))
    return reasons


def _from_family(asked: Asked, student: Student) -> list[Reason]:
    hard = talks.still_hard_since(asked.s, student.id, asked.at - LATELY)
    titles = [asked.school.skill_title(skill) for skill, count in hard if count >= 2]
    return [Reason(40, Line("need-still-hard", {"names": titles}))] if titles else []
