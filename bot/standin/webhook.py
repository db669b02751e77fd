"""Updates brought to the bot's own address: in order per chat, tried again until they are taken."""

from __future__ import annotations

import asyncio
import random
import re
from collections import deque
from contextlib import suppress
from typing import Any
from urllib.parse import urlsplit

import aiohttp
import msgspec

from bot.standin import limits
from bot.standin.model import Json
from bot.standin.parameters import Parameters
from bot.standin.refusal import bad
from bot.standin.world import World

_LOOPBACK = frozenset({"127.0.0.1", "localhost", "::1"})
_DELAYS = (0, 2, 4, 8, 16, 32)
_SECRET = re.compile(r"[A-Za-z0-9_-]+")


class Webhook:
    """Delivery by webhook; `pace` below 1 shortens the waits between attempts, for tests."""

    def __init__(self, world: World, pace: float = 1.0) -> None:
        self.url = ""
        self.secret = ""
        self.connections = limits.CONNECTIONS_DEFAULT
        self.pace = pace
        self._world = world
        self._lanes: dict[int, deque[int]] = {}
        self._tasks: set[asyncio.Task[None]] = set()
        self._free = asyncio.Semaphore(self.connections)
        self._client: aiohttp.ClientSession | None = None
        self._last_error: tuple[int, str] | None = None

    def set(self, p: Parameters) -> bool:
        """setWebhook; an empty address is as deleteWebhook."""
        url = p.text("url")
        if not url:
            return self.delete(p)
        parts = urlsplit(url)
        if parts.scheme not in ("https", "http"):
            raise bad("bad webhook: HTTPS url must be provided for webhook")
        # Plain http is what the real server takes with --local; nothing but this machine is ever called.
        if parts.hostname not in _LOOPBACK:
            raise bad("bad webhook: IP address is reserved: the stand-in calls this machine only")
        secret = p.text("secret_token")
        if len(secret) > limits.SECRET_CHARACTERS:
            raise bad("secret token is too long")
        if secret and not _SECRET.fullmatch(secret):
            raise bad("secret token contains unallowed characters")
        fewest, most = limits.CONNECTIONS
        connections = p.whole("max_connections", limits.CONNECTIONS_DEFAULT) or limits.CONNECTIONS_DEFAULT
        self._world.updates.choose(p.data("allowed_updates"))
        if p.truth("drop_pending_updates"):
            self._world.updates.forget()
        self._begin(url, secret, max(fewest, min(most, connections)))
        self._world.journal.note("webhook", [self.url, self.secret, self.connections])
        return True

    def delete(self, p: Parameters) -> bool:
        """deleteWebhook: what waits is kept for getUpdates."""
        if p.truth("drop_pending_updates"):
            self._world.updates.forget()
        self._end()
        self._world.journal.note("webhook", ["", "", limits.CONNECTIONS_DEFAULT])
        return True

    def info(self) -> Json:
        """getWebhookInfo."""
        info: Json = {
            "url": self.url,
            "has_custom_certificate": False,
            "pending_update_count": len(self._world.updates.waiting),
        }
        if self.url:
            info["max_connections"] = self.connections
            info["ip_address"] = "127.0.0.1"
        if self._last_error is not None:
            info["last_error_date"], info["last_error_message"] = self._last_error
        if self._world.updates.allowed is not None:
            info["allowed_updates"] = sorted(self._world.updates.allowed)
        return info

    def come_back(self) -> None:
        """Take up the webhook that the journal holds, once there is a loop to deliver in."""
        last: Any = None
        for kind, data in self._world.journal.lines():
            if kind == "webhook":
                last = data
        if last and last[0]:
            self._begin(*last)

    def _begin(self, url: str, secret: str, connections: int) -> None:
        self._end()
        self.url, self.secret, self.connections = url, secret, connections
        self._free = asyncio.Semaphore(connections)
        self._world.updates.end_poll()
        self._world.updates.deliver = self._push
        for number, one in list(self._world.updates.waiting.items()):
            self._push(number, one.chat)

    def _end(self) -> None:
        self.url = self.secret = ""
        self._last_error = None
        self._world.updates.deliver = None
        for task in self._tasks:
            task.cancel()
        self._tasks.clear()
        self._lanes.clear()

    async def close(self) -> None:
        """Stop delivering and close the client."""
        tasks = list(self._tasks)
        self._end()
        await asyncio.gather(*tasks, return_exceptions=True)
        if self._client is not None:
            await self._client.close()

    def _push(self, number: int, chat: int) -> None:
        lane = self._lanes.get(chat)
        if lane is not None:
            lane.append(number)
            return
        self._lanes[chat] = deque([number])
        task = asyncio.get_running_loop().create_task(self._empty(chat))
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    async def _empty(self, chat: int) -> None:
        """Deliver what waits in one chat, one after the other; the next goes out when the last was taken."""
        lane = self._lanes[chat]
        while lane:
            number = lane[0]
            while number in self._world.updates.waiting:  # once more if it is to come twice
                await self._bring(number)
            lane.popleft()
        del self._lanes[chat]

    async def _bring(self, number: int) -> None:
        """Deliver one update, however many attempts it takes within a day."""
        attempt = 0
        while True:
            self._world.updates.drop_old()
            one = self._world.updates.waiting.get(number)
            if one is None:
                return
            async with self._free:
                wait = await self._post(one.body)
            if wait is None:
                self._world.updates.confirm(number)
                return
            delay = _DELAYS[attempt] if attempt < len(_DELAYS) else random.uniform(60, 120)
            attempt += 1
            await asyncio.sleep(max(delay, wait) * self.pace)

    async def _post(self, body: Json) -> float | None:
        """Post one update; None if it was taken, else the least seconds to wait."""
        headers = {"Content-Type": "application/json"}
        if self.secret:
            headers["X-Telegram-Bot-Api-Secret-Token"] = self.secret
        if self._client is None:
            self._client = aiohttp.ClientSession(connector=aiohttp.TCPConnector(limit=0))
        try:
            # The published server gives an answer a minute; shorter here would double slow ones.
            async with self._client.post(
                self.url, data=msgspec.json.encode(body), headers=headers, timeout=aiohttp.ClientTimeout(60)
            ) as answer:
                await answer.read()
                if 200 <= answer.status <= 299:
                    return None
                self._note_error(f"Wrong response from the webhook: {answer.status} {answer.reason}")
                with suppress(ValueError):
                    return min(3600.0, float(answer.headers.get("Retry-After", "0")))
        except aiohttp.ClientConnectorError:
            self._note_error("Connection refused")
        except TimeoutError:
            self._note_error("Read timeout expired")
        except aiohttp.ClientError:
            self._note_error("Connection reset by peer")
        return 0.0

    def _note_error(self, text: str) -> None:
        self._last_error = (int(self._world.now()), text)


async def get_updates(world: World, p: Parameters) -> list[Json]:
    """getUpdates by long polling."""
    if world.updates.deliver is None:
        world.updates.choose(p.data("allowed_updates"))
    return await world.updates.fetch(
        p.whole("offset", 0) or 0,
        p.whole("limit", limits.UPDATES_AT_ONCE) or limits.UPDATES_AT_ONCE,
        float(p.whole("timeout", 0) or 0),
    )
