"""A student is stuck: hint, one more try, later, show me, ask the tutor, and the next step of guided practice."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.answers import examples
from bot.course.figures import alt
from bot.messages import (
    AskedTutor,
    CardShown,
    HintShown,
    HowToType,
    InWords,
    Lead,
    Message,
    NextStep,
    NotForYou,
    Passed,
    ReportNoted,
    Solution,
    WhyThis,
)
from bot.records import attempts, days, doubts, focus, people
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.records.doubts import DoubtKind
from bot.school.drawing import alt_of, card_lesson, steps_of
from bot.school_day.asking import Here, show
from bot.school_day.grading import come_back
from bot.school_day.onward import onward
from bot.vocabulary import ItemId, Outcome, Part


def may_see_solution(sent: Sent) -> bool:
    """The worked solution is open after the last try, a wrong try after a hint, or help asked for twice.

    Once is enough where there is no hint to give.
    """
    enough = 2 if sent.item.hints else 1
    return sent.state is ItemState.DONE or sent.missed_after_hint or sent.helps >= enough


def hint(s: Session, here: Here, sent: Sent, *, in_words: bool = False) -> list[Message]:
    """The next hint; it costs nothing. The worked solution is offered as soon as it is open."""
    hints = sent.item.hints
    n = min(sent.hints + 1, len(hints))
    if sent.hints < len(hints):
        days.change_item(s, sent.id, hints=n)
    fresh = days.item(s, sent.id)
    return [
        HintShown(
            to=here.chat,
            item=sent.id,
            hint=hints[n - 1] if hints else "",
            n=n,
            out_of=len(hints),
            source=sent.item.lesson_title,
            lesson=card_lesson(here.school, sent),
            show=may_see_solution(fresh),
            asked_in_words=in_words,
            choices=sent.item.choices,
        )
    ]


def asked_for_hint(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The button *Hint*: asking for help counts towards the worked solution."""
    if sent.state is ItemState.DONE:
        return [NotForYou(to=here.chat, why="gone")]
    if sent.part in (Part.TEST, Part.PLACEMENT):
        return [NotForYou(to=here.chat, why="no-hints")]
    days.change_item(s, sent.id, helps=sent.helps + 1)
    return hint(s, here, days.item(s, sent.id))


