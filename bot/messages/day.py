"""What a student hears in the course of a school day."""

from __future__ import annotations

import msgspec

from bot.messages.base import AboutItem, Message, Push
from bot.vocabulary import DayId, ItemId, LessonId, Part, StudentId, Verdict

Figure = dict[str, str | list[list[str]]]


class Lead(msgspec.Struct, frozen=True, omit_defaults=True):
    """A word on what was just answered; it opens the message that shows what comes next.

    `kind` names the wording: right, right-later, later, sent, solution, put-off, noted, known. `read_as` is what
    was read, where that was not plain; `answer` is shown only where the student solved it or saw the solution.
    """

    kind: str
    read_as: str = ""
    answer: str = ""
    place: int = 0


class DayReady(Push, frozen=True, kw_only=True):
    """The morning push: what today holds, about how long, a Start button."""

    day: DayId
    name: str
    day_kind: str
    lesson: str = ""
    """Title of today's lesson; empty where there is none."""
    sitting: int = 1
    sittings: int = 1
    warm_up: tuple[str, ...] = ()
    review: int = 0
    minutes: int = 0
    back_after: int = 0
    """School days away, where that is why there is no lesson."""
    late: bool = False
    """The hour was missed by our fault."""
    unfinished: int = 0
    """Items of the last day that can still be finished."""
    strand: str = ""
    """In the week of review before the final: what today is about; empty on any other day."""
    strand_n: int = 0
    strands: int = 0
    small_offered: bool = False


class PhoneForStudent(Push, frozen=True, kw_only=True):
    """On a shared phone: a student's day is ready, hand over."""

    student: StudentId
    name: str


class WhoReads(Message, frozen=True, kw_only=True):
    """A student's first message: what this is, and who reads what."""

    name: str
    tutor: str
    parents: tuple[str, ...] = ()
    own: bool = False
    """The chat is the student's own, so it is offered a student's commands."""


class FactsSheet(Message, frozen=True, kw_only=True):
    """A sheet of number facts, answered in one message."""

    sheet: int
    facts: tuple[str, ...]
    timed: bool = False
    first: bool = False
    lead: Lead | None = None

    @property
    def about(self) -> str:
        """The sheet."""
        return f"sheet/{self.sheet}"


class FactsUnclear(Message, frozen=True, kw_only=True):
    """The number of answers doesn't fit the sheet, so nothing was graded."""

    sheet: int
    got: int
    wanted: int

    @property
    def about(self) -> str:
        """The sheet."""
        return f"sheet/{self.sheet}"


class FactsDone(Message, frozen=True, kw_only=True):
    """How a sheet went: what was right, the others with their answers; pace only where timing is on."""

    right: int
    out_of: int
    missed: tuple[tuple[str, str], ...] = ()
    per_minute: float | None = None
    usual: float | None = None
    """The middle of the last five, where there are five."""


class CopyTen(Message, frozen=True, kw_only=True):
    """Ten numbers to copy, once, so that typing time can be taken off."""

    day: DayId
    numbers: tuple[str, ...]

    @property
    def about(self) -> str:
        """The day whose sheet waits for it."""
        return f"copy/{self.day}"


class CopyAgain(Message, frozen=True, kw_only=True):
    """What was copied isn't the ten numbers."""


class Copied(Message, frozen=True, kw_only=True):
    """Typing time is known now."""


class CardShown(Message, frozen=True, kw_only=True):
    """A lesson's card, picture first with the card as its caption.

    `day` is set where guided practice waits behind the card; else it was looked up.
    """

    lesson: LessonId
    title: str
    text: str
    figure: Figure | None = None
    alt: str = ""
    video: str = ""
    day: DayId = DayId(0)
    sitting: int = 1
    sittings: int = 1
    item: ItemId = ItemId(0)
    """The item to go back to, where the card was looked up from one."""
    lead: Lead | None = None


class WorkedShown(Message, frozen=True, kw_only=True):
    """A lesson's worked example. Steps are (maths, words). `day` as with the card."""

    title: str
    ask: str
    steps: tuple[tuple[str, str], ...]
    figure: Figure | None = None
    alt: str = ""
    day: DayId = DayId(0)
    may_pass: bool = False
    """A lesson already known may be passed over by five right answers."""


class ItemShown(AboutItem, frozen=True, kw_only=True):
    """One item, ready to be answered; opens with a word on the one before."""

    part: Part
    place: int
    out_of: int
    ask: str
    form: str
    unit: str = ""
    choices: tuple[str, ...] = ()
    figure: Figure | None = None
    alt: str = ""
    source: str = ""
    """Title of the source lesson, where it is another than today's."""
    lesson: LessonId = LessonId("")
    calculator: bool = False
    lead: Lead | None = None
    walked: bool = False
    """Guided practice whose steps are walked together."""
    steps: tuple[tuple[str, str], ...] = ()
    """Steps shown so far, as (maths, words)."""
    more_steps: bool = False
    again: bool = False
    """Was shown before."""
    comeback: bool = False
    attack: int = 0
    """Attack hints of a puzzle that are left."""
    may_leave: bool = False
    """May be left without a word: a puzzle."""


