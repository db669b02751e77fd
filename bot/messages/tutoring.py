"""What a grown-up hears on a command: lists, one student's day, changes before and after they take effect.

`side` is "t" where a tutor is spoken to and "f" where a parent is; the buttons carry it on.
"""

from __future__ import annotations

import msgspec

from bot.messages.base import Message
from bot.vocabulary import ItemId, StudentId


class Line(msgspec.Struct, frozen=True, omit_defaults=True):
    """One line of what a change does: the name of its wording and what belongs into it.

    `date_…` holds an ISO date, `time_…` minutes after midnight, `key_…` the name of another wording, a list
    is joined with *and*; all else stands as it is.
    """

    key: str
    holes: dict[str, str | int | list[str]] = {}


class Preview(Message, frozen=True, kw_only=True):
    """A change as it would be. Nothing has happened yet."""

    change: int
    lines: tuple[Line, ...]
    notes: tuple[Line, ...] = ()
    side: str = "t"
    ways: tuple[tuple[str, str], ...] = ()
    """Ways to do it, where there is more than one: (word for the button's data, wording of its label)."""


class Changed(Message, frozen=True, kw_only=True):
    """A change took effect. `undo`: it can be taken back. `link`: to be handed on to somebody."""

    change: int
    lines: tuple[Line, ...]
    side: str = "t"
    undo: bool = True
    link: str = ""
    name: str = ""
    already: bool = False


class LeftAsIs(Message, frozen=True, kw_only=True):
    """A change was looked at and left."""


class TakenBack(Message, frozen=True, kw_only=True):
    """A change was undone. `kept`: what could not be taken back any more."""

    lines: tuple[Line, ...]
    kept: tuple[Line, ...] = ()


class CannotUndo(Message, frozen=True, kw_only=True):
    """Nothing was taken back. `why`: none, late, gone, kept, old (a preview from yesterday)."""

    why: str


class ChangesShown(Message, frozen=True, kw_only=True):
    """The last changes that can be taken back: (change, when, its first line and what that leads to)."""

    rows: tuple[tuple[int, str, tuple[Line, ...]], ...]
    side: str = "t"


class Choose(Message, frozen=True, kw_only=True):
    """A question with buttons that change nothing yet: each goes on with the command."""

    question: Line
    options: tuple[str, ...]
    ref: str
    side: str = "t"


class WrongCommand(Message, frozen=True, kw_only=True):
    """A command that can't be followed, why, and examples that would have worked."""

    command: str
    why: Line
    examples: tuple[str, ...] = ()


class CommandsShown(Message, frozen=True, kw_only=True):
    """What one can do here: commands by group."""

    groups: tuple[tuple[str, tuple[str, ...]], ...]
    side: str = "t"
    roles: tuple[str, ...] = ()
    """The chat is offered the commands of these roles from now on."""


class CommandShown(Message, frozen=True, kw_only=True):
    """One command with its examples."""

    command: str
    examples: tuple[str, ...]


class NeedRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """A student, and why they come before others."""

    student: StudentId
    name: str
    household: str
    reasons: tuple[Line, ...]


class NeedsShown(Message, frozen=True, kw_only=True):
    """Who needs the tutor now, first things first; `quiet` students need nothing."""

    rows: tuple[NeedRow, ...]
    quiet: int = 0
    doubts: int = 0
    pages: int = 0
    """Pages on paper that wait."""


class DayRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """How a student's day stands, in a line.

    `stage`: none, off, paused, no-consent, no-chat, not-begun, pushed, working, done, enough, missed.
    `done` of `out_of` review items.
    """

    student: StudentId
    name: str
    household: str
    stage: str
    lesson: str = ""
    done: int = 0
    out_of: int = 0
    first_try: int = 0
    open: int = 0


class DaysShown(Message, frozen=True, kw_only=True):
    """Today, a line for each student."""

    rows: tuple[DayRow, ...]
    side: str = "t"
    pages: int = 0
    """Pages on paper that wait."""


