"""Lesson files that a tutor sent: fetched from the service, proved in a thread, answered in a transaction."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable, Sequence
from concurrent.futures import Executor
from datetime import datetime
from typing import Generic, TypeVar

import msgspec
from sqlalchemy import Engine
from sqlalchemy.orm import Session
from telegram.error import BadRequest, TelegramError
from telegram.ext import ExtBot

from bot.messages import Message
from bot.now import Clock
from bot.records import outbox, own
from bot.records.base import lock_chat, transaction
from bot.records.own import Coming

log = logging.getLogger(__name__)

EVERY = 2.0
"""Seconds between two looks for files that are noted and not read."""
LONGEST = 300.0
MOST_BYTES = 400_000

P = TypeVar("P")


class LessonFiles(Generic[P]):
    """Reads what tutors sent. `prove` takes seconds and no session; `answer` takes what it found."""

    def __init__(
        self,
        bot: ExtBot[None],
        engine: Engine,
        executor: Executor,
        clock: Clock,
        prove: Callable[[str, bytes | None], P],
        answer: Callable[[Session, Coming, P, datetime], Sequence[Message]],
        wake: Callable[[], None],
    ) -> None:
        self._bot = bot
        self._engine = engine
        self._executor = executor
        self._clock = clock
        self._prove = prove
        self._answer = answer
        self._wake = wake

    async def run(self) -> None:
        """Read until cancelled. A file that can't be had now is asked for again later."""
        loop = asyncio.get_running_loop()
        pause = EVERY
        while True:
            try:
                for row in await loop.run_in_executor(self._executor, self._coming):
                    proof = await asyncio.to_thread(self._prove, row.name, await self._fetch(row))
                    await loop.run_in_executor(self._executor, self._say, row, proof)
                    self._wake()
                pause = EVERY
            except TelegramError as error:
                pause = min(2 * pause, LONGEST)
                log.warning("lesson files wait for the service, next try in %.0f s: %s", pause, error)
            except Exception as error:
                pause = min(2 * pause, LONGEST)
                log.error("a lesson file can't be read, next try in %.0f s: %s", pause, type(error).__name__)
            await asyncio.sleep(pause)

    async def _fetch(self, row: Coming) -> bytes | None:
        """Return the file's bytes; None where the service no longer has it, or it is no lesson by its size."""
        try:
            file = await self._bot.get_file(row.file_id)
            if (file.file_size or 0) > MOST_BYTES:
                return None
            return bytes(await file.download_as_bytearray())
        except BadRequest as error:
            log.warning("lesson file %d can't be had: %s", row.id, error)
            return None

    def _coming(self) -> list[Coming]:
        with transaction(self._engine) as s:
            return own.coming(s)

    def _say(self, row: Coming, proof: P) -> None:
        now = self._clock.now()
        with transaction(self._engine) as s:
            lock_chat(s, row.chat)
            said = self._answer(s, row, proof, now)
            keyed = [
                msgspec.structs.replace(message, key=f"own-file/{row.id}/{n}")
                for n, message in enumerate(said)
            ]
            outbox.put(s, keyed, now)
