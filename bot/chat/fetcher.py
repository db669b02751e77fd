"""Photos that students sent: noted in the day's transaction, fetched from the service afterwards."""

from __future__ import annotations

import asyncio
import logging
from concurrent.futures import Executor
from pathlib import Path

from sqlalchemy import Engine
from telegram.error import BadRequest, TelegramError
from telegram.ext import ExtBot

from bot.records import files
from bot.records.base import transaction

log = logging.getLogger(__name__)

EVERY = 5.0
"""Seconds between two looks for photos that are noted and not here."""
LONGEST = 300.0


class Fetcher:
    """Keeps photos as files beside the database, each under the number of its row."""

    def __init__(self, bot: ExtBot[None], engine: Engine, executor: Executor, folder: Path) -> None:
        self._bot = bot
        self._engine = engine
        self._executor = executor
        self._folder = folder

    async def run(self) -> None:
        """Fetch until cancelled. A photo that can't be had now is asked for again later."""
        loop = asyncio.get_running_loop()
        pause = EVERY
        while True:
            try:
                for row, file_id in await loop.run_in_executor(self._executor, self._wanted):
                    path = await self._fetch(row, file_id)
                    await loop.run_in_executor(self._executor, self._note, row, path)
                pause = EVERY
            except TelegramError as error:
                pause = min(2 * pause, LONGEST)
                log.warning("photos wait for the service, next try in %.0f s: %s", pause, error)
            except Exception as error:
                pause = min(2 * pause, LONGEST)
                log.error("photos can't be kept, next try in %.0f s: %s", pause, type(error).__name__)
            await asyncio.sleep(pause)

    async def _fetch(self, row: int, file_id: str) -> str:
        """Return where the photo is now; empty where the service no longer has it or it is too big."""
        try:
            file = await self._bot.get_file(file_id)
            content = bytes(await file.download_as_bytearray())
        except BadRequest as error:
            log.warning("photo %d can't be had: %s", row, error)
            return ""
        ending = Path(file.file_path or "").suffix.lower() or ".jpg"
        name = f"{row // 1000:03}/{row}{ending}"
        await asyncio.to_thread(self._keep, name, content)
        return name

    def _keep(self, name: str, content: bytes) -> None:
        target = self._folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        unfinished = target.with_name(target.name + ".part")
        unfinished.write_bytes(content)
        unfinished.chmod(0o600)
        unfinished.rename(target)

    def _wanted(self) -> list[tuple[int, str]]:
        with transaction(self._engine) as s:
            return files.unfetched(s)

    def _note(self, row: int, path: str) -> None:
        with transaction(self._engine) as s:
            files.fetched(s, row, path)
