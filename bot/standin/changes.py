"""What changed since somebody last looked: a numbered log, so that a page may come and go and miss nothing."""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Hashable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

REMEMBERED = 20_000


@dataclass(frozen=True, slots=True)
class Change:
    """One change: `what` is message, gone, chat, answer, action or clock; `data` belongs to the last three."""

    revision: int
    what: str
    chat: int
    message: int = 0
    data: dict[str, Any] | None = None


class Changes:
    """The newest changes, oldest first. Whoever is too far behind must read everything afresh."""

    def __init__(self) -> None:
        self.revision = 0
        self._log: deque[Change] = deque(maxlen=REMEMBERED)
        self._waiting: set[asyncio.Future[None]] = set()

    def note(self, what: str, chat: int = 0, message: int = 0, data: dict[str, Any] | None = None) -> int:
        """Write down a change, wake whoever waits, return its number."""
        self.revision += 1
        self._log.append(Change(self.revision, what, chat, message, data))
        if self._waiting:
            for waiting in self._waiting:
                if not waiting.done():
                    waiting.set_result(None)
            self._waiting.clear()
        return self.revision

    def since(self, revision: int) -> list[Change] | None:
        """Return what changed after a revision, only the last of several changes of one thing.

        None says that the log no longer reaches back so far, or that the revision is not one of ours.
        """
        behind = self.revision - revision
        if behind < 0 or behind > len(self._log):
            return None
        newest: dict[Hashable, Change] = {}
        for place in range(len(self._log) - behind, len(self._log)):
            change = self._log[place]
            key = (change.what, change.chat, change.message) if change.what != "answer" else change.revision
            newest.pop(key, None)
            newest[key] = change
        return list(newest.values())

    async def wait(self, revision: int, seconds: float) -> bool:
        """Wait until something is newer than a revision; False if nothing was within so many seconds."""
        if self.revision != revision:
            return True
        waiting: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._waiting.add(waiting)
        with suppress(TimeoutError):
            async with asyncio.timeout(seconds):
                await waiting
        self._waiting.discard(waiting)
        return self.revision != revision
