"""The one place where the parts are joined."""

from __future__ import annotations

import asyncio
import logging
import signal
from collections.abc import AsyncIterator, Callable
from concurrent.futures import Executor, ThreadPoolExecutor
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import partial
from pathlib import Path

from sqlalchemy import Engine
from sqlalchemy.engine import make_url
from sqlalchemy.orm import Session

from bot import demo
from bot.answers import Key, judge
from bot.chat.render import render
from bot.chat.render.own import PHOTOS
from bot.chat.render.records import RECORD
from bot.chat.rendered import Drawing
from bot.chat.route import Route
from bot.chat.side import ChatSide, Hook, Line, Saying
from bot.clock.leavings import Leavings
from bot.clock.ticks import Ticks
from bot.course.usable import usable_course
from bot.maths.algebra import load_sympy
from bot.messages import Message
from bot.now import Clock, DemoClock, RealClock
from bot.pictures.worker import Pictures
from bot.records import migrating, people, photo_archive
from bot.records.base import create_engine, transaction
from bot.school.school import School, make_school
from bot.school_day import hours
from bot.settings import ROOT, THE_SERVICE, Settings
from bot.standin import Person, Served, StandIn, moment, serve
from bot.troubles import Trouble
from bot.tutoring import own_files
from bot.vocabulary import ChatId, StudentId

THREADS = 8
"""For the database, where it is PostgreSQL. SQLite has one writer: one thread then is a fair queue."""
DEMO_TOKEN = "900000001:loopback-only"

log = logging.getLogger(__name__)


@dataclass
class App:
    """Everything that runs, joined and not started."""

    settings: Settings
    engine: Engine
    executor: Executor
    clock: Clock
    side: ChatSide
    ticks: Ticks[StudentId]
    pictures: Pictures

    async def run(self, stop: asyncio.Event) -> None:
        """Run until `stop` is set, then finish what is under way."""
        loading = asyncio.get_running_loop().run_in_executor(None, load_sympy)
        try:
            await self.side.run(stop)
        finally:
            await loading
            self.pictures.close()
            self.executor.shutdown(wait=True)
            self.engine.dispose()


def build(settings: Settings, clock: Clock | None = None, *, paced: bool = True) -> App:
    """Join all parts. Raises Trouble for a database of another version, CourseErrors for content without one
    sound lesson; a lesson with a fault is left out alone.

    `paced` False lifts the sender's pace, for a benchmark against the stand-in only.
    """
    clock = clock or RealClock()
    engine = open_database(settings.database)
    migrating.require_current(engine)
    executor = ThreadPoolExecutor(1 if engine.dialect.name == "sqlite" else THREADS, "records")
    course, faults = usable_course(settings.content)
    for fault in faults:
        log.warning(
            "content: %s:%d %s Its lesson is left out until then.", fault.file, fault.line, fault.what
        )
    judge("0", Key(answer="0", form="number"))  # the grammar is made ready now, not at the first reply
    pictures = Pictures(settings.files.parent / "pictures")
    schools: list[School] = []

    def saying_of(bot_name: str) -> Saying:
        school = make_school(course, bot_name, settings.keep_months)
        schools.append(school)
        return _saying(school, clock, pictures, settings)

    ticks = Ticks(
        engine, executor, clock, hours.due, lambda s, student, now: hours.look(s, schools[-1], student, now)
    )
    side = ChatSide(
        engine,
        executor,
        clock,
        line_of(settings, paced=paced),
        saying_of,
        files=settings.files,
        leading=[ticks.run, Leavings(engine, executor, clock, settings.files, settings.keep_months).run],
    )
    return App(settings, engine, executor, clock, side, ticks, pictures)


def open_database(url: str) -> Engine:
    """Return an engine; the folder of an SQLite file is made if it isn't there."""
    parsed = make_url(url)
    if parsed.get_backend_name() == "sqlite" and parsed.database:
        Path(parsed.database).expanduser().parent.mkdir(parents=True, exist_ok=True)
    return create_engine(url)


def line_of(settings: Settings, *, paced: bool = True) -> Line:
    """Return how the service is reached. Raises Trouble without a token."""
    if not settings.token:
        raise Trouble(
            "There is no token.",
            "EVENSUM_TOKEN",
            "Ask the chat service for a bot and its token; `evensum demo` needs none.",
        )
    if not paced and settings.real_service:
        raise ValueError("the pace is lifted against the stand-in only")
    hook = None
    if settings.webhook:
        host, port = settings.listen
        path = "/" + settings.webhook.partition("://")[2].partition("/")[2]
        hook = Hook(settings.webhook, settings.webhook_secret, host, port, path)
    return Line(settings.token, settings.api, hook, alt=settings.api != THE_SERVICE, paced=paced)


