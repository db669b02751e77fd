"""What all messages have in common.

A row of the outbox is one of these, so a field that is added has a default, and a class that is renamed
keeps its old name in `FORMER_NAMES` for one release.
"""

from __future__ import annotations

from enum import Enum
from typing import ClassVar

import msgspec

from bot.vocabulary import ChatId, ItemId


class IfUnsure(Enum):
    """What to do with a message that may or may not have arrived."""

    SEND_AGAIN = 1
    """Twice harms nobody: an answer to a reply."""
    HOLD = 2
    """Never a second time by itself: a day's push, a digest, a reminder."""


class Message(msgspec.Struct, frozen=True, kw_only=True, tag_field="kind", tag=True, omit_defaults=True):
    """What all messages have.

    `key` is unique in the outbox. Empty: the message answers what just happened, and the caller of the use
    case keys it `reply/<update>/<n>`. A push carries its own: "day/7/2026-09-14".
    """

    if_unsure: ClassVar[IfUnsure] = IfUnsure.SEND_AGAIN
    push: ClassVar[bool] = False
    """Sent by ourselves, not as an answer: answers go out first."""

    to: ChatId
    key: str = ""

    @property
    def about(self) -> str:
        """What the message shows ("item/12", "sheet/4"); with the message's id it tells what a reply means."""
        return ""


class Push(Message, frozen=True, kw_only=True):
    """What all messages have that we send unasked; never twice by itself."""

    if_unsure: ClassVar[IfUnsure] = IfUnsure.HOLD
    push: ClassVar[bool] = True


class AboutItem(Message, frozen=True, kw_only=True):
    """What all messages have that show or discuss one item."""

    item: ItemId

    @property
    def about(self) -> str:
        """The item."""
        return f"item/{self.item}"
