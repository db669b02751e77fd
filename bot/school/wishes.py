"""The kinds of wishes there are, and what those in force on a day mean for the plan."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from enum import StrEnum

from sqlalchemy.orm import Session

from bot.planner.history import Wishes
from bot.planner.load import FEWEST
from bot.records.people import Student
from bot.records.wishes import Wish, wishes_for
from bot.vocabulary import SkillId, TemplateId


class WishKind(StrEnum):
    """What a tutor (or a family, where marked) may wish. In brackets: what the wish holds."""

    PIN = "pin"
    """Ask this for certain (template)."""
    DROP = "drop"
    """Don't ask this (template)."""
    DROP_SKILL = "drop-skill"
    """Leave a skill alone (skill)."""
    MORE = "more"
    """More of a skill (skill)."""
    FEWER = "fewer"
    """Fewer of a skill (skill)."""
    REVIEW_ITEMS = "review-items"
    """That many review items (count)."""
    DAYS_OFF = "days-off"
    """No school; a family may."""
    SICK = "sick"
    """No school for one student; a family may."""
    SCHOOL_ON = "school-on"
    """School in spite of a holiday; a family may."""
    SMALL_DAY = "small-day"
    """Six review items, no lesson; a family or the student may."""
    NO_LESSON = "no-lesson"
    """Review only."""
    LEAVE_OUT = "leave-out"
    """Lessons that are left out (lessons: list of numbers)."""
    LINK = "link"
    """A page or video of the tutor's own beside a lesson (lesson, url)."""
    TEST = "test"
    """A test that was set (test: its number, title, minutes)."""
    SECOND_LOOK = "second-look"
    """The one second look at a test (test, of: the test's day, title, minutes); a family may where it is offered."""
    NOTE = "note"
    """A word that the digest carries (text)."""
    OWN_ITEM = "own-item"
    """An item of the tutor's own (item: as drawn, title, tutor: name)."""
    OWN_LESSON = "own-lesson"
    """A lesson of the tutor's own instead of the course's (lesson: its id, title)."""
    ERASE = "erase"
    """Everything of a household is erased on that day; a family only."""
    PLACEMENT = "placement"
    """The next day looks where to start; a family may."""
    FINISH_BY = "finish-by"
    """The day by which the family would like to be done (date: ISO date); a family may."""
    OFF_SEASON = "off-season"
    """Ten minutes, three days a week, while there is no school (on: bool); a family or the student may."""
    PRINTED = "printed"
    """A sheet was printed for that day, so its review stands fast (items: as drawn); a family may."""
    TURNED_DOWN = "turned-down"
    """An answer that doesn't count from now on, at items of one template (template, typed)."""
    ADJUST = "adjust"
    """Something is adjusted for a student (adjust: its name, on: bool); a family may."""
    READ_AS = "read-as"
    """An answer that counts from now on (expected, form, typed, verdict)."""


ADJUSTABLE = ("time", "big", "fewer", "dictated", "calculator")
"""What can be adjusted for a student, beside the timing of number facts."""
MORE_TIME = 1.5
"""So much longer everything takes with more time: half as long again (common practice, no source)."""
FEWEST_REVIEW = 4
FEWER_REVIEW = 2 / 3
"""Share of the tutor's number of review items where fewer are wished; else it is the fewest that there are."""


def adjusted_in(wishes: Iterable[Wish]) -> frozenset[str]:
    """The adjustments that hold by some wishes; of two for the same the newer."""
    found = {
        str(wish.what.get("adjust")): bool(wish.what.get("on"))
        for wish in wishes
        if wish.kind == WishKind.ADJUST
    }
    return frozenset(name for name in ADJUSTABLE if found.get(name))


def in_force(s: Session, student: Student, on: date) -> list[Wish]:
    """All wishes in force for a student on a day, the oldest first."""
    return wishes_for(s, student.id, student.household, student.tutor, on, on)


def wishes_until(s: Session, student: Student, first: date, last: date) -> list[Wish]:
    """All wishes in force for a student on any day of a range, the oldest first."""
    return wishes_for(s, student.id, student.household, student.tutor, first, last)


def of_kind(wishes: Iterable[Wish], kind: WishKind) -> list[Wish]:
    """Those of one kind."""
    return [wish for wish in wishes if wish.kind == kind]


def texts(wishes: Iterable[Wish], kind: WishKind, name: str) -> list[str]:
    """What those of one kind hold under a name."""
    return [str(wish.what[name]) for wish in wishes if wish.kind == kind and name in wish.what]


def wishes_for_plan(student: Student, wishes: list[Wish]) -> Wishes:
    """What wishes mean for the plan; of two that contradict each other the newer holds."""
    counts = [wish.what["count"] for wish in of_kind(wishes, WishKind.REVIEW_ITEMS)]
    review_items = counts[-1] if counts else student.review_items
    adjusted = adjusted_in(wishes)
    if "fewer" in adjusted:
        wished = review_items if isinstance(review_items, int) else None
        review_items = FEWEST if wished is None else max(FEWEST_REVIEW, round(wished * FEWER_REVIEW))
    return Wishes(
        pinned=tuple(TemplateId(t) for t in texts(wishes, WishKind.PIN, "template")),
        dropped=frozenset(TemplateId(t) for t in texts(wishes, WishKind.DROP, "template")),
        dropped_skills=frozenset(SkillId(t) for t in texts(wishes, WishKind.DROP_SKILL, "skill")),
        more_of=frozenset(SkillId(t) for t in texts(wishes, WishKind.MORE, "skill")),
        fewer_of=frozenset(SkillId(t) for t in texts(wishes, WishKind.FEWER, "skill")),
        own_items=len(of_kind(wishes, WishKind.OWN_ITEM)),
        review_items=review_items if isinstance(review_items, int) else None,
        minutes=round(student.minutes / MORE_TIME) if "time" in adjusted else student.minutes,
        no_lesson=bool(of_kind(wishes, WishKind.NO_LESSON) or of_kind(wishes, WishKind.OWN_LESSON)),
        small_day=bool(of_kind(wishes, WishKind.SMALL_DAY)),
    )


def link_of(wishes: Iterable[Wish], lesson: str) -> str:
    """The tutor's own page for a lesson, or nothing."""
    urls = [str(w.what["url"]) for w in wishes if w.kind == WishKind.LINK and w.what.get("lesson") == lesson]
    return urls[-1] if urls else ""


def left_out(wishes: Iterable[Wish]) -> frozenset[int]:
    """Numbers of the lessons that won't be taught."""
    numbers: set[int] = set()
    for wish in of_kind(wishes, WishKind.LEAVE_OUT):
        found = wish.what.get("lessons", ())
        if isinstance(found, list):
            numbers.update(n for n in found if isinstance(n, int))
    return frozenset(numbers)
