"""A student replies: find the item that is meant, grade what was typed, say what comes next."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.answers import examples, split_numbered
from bot.happened import Typed
from bot.messages import (
    AlreadyDone,
    CannotRead,
    Counted,
    Lead,
    Message,
    NothingNow,
    NotYet,
    SayForm,
    SayUnit,
    Together,
    WhichItem,
)
from bot.records import attempts, days, focus
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.records.outbox import could_be_seen, newest_shown, shown
from bot.school.drawing import short
from bot.school_day import paper, placing, stuck, warm_up, ways_out, working
from bot.school_day.asking import Here
from bot.school_day.grading import Graded, grade, read_back, tries_of
from bot.school_day.onward import onward
from bot.vocabulary import ItemId, Part, Verdict


def take_reply(s: Session, here: Here, typed: Typed) -> list[Message]:
    """Grade one reply and return what to say.

    Which item is meant? The one that was replied to; the numbers in the reply, on the sheet; what the chat
    is in the middle of; else ask. Never guess.
    """
    if typed.replying_to is not None:
        about = shown(s, here.chat, typed.replying_to)
        if about:
            return _to_message(s, here, typed, about)
    middle = focus.focus(s, here.chat, here.student.id)
    waits_for = middle.waits_for if middle else ""
    if middle and ways_out.asks_to_stop(typed.text):
        pause = ways_out.take_break(s, here, middle.item)
        if pause is not None:
            return pause
    if middle and waits_for == "sheet":
        return warm_up.answer_sheet(s, here, typed, middle.ref)
    if middle and waits_for == "copy":
        return warm_up.copied(s, here, typed, middle)
    numbered = split_numbered(typed.text)
    if numbered and (len(numbered) > 1 or waits_for == "paper"):
        found = paper.answered(s, here, typed, numbered)
        if found is not None:
            return found
    if middle and middle.item is not None:
        if not could_be_seen(s, here.chat, f"item/{middle.item}", typed.at):
            return _too_quick(s, here, typed, middle.item)
        return answer(s, here, typed, days.item(s, middle.item), typed.text)
    if waits_for == "paper" and middle:
        return paper.unnumbered(s, here, typed, middle.ref)
    if waits_for == "go" and middle:
        return _instead_of_a_press(s, here, middle.ref)
    return _which(s, here)


def _to_message(s: Session, here: Here, typed: Typed, about: str) -> list[Message]:
    kind, _, ref = about.partition("/")
    if kind == "item":
        sent = days.find_item(s, int(ref))
        if sent is not None and sent.student == here.student.id:
            return answer(s, here, typed, sent, typed.text)
    if kind == "sheet":
        return warm_up.answer_sheet(s, here, typed, int(ref))
    if kind == "paper":
        numbered = split_numbered(typed.text)
        found = paper.answered(s, here, typed, numbered) if numbered else None
        return found if found is not None else paper.unnumbered(s, here, typed, int(ref))
    return _which(s, here)


def _too_quick(s: Session, here: Here, typed: Typed, coming: ItemId) -> list[Message]:
    """The reply was written before the item in focus was on the screen: it was meant for the one before."""
    before = newest_shown(s, here.chat, typed.at)
    if before is None or before == f"item/{coming}":
        return [AlreadyDone(to=here.chat)]
    sent = days.find_item(s, int(before.partition("/")[2]))
    if sent is None or sent.student != here.student.id or sent.state is ItemState.DONE:
        return [AlreadyDone(to=here.chat, item=coming)]
    return answer(s, here, typed, sent, typed.text)


def answer(s: Session, here: Here, typed: Typed, sent: Sent, text: str) -> list[Message]:
    """Grade a reply that is meant for one item."""
    day = days.day(s, sent.day)
    if sent.part is Part.TEST:
        from bot.school_day import assessment  # the test's own rules

        return assessment.note_answer(s, here, day, sent, typed, text)
    if sent.part is Part.PLACEMENT:
        return placing.note_answer(s, here, day, sent, typed, text)
    if sent.state is ItemState.DONE:
        return _already(s, here, day, sent)
    graded = grade(s, here, day, sent, typed, text)
    return say(s, here, day, graded, asked_in_words=True)


def say(
    s: Session, here: Here, day: SchoolDay, graded: Graded, *, asked_in_words: bool = False
) -> list[Message]:
    """What a student hears on one graded reply."""
    sent, judgement = graded.sent, graded.judgement
    key = sent.item.key
    read_as = "" if sent.item.choices else read_back(graded.typed, judgement)
    match judgement.verdict:
        case Verdict.RIGHT:
            return after_right(s, here, day, sent)
        case Verdict.HELP:
            return stuck.hint(s, here, sent, in_words=asked_in_words)
        case Verdict.UNIT:
            return [
                SayUnit(
                    to=here.chat,
                    item=sent.id,
                    unit=key.unit or "",
                    reason=judgement.reason or "unit-missing",
                    read_as=read_as,
                )
            ]
        case Verdict.FORM if not graded.over:
            return [
                SayForm(
                    to=here.chat,
                    item=sent.id,
                    form=key.form,
                    reason="not-started" if judgement.not_started else judgement.reason,
                    read_as=read_as,
                    counted=not graded.free,
                    choices=sent.item.choices,
                )
            ]
        case Verdict.UNREADABLE:
            return [
                CannotRead(
                    to=here.chat,
                    item=sent.id,
                    trouble=judgement.trouble or "",
                    read_as=read_as,
                    examples=examples(key.form),
                    again=sent.unread >= 2,
                    choices=sent.item.choices,
                )
            ]
        case _:
            return after_wrong(s, here, day, graded)


def after_right(s: Session, here: Here, day: SchoolDay, sent: Sent) -> list[Message]:
    """Right: a tick, and the next item. An earlier day's item is counted for that day."""
    lead = Lead(kind="right-later" if sent.tries else "right", place=sent.place)
    newest = days.newest_day(s, here.student.id)
    if newest is not None and newest.id != day.id:
        return [Counted(to=here.chat, right=True, ask=short(sent.item.ask)), *_back_to(s, here, newest)]
    if day.stage is Stage.DONE and sent.part is Part.WARM_UP:
        return [AlreadyDone(to=here.chat, right=True, lead=lead)]
    return onward(s, here, days.day(s, day.id), lead)


