"""Chats and messages as the phone page gets them, and waiting for the next."""

from __future__ import annotations

from time import monotonic

from bot.standin.model import Chat, Json, Kept
from bot.standin.profile import commands_shown
from bot.standin.world import World


def shown_chat(world: World, chat: Chat) -> Json:
    """Return a chat without its messages."""
    who = chat.people[0] if chat.people else None
    return {
        "id": chat.id,
        "title": chat.title,
        "about": who.about if who and not chat.is_group else "",
        "group": chat.is_group,
        "people": [{"id": one.id, "name": one.name} for one in chat.people],
        "started": chat.started,
        "blocked": chat.blocked,
        "bot_in": chat.bot_in,
        "unread": chat.unread,
        "read_up_to": chat.read_up_to,
        "cleared_up_to": chat.cleared_up_to,
        "keyboard": chat.keyboard,
        "commands": commands_shown(world, chat, who.language if who else ""),
    }


def shown_message(chat: Chat, kept: Kept) -> Json:
    """Return a message as the service gives it, with what only the page knows."""
    return {"chat": chat.id, "from_bot": kept.from_bot, "alt": kept.alt, "message": kept.body}


async def next_message(world: World, chat: int, after: int, seconds: float) -> Json | None:
    """Return the bot's next message in a chat above an id, or None if none came in so many seconds."""
    until = monotonic() + seconds
    while True:
        where = world.chats[chat]
        for number in range(after + 1, where.last_id + 1):
            kept = where.messages.get(number)
            if kept is not None and kept.from_bot:
                return kept.body
        left = until - monotonic()
        if left <= 0:
            return None
        await world.changes.wait(world.changes.revision, left)
