"""Once a minute: whose day opens, closes or needs a reminder, worked out from rows at that moment.

There is one job for all, not one for each student: jobs in memory are gone after a restart, and stored ones
that fell due while the process was away are dropped by default. A tick may be late, early or doubled.
"""

from __future__ import annotations

import asyncio
import logging
import traceback
from collections.abc import Callable, Sequence
from concurrent.futures import Executor
from datetime import datetime
from typing import Generic, TypeVar

from apscheduler.schedulers.asyncio import AsyncIOScheduler
from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.messages import Message
from bot.now import Clock
from bot.records import outbox
from bot.records.base import lock_named, transaction

log = logging.getLogger(__name__)

EVERY = 60
"""Seconds between two ticks."""

Job = TypeVar("Job")


class Ticks(Generic[Job]):
    """Asks `due` who is due now, then does `look` for each in a transaction of its own."""

    def __init__(
        self,
        engine: Engine,
        executor: Executor,
        clock: Clock,
        due: Callable[[Session, datetime], Sequence[Job]],
        look: Callable[[Session, Job, datetime], Sequence[Message]],
    ) -> None:
        self._engine = engine
        self._executor = executor
        self._clock = clock
        self._due = due
        self._look = look
        self._scheduler: AsyncIOScheduler | None = None
        self._ticking = False
        self._moved = False

    async def run(self, wake: Callable[[], None]) -> None:
        """Tick until cancelled; `wake` is called in the event loop when there is something to send."""
        scheduler = AsyncIOScheduler(timezone="UTC")
        scheduler.add_job(
            self.tick,
            "interval",
            [wake],
            seconds=EVERY,
            id="tick",
            max_instances=1,
            coalesce=True,
            misfire_grace_time=None,
            next_run_time=datetime.now(scheduler.timezone),  # the first one at once
        )
        scheduler.start()
        self._scheduler = scheduler
        try:
            await asyncio.Event().wait()
        finally:
            self._scheduler = None
            scheduler.shutdown(wait=False)

    def soon(self) -> None:
        """Tick now instead of within a minute: the clock was moved."""
        self._moved = True
        if self._scheduler is not None and not self._ticking:
            self._scheduler.modify_job("tick", next_run_time=datetime.now(self._scheduler.timezone))

    async def tick(self, wake: Callable[[], None]) -> None:
        """Do all that is due now, and again if the clock was moved meanwhile."""
        self._ticking = True
        try:
            self._moved = False
            await self._all_due(wake)
            while self._moved:
                self._moved = False
                await self._all_due(wake)
        finally:
            self._ticking = False

    async def _all_due(self, wake: Callable[[], None]) -> None:
        """Look at everybody who is due. One student's failure is no other's."""
        loop = asyncio.get_running_loop()
        try:
            jobs = await loop.run_in_executor(self._executor, self._who)
        except Exception as error:
            log.error("nobody can be looked at in this minute: %s", type(error).__name__)
            return
        for job in jobs:
            try:
                said = await loop.run_in_executor(self._executor, self._one, job)
            except Exception as error:
                where = "".join(traceback.format_tb(error.__traceback__))
                log.error("what is due for %s failed: %s\n%s", job, type(error).__name__, where)
            else:
                if said:
                    wake()

    def _who(self) -> Sequence[Job]:
        with transaction(self._engine) as s:
            return self._due(s, self._clock.now())

    def _one(self, job: Job) -> bool:
        now = self._clock.now()
        with transaction(self._engine) as s:
            lock_named(s, f"tick/{job}")  # two ticks at once: the second sees what the first has done
            said = self._look(s, job, now)
            outbox.put(s, said, now)
        return bool(said)
