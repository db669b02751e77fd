"""Measure an evening: one student's digest, and 300 that fall due in the same minute, through the service's stand-in.

    python tests/bench/evening.py

Wanted, on two cores: a digest under 60 ms; all 300 leave, none twice, at most 30 in any second.
"""

from __future__ import annotations

import asyncio
import sys
import tempfile
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parent))
import chat_school
from sqlalchemy import select, update

from bot.chat import pace
from bot.chat.calls import Service
from bot.chat.client import Client
from bot.chat.render import render
from bot.chat.sender import Sender
from bot.chat.transport import AiohttpRequest
from bot.course.load import load_course
from bot.now import RealClock
from bot.records import attempts, days, outbox, people
from bot.records.base import create_engine, transaction
from bot.records.days import ItemState
from bot.records.outbox import OutboxRow, State
from bot.records.people import HouseholdRow, StudentRow
from bot.school.digest import digest
from bot.school.school import School, make_school
from bot.school_day import hours
from bot.settings import ROOT
from bot.standin import Person, StandIn, serve
from bot.vocabulary import ChatId, Outcome, Part, StudentId, Verdict

FAMILIES = int(sys.argv[1]) if len(sys.argv) > 1 else 300
PARENT = 50_001
TOKEN = "900000001:loopback-only"


def work(s, student: StudentId, now: datetime) -> None:
    """A day as it often ends: every third item unsolved after two tries, the others right."""
    day = days.newest_day(s, student)
    assert day is not None
    for n, sent in enumerate(days.items_of(s, day.id, Part.REVIEW)):
        wrong = n % 3 == 0
        for update_id in (1, 2) if wrong else (1,):
            made = attempts.add_attempt(s, sent.id, student * 1000 + n * 10 + update_id, "17", 0, now)
            attempts.add_grading(s, made, Verdict.WRONG if wrong else Verdict.RIGHT, now)
        outcome = Outcome.UNSOLVED if wrong else Outcome.FIRST_TRY
        days.change_item(s, sent.id, state=ItemState.DONE, outcome=outcome, tries=2 if wrong else 0)


def prepare(file: Path) -> tuple[object, School, list[StudentId]]:
    """300 families, a parent's phone and a worked day in each."""
    chat_school.make(file, FAMILIES)
    engine = create_engine(f"sqlite:///{file}")
    school = make_school(load_course(ROOT / "content"), "evensum_bot")
    now = datetime.now(UTC)
    with transaction(engine) as s:
        students = [StudentId(each) for each in s.scalars(select(StudentRow.id).order_by(StudentRow.id))]
        for n, student in enumerate(students):
            home = people.student(s, student).household
            parent = next(each for each in people.members_of(s, home) if each.role == "parent")
            people.link(s, ChatId(PARENT + n), parent.person, now)
            work(s, student, now)
        s.execute(update(OutboxRow).values(state=State.SENT.value))
    return engine, school, students


def one_digest(engine, school: School, students: list[StudentId]) -> None:
    times = []
    for student_id in students[:60]:
        with transaction(engine) as s:
            began = time.perf_counter()
            student, day = people.student(s, student_id), days.newest_day(s, student_id)
            render(digest(s, school, student, day, ChatId(1)), "en")
            times.append((time.perf_counter() - began) * 1000)
    print(f"a digest, worked out and worded: median {median(times):.1f} ms, worst {max(times):.1f} ms")


def close_all(engine, school: School, students: list[StudentId]) -> None:
    """The minute of the digest: every day closes in a transaction of its own."""
    now = datetime.now(UTC)
    with transaction(engine) as s:
        local = now.hour * 60 + now.minute
        s.execute(update(HouseholdRow).values(zone="Etc/UTC", digest_at=max(1, local - 1)))
        s.execute(update(StudentRow).values(push_at=0))
    began = time.perf_counter()
    for student in students:
        with transaction(engine) as s:
            outbox.put(s, hours.look(s, school, student, now), now)
    spent = (time.perf_counter() - began) * 1000 / len(students)
    print(
        f"closing a day, with its digest: {spent:.1f} ms each, {spent * len(students) / 1000:.1f} s for all"
    )


async def send_all(engine) -> None:
    clock = RealClock()
    families = [Person(PARENT + n, "Tove", started=True) for n in range(FAMILIES)]
    async with serve(StandIn(clock, TOKEN, families)) as served:
        bot = Client(
            TOKEN,
            base_url=served.base_url,
            base_file_url=served.base_file_url,
            request=AiohttpRequest(20),
            get_updates_request=AiohttpRequest(1),
        )

        async def draw(drawing) -> bytes:
            raise AssertionError("a digest has no picture before a button")

        async with bot:
            sender = Sender(
                engine,
                ThreadPoolExecutor(1),
                clock,
                Service(bot, draw, True),
                lambda message, language: render(message, language or "en"),
                people.languages,
                lambda s, chat: [],
                limiter=pace.overall(),
                look_every=1.0,
            )
            began = time.perf_counter()
            working = asyncio.create_task(sender.run())
            sender.wake()
            while _waiting(engine):  # noqa: ASYNC110 - the sender tells nobody when all have left
                await asyncio.sleep(0.2)
            spent = time.perf_counter() - began
            working.cancel()
        got = [served.standin.messages(PARENT + n) for n in range(FAMILIES)]
    told = [[m for m in chat if m["from"]["is_bot"]] for chat in got]
    a_second = Counter(m["date"] for chat in told for m in chat)
    once = sum(len(chat) == 1 for chat in told)
    print(
        f"{once} of {FAMILIES} parents have exactly one digest after {spent:.1f} s; "
        f"at most {max(a_second.values())} in a second of the service's clock"
    )
    assert once == FAMILIES, "a digest is lost or doubled"


def _waiting(engine) -> int:
    with transaction(engine) as s:
        return sum(n for state, n in outbox.count(s).items() if state in (State.WAITING, State.SENDING))


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        engine, school, students = prepare(Path(folder) / "evening.sqlite")
        one_digest(engine, school, students)
        close_all(engine, school, students)
        asyncio.run(send_all(engine))
        engine.dispose()


if __name__ == "__main__":
    main()
