"""What a parent reads of a day."""

from __future__ import annotations

import msgspec

from bot.messages.base import Message, Push
from bot.vocabulary import AttemptId, DayId, ItemId, Outcome, StudentId


class OpenItem(msgspec.Struct, frozen=True, omit_defaults=True):
    """An unsolved item as the digest tells it."""

    item: ItemId
    title: str
    ask: str
    answered: str = ""
    """What was typed last; empty where nothing was."""
    misstep: str = ""
    """The likely misstep in plain words, or `=` and its name where only the checker knows it."""
    answer: str = ""
    put_right: bool = False
    """A fresh one of its kind went right on the same day."""


class Talk(msgspec.Struct, frozen=True, omit_defaults=True):
    """One thing for ten minutes: a question to ask, something to draw, an item to do together."""

    skill: str
    title: str
    item: ItemId
    ask: str
    say: str = ""
    """The misstep as a question; empty: no misstep was recognised."""
    draw: str = ""
    """What to draw, as a wording key of the figure or form."""


class Digest(Push, frozen=True, kw_only=True):
    """How a day went, for one parent, of one student."""

    day: DayId
    student: StudentId
    name: str
    date: str
    """ISO date of the day."""
    variant: str
    """worked, all-right, only-begun, nothing-started, only-paper, paper-waiting, test, test-begun, placing, placed,
    day-off, our-fault."""
    lesson: str = ""
    first_try: int = 0
    later_try: int = 0
    tries: int = 0
    """Tries that the later-try ones took, all together."""
    unsolved: int = 0
    excused: int = 0
    untouched: int = 0
    out_of: int = 0
    well: str = ""
    """Title of something that went well."""
    open_items: tuple[OpenItem, ...] = ()
    more_open: int = 0
    talk: tuple[Talk, ...] = ()
    facts: tuple[int, int] | None = None
    """Number facts right, of how many."""
    per_minute: float | None = None
    best: float | None = None
    """The student's own best rate before today."""
    late_answers: int = 0
    """Items of the day before that were answered after its digest."""
    late_right: int = 0
    week: str = ""
    """One sign a day, Monday first: see the week chart."""
    tomorrow: str = ""
    """Title of the next lesson; empty: review."""
    tomorrow_date: str = ""
    note: str = ""
    """A word of the tutor's, as typed."""
    accepted: tuple[str, ...] = ()
    """Lessons of items whose answer the tutor accepted."""
    enough: bool = False
    small: bool = False
    paper: bool = False
    minutes: int = 0
    on_demand: bool = False
    second_look: bool = False
    """A second look at the day's test can be set."""
    side: str = "f"
    """Who reads it: "f" a parent, "t" the tutor."""
    study: tuple[str, tuple[str, ...]] | None = None
    """Before a test: its title, and titles of lessons worth another look."""
    half_year: tuple[str, str] = ("", "")
    """On the evening of half-year: the range in which the course may be done, as ISO dates."""
    long_break: bool = False
    """No school for two weeks or more: the off-season is offered."""
    questions: int = 0
    """Answered in a look at where to start."""
    start: str = ""
    """Title of the lesson that it points to; empty: nothing of the course seems new."""
    sure: int = 0
    """How sure that is, in percent."""


class DigestLine(Push, frozen=True, kw_only=True):
    """On a shared phone: one line with a button that opens the digest."""

    day: DayId
    student: StudentId
    name: str


class WeekPicture(Message, frozen=True, kw_only=True):
    """A week as a picture. Days are (date, first-try, later-try, unsolved, not reached)."""

    student: StudentId
    name: str
    monday: str
    signs: str
    days: tuple[tuple[str, int, int, int, int], ...] = ()


class OpenInFull(Message, frozen=True, kw_only=True):
    """All unsolved items of a day in full: (title, question, answers typed, misstep, answer)."""

    day: DayId
    name: str
    items: tuple[OpenItem, ...]


class TalkNoted(Message, frozen=True, kw_only=True):
    """After *We did it*, *Still hard* or *Not tonight*."""

    how: str
    name: str
    tutor: str = ""


class StillHard(Push, frozen=True, kw_only=True):
    """To the tutor: a family found one thing hard for the second time."""

    student: str
    household: str
    title: str


class WrittenEnds(Push, frozen=True, kw_only=True):
    """To the tutor, a week before: a student comes to the end of the lessons that are written."""

    student: str
    household: str
    lessons: int


class Unreachable(Push, frozen=True, kw_only=True):
    """To the tutor: somebody blocked the bot, so nothing reaches them until they write again."""

    name: str
    household: str


class Accepted(Message, frozen=True, kw_only=True):
    """To the student: the tutor counted an answer."""

    ask: str
    typed: str
    tutor: str


class AttemptLine(msgspec.Struct, frozen=True, omit_defaults=True):
    """One attempt as the tutor sees it."""

    attempt: AttemptId
    typed: str
    verdict: str
    outcome: Outcome | None = None