class SetDone(Message, frozen=True, kw_only=True):
    """Four more are done: go on, or, from the middle of review on, enough for today."""

    day: DayId
    done: int
    out_of: int
    may_stop: bool = False
    lead: Lead | None = None


class DayDone(Message, frozen=True, kw_only=True):
    """All is done, or the student had enough: the count, what stands open, what comes tomorrow."""

    day: DayId
    first_try: int
    later_try: int
    open: int
    out_of: int
    enough: bool = False
    comes_back: int = 0
    still_open: int = 0
    """Items that can be taken up again until tomorrow's push."""
    puzzle_open: bool = False
    lead: Lead | None = None
    more: bool = False
    """More practice is offered."""
    hands_on: str = ""
    """Title of the hands-on lesson that is offered."""
    task_done: str = ""
    """Title of the hands-on lesson whose answers came just now: the day's own count was said before."""
    second: str = ""
    """Title of a second lesson, on a good day."""
    catch_up: bool = False
    """It is a lesson that waited, on the light day."""


class ExtraDone(Message, frozen=True, kw_only=True):
    """The practice that was asked for is done."""

    day: DayId
    right: int
    out_of: int
    lead: Lead | None = None


class NothingToPractise(Message, frozen=True, kw_only=True):
    """No lesson of that name was met yet. `titles` are those nearest."""

    titles: tuple[str, ...] = ()


class HandsOnShown(Message, frozen=True, kw_only=True):
    """A hands-on lesson: what to do, with what, and a checklist."""

    day: DayId
    title: str
    idea: str
    materials: tuple[str, ...]
    checklist: tuple[str, ...]
    safety: str = ""
    answers: int = 0


class PaperSheet(Message, frozen=True, kw_only=True):
    """The whole review at once, to be done on paper. Rows are (number, source lesson, question, form, choices)."""

    day: DayId
    rows: tuple[tuple[int, str, str, str, tuple[str, ...]], ...]
    more: bool = False
    """A further message with the rest follows."""

    @property
    def about(self) -> str:
        """The day's sheet."""
        return f"paper/{self.day}"


class PaperGraded(Message, frozen=True, kw_only=True):
    """Answers that came for several items: (number, verdict, item, read as, a word on it)."""

    day: DayId
    rows: tuple[tuple[int, Verdict, ItemId, str, str], ...]
    unknown: tuple[int, ...] = ()
    """Numbers that are not on the sheet."""
    already: tuple[int, ...] = ()
    """Numbers that were done before."""
    left: tuple[int, ...] = ()
    """Numbers that still have no answer."""


class NothingNow(Message, frozen=True, kw_only=True):
    """There is nothing to do just now. `why`: done, day-off, paused, no-consent, not-yet, night."""

    why: str
    at: str = ""
    """Hour at which the next day opens, where known ("8:00")."""
    day: DayId = DayId(0)


class SmallDay(Message, frozen=True, kw_only=True):
    """The day was made small: no lesson, six review items."""

    day: DayId
    review: int
    already: bool = False


class BreakTaken(Message, frozen=True, kw_only=True):
    """The student asked to stop: nothing runs, the place is kept, and there are ways to make the day smaller."""

    day: DayId
    item: ItemId | None = None
    small: bool = False
    """Whether the day may be made small."""
    enough: bool = False
    """Whether it may end here."""


class Reminder(Push, frozen=True, kw_only=True):
    """An hour before the digest, where nothing was started."""

    day: DayId
    name: str
    minutes: int = 0


class FinishFirst(Message, frozen=True, kw_only=True):
    """The last day can still be finished."""

    day: DayId
    left: int


class WhoSpeaks(Message, frozen=True, kw_only=True):
    """A shared phone: who is speaking?"""

    students: tuple[tuple[StudentId, str], ...]
    why: str = "choose"
    """choose, or words: a grown-up typed something that reads like an answer."""


class Speaking(Message, frozen=True, kw_only=True):
    """A student holds the phone now. `away`: messages for grown-ups that are taken off the screen."""

    name: str
    student: StudentId
    away: tuple[int, ...] = ()


class GivenBack(Message, frozen=True, kw_only=True):
    """The phone is the grown-up's again; it is offered their commands."""

    name: str
    by_itself: bool = False
    roles: tuple[str, ...] = ("parent",)
