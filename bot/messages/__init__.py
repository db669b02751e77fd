"""Everything we ever say, as data: one frozen class a message, no wording."""

from __future__ import annotations

from typing import Any

import msgspec

from bot.messages import (
    assessment,
    common,
    day,
    evening,
    family,
    glossary,
    own,
    papers,
    reply,
    tutoring,
    year,
)
from bot.messages.assessment import *  # noqa: F403
from bot.messages.base import AboutItem, IfUnsure, Message, Push
from bot.messages.common import *  # noqa: F403
from bot.messages.day import *  # noqa: F403
from bot.messages.evening import *  # noqa: F403
from bot.messages.family import *  # noqa: F403
from bot.messages.glossary import *  # noqa: F403
from bot.messages.own import *  # noqa: F403
from bot.messages.papers import *  # noqa: F403
from bot.messages.reply import *  # noqa: F403
from bot.messages.tutoring import *  # noqa: F403
from bot.messages.year import *  # noqa: F403

FORMER_NAMES: dict[str, str] = {}
"""Names that classes had in the last release, and the names they have now."""

_MODULES = (common, day, reply, evening, assessment, family, glossary, own, tutoring, year, papers)

ALL: dict[str, type[Message]] = {
    name: kind
    for module in _MODULES
    for name, kind in vars(module).items()
    if isinstance(kind, type) and issubclass(kind, Message) and kind not in (Message, Push, AboutItem)
}
"""Every message there is, by name."""

_union: Any = None
for _kind in ALL.values():
    _union = _kind if _union is None else _union | _kind
_decoder: msgspec.json.Decoder[Message] = msgspec.json.Decoder(_union)
_encoder = msgspec.json.Encoder()


def encode(message: Message) -> str:
    """Give a message as the JSON of an outbox row, its class name under "kind"."""
    return _encoder.encode(message).decode()


def decode(kind: str, data: str) -> Message:
    """Read a row of the outbox. Raises msgspec.ValidationError for a row that no release wrote."""
    if kind in FORMER_NAMES:
        data = data.replace(f'"kind":"{kind}"', f'"kind":"{FORMER_NAMES[kind]}"', 1)
    return _decoder.decode(data)


__all__ = ["ALL", "AboutItem", "IfUnsure", "Message", "Push", "decode", "encode", *sorted(ALL)]
