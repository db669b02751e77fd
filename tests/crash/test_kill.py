"""kill -9 at the worst moments, on real processes: no reply lost or graded twice, no push sent twice."""

from __future__ import annotations

import asyncio
import random
import sys
from collections import Counter
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from sqlalchemy import Engine, text

from bot.now import RealClock
from bot.records import outbox
from bot.records.base import transaction
from bot.records.outbox import State
from bot.standin import Person, Served, StandIn, serve

SCRIPT = Path(__file__).parent / "repeating_bot.py"
TOKEN = "900000001:loopback-only"
A = 1001


@dataclass
class Street:
    """People's phones, a database, and a bot process that may be killed."""

    engine: Engine
    url: str
    served: Served
    process: asyncio.subprocess.Process | None = None

    @property
    def standin(self) -> StandIn:
        return self.served.standin

    async def start(self, hold: str = "", chats: int = 0) -> None:
        self.process = await asyncio.create_subprocess_exec(
            sys.executable, str(SCRIPT), self.url, self.served.address, hold, str(chats),
            stdout=asyncio.subprocess.PIPE,
        )  # fmt: skip

    async def kill(self) -> None:
        assert self.process is not None
        self.process.kill()
        await self.process.wait()

    async def kill_when_holding(self) -> None:
        assert self.process is not None and self.process.stdout is not None
        async with asyncio.timeout(60):
            assert await self.process.stdout.readline() == b"holding\n"
        await self.kill()

    def said(self, chat: int) -> list[str]:
        return [one["text"] for one in self.standin.messages(chat) if one["from"]["is_bot"]]

    def heard(self) -> list[str]:
        with self.engine.connect() as connection:
            return [row[0] for row in connection.execute(text("select word from heard"))]

    def states(self) -> dict[State, int]:
        with transaction(self.engine) as s:
            return outbox.count(s)

    async def until(self, true, seconds: float = 60.0) -> None:
        async with asyncio.timeout(seconds):
            while not true():  # noqa: ASYNC110  # what is waited for happens in another process
                await asyncio.sleep(0.02)


@pytest.fixture
def street(engine, database_url):
    with engine.begin() as connection:
        # No unique keys here: what is done twice shall be seen.
        connection.execute(text("create table heard (update_id bigint, chat bigint, word text)"))
        connection.execute(text("create table pushed (chat bigint)"))

    @asynccontextmanager
    async def opened(people: int = 1) -> AsyncIterator[Street]:
        everybody = [Person(A + n, f"P{n}", started=True) for n in range(people)]
        async with serve(StandIn(RealClock(), TOKEN, everybody)) as served:
            made = Street(engine, database_url, served)
            try:
                yield made
            finally:
                if made.process is not None and made.process.returncode is None:
                    await made.kill()

    return opened


async def test_killed_while_grading_the_reply_is_graded_once_and_answered(street):
    async with street() as here:
        await here.start(hold="route")
        here.standin.phones.say(A, "3/4")
        await here.kill_when_holding()
        assert here.heard() == []
        await here.start()
        await here.until(lambda: here.said(A) == ["3/4"])
        assert here.heard() == ["3/4"]


async def test_killed_before_the_answer_left_it_leaves_after_the_restart(street):
    async with street() as here:
        await here.start(hold="render")
        here.standin.phones.say(A, "3/4")
        await here.kill_when_holding()
        assert (here.heard(), here.said(A)) == (["3/4"], [])
        await here.start()
        await here.until(lambda: here.said(A) == ["3/4"])
        assert here.heard() == ["3/4"]


async def test_killed_before_the_service_confirmed_an_answer_may_come_twice_but_is_graded_once(street):
    async with street() as here:
        await here.start()
        here.standin.fault("slow", method="sendMessage", seconds=30)
        here.standin.phones.say(A, "3/4")
        await here.until(lambda: here.said(A) == ["3/4"])
        await here.kill()
        await here.start()
        await here.until(lambda: here.said(A) == ["3/4", "3/4"])
        assert here.heard() == ["3/4"]


async def test_killed_before_the_service_confirmed_a_push_is_never_sent_again(street):
    async with street(people=2) as here:
        here.standin.fault("slow", method="sendMessage", chat=A, seconds=30)
        await here.start(chats=2)
        await here.until(lambda: here.states() == {State.SENDING: 1, State.SENT: 1})
        await here.until(lambda: here.said(A))
        await here.kill()
        await here.start(chats=2)
        here.standin.phones.say(A, "hello")
        await here.until(lambda: "hello" in here.said(A))
        await here.until(lambda: here.states() == {State.SENT: 2, State.UNSURE: 1})
        assert [here.said(A), here.said(A + 1)] == [["push 1001", "hello"], ["push 1002"]]


@pytest.mark.parametrize("seed", [1, 2])
async def test_killed_again_and_again_under_load_nothing_is_lost_or_done_twice(street, seed):
    chance = random.Random(seed)
    people = 12
    async with street(people) as here:
        words = {A + n: [f"{n}-{k}" for k in range(6)] for n in range(people)}
        await here.start(chats=people)
        await here.until(lambda: any(here.said(chat) for chat in words))
        for k in range(6):
            for chat in words:
                here.standin.phones.say(chat, words[chat][k])
            if k < 4:
                await asyncio.sleep(chance.uniform(0.0, 0.5))
                await here.kill()
                await here.start(chats=people)
                await asyncio.sleep(chance.uniform(0.6, 1.2))
        everything = Counter(word for chat in words for word in words[chat])
        await here.until(lambda: Counter(here.heard()) == everything, 60)
        await here.until(lambda: not here.states().keys() & {State.WAITING, State.SENDING}, 60)
        for chat, expected in words.items():
            answers = [word for word in here.said(chat) if not word.startswith("push")]
            first = list(dict.fromkeys(answers))
            assert first == expected, "each answered, in order"
            assert here.said(chat).count(f"push {chat}") <= 1
        with here.engine.connect() as connection:
            pushed = [row[0] for row in connection.execute(text("select chat from pushed"))]
        assert sorted(pushed) == sorted(words)


async def test_two_processes_share_a_postgresql_and_each_update_is_done_once(street, database_kind):
    """On SQLite the second takes nothing, since the service refuses two that fetch; it may be killed all the same."""
    async with street(people=4) as here:
        await here.start(chats=4)
        await here.until(lambda: all(here.said(A + n) for n in range(4)))
        first = here.process
        await here.start(chats=4)
        for k in range(5):
            for n in range(4):
                here.standin.phones.say(A + n, f"{n}-{k}")
            await asyncio.sleep(0.05)
        assert first is not None
        first.kill()
        await first.wait()
        await here.until(lambda: all(len(here.said(A + n)) >= 6 for n in range(4)), 60)
        assert Counter(here.heard()) == Counter(f"{n}-{k}" for n in range(4) for k in range(5))
        assert all(here.said(A + n).count(f"push {A + n}") == 1 for n in range(4))
