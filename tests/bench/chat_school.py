"""A school of many students, all in the middle of today's review, for `chat.py` to measure with."""

from __future__ import annotations

import sys
import time
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlalchemy import update

sys.path.insert(0, str(Path(__file__).parent.parent))
from support.answering import right_text

from bot.course.load import load_course
from bot.messages import ItemShown
from bot.records import days, invites, outbox, people
from bot.records.base import create_engine, transaction
from bot.records.days import Stage
from bot.records.migrating import migrate
from bot.records.outbox import OutboxRow, State
from bot.records.people import StudentRow
from bot.school import dates
from bot.school.school import make_school
from bot.school_day import hours, onward
from bot.school_day.onward import Here
from bot.settings import ROOT
from bot.vocabulary import ChatId, Role

FIRST_CHAT = 2001


@dataclass(frozen=True)
class School:
    """Where it is kept, what each chat would rightly type now, and what opening a day cost."""

    file: Path
    answers: dict[int, str]
    open_ms: float
    open_cpu_ms: float


def zone_at_ten(now: datetime) -> str:
    """A time zone in which it is about ten in the morning."""
    shift = (10 - now.hour + 12) % 24 - 12
    return f"Etc/GMT{-shift:+d}" if shift else "Etc/GMT"


def make(file: Path, students: int) -> School:
    """Make the database: everybody linked, today opened and at the first review item, which was just sent."""
    now = datetime.now(UTC)
    file.unlink(missing_ok=True)
    engine = create_engine(f"sqlite:///{file}")
    migrate(engine)
    school = make_school(load_course(ROOT / "content"), "evensum_bot")
    ids = []
    with transaction(engine) as s:
        tutor = people.add_person(s, "Ines", now, tutor=True)
        people.link(s, ChatId(1), tutor, now)
        for n in range(students):
            home = people.add_household(s, f"Household {n}", tutor, zone_at_ten(now), now)
            parent = people.add_person(s, "Tove", now)
            people.add_member(s, parent, home, Role.PARENT, now)
            invites.set_consent(s, home, parent, 1, now, given=True)
            student = people.add_person(s, "Wren", now)
            people.add_member(s, student, home, Role.STUDENT, now)
            people.link(s, ChatId(FIRST_CHAT + n), student, now)
            ids.append(student)
        s.execute(update(StudentRow).values(week="1" * 7, told=True, push_at=7 * 60))
    spent, cpu = 0.0, time.process_time()
    for student in ids:
        began = time.perf_counter()
        with transaction(engine) as s:
            outbox.put(s, hours.look(s, school, student, now), now)
        spent += time.perf_counter() - began
    cpu = time.process_time() - cpu
    answers = {}
    for n, student_id in enumerate(ids):
        with transaction(engine) as s:
            student = people.student(s, student_id)
            day = days.day_on(s, student.id, dates.local(student, now).date())
            days.change_day(s, day.id, stage=Stage.REVIEW, started_at=now, last_reply_at=now)
            here = Here(school, student, ChatId(FIRST_CHAT + n), now)
            said = onward.onward(s, here, days.day(s, day.id))
            outbox.put(s, said, now, 10**9 + n)
            shown = next(one for one in said if isinstance(one, ItemShown))
            answers[FIRST_CHAT + n] = right_text(days.item(s, shown.item))
    with transaction(engine) as s:
        sent_at = now.replace(microsecond=0) - timedelta(seconds=5)
        s.execute(
            update(OutboxRow).values(state=State.SENT.value, sent_at=sent_at, message_id=10**6 + OutboxRow.id)
        )
    engine.dispose()
    return School(file, answers, spent / students * 1000, cpu / students * 1000)
