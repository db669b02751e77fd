"""Samples of what a tutor hears of items and lessons of their own."""

from __future__ import annotations

from bot.chat.samples.day import DAY, TO, WREN
from bot.chat.samples.day import ITEM as ITEM_ID
from bot.messages import (
    Changed,
    DayReady,
    DoubtRow,
    DoubtShown,
    ExportedPhotos,
    FaultRow,
    FileComes,
    HandoverAsked,
    HandoverTold,
    Line,
    Message,
    OwnFaults,
    OwnListed,
    OwnRow,
    OwnShown,
    Preview,
    ReportNoted,
    TestCountedAgain,
    TestReopened,
    TestWaits,
)

ITEM = "3 sacks of flour cost 12 coins. What does one sack cost? // 4 // whole"
_HEAD = Line("line-day-of", {"name": "Wren", "date_day": "2026-09-15"})
_IN = Line("line-own-in", {"ask": "3 sacks of flour cost 12 coins. What does one sack cost?", "answer": "4"})
_TEST: dict[str, str | int | list[str]] = {"name": "Wren", "title": "Test 1", "date_day": "2026-09-15"}
_LESSON = Line("line-own-lesson", {"name": "Wren", "title": "Flour by the sack", "date_day": "2026-09-15"})

SAMPLES: tuple[Message, ...] = (
    Preview(
        to=TO,
        change=31,
        lines=(_HEAD, _IN),
        notes=(Line("note-own-like", {"examples": "12,  305,  1,250"}), Line("note-own-instead")),
    ),
    Changed(to=TO, change=31, lines=(_HEAD, _IN)),
    Preview(
        to=TO,
        change=32,
        lines=(
            _LESSON,
            Line("line-own-card", {"text": "A sack holds the same amount each time. So two sacks hold …"}),
            Line("line-own-draw", {"ask": "A sack holds 12 kg. How much is in 3 sacks?", "answer": "36"}),
        ),
        notes=(
            Line("note-own-proved", {"count": 3, "draws": 150}),
            Line("note-own-look", {"line": 1, "what": "The card has 40 words; 60 to 120 are wanted."}),
        ),
    ),
    Preview(
        to=TO,
        change=33,
        lines=(Line("line-own-version", {"n": 3, "title": "Flour by the sack"}),),
        notes=(Line("note-own-give"), Line("note-own-who", {"words": "wern"})),
    ),
    Preview(
        to=TO,
        change=34,
        lines=(
            Line("line-own-choice", {"ask": "Is 7 prime?", "names": ["yes", "no"], "answer": "yes"}),
            Line("line-own-kept", {"title": "Flour by the sack"}),
            Line("line-own-back", {"n": 3, "title": "Flour by the sack", "v": 1, "before": 2}),
            Line("line-own-stays"),
            Line("line-own-away", {"n": 3, "title": "Flour by the sack"}),
        ),
    ),
    OwnListed(to=TO),
    OwnListed(
        to=TO,
        rows=(OwnRow(3, "lesson", "Flour by the sack", 2, 2), OwnRow(4, "item", "3 sacks of flour cost 12…")),
    ),
    OwnShown(
        to=TO,
        own=4,
        what="item",
        title="3 sacks of flour cost 12…",
        text=ITEM,
        versions=((1, "2026-09-14"),),
        students=((WREN, "Wren"),),
    ),
    OwnShown(
        to=TO,
        own=3,
        what="lesson",
        title="Flour by the sack",
        text="---\ntitle: Flour by the sack\nobjective: Say how much is in some sacks.\n---\n\n# Card\n\nA sack",
        more=True,
        version=2,
        versions=((1, "2026-09-14"), (2, "2026-09-15")),
        students=((WREN, "Wren"),),
    ),
    OwnFaults(
        to=TO,
        title="flour-by-the-sack.md",
        rows=(
            FaultRow(39, "q is never drawn.", "Add a line for q under draw.", "answer: a + q"),
            FaultRow(0, "The part # Card is missing.", "The parts of a lesson are: Card, Items."),
        ),
        more=2,
    ),
    OwnFaults(to=TO, title="", rows=(FaultRow(1, "There is no answer.", "question // answer", "3 sacks"),)),
    FileComes(to=TO, name="flour-by-the-sack.md"),
    FileComes(to=TO, name="flour-by-the-sack.md", full=True),
    Preview(
        to=TO,
        change=35,
        lines=(
            Line("line-test", {**_TEST, "count": 20, "minutes": 40}),
            Line("line-second", {**_TEST, "count": 8, "minutes": 16}),
            Line("line-reopen", {"name": "Wren"}),
            Line("line-reopen-closed", {"name": "Sol", "date_day": "2026-09-14", "right": 14, "count": 20}),
        ),
        notes=(Line("note-test-set"), Line("note-reopen-closed")),
    ),
    TestWaits(to=TO, day=DAY, name="Wren", title="Test 1", items=8, minutes=16, second=True),
    TestReopened(to=TO, day=DAY, name="Wren"),
    TestReopened(to=TO, day=DAY, name="Wren", date="2026-09-14"),
    *(
        TestCountedAgain(
            to=TO, day=DAY, name="Wren", date="2026-09-14", right=18, out_of=20, was=was, shared=shared
        )
        for was in (14, None)
        for shared in (False, True)
    ),
    TestCountedAgain(
        to=TO, day=DAY, name="Wren", date="2026-09-14", right=18, out_of=20, was=14, button=False
    ),
    Preview(
        to=TO,
        change=36,
        lines=(Line("line-handover", {"household": "Bramble", "names": ["Sol", "Wren"]}),),
        notes=(Line("note-handover"),),
    ),
    ExportedPhotos(
        to=TO,
        household="Bramble",
        filename="evensum-2026-09-14-photos-1.zip",
        photos=(("000/1.jpg", "2026-09-14 Wren 1"),),
    ),
    HandoverAsked(to=TO, offer=2, household="Bramble", students=("Sol", "Wren"), tutor="Ines"),
    *(
        HandoverTold(to=TO, why=why, household="Bramble", tutor="Corin")
        for why in ("taken", "given", "parent", "left", "own", "gone")
    ),
    ReportNoted(to=TO, item=ITEM_ID, tutor="Ines"),
    ReportNoted(to=TO, item=ITEM_ID, tutor="Ines", again=True),
    DoubtShown(
        to=TO,
        row=DoubtRow(
            "reported",
            "d3",
            "Wren (Bramble)",
            "Times tables",
            "Work out 7 × 8.",
            "56",
            ("54",),
            7,
            "2026-09-14",
            excuse="#3 2 2026-09-14",
        ),
        left=1,
    ),
    DoubtShown(
        to=TO,
        row=DoubtRow(
            "working", "d4", "Sol (Bramble)", "Two-step equations", "3x + 5 = 20", "5", since="2026-09-14"
        ),
        left=1,
    ),
    DoubtShown(
        to=TO,
        row=DoubtRow(
            "many-missed", "d5", "", "Times tables", "7 × 8", "56", ("54", "48"), since="2026-09-14", count=3
        ),
        left=0,
    ),
    DayReady(to=TO, day=DAY, name="Wren", day_kind="second-look", minutes=20),
)
