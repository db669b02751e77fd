"""What is said around a test."""

from __future__ import annotations

from bot.messages.base import AboutItem, Message, Push
from bot.vocabulary import DayId, ItemId, Verdict


class TestWaits(Message, frozen=True, kw_only=True):
    """To a grown-up: what the test holds, how long it takes, that there is no clock; opens it."""

    __test__ = False

    day: DayId
    name: str
    title: str
    items: int
    minutes: int
    opened: bool = False
    second: bool = False
    """It is the second look."""


class TestReopened(Message, frozen=True, kw_only=True):
    """To the student: a test that was handed in is open again; all answers stand as they were."""

    __test__ = False

    day: DayId
    name: str
    date: str = ""
    """ISO date of the test's day, where that is over; its count stands until there is a new one."""


class TestCountedAgain(Push, frozen=True, kw_only=True):
    """To grown-ups: a test was handed in after its evening; its count now, and what it was. One line."""

    __test__ = False

    day: DayId
    name: str
    date: str
    right: int
    out_of: int
    was: int | None = None
    """Right by the count before; None where it was never handed in until now."""
    shared: bool = False
    """Children use that phone too: the count stays behind the button."""
    button: bool = True
    """The digest of the day is to be opened with a button."""


class TestNoted(AboutItem, frozen=True, kw_only=True):
    """After an answer in a test: nothing but *Noted* and the number left."""

    __test__ = False

    day: DayId
    left: int


class TestList(Message, frozen=True, kw_only=True):
    """All answers so far, to be looked through before *Hand in*. Rows are (number, item, answer as typed)."""

    __test__ = False

    day: DayId
    rows: tuple[tuple[int, ItemId, str], ...]
    blank: int


class TypeAgain(Message, frozen=True, kw_only=True):
    """After *Hand in*: answers whose form, unit or spelling wants typing again, once. Rows: (number, item, why)."""

    day: DayId
    rows: tuple[tuple[int, ItemId, Verdict], ...]


class TestDone(Message, frozen=True, kw_only=True):
    """The count, what stands firm, what to rework; the same to child and parent."""

    __test__ = False

    day: DayId
    name: str
    title: str
    right: int
    out_of: int
    firm: tuple[str, ...] = ()
    rework: tuple[str, ...] = ()
    second_look: bool = False
    to_parent: bool = False
