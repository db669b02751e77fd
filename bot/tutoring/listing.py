"""Numbers of items: what a tutor calls "3" is what the student sees as 3; "g2" is guided practice.

A listing that was shown is kept, so that a number means what the tutor saw, even if the plan moved since.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

import msgspec

from bot.course.item import Item
from bot.messages import ItemLine
from bot.planner.plan import DayPlan, Pick
from bot.records import days, focus
from bot.records.days import ItemState, SchoolDay, Sent
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school.asking import Asked
from bot.school.drawing import draw_all, short
from bot.school.planning import plan_for
from bot.school.wishes import WishKind, of_kind
from bot.vocabulary import LessonId, Part, TemplateId, Why

LETTERS = {
    Part.REVIEW: "",
    Part.GUIDED: "g",
    Part.WARM_UP: "w",
    Part.TEST: "t",
    Part.HANDS_ON: "h",
    Part.KNOWN: "k",
    Part.EXTRA: "e",
}
LISTING = "listing"
HOLDS = timedelta(hours=18)
"""How long a listing that was shown gives its numbers."""
_NUMBERS = re.compile(r"^((?:#?[gwthke]?\d{1,2}(?:st|nd|rd|th)?(?:[\s,]+|$|(?:and|y)\s+))+)", re.IGNORECASE)


def label(part: Part, place: int) -> str:
    """How an item is called."""
    return f"{LETTERS[part]}{place}"


def take_numbers(text: str) -> tuple[list[str], str]:
    """Take item numbers off the front of a text: "2", "2 5", "g1, 3"; and give the rest."""
    found = _NUMBERS.match(text.strip())
    if not found:
        return [], text.strip()
    labels = re.findall(r"[gwthke]?\d{1,2}", found[1].lower())
    cleaned = [re.sub(r"^([gwthke]?)0*(?=\d)", r"\1", each) for each in labels]
    return list(dict.fromkeys(cleaned)), text.strip()[found.end() :].strip()


@dataclass(frozen=True, slots=True)
class Planned:
    """One item of a plan, drawn as it will be asked."""

    label: str
    part: Part
    pick: Pick
    item: Item

    @property
    def line(self) -> ItemLine:
        """As it stands in a listing."""
        return ItemLine(
            n=self.label,
            part=self.part.value,
            title=self.item.lesson_title,
            ask=short(self.item.ask, 70),
            stands=self.pick.why.value,
        )


def drawn(asked: Asked, plan: DayPlan) -> list[Planned]:
    """The items of a plan in the order of the day; the tutor's own items stand before the review."""
    parts = [(Part.GUIDED, plan.guided, 1), (Part.REVIEW, plan.review, plan.own_items + 1)]
    return [
        Planned(label(part, fresh.place), part, pick, fresh.item)
        for part, picks, first in parts
        for pick, fresh in zip(picks, draw_all(asked.school, picks, part, first), strict=True)
    ]


def own_planned(plan: DayPlan, wishes: Sequence[Wish]) -> list[Planned]:
    """The tutor's own items of a plan: they come first in the review."""
    given = of_kind(wishes, WishKind.OWN_ITEM)[: plan.own_items]
    items = [msgspec.convert(wish.what["item"], type=Item) for wish in given]
    return [
        Planned(label(Part.REVIEW, n), Part.REVIEW, Pick(TemplateId(each.template), 0, Why.TUTOR_ASKED), each)
        for n, each in enumerate(items, start=1)
    ]


def keep(asked: Asked, student: Student, on: date, templates: Mapping[str, str]) -> None:
    """Keep what was shown under which number. The row stands beside the chat's focus, under minus the student."""
    data: dict[str, object] = {"on": on.isoformat(), "templates": dict(templates)}
    focus.set_focus(asked.s, asked.person.chat, -student.id, LISTING, asked.at, data=data)


def kept(asked: Asked, student: Student, on: date) -> dict[str, str]:
    """The templates that were shown under numbers for that day; empty where none were."""
    shown = focus.focus(asked.s, asked.person.chat, -student.id)
    if shown is None or shown.waits_for != LISTING or asked.at - shown.since > HOLDS:
        return {}
    templates = shown.data.get("templates")
    if shown.data.get("on") != on.isoformat() or not isinstance(templates, dict):
        return {}
    return {str(name): str(template) for name, template in templates.items()}


def planned_at(asked: Asked, student: Student, on: date, labels: Sequence[str]) -> list[Planned]:
    """The items of a day to come that some numbers mean. Raises Unclear where a number means none."""
    plan, _ = plan_for(asked.s, asked.school, student, on)
    now = drawn(asked, plan)
    by_label = {each.label: each for each in now}
    by_template = {(each.part, each.pick.template): each for each in now}
    shown = kept(asked, student, on)
    found = []
    for name in labels:
        part = next(part for part, letter in LETTERS.items() if letter == name.rstrip("0123456789"))
        each = by_template.get((part, TemplateId(shown[name]))) if name in shown else by_label.get(name)
        if each is None:
            key = "why-number-moved" if name in shown else "why-no-number"
            if name.isdecimal() and int(name) <= plan.own_items:
                key = "why-own-number"
            raise asked.wrong(key, student, n=name, name=student.name, date_day=on.isoformat())
        found.append(each)
    return found


def items_at(asked: Asked, student: Student, day: SchoolDay, labels: Sequence[str]) -> list[Sent]:
    """The items of a day that was made that some numbers mean. Raises Unclear where a number means none."""
    by_label = {label(each.part, each.place): each for each in days.items_of(asked.s, day.id, dropped=True)}
    found = []
    for name in labels:
        sent = by_label.get(name)
        if sent is None or sent.state is ItemState.DROPPED:
            raise asked.wrong(
                "why-no-number", student, n=name, name=student.name, date_day=day.date.isoformat()
            )
        found.append(sent)
    return found


def title_of(asked: Asked, template: str) -> str:
    """Title of the lesson that a template belongs to."""
    return asked.school.title(LessonId(template.partition("/")[0]))
