"""Message -> what leaves: words with marks, buttons, pictures. Pure; the only user of the catalogues."""

from __future__ import annotations

from dataclasses import replace

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
from bot.chat.rendered import Rendered, cut_units
from bot.chat.typography import held_together
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
    what = _held(RENDERERS[type(message)](words_for(language), message))
    if what.pictures or what.documents:
        what = replace(what, missing=words_for(language).label("file-missing"))
    return what


def _held(what: Rendered) -> Rendered:
    """The same with its short formulas each on one line; what is shown as code stays as it is, to be copied."""
    held = held_together(what.text)
    for mark in what.entities:
        if mark.kind in ("code", "pre"):
            end = mark.offset + mark.length
            held = (
                cut_units(held, 0, mark.offset)
                + cut_units(what.text, mark.offset, end)
                + cut_units(held, end)
            )
    return replace(what, text=held) if held != what.text else what


__all__ = ["RENDERERS", "Says", "render"]
