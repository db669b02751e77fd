"""The words of the trade as types: ids, verdicts, outcomes, and why an item was picked."""

from __future__ import annotations

from enum import StrEnum
from typing import NewType

PersonId = NewType("PersonId", int)
StudentId = NewType("StudentId", int)
HouseholdId = NewType("HouseholdId", int)
DayId = NewType("DayId", int)
ItemId = NewType("ItemId", int)
AttemptId = NewType("AttemptId", int)
ChatId = NewType("ChatId", int)

LessonId = NewType("LessonId", str)
"""A lesson's file name without folder and ending: "dividing-by-a-fraction"."""
SkillId = NewType("SkillId", str)
TemplateId = NewType("TemplateId", str)
"""Lesson and heading: "dividing-by-a-fraction/loaves"."""


class Verdict(StrEnum):
    """What a teacher would say of one reply, in the order in which it is decided."""

    HELP = "help"
    UNREADABLE = "unreadable"
    WRONG = "wrong"
    UNIT = "unit"
    FORM = "form"
    RIGHT = "right"


class Outcome(StrEnum):
    """How an item stood at the end of its day."""

    FIRST_TRY = "first-try"
    LATER_TRY = "later-try"
    UNSOLVED = "unsolved"
    UNTOUCHED = "untouched"
    EXCUSED = "excused"


class Why(StrEnum):
    """Why the planner put an item into a day; a student may ask."""

    TODAY = "today"
    """Belongs to the lesson of the day."""
    YESTERDAY = "yesterday"
    """Went wrong on the last school day."""
    RECENT = "recent"
    """From a lesson of the last days."""
    DUE = "due"
    """Not met for a while; likely to be shaky by now."""
    FRAGILE = "fragile"
    """Often missed."""
    PREREQUISITE = "prerequisite"
    """Needed for one of the next lessons."""
    COVERAGE = "coverage"
    """Has been away for longer than anything may be."""
    MISSTEP = "misstep"
    """The same misstep came up more than once."""
    MIXED_IN = "mixed-in"
    """Keeps methods apart: an earlier skill between today's."""
    SURE = "sure"
    """A sure success, to end on."""
    COMEBACK = "comeback"
    """A fresh item of one that stayed unsolved."""
    TUTOR_ASKED = "tutor-asked"
    TEST = "test"
    EXTRA = "extra"
    """The student asked for more."""


class Part(StrEnum):
    """The parts of a school day, in the order of the day."""

    WARM_UP = "warm-up"
    KNOWN = "known"
    """Five items by which a lesson may be passed over."""
    GUIDED = "guided"
    REVIEW = "review"
    EXTRA = "extra"
    """More practice, asked for; it never counts against anybody."""
    TEST = "test"
    HANDS_ON = "hands-on"
    PLACEMENT = "placement"
    """The look at where to start; never counted."""


class Role(StrEnum):
    """What a person may be to a household. One person may be several."""

    STUDENT = "student"
    PARENT = "parent"
    TUTOR = "tutor"
    GRADER = "grader"
    """Marks pages of one household, and sees nothing else of it."""
