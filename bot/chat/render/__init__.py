"""Message -> what leaves: words with marks, buttons, pictures. Pure; the only user of the catalogues."""

from __future__ import annotations

from bot.chat.render import (
    assessment,
    common,
    day,
    evening,
    family,
    glossary,
    marks,
    mine,
    own,
    papers,
    records,
    reply,
    standing,
    tutoring,
    year,
)
from bot.chat.render.registry import RENDERERS, Says
from bot.chat.rendered import Rendered
from bot.chat.words import words_for
from bot.messages import Message

FILLED = (
    assessment,
    common,
    day,
    evening,
    family,
    glossary,
    marks,
    mine,
    own,
    papers,
    records,
    reply,
    standing,
    tutoring,
    year,
)
"""The modules whose import fills RENDERERS."""


def render(message: Message, language: str) -> Rendered:
    """Turn a message into what leaves. Raises KeyError for a class that nobody renders (a test holds that)."""
    return RENDERERS[type(message)](words_for(language), message)


__all__ = ["RENDERERS", "Says", "render"]
