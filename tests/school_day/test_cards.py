"""Every card of the course fits under its picture: with title, lead and link it stays within a caption."""

from __future__ import annotations

from bot.chat.render import render
from bot.chat.render.shapes import ID_START
from bot.chat.rendered import CAPTION, faults, units
from bot.course.figures import alt
from bot.course.year import Course
from bot.messages import CardShown, Lead, WorkedShown
from bot.vocabulary import ChatId, DayId


def test_every_card_fits_into_a_caption(course: Course) -> None:
    too_long = {}
    for lesson in (*course.before, *course.lessons):
        for n, card in enumerate(lesson.cards, start=1):
            shown = CardShown(
                to=ChatId(1),
                lesson=lesson.id,
                title=lesson.title,
                text=card.text,
                figure=card.figure,
                alt=alt(card.figure) if card.figure else "",
                sitting=n,
                sittings=len(lesson.cards),
                lead=Lead(kind="right-later", place=1),
                video="https://example.org/a-page",
            )
            said = render(shown, "en")
            if units(said.text) > CAPTION or faults(said):
                too_long[lesson.id] = (units(said.text), faults(said))
    assert too_long == {}


def test_every_worked_example_fits_into_a_message(course: Course) -> None:
    for lesson in course.lessons:
        for example in lesson.examples:
            steps = tuple((step.write, step.because) for step in example.steps)
            shown = WorkedShown(to=ChatId(1), title=lesson.title, ask=example.ask, steps=steps, day=DayId(1))
            assert faults(render(shown, "en")) == [], lesson.id


def test_no_two_lessons_begin_alike(course: Course) -> None:
    starts = [lesson.id[:ID_START] for lesson in (*course.before, *course.lessons)]

    assert len(starts) == len(set(starts))
