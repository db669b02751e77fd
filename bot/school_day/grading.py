"""Grade one reply to one item and note what follows from it; what to say is the caller's business."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sqlalchemy.orm import Session

from bot.answers import Judgement, judge, taught_form
from bot.happened import Typed
from bot.records import attempts, days
from bot.records.days import Fresh, ItemState, SchoolDay, Sent, Stage
from bot.school.drawing import draw_again
from bot.school.school import TRIES
from bot.school.standing import relearn
from bot.school.wishes import WishKind, in_force, of_kind
from bot.school_day.asking import Here
from bot.vocabulary import Outcome, Part, Verdict, Why

PAUSE = 600
"""Seconds: a longer gap between two replies was a pause, not work."""
COMEBACKS = 3
"""Fresh items of unsolved ones on the same day; further ones come tomorrow."""
ROOM = 2
"""A comeback needs that many other items before it, or it would be the same thought again."""


@dataclass(frozen=True, slots=True)
class Graded:
    """What was made of a reply. `sent` is the item as it stands now; `over`: no try is left."""

    sent: Sent
    judgement: Judgement
    free: bool
    typed: str = ""
    over: bool = False
    comes_back: bool = False


def tries_of(sent: Sent) -> int:
    """Tries at an item: three for typed answers; options minus one, at most two, for buttons."""
    return min(2, len(sent.item.choices) - 1) if sent.item.choices else TRIES


def grade(s: Session, here: Here, day: SchoolDay, sent: Sent, typed: Typed, text: str) -> Graded:
    """Judge a reply, store attempt and grading, and note how the item stands.

    Only a wrong value costs a try, and the question typed back a second time where the form is the skill.
    """
    judgement = judge(text, sent.item.key)
    if judgement.verdict is Verdict.RIGHT:
        judgement = _unless_turned_down(s, here, day, sent, text, judgement)
    elif judgement.verdict is not Verdict.HELP:
        judgement = _as_taught(s, here, day, sent, text, judgement)
    not_started = judgement.not_started
    free = judgement.verdict is not Verdict.WRONG and not (not_started and sent.not_started)

    keep(s, sent, typed, text, judgement, free=free)
    changes: dict[str, object] = {}
    match judgement.verdict:
        case Verdict.RIGHT:
            outcome = Outcome.LATER_TRY if sent.tries else Outcome.FIRST_TRY
            changes |= {"state": ItemState.DONE, "outcome": outcome, "unread": 0}
        case Verdict.UNREADABLE:
            changes |= {"unread": sent.unread + 1}
        case Verdict.HELP:
            changes |= {"helps": sent.helps + 1, "unread": 0}
        case _:
            changes |= {"unread": 0}
    if not_started:
        changes["not_started"] = True
    if judgement.verdict is not Verdict.RIGHT and not free:
        changes |= {"tries": sent.tries + 1, "outcome": Outcome.UNSOLVED}
        changes["missed_after_hint"] = sent.missed_after_hint or sent.hints > 0
    over = not free and sent.tries + 1 >= tries_of(sent) and judgement.verdict is not Verdict.RIGHT
    if over:
        changes["state"] = ItemState.DONE
    days.change_item(s, sent.id, **changes)
    after = replace(sent, **changes)  # type: ignore[arg-type]

    work(s, day, typed)
    if day.closed_at is not None and after.outcome is not sent.outcome:
        relearn(s, here.school, sent.student)
    comes_back = over and come_back(s, here, day, after)
    return Graded(after, judgement, free, text, over, comes_back)


def keep(s: Session, sent: Sent, typed: Typed, text: str, judgement: Judgement, *, free: bool) -> None:
    """Store a reply as it was typed, and what was made of it. `free`: it costs no try."""
    attempt = attempts.add_attempt(s, sent.id, typed.update, text[:4096], sent.hints, typed.at)
    attempts.add_grading(
        s,
        attempt,
        judgement.verdict,
        typed.at,
        read_as=judgement.read_as[:400],
        reason=judgement.reason,
        misstep=judgement.misstep,
        free=free,
    )


def read_back(text: str, judgement: Judgement) -> str:
    """What was read, where it looks unlike what was typed; nothing where it was plain."""
    return "" if _squeezed(judgement.read_as) == _squeezed(text) else judgement.read_as


def _squeezed(text: str) -> str:
    """Text without spaces, case and kinds of minus, times and divide signs."""
    same = str.maketrans({"−": "-", "–": "-", "×": "*", "·": "*", "÷": "/", "⁄": "/"})
    return "".join(text.translate(same).split()).lower()


def _unless_turned_down(
    s: Session, here: Here, day: SchoolDay, sent: Sent, text: str, before: Judgement
) -> Judgement:
    """A right answer that the tutor doesn't count from now on, at items of that kind."""
    for wish in of_kind(in_force(s, here.student, day.date), WishKind.TURNED_DOWN):
        if wish.what.get("template") == sent.template and wish.what.get("typed") == taught_form(text):
            return Judgement(Verdict.WRONG, read_as=before.read_as, reason="tutor")
    return before


def _as_taught(s: Session, here: Here, day: SchoolDay, sent: Sent, text: str, before: Judgement) -> Judgement:
    """Read a reply as the tutor taught for this household, if anything was taught."""
    taught = {
        taught_form(str(wish.what["typed"])): sent.item.key.answer
        for wish in of_kind(in_force(s, here.student, day.date), WishKind.READ_AS)
        if wish.what.get("expected") == sent.item.key.answer and wish.what.get("form") == sent.item.key.form
    }
    return judge(text, sent.item.key, taught) if taught else before


def work(s: Session, day: SchoolDay, typed: Typed) -> None:
    """Add the time since the last reply to the day's time at work, unless it was a pause."""
    gap = 0
    if day.last_reply_at is not None:
        gap = int((typed.at - day.last_reply_at).total_seconds())
    seconds = day.seconds + (gap if 0 < gap <= PAUSE else 0)
    days.change_day(s, day.id, seconds=seconds, last_reply_at=typed.at)


def come_back(s: Session, here: Here, day: SchoolDay, sent: Sent) -> bool:
    """Put a fresh item of the same kind at the end of today's review, if there is room; else tomorrow has it.

    Returns whether it comes today.
    """
    if day.closed_at is not None or day.stage is Stage.DONE or sent.part not in (Part.REVIEW, Part.GUIDED):
        return False
    review = days.items_of(s, day.id, Part.REVIEW)
    before = [each for each in review if each.state is not ItemState.DONE and each.id != sent.id]
    come_already = sum(1 for each in review if each.why is Why.COMEBACK)
    if len(before) < ROOM or come_already >= COMEBACKS or sent.why is Why.COMEBACK:
        return False
    item = draw_again(here.school, sent, day, again=1 + come_already)
    if item is None:
        return False
    place = days.last_place(s, day.id, Part.REVIEW) + 1
    fresh = Fresh(Part.REVIEW, place, item, Why.COMEBACK, dict(sent.because), comeback_of=sent.id)
    days.add_items(s, day.id, sent.student, [fresh])
    return True
