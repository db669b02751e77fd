"""Ways out of a day: small day, enough for today, finished on the next morning."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.answers.around import small, trimmed
from bot.messages import BreakTaken, Message, NotForYou, SmallDay
from bot.planner.plan import DayKind
from bot.records import days
from bot.records.days import ItemState, SchoolDay, Stage
from bot.school import effects
from bot.school_day import placing
from bot.school_day.asking import Here
from bot.school_day.onward import done, onward
from bot.vocabulary import ItemId, Part


def make_small(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Make a day small: no lesson, six review items. What was done stays done; the lesson waits."""
    if day.kind == DayKind.PLACEMENT and day.stage is not Stage.DONE:
        return placing.stop(s, here, day)
    if day.stage is Stage.DONE or day.small:
        return [SmallDay(to=here.chat, day=day.id, review=0, already=True)]
    effects.make_small(s, day)
    left = days.count_items(s, day.id, Part.REVIEW)
    return [SmallDay(to=here.chat, day=day.id, review=left[1] - left[0])]


_STOP = frozenset(
    (
        "stop", "pause", "break", "enough", "quit", "i quit", "no more", "i want to stop", "can i stop",
        "can i stop now", "i need a break", "need a break", "can i have a break", "can i take a break",
        "can we stop", "take a break", "im tired", "i am tired", "so tired", "too tired",
        "i dont want to do this anymore", "i dont want to anymore", "im done for today", "done for today",
        "para", "alto", "pausa", "basta", "descanso", "ya no quiero", "no quiero mas", "no mas",
        "ya no quiero mas", "necesito un descanso", "quiero parar", "puedo parar", "quiero descansar",
        "estoy cansado", "estoy cansada", "me canse",
    )
)  # fmt: skip


def asks_to_stop(text: str) -> bool:
    """Whether the whole of a reply asks for a break or for an end."""
    return len(text) < 60 and trimmed(small(text)).strip(" ,.!?¿¡") in _STOP


def take_break(s: Session, here: Here, item: ItemId | None) -> list[Message] | None:
    """A break, with the ways on; None where no day is under way."""
    day = days.newest_day(s, here.student.id)
    if day is None or day.stage in (Stage.PUSHED, Stage.DONE):
        return None
    finished, out_of = days.count_items(s, day.id, Part.REVIEW)
    return [
        BreakTaken(
            to=here.chat,
            day=day.id,
            item=item,
            small=not day.small and day.stage in (Stage.WARM_UP, Stage.CARD, Stage.KNOWN, Stage.GUIDED),
            enough=day.stage is Stage.REVIEW and finished * 2 >= out_of,
        )
    ]


def enough(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Enough for today, from the middle of review on. What was not reached is no miss."""
    if day.kind == DayKind.PLACEMENT and day.stage is not Stage.DONE:
        return placing.stop(s, here, day)
    if day.stage is Stage.DONE:
        return [done(s, here, day)]
    finished, out_of = days.count_items(s, day.id, Part.REVIEW)
    if day.stage is not Stage.REVIEW or finished * 2 < out_of:
        return [NotForYou(to=here.chat, why="too-early")]
    days.change_day(s, day.id, stage=Stage.DONE, enough=True, ended_at=here.at)
    return [done(s, here, days.day(s, day.id))]


def take_up_again(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Go on with a day that was left, also on the next morning until its own day is started."""
    left = [
        each
        for each in days.items_of(s, day.id)
        if each.part in (Part.GUIDED, Part.REVIEW) and each.state in (ItemState.WAITING, ItemState.SHOWN)
    ]
    if not left:
        return [NotForYou(to=here.chat, why="gone")]
    if day.stage is Stage.DONE:
        days.change_day(s, day.id, stage=Stage.REVIEW, enough=False)
    return onward(s, here, days.day(s, day.id))
