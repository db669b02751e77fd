"""Reading what was said as somebody would type it again."""

from __future__ import annotations

from bot.chat.typography import HYPHEN, SPACE


def as_typed(text: str) -> str:
    """The text with ordinary spaces and hyphens for those that no line ends at."""
    return text.replace(SPACE, " ").replace(HYPHEN, "-")
