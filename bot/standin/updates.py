"""Updates that wait for the bot: at least once, in order, confirmed by the next offset."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from bot.standin import limits
from bot.standin.journal import Journal
from bot.standin.model import Json
from bot.standin.refusal import OTHER_POLL, WEBHOOK_ACTIVE, WEBHOOK_SET, Refusal, bad, conflict

FIRST_ID = 410_000_001
BATCH_SECONDS = 0.0015  # the server waits 1-2 ms after an update arrives, so that a burst comes in one answer


@dataclass(slots=True)
class Waiting:
    """One update that is not confirmed yet; `copies` above 1 says that it will come again once confirmed."""

    body: Json
    chat: int
    at: float
    copies: int = 1


class Updates:
    """The queue that polling and webhook share. `now` gives seconds since 1970."""

    def __init__(self, now: Callable[[], float], journal: Journal) -> None:
        self.waiting: dict[int, Waiting] = {}
        self.next_id = FIRST_ID
        self.allowed: frozenset[str] | None = None
        """The kinds the bot asked for; None means all but those that come on request only."""
        self.deliver: Callable[[int, int], None] | None = None
        """Takes update id and chat while a webhook is set."""
        self.is_doubled: Callable[[], bool] = lambda: False
        self._now = now
        self._journal = journal
        self._poll: asyncio.Future[None] | None = None

    def add(self, kind: str, body: Json, chat: int) -> int | None:
        """Queue an update and return its id, or None if the bot does not want this kind."""
        wanted = self.allowed
        if (kind in limits.UPDATE_KINDS_ON_REQUEST) if wanted is None else (kind not in wanted):
            return None
        number = self.next_id
        self.next_id += 1
        copies = 2 if self.is_doubled() else 1
        # The body is copied now: an update says how things stood when it happened.
        self.waiting[number] = Waiting({"update_id": number, kind: body.copy()}, chat, self._now(), copies)
        if self._journal.on:
            one = self.waiting[number]
            self._journal.note("update", [number, one.body, chat, one.at])
        self._wake()
        if self.deliver is not None:
            self.deliver(number, chat)
        return number

    def take_up(self, kind: str, data: Any) -> None:
        """Take up one line of the journal."""
        match kind:
            case "update":
                number, body, chat, at = data
                self.waiting[number] = Waiting(body, chat, at)
                self.next_id = number + 1
            case "confirmed":
                self.waiting.pop(data, None)
            case "allowed":
                self.allowed = frozenset(data) or None

    def choose(self, kinds: Any) -> None:
        """Take an allowed_updates list; None leaves the choice as it was, an empty list is the default."""
        if kinds is None:
            return
        if not isinstance(kinds, list):
            raise bad("can't parse allowed updates: expected an Array of String")
        # Unknown names are dropped by the service, not refused (from memory).
        known = frozenset(str(kind) for kind in kinds) & limits.UPDATE_KINDS
        self.allowed = known or None
        self._journal.note("allowed", sorted(known))

    def confirm(self, number: int) -> None:
        """Forget one update; a doubled one stays for once more."""
        one = self.waiting.get(number)
        if one is None:
            return
        one.copies -= 1
        if one.copies <= 0:
            del self.waiting[number]
            self._journal.note("confirmed", number)

    def forget(self) -> None:
        """Forget all that wait."""
        for number in list(self.waiting):
            del self.waiting[number]
            self._journal.note("confirmed", number)

    def drop_old(self) -> None:
        """Forget what has waited for a day."""
        oldest = self._now() - limits.UPDATE_HOURS * 3600
        for number, one in list(self.waiting.items()):
            if one.at >= oldest:
                break
            del self.waiting[number]
            self._journal.note("confirmed", number)

    async def fetch(self, offset: int, limit: int, seconds: float) -> list[Json]:
        """Answer getUpdates: confirm what lies below the offset, wait for what is new.

        A negative offset keeps the last so many and forgets those before.
        """
        if self.deliver is not None:
            raise conflict(WEBHOOK_ACTIVE)
        self.end_poll(OTHER_POLL)
        if offset > 0:
            for number in [n for n in self.waiting if n < offset]:
                self.confirm(number)
        elif offset < 0:
            for number in list(self.waiting)[:offset]:
                self.confirm(number)
        self.drop_old()
        if not self.waiting and seconds > 0:
            await self._wait(min(seconds, limits.POLL_SECONDS))
        first = list(self.waiting.values())[: max(1, min(limit, limits.UPDATES_AT_ONCE))]
        return [one.body for one in first]

    async def _wait(self, seconds: float) -> None:
        poll: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._poll = poll
        with suppress(TimeoutError):
            async with asyncio.timeout(seconds):
                await poll
        if self._poll is poll:
            self._poll = None
        if self.waiting:
            await asyncio.sleep(BATCH_SECONDS)

    def end_poll(self, reason: str = WEBHOOK_SET) -> None:
        """End a long poll that is open with 409: somebody else takes over."""
        if self._poll is not None and not self._poll.done():
            self._poll.set_exception(Refusal(409, f"Conflict: {reason}"))
        self._poll = None

    def close(self) -> None:
        """Let an open long poll end with nothing: the server stops."""
        self._wake()

    def _wake(self) -> None:
        if self._poll is not None and not self._poll.done():
            self._poll.set_result(None)
