"""The stand-in as one object: the loopback Bot API, people's phones, and the phone page."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncGenerator, Callable, Iterable
from contextlib import asynccontextmanager
from pathlib import Path
from time import monotonic

from starlette.applications import Starlette
from starlette.datastructures import MutableHeaders
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import FileResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from bot.now import Clock
from bot.standin.api import Api
from bot.standin.control import Control, OnClock
from bot.standin.faults import Fault, Faults, Flood
from bot.standin.journal import Journal
from bot.standin.model import Group, Json, Person
from bot.standin.phones import Phones
from bot.standin.shown import next_message
from bot.standin.webhook import Webhook
from bot.standin.world import World

PAGE = Path(__file__).parent / "page"
_POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'"


class StandIn:
    """Stands in for the chat service and for everybody's phone.

    token: of the form 123456:letters; the number before the colon is the bot's id.
    zone: the household's time zone, for the clock that the page shows.
    on_clock: moves the clock to a word: morning, evening, next day, Monday, or +minutes.
    journal: a file that keeps everything; if it holds something, that is taken up.
    webhook_pace: below 1 shortens the waits between webhook attempts, for tests.
    """

    def __init__(
        self,
        clock: Clock,
        token: str,
        people: Iterable[Person],
        *,
        groups: Iterable[Group] = (),
        on_clock: OnClock | None = None,
        zone: str = "UTC",
        username: str = "evensum_bot",
        name: str = "Evensum",
        journal: Path | None = None,
        webhook_pace: float = 1.0,
    ) -> None:
        kept = Journal(journal)
        self.world = World(clock, token, people, groups, username=username, name=name, journal=kept)
        self.faults = Faults()
        self.flood = Flood()
        self.world.updates.is_doubled = self.faults.doubles
        self.webhook = Webhook(self.world, webhook_pace)
        self.phones = Phones(self.world)
        self.control = Control(self.world, self.phones, self.faults, self.flood, zone, on_clock)
        self.api = Api(self.world, self.faults, self.flood, self.webhook)
        if kept.on:
            self.world.come_back()
        self.app = self._app()

    @property
    def username(self) -> str:
        """Return the bot's name in links."""
        return str(self.world.bot["username"])

    def fault(self, kind: str, **how: object) -> Fault:
        """Switch a fault on: see `faults.KINDS` and `faults.Fault`."""
        return self.faults.switch_on(kind, **how)

    def messages(self, chat: int) -> list[Json]:
        """Return what stands in a chat, oldest first, as the service gives it."""
        return [kept.body for kept in self.world.chats[chat].messages.values()]

    async def next_message(self, chat: int, after: int = 0, seconds: float = 30.0) -> Json:
        """Wait for the bot's next message above an id; TimeoutError if none comes."""
        body = await next_message(self.world, chat, after, seconds)
        if body is None:
            raise TimeoutError(f"The bot wrote nothing to chat {chat} within {seconds} seconds.")
        return body

    async def until(self, holds: Callable[[], bool], seconds: float = 30.0) -> None:
        """Wait until something about the chats holds; TimeoutError if it does not become true."""
        end = monotonic() + seconds
        while not holds():
            if monotonic() >= end or not await self.world.changes.wait(
                self.world.changes.revision, end - monotonic()
            ):
                raise TimeoutError(f"What was waited for did not happen within {seconds} seconds.")

    def _app(self) -> Starlette:
        everything = ["GET", "POST"]
        app = Starlette(
            routes=[
                Route("/bot{token}/{method}", self.api, methods=everything),
                Route("/file/bot{token}/{path:path}", _Download(self.api), methods=["GET"]),
                *self.control.routes(),
                Route("/", _page, methods=["GET"]),
                Mount("/page", StaticFiles(directory=PAGE)),
            ],
            middleware=[Middleware(_Policy)],
            lifespan=self._lifespan,
        )
        app.state.standin = self
        return app

    @asynccontextmanager
    async def _lifespan(self, app: Starlette) -> AsyncGenerator[None]:
        self.webhook.come_back()
        yield
        self.close()
        await self.webhook.close()
        self.world.journal.close()

    def close(self) -> None:
        """End open long polls, so that the server need not wait for them."""
        self.world.updates.close()
        self.world.changes.note("clock")


def build_standin(
    clock: Clock, token: str, people: Iterable[Person], *, on_clock: OnClock | None = None, zone: str = "UTC"
) -> Starlette:
    """Return the stand-in as an app; the object behind it is `app.state.standin`."""
    return StandIn(clock, token, people, on_clock=on_clock, zone=zone).app


class _Download:
    """The ASGI app at /file/bot<token>/<path>."""

    def __init__(self, api: Api) -> None:
        self._api = api

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        await self._api.download(scope, receive, send)


async def _page(request: Request) -> Response:
    await asyncio.sleep(0)
    return FileResponse(PAGE / "index.html")


class _Policy:
    """Tells the browser that the page loads nothing from elsewhere and runs no script but its own."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        path = scope.get("path", "")
        if scope["type"] != "http" or not (path == "/" or path.startswith("/page/")):
            await self._app(scope, receive, send)
            return

        async def with_policy(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers["Content-Security-Policy"] = _POLICY
                headers["Cache-Control"] = "no-cache"
            await send(message)

        await self._app(scope, receive, with_policy)
