"""Households whose week is over are erased, and what is past the retention limit: rows, photos, raw bytes."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable
from concurrent.futures import Executor
from datetime import date
from pathlib import Path

from sqlalchemy import Engine

from bot.family import leave
from bot.now import Clock
from bot.records import forgetting, leaving
from bot.records.base import transaction

log = logging.getLogger(__name__)

EVERY = 60.0
"""Seconds between two looks."""


class Leavings:
    """Erases whoever asked for it a week ago; twice or late does no harm."""

    def __init__(
        self, engine: Engine, executor: Executor, clock: Clock, files: Path, keep_months: int = 0
    ) -> None:
        self._engine = engine
        self._executor = executor
        self._clock = clock
        self._files = files
        self._keep_months = keep_months
        self._forgot: date | None = None

    async def run(self, wake: Callable[[], None]) -> None:
        """Look until cancelled."""
        loop = asyncio.get_running_loop()
        while True:
            try:
                await loop.run_in_executor(self._executor, self.look)
            except Exception as error:
                log.error("a household could not be erased yet: %s", type(error).__name__)
            await asyncio.sleep(EVERY)

    def look(self) -> int:
        """Erase all that is due now; return how many households that were."""
        with transaction(self._engine) as s:
            homes = leave.due(s, self._clock.now())
        for home in homes:
            with transaction(self._engine) as s:
                paths = leave.erase_now(s, home)
            for path in paths:
                (self._files / path).unlink(missing_ok=True)
        if self._forget() or homes:
            leaving.scrub(self._engine)
        return len(homes)

    def _forget(self) -> bool:
        """Once a day: remove what is older than the installation keeps; whether there was any."""
        today = self._clock.now().date()
        if not self._keep_months or self._forgot == today:
            return False
        self._forgot = today
        with transaction(self._engine) as s:
            paths, gone = forgetting.forget_before(s, forgetting.limit(today, self._keep_months))
        for path in paths:
            (self._files / path).unlink(missing_ok=True)
        return bool(gone)