def try_again(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The button *Try again*, or an item taken up again: the question once more."""
    if sent.state is ItemState.DONE:
        return [NotForYou(to=here.chat, why="gone")]
    return [show(s, here, days.day(s, sent.day), sent, again=True)]


def later(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The button *Later*: the item goes to the end of its part and keeps its tries."""
    day = days.day(s, sent.day)
    if sent.state is ItemState.DONE:
        return [NotForYou(to=here.chat, why="gone")]
    days.change_item(s, sent.id, place=days.last_place(s, day.id, sent.part) + 1, state=ItemState.WAITING)
    return onward(s, here, day, Lead(kind="put-off"))


def leave(s: Session, here: Here, sent: Sent) -> list[Message]:
    """A puzzle or a string may be left without a word; it stays open until the evening."""
    day = days.day(s, sent.day)
    if sent.part is not Part.WARM_UP or sent.state in (ItemState.DONE, ItemState.PUT_BY):
        return [NotForYou(to=here.chat, why="gone")]
    days.change_item(s, sent.id, state=ItemState.PUT_BY)
    return onward(s, here, days.day(s, day.id), Lead(kind="left"))


def show_solution(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The button *Show me*: the worked solution; a fresh item of the kind comes back."""
    day = days.day(s, sent.day)
    if not may_see_solution(sent) or sent.part in (Part.TEST, Part.PLACEMENT):
        return [NotForYou(to=here.chat, why="not-earned")]
    comes_back = sent.outcome not in (Outcome.FIRST_TRY, Outcome.LATER_TRY)
    if sent.state is not ItemState.DONE:
        days.change_item(s, sent.id, state=ItemState.DONE, outcome=Outcome.UNSOLVED, solution_shown=True)
        come_back(s, here, day, days.item(s, sent.id))
    else:
        days.change_item(s, sent.id, solution_shown=True)
    focus.set_focus(s, here.chat, here.student.id, "go", here.at, ref=day.id)
    return [
        Solution(
            to=here.chat,
            item=sent.id,
            ask=sent.item.ask,
            steps=steps_of(sent.item),
            answer=sent.item.answer_shown,
            unit=sent.item.unit_shown,
            comes_back=comes_back,
            figure=sent.item.figure,
            alt=alt_of(sent.item),
        )
    ]


def next_step(s: Session, here: Here, sent: Sent) -> list[Message]:
    """Guided practice: one more step of the solution, but never the last, which is the answer."""
    steps = steps_of(sent.item)
    if sent.part is not Part.GUIDED or sent.state is ItemState.DONE:
        return [NotForYou(to=here.chat, why="gone")]
    if sent.steps_shown >= len(steps) - 1:
        return asked_for_hint(s, here, sent)
    days.change_item(s, sent.id, steps_shown=sent.steps_shown + 1)
    n = sent.steps_shown + 1
    return [
        NextStep(
            to=here.chat,
            item=sent.id,
            step=steps[n - 1],
            n=n,
            more=n < len(steps) - 1,
            choices=sent.item.choices,
        )
    ]


def ask_tutor(s: Session, here: Here, sent: Sent, why: str = "asked") -> list[Message]:
    """The button *Ask my tutor*: the item goes along, with what was typed."""
    days.change_item(s, sent.id, with_tutor=True)
    _note(s, here, sent, DoubtKind.ASKED)
    name = people.person_name(s, here.student.tutor)
    said: list[Message] = [AskedTutor(to=here.chat, item=sent.id, tutor=name)]
    return said if sent.with_tutor else [*said, *_pass_on(s, here, sent, why)]


def report(s: Session, here: Here, sent: Sent) -> list[Message]:
    """The button *I think this item is wrong*: the tutor looks at it; the item stays as it is till then."""
    new = _note(s, here, sent, DoubtKind.REPORTED)
    name = people.person_name(s, here.student.tutor)
    said: list[Message] = [ReportNoted(to=here.chat, item=sent.id, tutor=name, again=not new)]
    return [*said, *_pass_on(s, here, sent, "reported")] if new else said


def _note(s: Session, here: Here, sent: Sent, kind: DoubtKind) -> bool:
    who = here.student
    return doubts.add_doubt(s, kind, who.tutor, sent.template, here.at, student=who.id, item=sent.id)


def _pass_on(s: Session, here: Here, sent: Sent, why: str) -> list[Message]:
    """The item as the tutor sees it, with what was typed."""
    tutor = people.reach(s, here.student.tutor)
    if tutor is None:
        return []
    tried = attempts.attempts_of(s, sent.id)
    return [
        Passed(
            to=tutor.chat,
            item=sent.id,
            student=here.student.name,
            household=people.household(s, here.student.household).name,
            lesson=sent.item.lesson_title,
            ask=sent.item.ask,
            typed=tuple(attempt.typed[:200] for attempt in tried[-4:]),
            answer=sent.item.answer_shown,
            attempt=tried[-1].id if tried else 0,
            why=why,
        )
    ]


def go_on(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The button *Go on*: behind a card guided practice starts, elsewhere the next item comes."""
    if day.stage is Stage.CARD:
        days.change_day(s, day.id, stage=Stage.GUIDED)
    return onward(s, here, days.day(s, day.id))


def look_up_card(s: Session, here: Here, lesson_id: str, sent: Sent | None = None) -> list[Message]:
    """The card of a source lesson, beside the item that it belongs to."""
    try:
        lesson = here.school.course.lesson(lesson_id)
    except LookupError:
        return [NotForYou(to=here.chat, why="gone")]
    return [
        CardShown(
            to=here.chat,
            lesson=lesson.id,
            title=lesson.title,
            text=card.text,
            figure=card.figure,
            alt=alt(card.figure) if card.figure else "",
            item=sent.id if sent else ItemId(0),
            sitting=n,
            sittings=len(lesson.cards),
        )
        for n, card in enumerate(lesson.cards, start=1)
    ]


def how_to_type(s: Session, here: Here, sent: Sent) -> list[Message]:
    """Three examples of how to type an answer of that form."""
    key = sent.item.key
    return [
        HowToType(
            to=here.chat,
            item=sent.id,
            form=key.form,
            examples=examples(key.form),
            unit=key.unit or "",
            choices=sent.item.choices,
        )
    ]


def about_this(s: Session, here: Here, sent: Sent) -> list[Message]:
    """Why the item is there, where it comes from, and how to type its answer."""
    because = sent.because
    since = because.get("days_since")
    return [
        WhyThis(
            to=here.chat,
            item=sent.id,
            why="warm-up" if sent.part is Part.WARM_UP else sent.why,
            source=sent.item.lesson_title,
            skill=here.school.skill_title(str(because["skill"])) if "skill" in because else "",
            days_since=since if isinstance(since, int) else None,
            examples=() if sent.item.choices else examples(sent.item.key.form),
            lesson=card_lesson(here.school, sent),
            alt=alt_of(sent.item),
        )
    ]


def in_words(s: Session, here: Here, sent: Sent) -> list[Message]:
    """An item's picture in words."""
    return [InWords(to=here.chat, alt=alt_of(sent.item))]


def worked_in_words(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The picture of the day's worked example in words."""
    lesson = here.school.lesson_still_here(day.lesson)
    if lesson is None:
        return [NotForYou(to=here.chat, why="gone")]
    examples_ = lesson.examples
    figure = examples_[min(day.sitting, len(examples_)) - 1].figure
    return [InWords(to=here.chat, alt=alt(figure) if figure else "")]
