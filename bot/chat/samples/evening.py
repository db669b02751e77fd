"""Samples of what a parent reads of a day."""

from __future__ import annotations

from bot.chat.samples.day import DAY, ITEM, TO, WREN
from bot.messages import (
    Accepted,
    Digest,
    DigestLine,
    Message,
    OpenInFull,
    OpenItem,
    StillHard,
    Talk,
    TalkNoted,
    Unreachable,
    WeekPicture,
    WrittenEnds,
)
from bot.vocabulary import ItemId

AREA = "Perimeter and area of rectangles"
OPEN = OpenItem(
    item=ITEM,
    title=AREA,
    ask="A garden is 9 m long and 4 m wide. How many metres of fence go around it?",
    answered="36",
    misstep="Is the fence around the garden, or all over it?",
    answer="26",
)
TALK = Talk(
    skill="rectangle-perimeter",
    title=AREA,
    item=ITEM,
    ask=OPEN.ask,
    say="Is the fence around the garden, or all over it?",
    draw="rectangle",
)


def _digest(**changes: object) -> Digest:
    fields: dict[str, object] = {
        "to": TO,
        "day": DAY,
        "student": WREN,
        "name": "Wren",
        "date": "2026-09-16",
        "variant": "worked",
        "first_try": 9,
        "later_try": 2,
        "tries": 5,
        "unsolved": 1,
        "out_of": 12,
        "lesson": "Negative numbers",
        "well": "Order of operations",
        "open_items": (OPEN,),
        "talk": (TALK,),
        "facts": (11, 12),
        "week": "dp...ff",
        "tomorrow": "Factors and divisibility",
        "tomorrow_date": "2026-09-17",
        "minutes": 38,
    }
    return Digest(**{**fields, **changes})  # type: ignore[arg-type]


SAMPLES: tuple[Message, ...] = (
    _digest(),
    _digest(
        variant="worked",
        enough=True,
        untouched=4,
        first_try=5,
        later_try=1,
        tries=2,
        unsolved=2,
        open_items=(
            OPEN,
            OpenItem(
                item=ItemId(41), title="Negative numbers", ask="Which is greater, -8 or -3?", put_right=True
            ),
        ),
        more_open=1,
        talk=(TALK, Talk(skill="order-integers", title="Negative numbers", item=ItemId(41), ask="")),
        per_minute=14.5,
        best=16.0,
        late_answers=2,
        late_right=1,
        note="Lovely drawing on Tuesday, Wren.",
        accepted=("Negative numbers",),
    ),
    _digest(
        variant="all-right", first_try=12, later_try=0, tries=0, unsolved=0, open_items=(), talk=(), well=""
    ),
    _digest(
        variant="nothing-started",
        first_try=0,
        later_try=0,
        unsolved=0,
        untouched=12,
        open_items=(),
        talk=(),
        facts=None,
        lesson="",
        week="dn...ff",
    ),
    _digest(variant="day-off", open_items=(), talk=(), facts=None, lesson="", out_of=0),
    _digest(variant="only-paper", paper=True, minutes=0, facts=None),
    _digest(
        variant="paper-waiting",
        paper=True,
        minutes=0,
        facts=None,
        open_items=(),
        talk=(),
        well="",
        unsolved=0,
    ),
    _digest(
        variant="test-begun", open_items=(), talk=(), facts=None, lesson="", well="", unsolved=0, out_of=0
    ),
    _digest(variant="our-fault", open_items=(), talk=(), facts=None, lesson="", out_of=0, tomorrow=""),
    _digest(variant="test", first_try=17, later_try=0, unsolved=3, out_of=20, on_demand=True),
    _digest(variant="only-begun", first_try=0, later_try=0, unsolved=0, untouched=12, open_items=(), talk=()),
    DigestLine(to=TO, day=DAY, student=WREN, name="Juniper"),
    OpenInFull(
        to=TO, day=DAY, name="Wren", items=(OPEN, OpenItem(item=ItemId(41), title=AREA, ask="?", answer="12"))
    ),
    OpenInFull(to=TO, day=DAY, name="Wren", items=()),
    *(TalkNoted(to=TO, how=how, name="Wren") for how in ("did-it", "still-hard", "not-tonight")),
    TalkNoted(to=TO, how="still-hard", name="Wren", tutor="Ines"),
    StillHard(to=TO, student="Wren", household="Bramble", title=AREA),
    *(WrittenEnds(to=TO, student="Wren", household="Bramble", lessons=n) for n in (0, 1, 4)),
    Unreachable(to=TO, name="Tove", household="Bramble"),
    Accepted(to=TO, ask="Write 12/18 in simplest form.", typed="twothirds", tutor="Ines"),
    WeekPicture(
        to=TO,
        student=WREN,
        name="Wren",
        monday="2026-09-14",
        signs="dp...ff",
        days=(("2026-09-14", 9, 2, 1, 0), ("2026-09-15", 5, 1, 0, 6)),
    ),
)
