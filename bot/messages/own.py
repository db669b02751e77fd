"""What a tutor hears of items and lessons of their own."""

from __future__ import annotations

import msgspec

from bot.messages.base import Message
from bot.vocabulary import StudentId


class OwnRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """A piece of one's own, in a line. `what`: item or lesson; `version` of `versions` stands."""

    own: int
    what: str
    title: str
    version: int = 1
    versions: int = 1


class OwnListed(Message, frozen=True, kw_only=True):
    """All that is kept of a tutor's own."""

    rows: tuple[OwnRow, ...] = ()


class OwnShown(Message, frozen=True, kw_only=True):
    """One piece as it was typed or sent, its versions (number, ISO date), and to whom it may be given."""

    own: int
    what: str
    title: str
    text: str
    more: bool = False
    """There is more text than is shown."""
    version: int = 1
    versions: tuple[tuple[int, str], ...] = ()
    students: tuple[tuple[StudentId, str], ...] = ()


class FaultRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """One thing to mend: the line's number (0: none in particular), what, how, and the line as written."""

    line: int
    what: str
    fix: str = ""
    shown: str = ""


class OwnFaults(Message, frozen=True, kw_only=True):
    """What was typed or sent does not hold; nothing changed. `more` faults are not shown."""

    title: str
    rows: tuple[FaultRow, ...]
    more: int = 0


class FileComes(Message, frozen=True, kw_only=True):
    """A lesson's file is being read. `full`: too many wait already; nothing was taken."""

    name: str
    full: bool = False


class ExportedPhotos(Message, frozen=True, kw_only=True):
    """Photos of a household, as a file: (path below the folder of files, name). `part` of `parts`."""

    household: str
    filename: str
    photos: tuple[tuple[str, str], ...]
    part: int = 1
    parts: int = 1


class HandoverAsked(Message, frozen=True, kw_only=True):
    """To a tutor who opened the link: whether they take a household over from another tutor."""

    offer: int
    household: str
    students: tuple[str, ...]
    tutor: str


class HandoverTold(Message, frozen=True, kw_only=True):
    """What became of it. `why`: taken (to the new tutor), given (to the one before), parent, left, own, gone."""

    why: str
    household: str = ""
    tutor: str = ""
