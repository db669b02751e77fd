"""What is adjusted for one student: more time, big type, fewer items, answers said aloud, a calculator, no timing.

Set by a parent or the tutor, held in sheets, tests and the plan, and shown to no other child.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date
from math import ceil
from typing import TypeVar

from sqlalchemy.orm import Session

from bot.messages import AdjustmentsShown, Line, Message
from bot.records.days import Fresh
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.asking import Asked
from bot.school.changes import propose, student_step
from bot.school.names import name_of, take_student
from bot.school.when import fold
from bot.school.wishes import ADJUSTABLE, WishKind, adjusted_in, in_force

T = TypeVar("T")

NAMES = {
    "time": "time",
    "tiempo": "time",
    "big": "big",
    "grande": "big",
    "fewer": "fewer",
    "menos": "fewer",
    "dictated": "dictated",
    "dictado": "dictated",
    "calculator": "calculator",
    "calculadora": "calculator",
    "untimed": "untimed",
}
"""What people type. "untimed" is the timing of number facts, which stands in the student's own row."""
OFF = frozenset({"off", "no"})
TEST_SHARE = 0.6
"""Share of a test's items that are asked where fewer are wished (common practice, no source)."""


def of_student(s: Session, student: Student, on: date) -> frozenset[str]:
    """The adjustments in force for a student on a day."""
    return adjusted_in(in_force(s, student, on))


def with_calculator(fresh: Iterable[Fresh], adjusted: frozenset[str]) -> list[Fresh]:
    """Items about to be stored; each says that a calculator is fine, where that is adjusted."""
    if "calculator" not in adjusted:
        return list(fresh)
    return [replace(each, item=replace(each.item, calculator=True)) for each in fresh]


def fewer(picks: Sequence[T], adjusted: frozenset[str]) -> list[T]:
    """A test's items, or fewer of them from its whole length, where that is adjusted."""
    if "fewer" not in adjusted:
        return list(picks)
    count = ceil(len(picks) * TEST_SHARE)
    return [picks[n * len(picks) // count] for n in range(count)]


def adjust(asked: Asked) -> list[Message]:
    """What is adjusted for a student; with a word, switch it on, or off with "off" behind it."""
    student, rest = take_student(asked)
    on = dates.today(student, asked.at)
    words = [fold(word) for word in rest.split()]
    now = of_student(asked.s, student, on)
    if not words:
        return [
            AdjustmentsShown(
                to=asked.person.chat,
                student=student.id,
                name=student.name,
                on=tuple(name for name in ADJUSTABLE if name in now),
                off=tuple(name for name in ADJUSTABLE if name not in now),
                timing=student.timing,
                side=asked.side,
            )
        ]
    name = NAMES.get(words[0])
    off = words[1:] != [] and set(words[1:]) <= OFF
    if name is None or (words[1:] and not off and words[1:] not in (["on"], ["si"])):
        raise asked.wrong("why-adjust", student)
    line = Line(f"line-adjust-{name}{'-off' if off else ''}", {"name": name_of(asked, student)})
    if name == "untimed":
        return propose(asked, "adjust", [line], steps=[student_step(student.id, timing=off)])
    wish = Wish(WishKind.ADJUST, {"adjust": name, "on": not off}, on, None, student=student.id)
    return propose(asked, "adjust", [line], wished=[wish])
