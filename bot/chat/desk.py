"""The desk joins one update to one use case in one transaction, then wakes the sender.

A batch of waiting updates shares a transaction, since the disk is what takes time. If one of them fails,
nothing of the batch has happened, and each gets a transaction of its own.
"""

from __future__ import annotations

import asyncio
import logging
import traceback
from collections import deque
from collections.abc import Callable, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass
from enum import Enum

from sqlalchemy import Engine
from sqlalchemy.exc import InterfaceError, OperationalError
from sqlalchemy.orm import Session

from bot.happened import Happened
from bot.messages import Message
from bot.now import Clock
from bot.records import inbox, outbox
from bot.records.base import lock_chat, transaction
from bot.records.inbox import Turn
from bot.vocabulary import ChatId

log = logging.getLogger(__name__)

BATCH = 20
TRIES = 3
"""So often a use case may fail on one update before it is set aside, so that the chat goes on."""
SHORTEST, LONGEST = 0.05, 5.0
"""Seconds before an update that could not be handled is looked at again."""

Route = Callable[[Session, Happened], list[Message]]
"""What to do when something happened: within an open transaction, what happened goes in, messages come out."""


@dataclass(frozen=True, slots=True)
class Ignored:
    """An update that nobody handles; it is marked done all the same, or its chat would wait for it."""

    update: int
    chat: ChatId


class Seen(Enum):
    """What became of an update at one look."""

    DONE = 1
    LATER = 2


@dataclass(slots=True)
class _Asked:
    what: Happened | Ignored
    seen: asyncio.Future[Seen]


class Desk:
    """Where what happened meets `route`.

    `sorry` says what a chat is told when its update was set aside. `wake` wakes the sender.
    """

    def __init__(
        self,
        engine: Engine,
        executor: Executor,
        clock: Clock,
        route: Route,
        sorry: Route,
        wake: Callable[[], None],
    ) -> None:
        self._engine = engine
        self._executor = executor
        self._clock = clock
        self._route = route
        self._sorry = sorry
        self._wake = wake
        self._waiting: deque[_Asked] = deque()
        self._some = asyncio.Event()

    async def handle(self, what: Happened | Ignored) -> None:
        """Return once the update is done and what it leads to is stored, or it was done before.

        It waits as long as an earlier update of the same chat isn't done, or the database can't be had.
        """
        pause = SHORTEST
        while await self._look(what) is Seen.LATER:
            await asyncio.sleep(pause)
            pause = min(2 * pause, LONGEST)

    async def _look(self, what: Happened | Ignored) -> Seen:
        asked = _Asked(what, asyncio.get_running_loop().create_future())
        self._waiting.append(asked)
        self._some.set()
        return await asked.seen

    async def set_aside(self, update: int, error: BaseException) -> None:
        """Give up on an update that can't even be read; its chat goes on."""
        log.error("update %d can't be read: %s\n%s", update, type(error).__name__, _where(error))
        loop = asyncio.get_running_loop()
        await loop.run_in_executor(self._executor, self._set_aside, update, type(error).__name__)

    def _set_aside(self, update: int, fault: str) -> None:
        with transaction(self._engine) as s:
            inbox.note_fault(s, update, fault)
            inbox.set_aside(s, update, self._clock.now())

    async def run(self) -> None:
        """Work through what waits, batch by batch, until cancelled. Several may run side by side."""
        loop = asyncio.get_running_loop()
        while True:
            await self._some.wait()
            batch = [self._waiting.popleft() for _ in range(min(BATCH, len(self._waiting)))]
            if not self._waiting:
                self._some.clear()
            if not batch:
                continue
            seen = await loop.run_in_executor(self._executor, self._batch, [one.what for one in batch])
            for asked, result in zip(batch, seen, strict=True):
                if not asked.seen.done():  # its waiter may have been cancelled
                    asked.seen.set_result(result)
            self._wake()

    def _batch(self, batch: Sequence[Happened | Ignored]) -> list[Seen]:
        try:
            return self._together(batch)
        except Exception:
            if len(batch) == 1:
                return [self._alone(batch[0])]
            return [self._alone(what) for what in batch]

    def _together(self, batch: Sequence[Happened | Ignored]) -> list[Seen]:
        # Two processes that lock chats in different orders could wait for each other for ever.
        order = sorted(range(len(batch)), key=lambda n: (batch[n].chat, batch[n].update))
        seen = [Seen.LATER] * len(batch)
        with transaction(self._engine) as s:
            for n in order:
                seen[n] = self._one(s, batch[n])
        return seen

    def _one(self, s: Session, what: Happened | Ignored) -> Seen:
        now = self._clock.now()
        lock_chat(s, what.chat)
        turn = inbox.finish(s, what.update, what.chat, now)
        if turn is Turn.OURS and not isinstance(what, Ignored):
            outbox.put(s, self._route(s, what), now, what.update)
        return Seen.LATER if turn is Turn.NOT_YET else Seen.DONE

    def _alone(self, what: Happened | Ignored) -> Seen:
        try:
            return self._together([what])[0]
        except (OperationalError, InterfaceError) as error:
            # The database's trouble, not the update's: locked, full, gone. Nothing is counted, nothing lost.
            log.error("the database refused an update, which waits: %s", type(error.orig).__name__)
            return Seen.LATER
        except Exception as error:
            log.error("update %d failed: %s\n%s", what.update, type(error).__name__, _where(error))
            return self._after_failure(what, type(error).__name__)

    def _after_failure(self, what: Happened | Ignored, fault: str) -> Seen:
        now = self._clock.now()
        with transaction(self._engine) as s:
            if inbox.note_fault(s, what.update, fault) < TRIES:
                return Seen.LATER
            inbox.set_aside(s, what.update, now)
        log.error("update %d is set aside after %d tries; `evensum doctor` tells more", what.update, TRIES)
        if not isinstance(what, Ignored):
            try:
                with transaction(self._engine) as s:
                    outbox.put(s, self._sorry(s, what), now, what.update)
            except Exception as error:
                log.error("nor could the chat be told: %s", type(error).__name__)
        return Seen.DONE


def _where(error: BaseException) -> str:
    """Return where an error came up, without its text, which may hold what a student typed."""
    return "".join(traceback.format_tb(error.__traceback__))
