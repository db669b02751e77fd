"""Samples of what is said around the year as a whole."""

from __future__ import annotations

from bot.chat.samples.day import DAY, ITEM, TO
from bot.messages import (
    Digest,
    ItemShown,
    Lead,
    Message,
    PlacementDone,
    PlacementFound,
    PlacementPaused,
    PlacementUnread,
)
from bot.vocabulary import LessonId, Part, StudentId

LOOK = Digest(
    to=TO, day=DAY, student=StudentId(7), name="Wren", date="2026-09-15", variant="placing", questions=9
)

SAMPLES: tuple[Message, ...] = (
    ItemShown(
        to=TO,
        item=ITEM,
        part=Part.PLACEMENT,
        place=4,
        out_of=4,
        ask="What is `2/3 + 1/4`?",
        form="fraction-simplest",
        lesson=LessonId("adding-and-subtracting-unlike-fractions"),
        lead=Lead(kind="not-met"),
    ),
    PlacementUnread(to=TO, item=ITEM, form="fraction-simplest", examples=("3/4", "1/2", "7")),
    PlacementUnread(to=TO, item=ITEM, form="yes-no"),
    PlacementPaused(to=TO, day=DAY, asked=9),
    PlacementDone(to=TO, name="Wren", asked=14),
    PlacementFound(
        to=TO,
        key="placed/1",
        student=StudentId(7),
        name="Wren",
        household="Bramble",
        lesson="Ratios",
        n=29,
        asked=14,
        sure=91,
        patch=("Adding and subtracting unlike fractions", "Long division and remainders"),
        change=5,
        safer="Adding integers",
        safer_n=26,
    ),
    PlacementFound(
        to=TO,
        key="placed/2",
        student=StudentId(7),
        name="Wren",
        household="Bramble",
        lesson="",
        n=0,
        asked=12,
        sure=88,
    ),
    LOOK,
    Digest(
        to=TO,
        day=DAY,
        student=StudentId(7),
        name="Wren",
        date="2026-09-15",
        variant="placed",
        questions=14,
        start="Ratios",
        sure=74,
    ),
    Digest(
        to=TO, day=DAY, student=StudentId(7), name="Wren", date="2026-09-15", variant="placed", questions=12
    ),
)
