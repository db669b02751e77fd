"""What a student hears on a reply."""

from __future__ import annotations

from bot.messages.base import AboutItem, Message
from bot.messages.day import Figure, Lead
from bot.vocabulary import ItemId, LessonId


class NotYet(AboutItem, frozen=True, kw_only=True):
    """A wrong answer: what is true, one thing to look at, then the buttons.

    `sure`: the misstep is the only likely one. `last_go`: one try is left. `show`: the worked solution was earned.
    """

    read_as: str = ""
    misstep: str = ""
    """The sentence of the likely misstep, a question about the step; empty where the checker isn't sure."""
    misstep_name: str = ""
    true_part: str = ""
    """What is right in it, as a wording key; empty where nothing can be said."""
    go: int = 1
    last_go: bool = False
    show: bool = False
    hint: str = ""
    """The start of the work, on the second wrong answer."""
    hints_left: int = 0
    choices: tuple[str, ...] = ()
    said: bool = False
    """The same misstep sentence was said today already; say it in other words."""
    lesson: LessonId = LessonId("")


class WorkingSeen(AboutItem, frozen=True, kw_only=True):
    """The working was looked over: how many lines are fine, and the first that doesn't follow.

    `line` counts from 1; 0: the checker isn't sure and accuses nobody.
    """

    line: int
    text: str = ""
    fine: int = 0
    misstep: str = ""
    misstep_name: str = ""
    last_go: bool = False
    show: bool = False
    hints_left: int = 0
    lesson: LessonId = LessonId("")


class Together(AboutItem, frozen=True, kw_only=True):
    """The last try is gone: let's look at it together."""

    read_as: str = ""
    lesson: LessonId = LessonId("")


class SayForm(AboutItem, frozen=True, kw_only=True):
    """The right amount in another form than asked; costs no try unless `counted`."""

    form: str
    reason: str = ""
    read_as: str = ""
    counted: bool = False
    """The question was typed back before; this time it used up a go."""
    choices: tuple[str, ...] = ()


class SayUnit(AboutItem, frozen=True, kw_only=True):
    """The right number, but its unit is missing or another one; costs no try."""

    unit: str
    reason: str = "unit-missing"
    read_as: str = ""


class CannotRead(AboutItem, frozen=True, kw_only=True):
    """A reply that can't be read; costs no try. `trouble` names the wording, `examples` show how to type it."""

    trouble: str = ""
    read_as: str = ""
    examples: tuple[str, ...] = ()
    again: bool = False
    """The second in a row: offers to pass it to the tutor as it stands."""
    choices: tuple[str, ...] = ()


class HintShown(AboutItem, frozen=True, kw_only=True):
    """A hint, asked for; costs nothing. `n` of `out_of`; 0: there is none left."""

    hint: str
    n: int
    out_of: int
    source: str = ""
    lesson: LessonId = LessonId("")
    show: bool = False
    asked_in_words: bool = False
    """Asked for in words ("idk"), not by the button."""
    choices: tuple[str, ...] = ()


class Solution(AboutItem, frozen=True, kw_only=True):
    """The worked solution with the item's own numbers. Steps are (maths, words)."""

    ask: str
    steps: tuple[tuple[str, str], ...]
    answer: str
    unit: str = ""
    comes_back: bool = False
    figure: Figure | None = None
    alt: str = ""
    to_grown_up: bool = False


class NextStep(AboutItem, frozen=True, kw_only=True):
    """One more step of the worked solution, in guided practice."""

    step: tuple[str, str]
    n: int
    more: bool
    choices: tuple[str, ...] = ()


class HowToType(AboutItem, frozen=True, kw_only=True):
    """Three examples of how to type an answer of that form."""

    form: str
    examples: tuple[str, ...]
    unit: str = ""
    choices: tuple[str, ...] = ()


class WhyThis(AboutItem, frozen=True, kw_only=True):
    """Why an item is there, in one plain line, and how its answer is typed."""

    why: str
    """Why the planner took it, or "warm-up" for a warm-up's."""
    source: str = ""
    skill: str = ""
    days_since: int | None = None
    examples: tuple[str, ...] = ()
    lesson: LessonId = LessonId("")
    alt: str = ""


class InWords(Message, frozen=True, kw_only=True):
    """A picture in words."""

    alt: str


class AlreadyDone(Message, frozen=True, kw_only=True):
    """An answer to an item that is done: the first one counted."""

    item: ItemId = ItemId(0)
    right: bool = False
    lead: Lead | None = None


class WhichItem(Message, frozen=True, kw_only=True):
    """It can't be told which item is meant: (item, short question) to choose from."""

    items: tuple[tuple[ItemId, str], ...] = ()


class Counted(Message, frozen=True, kw_only=True):
    """An answer to an earlier day's item was graded for that day."""

    right: bool
    ask: str


class AskedTutor(AboutItem, frozen=True, kw_only=True):
    """The item, with what was typed, went to the tutor."""

    tutor: str


class ReportNoted(AboutItem, frozen=True, kw_only=True):
    """A student thinks that an item is wrong; the tutor looks at it. `again`: that was said before."""

    tutor: str
    again: bool = False


class Passed(Message, frozen=True, kw_only=True):
    """To the tutor: a student asks about an item. `typed` are the answers so far, as typed."""

    item: ItemId
    student: str
    household: str
    lesson: str
    ask: str
    typed: tuple[str, ...]
    answer: str
    attempt: int = 0
    """The newest attempt, which the tutor may accept; 0: none."""
    why: str = "asked"
    """asked, unreadable (passed on as it stands), or reported: the student thinks that the item is wrong."""


class FirstCounts(Message, frozen=True, kw_only=True):
    """An edited message: the first text counted."""

    open: bool = False
    """The item is still open, so a new message may answer it."""


class PhotoKept(Message, frozen=True, kw_only=True):
    """A photo was kept as a work sample; we don't read pictures. `full`: ten were kept today already."""

    full: bool = False
    first: bool = False
    no_day: bool = False


class NotText(Message, frozen=True, kw_only=True):
    """A sticker, a voice message or another thing that can't be graded."""

    what: str
