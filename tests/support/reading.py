"""Reading what was said as somebody would type it again."""

from __future__ import annotations

from bot.chat.typography import HYPHEN, SPACE
from bot.messages import Passed
from bot.vocabulary import ChatId, ItemId


def as_typed(text: str) -> str:
    """The text with ordinary spaces and hyphens for those that no line ends at."""
    return text.replace(SPACE, " ").replace(HYPHEN, "-")


def passed(ask: str, typed: str) -> Passed:
    """What a tutor reads of an answer that was passed on."""
    return Passed(
        to=ChatId(1),
        item=ItemId(1),
        student="Wren",
        household="Bramble",
        lesson="Ratios",
        ask=ask,
        typed=(typed,),
        answer="7",
    )
