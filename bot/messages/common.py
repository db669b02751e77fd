"""What anybody may hear."""

from __future__ import annotations

from bot.messages.base import Message


class NotLinked(Message, frozen=True, kw_only=True):
    """To a chat that nobody linked: one polite line."""


class LeaveGroup(Message, frozen=True, kw_only=True):
    """The bot says one line in a group and leaves."""


class Help(Message, frozen=True, kw_only=True):
    """What one can do here. `role`: student, shared (a parent's phone), parent, tutor."""

    role: str
    topic: str = ""


class NotForYou(Message, frozen=True, kw_only=True):
    """A button or command that isn't for who is speaking. `why`: gone, other, grown-up, student."""

    why: str = "gone"


class NoSuchCommand(Message, frozen=True, kw_only=True):
    """A command that isn't there; `near` are those that look like it."""

    near: tuple[str, ...] = ()


class Trouble(Message, frozen=True, kw_only=True):
    """Something went wrong on our side; nothing was lost."""
