"""Who and what the stand-in knows: people, groups, chats, messages, files. Simple data."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody with a phone; their private chat with the bot has the same id.

    `started` says that they have pressed Start already: until then the bot can't write to them.
    """

    id: int
    first_name: str
    last_name: str = ""
    username: str = ""
    language: str = "en"
    started: bool = False
    about: str = ""
    """A word for the phone page: "student, 12"."""

    def as_user(self) -> Json:
        """Return the person as the service's User."""
        user: Json = {"id": self.id, "is_bot": False, "first_name": self.first_name}
        if self.last_name:
            user["last_name"] = self.last_name
        if self.username:
            user["username"] = self.username
        user["language_code"] = self.language
        return user

    @property
    def name(self) -> str:
        """Return first and last name."""
        return f"{self.first_name} {self.last_name}".strip()


@dataclass(frozen=True, slots=True)
class Group:
    """Several people in one chat; ids are negative. The bot is a member only after somebody adds it."""

    id: int
    title: str
    members: tuple[int, ...]
    bot_in: bool = False


@dataclass(slots=True)
class Kept:
    """One message as the service gives it, with what only the phone page needs."""

    body: Json
    from_bot: bool
    alt: str = ""
    """What a picture shows, in words; the service has no field for it."""
    revision: int = 0


@dataclass(slots=True)
class Chat:
    """One chat with all that was said in it. Message ids grow by one and are unique in this chat only."""

    id: int
    title: str
    people: tuple[Person, ...]
    head: Json
    """The chat as the service puts it into each message."""
    is_group: bool = False
    started: bool = False
    blocked: bool = False
    deactivated: bool = False
    bot_in: bool = True
    moved_to: int = 0
    """The id of the supergroup that this group became, or 0."""
    last_id: int = 0
    read_up_to: int = 0
    cleared_up_to: int = 0
    unread: int = 0
    keyboard: Json | None = None
    """Keys that the bot put in place of the person's keyboard, or None."""
    messages: dict[int, Kept] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class StoredFile:
    """A file that came in from either side; `path` is where it is downloaded from."""

    id: str
    unique_id: str
    path: str
    name: str
    mime: str
    kind: str
    """photo, document, sticker or voice."""
    data: bytes
    width: int = 0
    height: int = 0


@dataclass(frozen=True, slots=True)
class Upload:
    """A file in a request."""

    name: str
    mime: str
    data: bytes


@dataclass(slots=True)
class Press:
    """A button press that waits for its answer."""

    chat: int
    message: int
    at: float
    answered: bool = False
