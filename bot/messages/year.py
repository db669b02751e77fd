"""What is said around the year as a whole: where to start, half-year, how a run of days goes."""

from __future__ import annotations

from bot.messages.base import AboutItem, Message, Push
from bot.vocabulary import DayId, LessonId, StudentId


class PlacementUnread(AboutItem, frozen=True, kw_only=True):
    """An answer in the look at where to start couldn't be read: how to type it. It costs nothing."""

    form: str
    read_as: str = ""
    examples: tuple[str, ...] = ()


class PlacementPaused(Message, frozen=True, kw_only=True):
    """Enough of the look at where to start for today; it goes on next time."""

    day: DayId
    asked: int


class PlacementDone(Message, frozen=True, kw_only=True):
    """To the student: that was all; nothing of it is a mark."""

    name: str
    asked: int


class PlacementFound(Push, frozen=True, kw_only=True):
    """To the tutor: where to start, what to patch first, how sure that is. `change` does it, once pressed.

    `sure` is the chance in percent to be within five lessons of the right place, by the planner's reckoning.
    `lesson` is empty where nothing of the course seems new.
    """

    student: StudentId
    name: str
    household: str
    lesson: str
    n: int
    asked: int
    sure: int
    patch: tuple[str, ...] = ()
    change: int = 0
    safer: str = ""
    safer_n: int = 0
    """A start further down, where much of what lies before `lesson` was not met; 0: there is none."""


class FinishShown(Message, frozen=True, kw_only=True):
    """When the course may be done, as a range in plain words, and the day by which the family wants it.

    Dates are ISO dates; `early` and `late` are empty where nothing can be said. `own`: the family named the day.
    """

    student: StudentId
    name: str
    lesson: str
    n: int
    out_of: int
    taken: int
    planned: int
    early: str = ""
    late: str = ""
    wanted: str = ""
    own: bool = False


class HalfYearLook(Push, frozen=True, kw_only=True):
    """To the tutor, once: where the year is heading, with and without the extra lessons, and a suggestion.

    `advice` is go-on, leave-out-extras or slow-down; `change` leaves the extra lessons out, once pressed.
    """

    student: StudentId
    name: str
    household: str
    advice: str
    wanted: str
    early: str = ""
    late: str = ""
    core_early: str = ""
    core_late: str = ""
    extras: tuple[str, ...] = ()
    change: int = 0


class DaysUnfinished(Push, frozen=True, kw_only=True):
    """To the tutor: three school days in a row were not finished."""

    student: StudentId
    name: str
    household: str
    days: int


class WeekAhead(Message, frozen=True, kw_only=True):
    """To the tutor: the coming school days as they look today, and why.

    Rows are (ISO date, kind, lesson's title, sitting, sittings, test's title, review items, reasons); reasons
    are (why, how many items), most first.
    """

    student: StudentId
    name: str
    rows: tuple[tuple[str, str, str, int, int, str, int, tuple[tuple[str, int], ...]], ...]


class OffSeason(Message, frozen=True, kw_only=True):
    """To the student: the off-season is on or off."""

    on: bool


class StudyList(Push, frozen=True, kw_only=True):
    """To the student, on the evening before a test: what it is about, and lessons worth another look.

    `lessons` are the ids of those in `again`, for buttons that open their cards.
    """

    test: str
    date: str
    new: tuple[str, ...] = ()
    again: tuple[str, ...] = ()
    lessons: tuple[LessonId, ...] = ()


class CourseDone(Push, frozen=True, kw_only=True):
    """To parents and the tutor, once: the whole course is done; what can be had now."""

    student: StudentId
    name: str
    household: str
    side: str


class FoundationsPaper(Message, frozen=True, kw_only=True):
    """A page for the family: the skills that algebra rests on, each steady, shaky or not met.

    Rows are (name by language, standing).
    """

    student: StudentId
    name: str
    made: str
    rows: tuple[tuple[dict[str, str], str], ...]
