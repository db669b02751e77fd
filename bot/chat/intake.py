"""How updates come in, by polling or by webhook: stored before they are acknowledged.

The library's own polling confirms updates once they are in a queue in memory, before a handler has run;
whatever was in that queue when a process dies is lost. Here a queue in memory is only a hint: what isn't
done is taken up again at the next start.
"""

from __future__ import annotations

import asyncio
import hmac
import logging
from collections.abc import Sequence
from concurrent.futures import Executor
from datetime import timedelta
from typing import Any

import msgspec
from aiohttp import web
from sqlalchemy import Engine
from telegram import Update
from telegram.error import Conflict, InvalidToken, NetworkError, RetryAfter, TelegramError

from bot.chat.client import ALLOWED, Client
from bot.chat.handlers import Chat
from bot.chat.lanes import Lanes
from bot.now import Clock
from bot.records import inbox
from bot.records.base import transaction
from bot.records.inbox import Received, Unfinished
from bot.vocabulary import ChatId

log = logging.getLogger(__name__)

Json = dict[str, Any]

QUIET = timedelta(days=6)
"""After a week without updates the service numbers them anew; then an old offset would hide them."""
ORPHANED = timedelta(minutes=1)
"""An update that waits for longer belongs to a process that is gone."""
SECRET = "X-Telegram-Bot-Api-Secret-Token"


class Intake:
    """Stores updates, many in one transaction where they come thick, then hands them to the application."""

    def __init__(
        self, application: Chat, lanes: Lanes, engine: Engine, executor: Executor, clock: Clock, bot_id: int
    ) -> None:
        self._application = application
        self._lanes = lanes
        self._engine = engine
        self._executor = executor
        self._clock = clock
        self._bot_id = bot_id
        self._pending: list[tuple[Sequence[Json], asyncio.Future[None]]] = []
        self._storing: asyncio.Task[None] | None = None

    async def take(self, updates: Sequence[Json]) -> None:
        """Return once the updates are stored. Raises what the database raises: then nothing is acknowledged."""
        stored: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._pending.append((updates, stored))
        if self._storing is None or self._storing.done():
            self._storing = asyncio.create_task(self._store_pending())
        await stored

    async def _store_pending(self) -> None:
        while self._pending:
            taken, self._pending = self._pending, []
            rows = [_received(one) for updates, _ in taken for one in updates]
            try:
                new = await self._in_thread(self._store, rows)
            except Exception as error:
                for _, stored in taken:
                    stored.set_exception(error)
                continue
            for _, stored in taken:
                if not stored.done():
                    stored.set_result(None)
            await self._hand_over(new)

    def _store(self, rows: Sequence[Received]) -> list[Unfinished]:
        with transaction(self._engine) as s:
            return inbox.receive(s, self._bot_id, rows, self._clock.now())

    async def take_up(self) -> int:
        """Hand over what an earlier run left undone; return how many updates those are."""
        left = await self._in_thread(self._left, False)
        await self._hand_over(left)
        return len(left)

    async def sweep(self) -> None:
        """From time to time take up what another process left undone; until cancelled."""
        while True:
            await asyncio.sleep(ORPHANED.total_seconds() / 2)
            try:
                await self._hand_over(await self._in_thread(self._left, True))
            except Exception as error:
                log.error("looking for updates left undone failed: %s", type(error).__name__)

    def _left(self, orphaned_only: bool) -> list[Unfinished]:
        before = self._clock.now() - ORPHANED if orphaned_only else None
        with transaction(self._engine) as s:
            return inbox.unfinished(s, self._bot_id, before)

    async def _hand_over(self, new: Sequence[Unfinished]) -> None:
        for one in new:
            if one.update in self._lanes.under_way:
                continue
            try:
                raw = msgspec.json.decode(one.raw)
                # From here on the update goes by our number: the service's own may come again after a quiet week.
                update = Update.de_json({**raw, "update_id": one.update}, self._application.bot)
            except Exception as error:
                await self._application.bot_data.desk.set_aside(one.update, error)
                continue
            self._lanes.under_way.add(one.update)
            await self._application.update_queue.put(update)

    async def _in_thread(self, work: Any, *what: Any) -> Any:
        return await asyncio.get_running_loop().run_in_executor(self._executor, work, *what)


def _received(raw: Json) -> Received:
    part: Json = next((raw[kind] for kind in ALLOWED if isinstance(raw.get(kind), dict)), {})
    message: Json = part.get("message") or part  # a press carries the message it hangs under
    dated = message.get("edit_date") or message.get("date") or 0
    chat = (message.get("chat") or {}).get("id")
    return Received(
        int(raw["update_id"]), dated, None if chat is None else ChatId(chat), msgspec.json.encode(raw)
    )


async def poll(bot: Client, intake: Intake) -> None:
    """Fetch updates until cancelled: fetch, store, and only then confirm with the next fetch."""
    loop = asyncio.get_running_loop()
    offset: int | None = None  # the first call carries none, so that nothing is confirmed that we don't have
    last = loop.time()
    pause = 0.0
    while True:
        try:
            updates = await bot.raw_updates(offset)
            if updates:
                await intake.take(updates)
                offset, last = updates[-1]["update_id"] + 1, loop.time()
            elif loop.time() - last > QUIET.total_seconds():
                offset = None
            pause = 0.0
        except RetryAfter as error:
            pause = _seconds(error)
        except Conflict:
            log.error(
                "another program fetches this bot's updates; only one may (`evensum doctor` tells more)"
            )
            pause = min(max(1.0, 2 * pause), 10.0)  # after a restart it may be our own last call
        except InvalidToken:
            log.error("the service doesn't know this token (EVENSUM_TOKEN)")
            pause = 30.0
        except NetworkError as error:
            pause = min(max(1.0, 2 * pause), 30.0)
            log.warning("no updates to be had, next try in %.0f s: %s", pause, error)
        except TelegramError as error:
            pause = min(max(1.0, 2 * pause), 30.0)
            log.error("the service refused to give updates: %s", error)
        except Exception as error:
            # The database refused to store them. They aren't confirmed, so the service gives them again.
            pause = min(max(1.0, 2 * pause), 30.0)
            log.error("updates could not be stored, next try in %.0f s: %s", pause, type(error).__name__)
        if pause:
            await asyncio.sleep(pause)


def _seconds(error: RetryAfter) -> float:
    after = error.retry_after
    return float(after.total_seconds() if isinstance(after, timedelta) else after)


def webhook(intake: Intake, path: str, secret: str) -> web.Application:
    """Return a web application that takes updates at `path`; anything without the secret is turned away."""

    async def receive(request: web.Request) -> web.Response:
        if not hmac.compare_digest(request.headers.get(SECRET, "").encode(), secret.encode()):
            return web.Response(status=403)
        try:
            raw = msgspec.json.decode(await request.read())
            int(raw["update_id"])
        except (msgspec.DecodeError, KeyError, TypeError, ValueError):
            return web.Response(status=400)
        try:
            await intake.take([raw])
        except Exception as error:
            log.error("an update could not be stored; the service sends it again: %s", type(error).__name__)
            return web.Response(status=503, headers={"Retry-After": "5"})
        return web.Response()

    application = web.Application()
    application.router.add_post(path, receive)
    return application
