"""What can happen in a chat, as data: the one thing a use case is told."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.vocabulary import ChatId


@dataclass(frozen=True, slots=True)
class Typed:
    """Somebody sent text. `at` is the service's date of it, whole seconds, UTC."""

    update: int
    chat: ChatId
    text: str
    at: datetime
    message: int = 0
    replying_to: int | None = None


@dataclass(frozen=True, slots=True)
class Command:
    """Somebody sent `/name rest`. `/start` with a link's payload comes this way too."""

    update: int
    chat: ChatId
    name: str
    rest: str
    at: datetime
    message: int = 0


@dataclass(frozen=True, slots=True)
class Pressed:
    """Somebody pressed a button. Its data is `verb:ref`, 64 bytes at most; `ref` may hold further colons."""

    update: int
    chat: ChatId
    verb: str
    ref: str
    at: datetime
    message: int = 0


@dataclass(frozen=True, slots=True)
class Edited:
    """Somebody changed a text that had been sent; the first text counts."""

    update: int
    chat: ChatId
    text: str
    at: datetime
    message: int = 0


@dataclass(frozen=True, slots=True)
class SentFile:
    """Somebody sent something that isn't text.

    `what` is photo, document, voice, sticker or other. `album` is the same for all photos of one album.
    """

    update: int
    chat: ChatId
    what: str
    at: datetime
    message: int = 0
    replying_to: int | None = None
    file_id: str = ""
    size: int = 0
    name: str = ""
    album: str = ""
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Left:
    """Somebody blocked the bot, or took the block away (`back`)."""

    update: int
    chat: ChatId
    at: datetime
    back: bool = False


@dataclass(frozen=True, slots=True)
class InGroup:
    """Something happened in a group, where the bot has no business."""

    update: int
    chat: ChatId
    at: datetime


Happened = Typed | Command | Pressed | Edited | SentFile | Left | InGroup
