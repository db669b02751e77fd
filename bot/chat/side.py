"""The chat side as a whole: intake, handlers, desk and sender, joined and run until told to stop."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable, Coroutine, Sequence
from concurrent.futures import Executor
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any

from aiohttp import web
from sqlalchemy import Engine
from sqlalchemy.orm import Session
from telegram.error import InvalidToken, NetworkError, TelegramError
from telegram.ext import ApplicationBuilder, ContextTypes

from bot.chat import pace
from bot.chat.calls import Draw, Service
from bot.chat.client import ALLOWED, Client
from bot.chat.desk import Desk, Route
from bot.chat.fetcher import Fetcher
from bot.chat.handlers import Chat, Context, Parts, add_handlers
from bot.chat.intake import Intake, poll, webhook
from bot.chat.lanes import Lanes
from bot.chat.lesson_files import LessonFiles
from bot.chat.sender import Blocked, LanguageOf, Render, Sender
from bot.chat.transport import AiohttpRequest
from bot.messages import Message
from bot.now import Clock
from bot.records.leader import Leader
from bot.records.own import Coming
from bot.troubles import Trouble

log = logging.getLogger(__name__)

LANES = 4096
DESKS = 4
"""Batches under way at one time on PostgreSQL; SQLite has one writer."""
LOOK = 2.0
"""Seconds between two looks whether this process leads (still)."""


@dataclass(frozen=True, slots=True)
class Saying:
    """What the chat side asks of the rest: what to do, and how to say it."""

    route: Route
    sorry: Route
    render: Render
    language_of: LanguageOf
    blocked: Blocked
    draw: Draw
    prove: Callable[[str, bytes | None], Any] | None = None
    """What a tutor's file holds, given its name and bytes; None: such files aren't read."""
    file_read: Callable[[Session, Coming, Any, datetime], Sequence[Message]] = lambda s, row, proof, now: ()
    """What is to be said of it."""


@dataclass(frozen=True, slots=True)
class Hook:
    """Where the service brings updates to. `url` is what it calls, `path` its part behind the host."""

    url: str
    secret: str
    host: str
    port: int
    path: str


@dataclass(frozen=True, slots=True)
class Line:
    """How the service is reached. `alt`: it shows alternative texts, as the stand-in does."""

    token: str
    api: str
    hook: Hook | None = None
    alt: bool = False
    connections: int = 40
    paced: bool = True

    @property
    def bot_id(self) -> int:
        """The bot's number; it stands before the colon of its token."""
        return int(self.token.partition(":")[0])


