"""A chat side that repeats what it hears, on a real database and over real HTTP to the stand-in."""

from __future__ import annotations

import asyncio
import re
from collections.abc import AsyncIterator, Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import asynccontextmanager
from dataclasses import dataclass, field, replace
from typing import Any

import pytest
from sqlalchemy import Engine, text

from bot.chat.rendered import Button, Rendered
from bot.chat.side import ChatSide, Line, Saying
from bot.happened import Command, Pressed, SentFile, Typed
from bot.messages import Help, HowToType, Reminder
from bot.now import RealClock
from bot.records import outbox
from bot.records.base import transaction
from bot.standin import Person, Served, StandIn, serve

TOKEN = "900000001:loopback-only"


def repeat(s, what):
    """Note what happened in the same transaction, and say it again; "fail" and "twice" do what they say."""
    word = {
        Typed: lambda: what.text,
        Command: lambda: f"/{what.name} {what.rest}",
        Pressed: lambda: f"{what.verb}:{what.ref}",
        SentFile: lambda: f"{what.what} {what.caption}".strip(),
    }.get(type(what), lambda: type(what).__name__)()
    s.execute(text("insert into heard values (:u, :c, :w)"), {"u": what.update, "c": what.chat, "w": word})
    if word == "fail":
        raise ZeroDivisionError("3/0 was typed")
    if word == "ask":
        return [HowToType(to=what.chat, item=7, form="number", examples=("1/2",))]
    if word == "quiet":
        return []
    return [Help(to=what.chat, role="student", topic=one) for one in word.split(" + ")]


def sorry(s, what):
    return [Help(to=what.chat, role="student", topic="sorry")]


def render(message, language):
    match message:
        case Help():
            return Rendered(text=message.topic, reply_to=None)
        case HowToType():
            return Rendered(text="how", buttons=((Button("Hint", "hint:7"),),))
        case Reminder():
            return Rendered(text=message.name)
    raise LookupError


@dataclass
class House:
    """A stand-in, a chat side that can be stopped and started again, and the database between them."""

    engine: Engine
    served: Served
    saying: Saying
    line: Line
    clock: Any
    side: ChatSide | None = None
    _stop: asyncio.Event = field(default_factory=asyncio.Event)
    _running: asyncio.Task[None] | None = None

    @property
    def standin(self) -> StandIn:
        return self.served.standin

    async def start(self) -> None:
        workers = 1 if self.engine.dialect.name == "sqlite" else 4
        self._stop = asyncio.Event()
        self.side = ChatSide(
            self.engine, ThreadPoolExecutor(workers), self.clock, self.line, lambda name: self.saying
        )
        self._running = asyncio.create_task(self.side.run(self._stop))
        ready = asyncio.create_task(self.side.ready.wait())
        await asyncio.wait([ready, self._running], return_when=asyncio.FIRST_COMPLETED)
        if self._running.done():
            self._running.result()

    async def stop(self) -> None:
        self._stop.set()
        if self._running is not None:
            await self._running

    def put(self, *messages) -> None:
        with transaction(self.engine) as s:
            outbox.put(s, messages, self.clock.now(), None)
        assert self.side is not None
        self.side.sender.wake()

    def said(self, chat: int) -> list[str]:
        """What the bot wrote to a chat so far."""
        return [one["text"] for one in self.standin.messages(chat) if one["from"]["is_bot"]]

    def heard(self) -> list[str]:
        with self.engine.connect() as connection:
            return [row[0] for row in connection.execute(text("select word from heard order by update_id"))]

    async def until(self, true: Callable[[], Any], seconds: float = 60.0) -> None:
        """Wait until something is so; the wait is only as long as it takes."""
        async with asyncio.timeout(seconds):
            while not true():  # noqa: ASYNC110  # what is waited for is anything, and has no event
                await asyncio.sleep(0.01)

    async def until_said(self, chat: int, words: list[str], seconds: float = 60.0) -> None:
        try:
            await self.until(lambda: len(self.said(chat)) >= len(words), seconds)
        finally:
            assert self.said(chat) == words


@pytest.fixture
def open_house(engine) -> Callable[..., Any]:
    """Open a house with so many people, ids from 1001, everybody in touch with the bot already."""
    with engine.begin() as connection:
        connection.execute(text("create table heard (update_id bigint primary key, chat bigint, word text)"))

    @asynccontextmanager
    async def opened(people: int = 3, **line: Any) -> AsyncIterator[House]:
        clock = line.pop("clock", RealClock())
        saying = Saying(repeat, sorry, render, lambda s, chats: {}, lambda s, chat: [], draw)
        saying = replace(saying, **line.pop("saying", {}))
        everybody = [Person(1001 + n, f"P{n}", started=True) for n in range(people)]
        standin = StandIn(clock, TOKEN, everybody, webhook_pace=0.05)
        async with serve(standin) as served:
            house = House(engine, served, saying, Line(TOKEN, served.address, alt=True, **line), clock)
            await house.start()
            try:
                yield house
            finally:
                await house.stop()

    return opened


async def draw(drawing) -> bytes:
    raise LookupError(re.escape(drawing.recipe))
