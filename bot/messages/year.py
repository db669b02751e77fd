"""What is said around the year as a whole: where to start, half-year, how a run of days goes."""

from __future__ import annotations

from bot.messages.base import AboutItem, Message, Push
from bot.vocabulary import DayId, StudentId


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
