"""Samples of what is said around the year as a whole."""

from __future__ import annotations

import msgspec

from bot.chat.samples.day import DAY, ITEM, TO
from bot.messages import (
    CourseDone,
    DayDone,
    DayReady,
    DaysUnfinished,
    Digest,
    FinishShown,
    FoundationsPaper,
    HalfYearLook,
    ItemShown,
    Lead,
    Message,
    NothingNow,
    OffSeason,
    PlacementDone,
    PlacementFound,
    PlacementPaused,
    PlacementUnread,
    StudyList,
    WeekAhead,
)
from bot.vocabulary import LessonId, Part, StudentId

LOOK = Digest(
    to=TO, day=DAY, student=StudentId(7), name="Wren", date="2026-09-15", variant="placing", questions=9
)

FINISH = FinishShown(
    to=TO,
    student=StudentId(7),
    name="Wren",
    lesson="Ratios",
    n=29,
    out_of=128,
    taken=20,
    planned=24,
    early="2027-05-28",
    late="2027-07-02",
    wanted="2027-06-15",
)
HALF = HalfYearLook(
    to=TO,
    key="half-year/7",
    student=StudentId(7),
    name="Wren",
    household="Bramble",
    advice="leave-out-extras",
    wanted="2027-06-15",
    early="2027-06-18",
    late="2027-08-02",
    core_early="2027-05-28",
    core_late="2027-07-02",
    extras=("Cross-sections", "Two-way tables"),
    change=5,
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
    FINISH,
    msgspec.structs.replace(FINISH, own=True, wanted="2027-08-01"),
    msgspec.structs.replace(FINISH, wanted="2027-03-01", lesson=""),
    HALF,
    msgspec.structs.replace(HALF, advice="go-on", change=0),
    msgspec.structs.replace(HALF, advice="slow-down", change=0),
    msgspec.structs.replace(
        LOOK,
        variant="worked",
        first_try=9,
        out_of=12,
        later_try=3,
        half_year=("2027-05-28", "2027-07-02"),
        long_break=True,
    ),
    DayDone(
        to=TO, day=DAY, first_try=9, later_try=2, open=1, out_of=12, second="Ratios", catch_up=True, more=True
    ),
    DaysUnfinished(to=TO, key="unfinished/7", student=StudentId(7), name="Wren", household="Bramble", days=3),
    WeekAhead(
        to=TO,
        student=StudentId(7),
        name="Wren",
        rows=(
            ("2026-09-15", "lesson", "Ratios", 1, 1, "", 12, (("recent", 5), ("due", 4), ("yesterday", 2))),
            ("2026-09-16", "lesson", "Compound probability", 2, 2, "", 6, (("recent", 6),)),
            ("2026-09-17", "test", "", 1, 1, "Test 4", 0, ()),
            ("2026-09-18", "light", "", 1, 1, "", 14, (("coverage", 9), ("sure", 1))),
            ("2026-09-21", "review-only", "", 1, 1, "", 1, (("due", 1),)),
        ),
    ),
    OffSeason(to=TO, on=True),
    OffSeason(to=TO, on=False),
    StudyList(
        to=TO,
        key="study/7",
        test="Test 5",
        date="2026-10-21",
        new=("Ratios", "Adding integers"),
        again=("Ratios",),
        lessons=(LessonId("ratios"),),
    ),
    StudyList(to=TO, key="study/8", test="Test 1", date="2026-10-21"),
    msgspec.structs.replace(LOOK, variant="worked", first_try=9, out_of=9, study=("Test 5", ("Ratios",))),
    CourseDone(to=TO, key="course-done/7", student=StudentId(7), name="Wren", household="Bramble", side="f"),
    FoundationsPaper(
        to=TO,
        student=StudentId(7),
        name="Wren",
        made="2027-06-20",
        rows=(
            ({"en": "Fractions as numbers", "es": "Fracciones como números"}, "steady"),
            ({"en": "Signed numbers", "es": "Números con signo"}, "shaky"),
            ({"en": "Slope", "es": "Pendiente"}, "not-met"),
        ),
    ),
    NothingNow(to=TO, why="course-over"),
    DayReady(
        to=TO,
        day=DAY,
        name="Wren",
        day_kind="light",
        review=12,
        minutes=30,
        strand="Shapes and measures",
        strand_n=4,
        strands=5,
    ),
)
