"""The real bot is killed in the middle of a student's day, again and again; the student doesn't notice."""

from __future__ import annotations

import asyncio
import os
import random
import sys
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import text
from sqlalchemy.engine import Engine
from support.answering import right_choice, right_text
from support.courses import whole_course

from bot import demo
from bot.now import RealClock
from bot.records import days, focus, migrating, people
from bot.records.base import create_engine, transaction
from bot.school.school import make_school
from bot.school_day.morning import make_day
from bot.standin import Person, Served, StandIn, serve
from bot.vocabulary import Part

TOKEN = "900000001:loopback-only"
WREN = demo.WREN.chat


def prepare(url: str) -> int:
    """A database with the demo's people, and Wren's day of today ready to start; return Wren's id."""
    engine = create_engine(url)
    migrating.migrate(engine)
    now = datetime.now(UTC)
    with transaction(engine) as s:
        demo.seed(s, now)
        person = people.who(s, WREN)
        assert person is not None and person.speaking is not None
        student = people.student(s, person.speaking)
        day = make_day(s, make_school(whole_course()), student, now.date(), now)
        assert day is not None
    engine.dispose()
    return int(student.id)


class Bot:
    """`evensum run` as a process of its own."""

    def __init__(self, url: str, served: Served, folder: Path) -> None:
        self.environ = {
            **os.environ,
            "EVENSUM_TOKEN": TOKEN,
            "EVENSUM_API_URL": served.address,
            "EVENSUM_DATABASE_URL": url,
            "EVENSUM_FILES": str(folder / "files"),
        }
        self.process: asyncio.subprocess.Process | None = None

    async def start(self) -> None:
        command = (sys.executable, "-c", "from bot.cli import main; main()", "run")
        self.process = await asyncio.create_subprocess_exec(*command, env=self.environ)

    async def kill(self) -> None:
        assert self.process is not None
        self.process.kill()
        await self.process.wait()


def at_hand(engine: Engine, student: int) -> tuple[str, object, str]:
    """What Wren's chat is in the middle of."""
    with transaction(engine) as s:
        found = focus.focus(s, WREN, student)
        if found is None:
            return "", None, ""
        keys = ""
        if found.waits_for == "sheet":
            keys = s.execute(text("select facts from sheet where id = :i"), {"i": found.ref}).scalar_one()
        return found.waits_for, days.item(s, found.item) if found.item else None, keys


def buttons_of(standin: StandIn, label: str) -> tuple[int, str] | None:
    for message in reversed(standin.messages(int(WREN))):
        for row in message.get("reply_markup", {}).get("inline_keyboard", []):
            for one in row:
                if one["text"] == label:
                    return message["message_id"], one["callback_data"]
    return None


def from_bot(standin: StandIn) -> int:
    return sum(1 for message in standin.messages(int(WREN)) if message["from"]["is_bot"])


async def until_quiet(engine: Engine) -> None:
    async with asyncio.timeout(60):
        while not is_quiet(engine):  # noqa: ASYNC110  # the database has no event
            await asyncio.sleep(0.05)


def is_quiet(engine: Engine) -> bool:
    """Whether all that came in is handled and all that was to be said is said."""
    with transaction(engine) as s:
        undone = s.execute(text("select count(*) from inbox where done_at is null")).scalar_one()
        unsaid = s.execute(text("select count(*) from outbox where state in ('waiting', 'sending')"))
        return not undone and not unsaid.scalar_one()


async def test_killed_again_and_again_a_day_goes_on_as_if_nothing_happened(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'evensum.sqlite'}"
    student = prepare(url)
    engine = create_engine(url)
    chance = random.Random(5)
    with transaction(engine) as s:
        day = days.newest_day(s, student)  # type: ignore[arg-type]
    assert day is not None
    persons = [Person(int(phone.chat), phone.first_name, started=True) for phone in demo.PHONES]
    standin = StandIn(RealClock(), TOKEN, persons)
    typed = 0
    async with serve(standin) as served:
        bot = Bot(url, served, tmp_path)
        await bot.start()
        try:
            standin.phones.say(int(WREN), "/day")
            await standin.until(lambda: buttons_of(standin, "Start") is not None, 60)
            await until_quiet(engine)
            for step in range(9):
                before = from_bot(standin)
                waits_for, sent, _ = at_hand(engine, student)
                if waits_for == "":
                    message, data = buttons_of(standin, "Start") or (0, "")
                    standin.phones.press(int(WREN), message, data)
                elif waits_for == "sheet":
                    standin.phones.say(int(WREN), " ".join("1" * 12))
                elif waits_for == "go":
                    found = buttons_of(standin, "Let’s try some") or buttons_of(standin, "Go on")
                    assert found is not None
                    standin.phones.press(int(WREN), *found)
                elif sent.item.choices:  # type: ignore[attr-defined]
                    typed += 1
                    number = right_choice(sent)  # type: ignore[arg-type]
                    found = next(
                        (m["message_id"], f"choose:{sent.id}:{number}")  # type: ignore[attr-defined]
                        for m in reversed(standin.messages(int(WREN)))
                        if f"choose:{sent.id}:{number}" in str(m)  # type: ignore[attr-defined]
                    )
                    standin.phones.press(int(WREN), *found)
                else:
                    typed += 1
                    standin.phones.say(int(WREN), right_text(sent))  # type: ignore[arg-type]
                if step % 3 == 1:  # killed while it reads, grades or sends
                    await asyncio.sleep(chance.random() * 0.15)
                    await bot.kill()
                    await bot.start()
                await standin.until(lambda before=before: from_bot(standin) > before, 60)
                await asyncio.sleep(0.2)
                await until_quiet(engine)
        finally:
            await bot.kill()
    with transaction(engine) as s:
        attempts = s.execute(text("select count(*), count(distinct update_id) from attempt")).one()
        gradings = s.execute(text("select count(*) from grading")).scalar_one()
        solved = [
            each
            for each in days.items_of(s, day.id)
            if each.outcome is not None and each.part is not Part.TEST
        ]
    engine.dispose()
    assert tuple(attempts) == (typed, typed)
    assert gradings == typed
    assert len(solved) == typed
    assert {str(each.outcome) for each in solved} == {"first-try"}
