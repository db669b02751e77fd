"""What families get to keep or print: the weekly letter, records, sheets and keys, and a student's own view."""

from __future__ import annotations

from typing import Any

import msgspec

from bot.messages.base import Message, Push
from bot.vocabulary import StudentId


class MissedItem(msgspec.Struct, frozen=True, omit_defaults=True):
    """An item of a test that went wrong. `ask` has its maths in backticks; `answered` is as typed."""

    title: str
    ask: str
    answered: str = ""
    answer: str = ""


class WeekTest(msgspec.Struct, frozen=True, omit_defaults=True):
    """A test that was handed in, with what to look at again."""

    title: str
    date: str
    right: int
    out_of: int
    missed: tuple[MissedItem, ...] = ()


class WeekOf(msgspec.Struct, frozen=True, omit_defaults=True):
    """A student's week, from the rows as they stand. Dates are ISO dates."""

    student: StudentId
    name: str
    monday: str
    signs: str
    """One letter a day, Monday first: see the week chart."""
    days: tuple[tuple[str, int, int, int, int], ...] = ()
    """Review items of the days that were opened: (date, first-try, later-try, unsolved, not reached)."""
    opened: int = 0
    planned: int = 0
    """School days of the week, opened or not."""
    minutes: int = 0
    untimed: int = 0
    """Days on paper, whose time nobody measured."""
    learned: tuple[str, ...] = ()
    """Titles of the lessons that were met."""
    steady: tuple[tuple[str, int], ...] = ()
    """Lessons asked about in the week that look firm: (title, answers so far)."""
    shaky: tuple[tuple[str, int], ...] = ()
    tests: tuple[WeekTest, ...] = ()
    coming: tuple[tuple[str, str, str, str], ...] = ()
    """Next week's days: (date, kind, lesson's title, test's title)."""
    early: str = ""
    late: str = ""
    """The range in which the course may be done; empty where nothing can be said."""


class YearSoFar(msgspec.Struct, frozen=True, omit_defaults=True):
    """The year as a chart: (date, lessons met by then)."""

    start: str
    end: str
    lessons: int
    done: tuple[tuple[str, int], ...] = ()
    early: str = ""
    late: str = ""


class WeekLetter(Push, frozen=True, kw_only=True):
    """A household's week in a short message, the letter behind a button. `side` is whose command opens it."""

    week: WeekOf
    side: str = "f"


class WeekLetterLine(Push, frozen=True, kw_only=True):
    """On a shared phone: one line with a button that opens the week."""

    student: StudentId
    name: str
    monday: str


class LetterPaper(Message, frozen=True, kw_only=True):
    """The weekly letter as a PDF. `size` is a4 or letter; `made` the ISO date it carries."""

    week: WeekOf
    year: YearSoFar | None
    tutor: str
    made: str
    size: str = "a4"
    big: bool = False


class SheetRow(msgspec.Struct, frozen=True, omit_defaults=True):
    """An item on paper. `n` is its number in the chat; texts have their maths in backticks."""

    n: int
    ask: str
    source: str = ""
    """Title of the lesson it comes from; empty: of the day's own."""
    figure: dict[str, Any] | None = None
    choices: tuple[str, ...] = ()
    lines: int = 2
    calculator: bool = False
    answer: str = ""
    unit: str = ""
    steps: tuple[tuple[str, str], ...] = ()


class SheetPaper(Message, frozen=True, kw_only=True):
    """A day's review to print, without answers. `side` is whose command opens the key; empty: a student's sheet.

    `fixed`: the items were chosen just now, and stand fast for that day.
    """

    student: StudentId
    name: str
    date: str
    rows: tuple[SheetRow, ...]
    size: str = "a4"
    big: bool = False
    fixed: bool = False
    side: str = ""
    dictated: bool = False
    """Answers are said aloud, and a grown-up writes them down."""


class KeyPaper(Message, frozen=True, kw_only=True):
    """The answers to a sheet with their steps; never to a student."""

    student: StudentId
    name: str
    date: str
    rows: tuple[SheetRow, ...]
    size: str = "a4"
    big: bool = False


class PagesShown(Message, frozen=True, kw_only=True):
    """Photos of pages that a student sent on a day: the service's names of them, and the words with each."""

    name: str
    date: str
    pages: tuple[tuple[str, str], ...]


class WaitingPage(msgspec.Struct, frozen=True, omit_defaults=True):
    """A page that waits: photos that came on its day, and items that nobody marked yet."""

    student: StudentId
    name: str
    date: str
    photos: int = 0
    items: int = 0


class PagesWaiting(Message, frozen=True, kw_only=True):
    """To grown-ups: pages that wait to be looked at or marked, the oldest first."""

    rows: tuple[WaitingPage, ...]
    side: str = "f"


class RecordDay(msgspec.Struct, frozen=True, omit_defaults=True):
    """A school day of a record. `minutes` is 0 where nobody took the time."""

    date: str
    kind: str
    lessons: tuple[str, ...] = ()
    minutes: int = 0
    on_paper: bool = False
    items: int = 0
    solved: int = 0


class RecordLesson(msgspec.Struct, frozen=True, omit_defaults=True):
    """A lesson of a record, on the day on which it was first met."""

    date: str
    n: int
    unit: str
    title: str
    standards: tuple[str, ...] = ()


