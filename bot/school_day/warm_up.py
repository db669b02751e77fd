"""The warm-up: a sheet of number facts, shown and answered in one message, beside strings or a puzzle."""

from __future__ import annotations

import re
from datetime import datetime
from statistics import median

from sqlalchemy.orm import Session

from bot.answers import Key, is_help, judge, split_numbered
from bot.course.facts import STAGES, form_of
from bot.course.warm_ups import fact_sheet, open_stages, passed
from bot.happened import Typed
from bot.messages import Copied, CopyAgain, FactsDone, FactsUnclear, Lead, Message, NotForYou
from bot.records import days, sheets
from bot.records.days import SchoolDay, Stage
from bot.records.focus import Focus
from bot.records.outbox import sent_at
from bot.records.people import Student, change_student
from bot.records.sheets import Sheet
from bot.school.adjustments import of_student
from bot.school.school import School
from bot.school_day.asking import Here
from bot.school_day.onward import COPY, onward
from bot.vocabulary import DayId, Verdict

GOOD = (Verdict.RIGHT, Verdict.UNIT)
"""A percent sign left off on a sheet is no miss: the question has it."""
TOO_LONG = 600
"""Seconds: a sheet that took longer was interrupted, so its pace isn't counted."""
_PUZZLED = re.compile(r"[¿?!\s]*(?:what|huh|wha|hm+|qu[eé]|c[oó]mo|eh)?[¿?!.\s]*", re.IGNORECASE)
BY_TURNS = 3
"""Families of facts that are practised by turns."""
LOOK_BACK = 12
"""Sheets whose misses are asked again."""
USUAL = 5
"""Sheets whose middle is the student's usual pace."""


def make_sheet(s: Session, school: School, student: Student, day: DayId, seed: int) -> None:
    """Draw a day's sheet: of the stages that are open by turns, the student's own slow facts first."""
    untimed = {"time", "dictated"} & of_student(s, student, days.day(s, day).date)
    earlier = sheets.answered_sheets(s, student.id)
    misses: dict[str, list[int]] = {}
    for sheet in reversed(earlier):
        misses.setdefault(sheet.stage, []).append(len(sheet.facts) - (sheet.right or 0))
    done = [stage for stage, of_sheets in misses.items() if passed(of_sheets)]
    met = {lesson.id for lesson in school.course.lessons if lesson.n < student.lesson}
    stages = open_stages(done, met)[:BY_TURNS] or [STAGES[name] for name in done] or list(STAGES.values())
    stage = stages[seed % len(stages)]
    slow = {fact for sheet in earlier[:LOOK_BACK] if sheet.stage == stage.id for fact in sheet.missed}
    drawn = fact_sheet(stage.id, seed, slow)
    facts = tuple((fact.ask, str(fact.answer)) for fact in drawn.facts)
    sheets.add_sheet(s, day, student.id, stage.id, facts, timed=student.timing and not untimed)


def answer_sheet(s: Session, here: Here, typed: Typed, sheet_id: int) -> list[Message]:
    """Grade a whole sheet from one message. The first one counts; a count that doesn't fit isn't graded."""
    sheet = sheets.find_sheet(s, sheet_id)
    if sheet is None or sheet.student != here.student.id:
        return [NotForYou(to=here.chat, why="gone")]
    day = days.day(s, sheet.day)
    if sheet.answered_at is not None:
        return [NotForYou(to=here.chat, why="gone"), *_on(s, here, day)]
    if _PUZZLED.fullmatch(typed.text.strip()):  # asks what this is; that is no wish to leave it out
        return [FactsUnclear(to=here.chat, sheet=sheet.id, got=0, wanted=len(sheet.facts))]
    if is_help(typed.text):
        return leave_facts(s, here, day)
    given = answers_in(typed.text, len(sheet.facts))
    if len(given) != len(sheet.facts):
        got = len(given) if re.search(r"\d", typed.text) else 0  # plain words are no answers
        return [FactsUnclear(to=here.chat, sheet=sheet.id, got=got, wanted=len(sheet.facts))]

    right = [
        judge(answer, Key(answer=key, form=form_of(key))).verdict in GOOD
        for answer, (_, key) in zip(given, sheet.facts, strict=True)
    ]
    pace = _pace(s, here, sheet, sum(right), typed.at) if sheet.timed else None
    before = [each.per_minute for each in sheets.answered_sheets(s, here.student.id) if each.per_minute]
    days.change_day(s, day.id, last_reply_at=typed.at)
    missed = tuple(fact for fact, good in zip(sheet.facts, right, strict=True) if not good)
    names = [question for question, _ in missed]
    sheets.answer_sheet(s, sheet.id, typed.text[:4096], names, sum(right), pace, typed.at)
    done = FactsDone(
        to=here.chat,
        right=sum(right),
        out_of=len(right),
        missed=missed,
        per_minute=pace,
        usual=median(before[:USUAL]) if pace and len(before) >= USUAL else None,
    )
    return [done, *_on(s, here, days.day(s, day.id))]


def _on(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    return onward(s, here, day) if day.stage is Stage.WARM_UP else []


def answers_in(text: str, wanted: int) -> list[str]:
    """Take a sheet's answers apart: numbered, one a line, or with spaces or commas between.

    A dash or the word "skip" stands for one that was left out.
    """
    numbered = split_numbered(text)
    if len(numbered) > 1 and max(numbered) <= wanted:
        return [numbered.get(n, "") for n in range(1, wanted + 1)]
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    if len(lines) == wanted:
        return [_answer_of(line) for line in lines]
    spaced = text.split()
    if len(spaced) == wanted:  # a comma may be a decimal comma
        return [_answer_of(piece.rstrip(",;")) for piece in spaced]
    return [_answer_of(piece) for piece in re.split(r"[\s,;]+", text) if piece]


def _answer_of(piece: str) -> str:
    """What stands behind the last equals sign: a child may copy the fact as well."""
    return piece.rpartition("=")[2].strip()


def _pace(s: Session, here: Here, sheet: Sheet, right: int, at: datetime) -> float | None:
    """Right answers a minute, from the service's dates, with the student's own typing time taken off."""
    shown_at = sent_at(s, here.chat, f"sheet/{sheet.id}")
    if shown_at is None or here.student.typing_seconds is None:
        return None
    took = (at - shown_at).total_seconds()
    if not 0 < took <= TOO_LONG:
        return None
    typing = here.student.typing_seconds * len(sheet.facts) / len(COPY)
    thinking = max(took - typing, took / 4)  # copying was slower than usual; nobody thinks in no time
    return round(right * 60 / thinking, 1)


def leave_facts(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The sheet may be left out; nothing is said of it."""
    days.note_day(s, day, facts_left=True)
    return onward(s, here, days.day(s, day.id), Lead(kind="left"))


def copied(s: Session, here: Here, typed: Typed, middle: Focus) -> list[Message]:
    """The ten numbers came back: note how long typing them took, from the service's dates."""
    day = days.find_day(s, middle.ref)
    if day is None:
        return [NotForYou(to=here.chat, why="gone")]
    if tuple(re.findall(r"\d+", typed.text)) != COPY and not is_help(typed.text):
        return [CopyAgain(to=here.chat)]
    shown_at = sent_at(s, here.chat, f"copy/{day.id}")
    took = (typed.at - shown_at).total_seconds() if shown_at else TOO_LONG
    if is_help(typed.text) or not 0 < took < TOO_LONG:
        change_student(s, here.student.id, typing_seconds=None, timing=False)
        return onward(s, here, day)
    change_student(s, here.student.id, typing_seconds=took)
    return [Copied(to=here.chat), *onward(s, here, day)]
