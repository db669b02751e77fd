"""How fast messages may leave: about 30 a second in all, about one a second to each chat."""

from __future__ import annotations

from aiolimiter import AsyncLimiter

from bot.vocabulary import ChatId

A_SECOND = 28.8
SLACK = 1.3
"""Messages that a full bucket holds. One, so that they leave one by one (a bucket of 30 would let 59 out in the
first second), and a bit, so that a timer that comes late costs nothing. In any second at most 30 leave, with a
little room for what the way to the service does to the gaps between them."""
BURST = 4
"""Messages that may follow each other quickly in one chat; an answer is seldom more than three."""


def overall() -> AsyncLimiter:
    """Return the limiter for all chats together; each message takes one."""
    return AsyncLimiter(SLACK, SLACK / A_SECOND)


class ChatPace:
    """One message a second to each chat, after a short burst."""

    def __init__(self, burst: int = BURST, a_second: float = 1.0) -> None:
        self._burst = burst
        self._a_second = a_second
        self._full_at: dict[ChatId, float] = {}
        """When a chat will have its whole burst again."""

    def sent(self, chat: ChatId, at: float) -> None:
        """Note that a message leaves for a chat."""
        self._full_at[chat] = max(self._full_at.get(chat, at), at) + 1 / self._a_second

    def resting(self, at: float) -> dict[ChatId, float]:
        """Return the chats that may get none now, and when they may again."""
        lead = (self._burst - 1) / self._a_second
        self._full_at = {chat: full for chat, full in self._full_at.items() if full > at}
        return {chat: full - lead for chat, full in self._full_at.items() if full - lead > at}