def _back_to(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """After an aside, the item that the chat was in the middle of; nothing where the day isn't under way."""
    if day.stage in (Stage.PUSHED, Stage.DONE):
        focus.clear_focus(s, here.chat, here.student.id)
        return []
    return onward(s, here, day)


def after_wrong(s: Session, here: Here, day: SchoolDay, graded: Graded) -> list[Message]:
    """Not that one: what is true, one thing to look at, and the buttons; after the last try, together."""
    sent, judgement = graded.sent, graded.judgement
    read_as = "" if sent.item.choices else read_back(graded.typed, judgement)
    if sent.part is Part.KNOWN:
        days.change_item(s, sent.id, state=ItemState.DONE)
        return onward(s, here, days.day(s, day.id))
    if graded.over:
        focus.set_focus(s, here.chat, here.student.id, "go", here.at, ref=day.id)
        return [
            Together(to=here.chat, item=sent.id, read_as=read_as, lesson=sent.lesson),
        ]
    looked_over = working.say(s, here, graded)
    if looked_over is not None:
        return looked_over
    says = {misstep.name: misstep.say for misstep in sent.item.key.missteps}
    name = judgement.misstep or ""
    second = sent.tries >= 2
    hint = ""
    if second and sent.hints < len(sent.item.hints):
        # The second miss starts the work: the hint that wasn't given yet comes by itself and costs nothing.
        hint = sent.item.hints[-1]
        days.change_item(s, sent.id, hints=len(sent.item.hints))
    limit = tries_of(sent)
    return [
        NotYet(
            to=here.chat,
            item=sent.id,
            read_as=read_as,
            misstep=says.get(name, ""),
            misstep_name=name,
            go=sent.tries,
            last_go=sent.tries == limit - 1,
            show=stuck.may_see_solution(sent),
            hint=hint,
            hints_left=0 if hint else len(sent.item.hints) - sent.hints,
            choices=sent.item.choices,
            said=bool(name) and _said_today(s, day, sent, name),
            lesson=sent.lesson,
        )
    ]


def _said_today(s: Session, day: SchoolDay, sent: Sent, misstep: str) -> bool:
    """Whether that misstep was named at another item, or an earlier try, of the day."""
    named = [
        attempt.misstep
        for tried in attempts.attempts_of_day(s, day.id).values()
        for attempt in tried
        if attempt.verdict is Verdict.WRONG
    ]
    return named.count(misstep) > 1


def _already(s: Session, here: Here, day: SchoolDay, sent: Sent) -> list[Message]:
    """The item is done: say so, and bring up what the chat is in the middle of."""
    right = sent.outcome is not None and sent.outcome.endswith("try")
    said: list[Message] = [AlreadyDone(to=here.chat, right=right, item=sent.id)]
    newest = days.newest_day(s, here.student.id)
    return said + (_back_to(s, here, newest) if newest is not None else [])


def _instead_of_a_press(s: Session, here: Here, day_id: int) -> list[Message]:
    """Something was typed where a button was offered: take it as the press."""
    day = days.find_day(s, day_id)
    if day is None:
        return _which(s, here)
    if day.stage is Stage.CARD:
        days.change_day(s, day.id, stage=Stage.GUIDED)
    return onward(s, here, days.day(s, day.id))


def in_focus(s: Session, here: Here) -> Sent | None:
    """The item that the chat is in the middle of, or None."""
    middle = focus.focus(s, here.chat, here.student.id)
    return days.item(s, middle.item) if middle and middle.item is not None else None


def _which(s: Session, here: Here) -> list[Message]:
    day = days.newest_day(s, here.student.id)
    if day is None:
        return [NothingNow(to=here.chat, why="not-yet")]
    if day.stage is Stage.PUSHED:
        return [NothingNow(to=here.chat, why="not-started", day=day.id)]
    shown_now = [
        each
        for each in days.items_of(s, day.id)
        if each.state is ItemState.SHOWN and each.part is not Part.TEST
    ]
    if not shown_now:
        return [NothingNow(to=here.chat, why="done", day=day.id)]
    return [
        WhichItem(to=here.chat, items=tuple((each.id, short(each.item.ask, 40)) for each in shown_now[:6]))
    ]