def _saying(school: School, clock: Clock, pictures: Pictures, settings: Settings) -> Saying:
    route = Route(school, clock)

    async def draw(drawing: Drawing) -> bytes:
        if drawing.recipe == PHOTOS:
            return await asyncio.to_thread(photo_archive.pack, settings.files, drawing.data)
        data = drawing.data
        if drawing.recipe == RECORD:
            data = await asyncio.to_thread(photo_archive.onto_paper, settings.files, data)
        return await pictures.make(drawing.recipe, data)

    return Saying(
        route=route,
        sorry=route.sorry,
        render=lambda message, of_reader: render(message, of_reader or settings.language),
        language_of=people.languages,
        blocked=lambda s, chat: _blocked(s, route, chat),
        draw=draw,
        prove=partial(own_files.prove, school),
        file_read=lambda s, row, proof, now: own_files.came(s, school, row, proof, now),
    )


def _blocked(s: Session, route: Route, chat: ChatId) -> list[Message]:
    """Note that a chat turned us away: nothing more is pushed there until somebody there writes again."""
    people.block(s, chat, blocked=True)
    tell: Callable[[Session, ChatId], list[Message]] | None = getattr(route, "blocked", None)
    return tell(s, chat) if tell else []


def stopped_by_signal() -> asyncio.Event:
    """Return what is set once the process is told to stop (SIGINT, SIGTERM)."""
    stop = asyncio.Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        asyncio.get_running_loop().add_signal_handler(number, stop.set)
    return stop


async def run(app: App) -> None:
    """Run until the process is told to stop."""
    await app.run(stopped_by_signal())


@dataclass
class Demo:
    """The stand-in, people's phones and the bot in one process, on a clock that can be moved."""

    app: App
    served: Served
    clock: DemoClock


@asynccontextmanager
async def build_demo(
    folder: Path, port: int = 0, settings: Settings | None = None, *, paced: bool = True
) -> AsyncIterator[Demo]:
    """Open the demo in a folder of its own; what is there from last time goes on, clock and phones included.

    `paced` False lifts the sender's pace, for tests that would wait for it.
    """
    kept = folder / "clock"
    clock, database = _open_demo(folder, kept)
    after_move: list[Callable[[], None]] = []

    def move(word: str) -> None:
        clock.go_to(moment(clock.now(), word, demo.ZONE))
        _keep_time(kept, clock)
        for call in after_move:
            call()

    _keep_time(kept, clock)
    standin = StandIn(
        clock,
        DEMO_TOKEN,
        [
            Person(phone.chat, phone.first_name, phone.last_name, started=True, about=phone.about)
            for phone in demo.PHONES
        ],
        on_clock=move,
        zone=demo.ZONE,
        journal=folder / "phones.jsonl",
    )
    async with serve(standin, port) as served:
        app = build(_demo_settings(database, folder, served.address, settings), clock, paced=paced)
        after_move.append(app.ticks.soon)
        yield Demo(app, served, clock)


def _open_demo(folder: Path, kept: Path) -> tuple[DemoClock, str]:
    """Make the demo's folder, tables and people where they aren't there; return its clock and its database."""
    folder.mkdir(parents=True, exist_ok=True)
    clock = DemoClock(_demo_time(kept))
    database = f"sqlite:///{folder.resolve() / 'evensum.sqlite'}"
    engine = open_database(database)
    migrating.migrate(engine)
    with transaction(engine) as s:
        demo.seed(s, clock.now())
    engine.dispose()
    return clock, database


def _demo_settings(database: str, folder: Path, api: str, given: Settings | None) -> Settings:
    return Settings(
        token=DEMO_TOKEN,
        api=api,
        database=database,
        content=given.content if given else ROOT / "content",
        files=folder / "files",
        backups=folder / "backups",
        language=given.language if given else "en",
        webhook="",
        webhook_secret="",
        listen=("127.0.0.1", 1),
        log=given.log if given else "info",
    )


def _demo_time(kept: Path) -> datetime:
    """Return when it is in the demo: its start at first, later where it was left, as if it had run on."""
    if not kept.exists():
        return demo.START
    return datetime.now(UTC) + timedelta(seconds=float(kept.read_text("utf-8")))


def _keep_time(kept: Path, clock: DemoClock) -> None:
    kept.write_text(f"{(clock.now() - datetime.now(UTC)).total_seconds():.3f}", "utf-8")


def set_up_log(level: str) -> None:
    """Log to the standard error, one line an event; other people's libraries only when they warn."""
    logging.basicConfig(format="%(asctime)s %(levelname)-7s %(message)s", level=level.upper())
    for name in (
        "telegram",
        "httpx",
        "apscheduler",
        "aiohttp",
        "sqlalchemy",
        "uvicorn",
        "alembic",
        "asyncio",
    ):
        logging.getLogger(name).setLevel(logging.WARNING)
