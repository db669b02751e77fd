"""The library's bot, and the two calls on every reply's way without the objects that nobody looks at."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

from telegram.ext import ExtBot

from bot.chat.rendered import Rendered
from bot.vocabulary import ChatId

Json = dict[str, Any]

ALLOWED = ["message", "edited_message", "callback_query", "my_chat_member"]
"""The kinds of updates that we ask the service for."""
AT_MOST = 100
"""Updates in one answer."""
LONG_POLL = 25
"""Seconds that the service waits for an update before it answers with none."""


class Client(ExtBot[None]):
    """The library's bot. Its own methods do everything that isn't done a thousand times a morning."""

    async def raw_updates(self, offset: int | None) -> list[Json]:
        """Wait for updates and return them as they came. An offset confirms all before it."""
        asked: Json = {"timeout": LONG_POLL, "limit": AT_MOST, "allowed_updates": ALLOWED}
        if offset is not None:
            asked["offset"] = offset
        answer: Any = await self._post("getUpdates", asked, read_timeout=LONG_POLL + 10)
        return list(answer)

    async def send_text(self, chat: ChatId, what: Rendered) -> tuple[int, datetime]:
        """Send a message of words and buttons; return its id and the service's date of it.

        The library would make a hundred-fold object of the answer, of which two numbers are wanted; that and
        the objects of buttons cost as much as grading the reply.
        """
        asked: Json = {"chat_id": chat, "text": what.text}
        if what.entities:
            asked["entities"] = [
                {"type": one.kind, "offset": one.offset, "length": one.length}
                | ({"url": one.url} if one.url else {})
                for one in what.entities
            ]
        if what.buttons:
            rows = [
                [
                    {"text": one.label, "callback_data": one.data}
                    if one.data
                    else {"text": one.label, "url": one.url}
                    for one in row
                ]
                for row in what.buttons
            ]
            asked["reply_markup"] = {"inline_keyboard": rows}
        if not what.preview:
            asked["link_preview_options"] = {"is_disabled": True}
        if what.quiet:
            asked["disable_notification"] = True
        if what.reply_to is not None:
            asked["reply_parameters"] = {"message_id": what.reply_to, "allow_sending_without_reply": True}
        answer: Any = await self._post("sendMessage", asked)
        return answer["message_id"], datetime.fromtimestamp(answer["date"], UTC)
