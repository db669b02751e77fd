"""One lane a chat: updates of different chats side by side, those of one chat in order."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable
from typing import Any

from telegram import Update
from telegram.ext import BaseUpdateProcessor


class Lanes(BaseUpdateProcessor):
    """The library's update processor with a lane for each chat.

    With its own `concurrent_updates` two updates of one chat may finish in the other order.
    """

    __slots__ = ("_lanes", "under_way")

    def __init__(self, at_once: int) -> None:
        super().__init__(at_once)
        self._lanes: dict[int, asyncio.Task[Any]] = {}
        self.under_way: set[int] = set()
        """Numbers of the updates that were handed over and aren't done."""

    async def do_process_update(self, update: object, coroutine: Awaitable[Any]) -> None:
        """Wait for the update before this one in the same chat, then handle this one."""
        if not isinstance(update, Update):
            await coroutine
            return
        chat = update.effective_chat.id if update.effective_chat else 0
        before = self._lanes.get(chat)
        mine = asyncio.current_task()
        assert mine is not None
        self._lanes[chat] = mine
        try:
            if before is not None:
                await asyncio.wait([before])
            await coroutine
        finally:
            self.under_way.discard(update.update_id)
            if self._lanes.get(chat) is mine:
                del self._lanes[chat]

    async def initialize(self) -> None:
        """Nothing to open."""

    async def shutdown(self) -> None:
        """Nothing to close."""