@dataclass
class ChatSide:
    """All of chat. `leading` holds what else only one process may do: the clock."""

    engine: Engine
    executor: Executor
    clock: Clock
    line: Line
    saying_of: Callable[[str], Saying]
    """What the chat side says, given the bot's name, which the service tells."""
    files: Path | None = None
    """Where photos are kept."""
    leading: list[Callable[[Callable[[], None]], Coroutine[Any, Any, None]]] = field(default_factory=list)
    """Each gets the sender's wake-up (to be called in the event loop) and runs until cancelled."""

    def __post_init__(self) -> None:
        api, token = self.line.api.rstrip("/"), self.line.token
        self.bot = Client(
            token,
            base_url=f"{api}/bot",
            base_file_url=f"{api}/file/bot",
            request=AiohttpRequest(self.line.connections),
            get_updates_request=AiohttpRequest(2),
        )
        self.lanes = Lanes(LANES)
        self.application: Chat = (
            ApplicationBuilder()
            .bot(self.bot)
            .updater(None)
            .job_queue(None)
            .context_types(ContextTypes(context=Context, bot_data=Parts))
            .concurrent_updates(self.lanes)
            .build()
        )
        add_handlers(self.application)
        self.one_writer = self.engine.dialect.name == "sqlite"
        self.ready = asyncio.Event()
        """Set once updates come in."""

    def _join(self, saying: Saying) -> None:
        """Join the parts, now that the service is reached."""
        self.sender = Sender(
            self.engine,
            self.executor,
            self.clock,
            Service(self.bot, saying.draw, self.line.alt),
            saying.render,
            saying.language_of,
            saying.blocked,
            limiter=pace.overall() if self.line.paced else None,
            look_every=5.0 if self.one_writer else 0.25,
        )
        self.saying = saying
        self.desk = Desk(self.engine, self.executor, self.clock, saying.route, saying.sorry, self.sender.wake)
        self.application.bot_data.desk = self.desk
        self.application.bot_data.clock = self.clock
        self.intake = Intake(
            self.application, self.lanes, self.engine, self.executor, self.clock, self.line.bot_id
        )

    async def run(self, stop: asyncio.Event) -> None:
        """Run until `stop` is set. Raises Trouble where the service refuses the token."""
        if not await self._reach(stop):
            return
        self._join(self.saying_of(self.bot.username))
        leader = Leader(self.engine)
        runner = await self._listen() if self.line.hook else None
        tasks: list[asyncio.Task[Any]] = []
        try:
            await self.application.start()
            desks = 1 if self.one_writer else DESKS
            tasks += [asyncio.create_task(self.desk.run(), name="desk") for _ in range(desks)]
            tasks.append(asyncio.create_task(self._lead(leader), name="leader"))
            await self.intake.take_up()
            tasks.append(asyncio.create_task(self._updates(), name="intake"))
            self.ready.set()
            await self._until(stop, tasks)
        finally:
            await self._stop(tasks, runner)
            leader.step_down()

    @staticmethod
    async def _until(stop: asyncio.Event, tasks: list[asyncio.Task[Any]]) -> None:
        """Wait for `stop`, or for a task that ended, which none does unless something is badly wrong."""
        stopped = asyncio.create_task(stop.wait())
        done, _ = await asyncio.wait([stopped, *tasks], return_when=asyncio.FIRST_COMPLETED)
        stopped.cancel()
        for task in done - {stopped}:
            task.result()

    async def _reach(self, stop: asyncio.Event) -> bool:
        """Make sure that the service knows us; while it is away, wait. False: told to stop meanwhile."""
        pause = 1.0
        while not stop.is_set():
            try:
                await self.application.initialize()
            except InvalidToken as error:
                raise Trouble(
                    "The chat service doesn't know this token.",
                    "EVENSUM_TOKEN",
                    "Copy it again from the service, or ask there for a new one.",
                ) from error
            except NetworkError as error:
                log.warning("the service is away, next try in %.0f s: %s", pause, error)
                with suppress(TimeoutError):
                    async with asyncio.timeout(pause):
                        await stop.wait()
                pause = min(2 * pause, 30.0)
            else:
                return True
        return False

    async def _updates(self) -> None:
        hook = self.line.hook
        while True:
            try:
                # What waits at the service is never dropped: it is children's answers.
                if hook is None:
                    await self.bot.delete_webhook(drop_pending_updates=False)
                else:
                    await self.bot.set_webhook(
                        hook.url,
                        secret_token=hook.secret,
                        allowed_updates=ALLOWED,
                        drop_pending_updates=False,
                    )
            except TelegramError as error:
                log.warning("the service can't be told how updates are to come: %s", error)
                await asyncio.sleep(2)
            else:
                break
        if hook is None:
            await poll(self.bot, self.intake)
        await asyncio.Event().wait()

    async def _listen(self) -> web.AppRunner:
        hook = self.line.hook
        assert hook is not None
        runner = web.AppRunner(webhook(self.intake, hook.path, hook.secret), access_log=None)
        await runner.setup()
        await web.TCPSite(runner, hook.host, hook.port).start()
        return runner

    async def _lead(self, leader: Leader) -> None:
        """While this process leads: send, look at the clock, take up what others left."""
        loop = asyncio.get_running_loop()
        told = False
        while True:
            if await loop.run_in_executor(None, leader.try_to_lead):
                work = [self.sender.run(), self.intake.sweep()]
                if self.saying.prove is not None:
                    work.append(self._lesson_files(self.saying.prove).run())
                work += [one(self.sender.wake) for one in self.leading]
                if self.files is not None:
                    work.append(Fetcher(self.bot, self.engine, self.executor, self.files).run())
                tasks = [asyncio.create_task(one) for one in work]
                try:
                    while await loop.run_in_executor(None, leader.leads):
                        done, _ = await asyncio.wait(tasks, timeout=LOOK, return_when=asyncio.FIRST_COMPLETED)
                        for task in done:
                            task.result()
                    log.error("the lock on the database is lost; another process may lead now")
                finally:
                    for task in tasks:
                        task.cancel()
                    await asyncio.gather(*tasks, return_exceptions=True)
            elif not told:
                log.info("another process leads; this one takes updates only")
                told = True
            await asyncio.sleep(LOOK)

    def _lesson_files(self, prove: Callable[[str, bytes | None], Any]) -> LessonFiles[Any]:
        return LessonFiles(
            self.bot,
            self.engine,
            self.executor,
            self.clock,
            prove,
            self.saying.file_read,
            self.sender.wake,
        )

    async def _stop(self, tasks: list[asyncio.Task[Any]], runner: web.AppRunner | None) -> None:
        """Take nothing new, finish what is under way, and leave the rest for the next start."""
        if runner is not None:
            await runner.cleanup()
        for task in tasks:
            if task.get_name() == "intake":
                task.cancel()
        if self.application.running:
            with suppress(TimeoutError):
                async with asyncio.timeout(5):
                    await self.application.stop()
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)
        with suppress(RuntimeError):  # a stop that took too long leaves it running; the process ends anyway
            await self.application.shutdown()
