"""From the planner's picks to items, and from items to what is shown of them."""

from __future__ import annotations

from collections.abc import Iterable

from bot.course.draw import draw
from bot.course.figures import alt
from bot.course.item import Item, plain_text
from bot.messages import ItemShown, Lead
from bot.planner.plan import Pick
from bot.planner.plan_day import seed_of
from bot.records.days import Fresh, SchoolDay, Sent
from bot.school.school import School
from bot.vocabulary import ChatId, LessonId, Part, TemplateId, Why

MENTAL_MATH = LessonId("mental-math")
"""Holds the strings of mental math."""


def because_of(pick: Pick) -> dict[str, object]:
    """The planner's reason as it is stored beside an item; what is empty is left out."""
    because = pick.because
    found = {"skill": because.skill, "days_since": because.days_since, "misstep": because.misstep}
    return {name: value for name, value in found.items() if value is not None}


def draw_all(school: School, picks: Iterable[Pick], part: Part, first_place: int = 1) -> list[Fresh]:
    """Draw the planner's picks, in order, no two alike: a draw that came before is drawn once more."""
    fresh: list[Fresh] = []
    asked: set[str] = set()
    for place, pick in enumerate(picks, start=first_place):
        drawn = draw(school.course, pick.template, pick.seed)
        for again in range(1, 6):
            if drawn.ask not in asked:
                break
            drawn = draw(school.course, pick.template, pick.seed + again)
        asked.add(drawn.ask)
        fresh.append(Fresh(part, place, drawn, pick.why, because_of(pick)))
    return fresh


def draw_again(school: School, sent: Sent, day: SchoolDay, again: int) -> Item | None:
    """Draw a fresh item of the kind of one that was asked; None where its template left the course."""
    try:
        seed = seed_of(sent.student, day.date, TemplateId(sent.template), again)
        for shift in range(8):
            drawn = draw(school.course, sent.template, seed + shift)
            if drawn.ask != sent.item.ask:
                return drawn
    except LookupError:
        return None
    return None


def alt_of(item: Item) -> str:
    """An item's picture in words, or nothing."""
    return alt(item.figure) if item.figure else ""


def steps_of(item: Item) -> tuple[tuple[str, str], ...]:
    """The worked solution as (maths, words)."""
    return tuple((step.write, step.because) for step in item.steps)


def short(text: str, most: int = 60) -> str:
    """A question cut to a few words, for buttons and lists."""
    line = " ".join(plain_text(text).split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


def card_lesson(school: School, sent: Sent) -> LessonId:
    """The lesson whose card belongs to an item; empty where there is none to open: warm-ups, what was brought along."""
    try:
        return sent.lesson if school.course.lesson(sent.lesson).cards else LessonId("")
    except LookupError:
        return sent.lesson  # a lesson that is gone says so itself


def _source(sent: Sent) -> str:
    """Whom or what an item is from: the tutor, a lesson, or the strategy that a string of mental math trains."""
    strategy = sent.because.get("strategy") if sent.lesson == MENTAL_MATH else None
    return str(sent.because.get("by") or strategy or sent.item.lesson_title)


def show_item(
    to: ChatId,
    school: School,
    day: SchoolDay,
    sent: Sent,
    out_of: int,
    *,
    lead: Lead | None = None,
    again: bool = False,
) -> ItemShown:
    """The message that asks one item."""
    item = sent.item
    guided = sent.part is Part.GUIDED
    quiet = guided or sent.part is Part.PLACEMENT
    all_steps = steps_of(item)
    walked = guided and sent.place <= 2
    return ItemShown(
        to=to,
        item=sent.id,
        part=sent.part,
        place=sent.place,
        out_of=out_of,
        ask=item.ask,
        form=item.key.form,
        unit=item.key.unit or "",
        choices=item.choices,
        figure=item.figure,
        alt=alt_of(item),
        source="" if quiet or item.lesson == day.lesson else _source(sent),
        lesson=card_lesson(school, sent),
        calculator=item.calculator,
        lead=lead,
        walked=walked,
        steps=all_steps[: sent.steps_shown],
        more_steps=guided and sent.steps_shown < len(all_steps) - 1,
        again=again or sent.tries > 0,
        comeback=sent.why is Why.COMEBACK,
    )