class ItemLine(msgspec.Struct, frozen=True, omit_defaults=True):
    """One item of a day or a plan. `n` is what the student sees, with a letter before it outside the review.

    `stands`: waiting, shown, an outcome, or a reason (plan).
    """

    n: str
    part: str
    title: str
    ask: str
    stands: str = ""
    typed: str = ""
    with_tutor: bool = False


class DayShown(Message, frozen=True, kw_only=True):
    """One student's day with its items, numbered."""

    row: DayRow
    date: str
    minutes: int = 0
    items: tuple[ItemLine, ...] = ()
    more: int = 0
    week: str = ""


class PlanShown(Message, frozen=True, kw_only=True):
    """What one student's day is going to hold, its items numbered; and which wishes it follows."""

    student: StudentId
    name: str
    date: str
    day_kind: str
    lesson: str = ""
    sitting: int = 1
    minutes: int = 0
    family_minutes: int = 0
    items: tuple[ItemLine, ...] = ()
    notes: tuple[Line, ...] = ()


class MapShown(Message, frozen=True, kw_only=True):
    """How a student's skills stand, by unit: (unit, steady, shaky, not met yet), titles of lessons."""

    student: StudentId
    name: str
    units: tuple[tuple[str, tuple[str, ...], tuple[str, ...], tuple[str, ...]], ...]
    lesson: str = ""


class RecordShown(Message, frozen=True, kw_only=True):
    """One item with all that was typed: (attempt, typed, read as, verdict, misstep's sentence, hints, by tutor)."""

    item: ItemId
    student: StudentId
    name: str
    n: str
    date: str
    title: str
    ask: str
    answer: str
    outcome: str = ""
    why: str = ""
    attempts: tuple[tuple[int, str, str, str, str, int, bool], ...] = ()


class PaceShown(Message, frozen=True, kw_only=True):
    """How far a student is and when the course is likely done."""

    student: StudentId
    name: str
    lesson: str
    n: int
    out_of: int
    week: str
    taken: int
    planned: int
    early: str = ""
    late: str = ""
    left: int = 0
    written: int = 0


class PersonRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """Somebody of a household. `phone`: own, shared, none."""

    name: str
    role: str
    phone: str


class PeopleShown(Message, frozen=True, kw_only=True):
    """A tutor's households: (name, zone, digest minutes, agreed, people)."""

    households: tuple[tuple[str, str, int, bool, tuple[PersonRow, ...]], ...]


class DoubtRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """One thing to decide. `kind`: asked, unreadable, working, reported, many-missed (then of no one student)."""

    kind: str
    ref: str
    student: str
    title: str
    ask: str
    answer: str = ""
    typed: tuple[str, ...] = ()
    attempt: int = 0
    since: str = ""
    count: int = 0
    excuse: str = ""
    """What excuses the item: whose, its number, its day."""


class DoubtShown(Message, frozen=True, kw_only=True):
    """The oldest doubt, with buttons; `left` others wait."""

    row: DoubtRow
    left: int


class NoDoubts(Message, frozen=True, kw_only=True):
    """The queue is empty."""


class AgendaPoint(msgspec.Struct, frozen=True, omit_defaults=True):
    """A skill for the live lesson: one wrong answer as typed, and a fresh item to do together."""

    title: str
    ask: str = ""
    typed: str = ""
    say: str = ""
    fresh: str = ""
    answer: str = ""


class AgendaShown(Message, frozen=True, kw_only=True):
    """What to do in a live lesson: what went well, and up to three skills."""

    student: StudentId
    name: str
    well: tuple[str, ...] = ()
    points: tuple[AgendaPoint, ...] = ()


class FromTutor(Message, frozen=True, kw_only=True):
    """A tutor's words, passed on as typed."""

    tutor: str
    text: str
    name: str = ""
    """The student they are for, on a shared phone."""


class HoldsShown(Message, frozen=True, kw_only=True):
    """What holds for a student for a while: (wish, line)."""

    student: StudentId
    name: str
    rows: tuple[tuple[int, Line], ...]


class FamilyChanged(Message, frozen=True, kw_only=True):
    """To the tutor: a parent changed something, or took it back (`back`)."""

    name: str
    household: str
    lines: tuple[Line, ...]
    back: bool = False