class RecordTest(msgspec.Struct, frozen=True, omit_defaults=True):
    """A test of a record."""

    date: str
    title: str
    right: int
    out_of: int


class RecordSample(msgspec.Struct, frozen=True, omit_defaults=True):
    """A photo of work: when it came, titles of that day's lessons, and what was written with it."""

    date: str
    lesson: str = ""
    caption: str = ""
    path: str = ""
    """Where its bytes are below the folder of photos; empty where they aren't here."""


class UnitStanding(msgspec.Struct, frozen=True, omit_defaults=True):
    """How the lessons of a unit stand: steady, shaky or not met, in the order of the course."""

    title: str
    states: tuple[str, ...]


class RecordOf(msgspec.Struct, frozen=True, omit_defaults=True):
    """What is kept of a stretch of days, both ends in. Dates are ISO dates."""

    student: StudentId
    name: str
    household: str
    tutor: str
    first: str
    last: str
    course: str
    days: tuple[RecordDay, ...] = ()
    lessons: tuple[RecordLesson, ...] = ()
    tests: tuple[RecordTest, ...] = ()
    hands_on: tuple[tuple[str, str], ...] = ()
    standards: tuple[tuple[str, str, tuple[str, ...]], ...] = ()
    """(Code, what it asks, titles of the lessons that meet it)."""
    work: tuple[RecordSample, ...] = ()
    units: tuple[UnitStanding, ...] = ()
    met_by: tuple[tuple[str, int], ...] = ()
    """Lessons met by each date, for the year chart."""

    @property
    def minutes(self) -> int:
        """Time at work of all days."""
        return sum(day.minutes for day in self.days)

    @property
    def on_paper(self) -> int:
        """Days on paper, whose time nobody took."""
        return sum(1 for day in self.days if day.on_paper)


class RecordsShown(Message, frozen=True, kw_only=True):
    """What a record of some days would hold, with buttons for the papers and the files."""

    student: StudentId
    name: str
    first: str
    last: str
    opened: int
    minutes: int
    on_paper: int
    lessons: int
    tests: int
    hands_on: int
    standards: int
    samples: int
    side: str = "f"


class SamplesShown(Message, frozen=True, kw_only=True):
    """Photos of work of some days: the service's names of them, and (date, lesson, words) of each.

    `further` are the days that come after these, where one message doesn't hold all.
    """

    student: StudentId
    name: str
    first: str
    last: str
    photos: tuple[str, ...]
    rows: tuple[tuple[str, str, str], ...]
    further: tuple[str, str] | None = None
    left: int = 0
    """Photos in those further days."""
    side: str = "f"


class RecordPaper(Message, frozen=True, kw_only=True):
    """A record as a PDF: for the drawer, or (`handover`) for the next tutor or school."""

    record: RecordOf
    made: str
    handover: bool = False
    size: str = "a4"
    big: bool = False


class RecordTables(Message, frozen=True, kw_only=True):
    """A record as files for a spreadsheet: (name, content)."""

    name: str
    first: str
    last: str
    files: tuple[tuple[str, bytes], ...]


class MyView(Message, frozen=True, kw_only=True):
    """A student's own small view: the week in signs, the lessons met in it, and buttons for more."""

    name: str
    week: str
    lessons: tuple[str, ...] = ()


class MyWeek(Message, frozen=True, kw_only=True):
    """A student's own week as a picture. Days are (date, first-try, later-try, unsolved, not reached)."""

    name: str
    monday: str
    signs: str
    days: tuple[tuple[str, int, int, int, int], ...] = ()


class MyBest(Message, frozen=True, kw_only=True):
    """A student's own best, never anybody else's. `per_minute` only where timing is on."""

    name: str
    facts: tuple[int, int] | None = None
    per_minute: float | None = None
    day: tuple[str, int, int] | None = None
    """The day with most first tries: (date, first tries, items)."""
    turned: tuple[str, ...] = ()
    """Lessons that began with misses and now go well."""


class MapPicture(Message, frozen=True, kw_only=True):
    """How the lessons stand, unit by unit, as a picture. `own`: for the student."""

    name: str
    units: tuple[UnitStanding, ...]
    own: bool = False


class MarksShown(Message, frozen=True, kw_only=True):
    """The marks of a page. Rows are (number, outcome, what was written, answered in the chat).

    `misses` are those that were marked by hand: each has a button for what is written there.
    """

    student: StudentId
    name: str
    date: str
    rows: tuple[tuple[int, str, str, bool], ...]
    misses: tuple[int, ...] = ()
    entered: bool = False
    side: str = "f"
    others: int = 0
    """Other pages that wait to be marked."""


class AskWritten(Message, frozen=True, kw_only=True):
    """What is written at a miss? Typed, or a button for a place that was left empty."""

    student: StudentId
    name: str
    date: str
    n: int
    ask: str
    side: str = "f"


class GraderTold(Message, frozen=True, kw_only=True):
    """To a student: somebody marks pages for the household from now on."""

    name: str
    grader: str


class AdjustmentsShown(Message, frozen=True, kw_only=True):
    """What is adjusted for one student, with a button each: time, big, fewer, dictated, calculator; and timing."""

    student: StudentId
    name: str
    on: tuple[str, ...] = ()
    off: tuple[str, ...] = ()
    timing: bool = False
    side: str = "f"
