"""Samples of what a tutor hears on a command."""

from __future__ import annotations

from bot.chat.samples.day import ITEM, TO, WREN
from bot.messages import (
    AgendaPoint,
    AgendaShown,
    CannotUndo,
    Changed,
    ChangesShown,
    Choose,
    CommandShown,
    CommandsShown,
    DayRow,
    DayShown,
    DaysShown,
    DoubtRow,
    DoubtShown,
    FamilyChanged,
    FromTutor,
    HoldsShown,
    ItemLine,
    LeftAsIs,
    Line,
    MapShown,
    Message,
    NeedRow,
    NeedsShown,
    NoDoubts,
    PaceShown,
    PeopleShown,
    PersonRow,
    PlanShown,
    Preview,
    RecordShown,
    TakenBack,
    WrongCommand,
)
from bot.vocabulary import StudentId

TITLE = "Order of operations"
ASK = "Wren buys 3 sacks of flour for 4 coins each and a bun for 2. How many coins is that?"
OUT = Line("line-out", {"title": TITLE, "ask": "Work out 3 + 4 × 2."})
DAY = Line("line-day-of", {"name": "Wren", "date_day": "2026-09-15"})
WEEK = Line("line-week", {"name": "Sol", "week": "1111200", "week_before": "1111110"})
OFF = Line(
    "line-off", {"names": ["Sol", "Wren"], "date_from": "2026-12-24", "date_to": "2027-01-01", "days": 5}
)
ROW = DayRow(WREN, "Wren", "Bramble", "working", lesson=TITLE, done=5, out_of=8, first_try=4, open=1)
ITEMS = (
    ItemLine("g1", "guided", TITLE, "Work out 20 - 2 × 3.", stands="first-try"),
    ItemLine("1", "review", "Times tables", "Work out 7 × 8.", stands="unsolved", typed="54"),
    ItemLine("2", "review", TITLE, ASK, stands="waiting", with_tutor=True),
)

SAMPLES: tuple[Message, ...] = (
    Preview(
        to=TO,
        change=3,
        lines=(DAY, OUT),
        notes=(Line("note-minutes", {"name": "Wren", "minutes": 42, "family": 45}),),
    ),
    Preview(
        to=TO,
        change=4,
        lines=(Line("line-student", {"name": "Linnet", "household": "Hazel"}),),
        notes=(Line("note-own-phone"),),
        ways=(("", "button-parents-phone"), ("5", "button-own-phone")),
    ),
    Preview(to=TO, change=6, lines=(OFF,), side="f"),
    Changed(to=TO, change=3, lines=(DAY, OUT)),
    Changed(
        to=TO,
        change=7,
        lines=(Line("line-parent", {"name": "Robin", "household": "Hazel"}),),
        link="https://t.me/evensum_bot?start=aB3-dE5_gH7iJ9kL1mN3pQ",
        name="Robin",
    ),
    Changed(to=TO, change=3, lines=(WEEK,), already=True),
    LeftAsIs(to=TO),
    TakenBack(to=TO, lines=(DAY, OUT), kept=(Line("kept-step"),)),
    *(CannotUndo(to=TO, why=why) for why in ("none", "late", "gone", "final", "old", "stale")),
    ChangesShown(
        to=TO, rows=((3, "2026-09-14T15:00:00+00:00", (OFF,)), (2, "2026-09-14T14:00:00+00:00", (WEEK,)))
    ),
    Choose(
        to=TO,
        question=Line("ask-did-you-mean", {"name": "wrne"}),
        options=("Wren (Bramble)",),
        ref="12",
    ),
    WrongCommand(
        to=TO,
        command="minutes",
        why=Line("why-minutes", {"least": 15, "most": 120}),
        examples=("/minutes wren 30",),
    ),
    CommandsShown(to=TO, groups=(("look", ("needs", "plan")), ("next", ("drop",))), roles=("tutor",)),
    CommandShown(to=TO, command="drop", examples=("/drop wren 2", "/drop wren 2 g1")),
    NeedsShown(
        to=TO,
        rows=(
            NeedRow(
                WREN,
                "Wren",
                "Bramble",
                (
                    Line("need-doubts", {"count": 2}),
                    Line("need-misstep", {"count": 3, "title": TITLE, "say": "Which goes first here?"}),
                ),
            ),
            NeedRow(StudentId(9), "Juniper", "Quill", (Line("need-not-opened", {"count": 3}),)),
        ),
        quiet=1,
        doubts=2,
    ),
    NeedsShown(to=TO, rows=(), quiet=3),
    DaysShown(to=TO, rows=(ROW, DayRow(StudentId(9), "Juniper", "Quill", "pushed"))),
    DaysShown(to=TO, rows=(ROW,), side="f"),
    DaysShown(to=TO, rows=(ROW,), side="t", pages=2),
    NeedsShown(to=TO, rows=(), quiet=3, pages=1),
    DayShown(to=TO, row=ROW, date="2026-09-14", minutes=21, items=ITEMS, week="d......"),
    PlanShown(
        to=TO,
        student=WREN,
        name="Wren",
        date="2026-09-15",
        day_kind="lesson",
        lesson=TITLE,
        minutes=41,
        family_minutes=45,
        items=ITEMS,
        notes=(Line("wish-pin", {"title": "Times tables"}), Line("note-test", {"n": 1})),
    ),
    PlanShown(
        to=TO,
        student=WREN,
        name="Wren",
        date="2026-09-18",
        day_kind="light",
        minutes=20,
        family_minutes=45,
    ),
    MapShown(
        to=TO,
        student=WREN,
        name="Wren",
        units=(
            ("Before we start", ("Times tables",), ("Rounding",), ()),
            ("Whole numbers", (), ("Rounding",), (TITLE,)),
            ("Decimals", (), (), (TITLE, "Rounding")),
        ),
        lesson=TITLE,
    ),
    RecordShown(
        to=TO,
        item=ITEM,
        student=WREN,
        name="Wren",
        n="3",
        date="2026-09-14",
        title=TITLE,
        ask=ASK,
        answer="14",
        outcome="unsolved",
        why="recent",
        attempts=(
            (41, "18", "18", "wrong", "Which of the operations here goes before the others?", 0, False),
            (42, "14 coins", "14", "right", "", 1, True),
        ),
    ),
    PaceShown(
        to=TO,
        student=WREN,
        name="Wren",
        lesson=TITLE,
        n=2,
        out_of=130,
        written=40,
        week="1111200",
        taken=14,
        planned=16,
        early="2027-05-21",
        late="2027-06-18",
        left=38,
    ),
    PeopleShown(
        to=TO,
        households=(
            (
                "Bramble",
                "Europe/London",
                1140,
                True,
                (PersonRow("Tove", "parent", "own"), PersonRow("Wren", "student", "shared")),
            ),
            ("Hazel", "Europe/London", 1140, False, ()),
        ),
    ),
    DoubtShown(
        to=TO,
        row=DoubtRow(
            kind="asked",
            ref="12",
            student="Wren (Bramble)",
            title=TITLE,
            ask=ASK,
            answer="14",
            typed=("18", "idk really"),
            attempt=42,
            since="2026-09-14",
            count=3,
        ),
        left=2,
    ),
    DoubtShown(
        to=TO,
        row=DoubtRow(
            kind="unreadable",
            ref="13",
            student="Sol (Bramble)",
            title=TITLE,
            ask=ASK,
            answer="14",
            typed=("a bit & more",),
            since="2026-09-14",
        ),
        left=0,
    ),
    NoDoubts(to=TO),
    AgendaShown(
        to=TO,
        student=WREN,
        name="Wren",
        well=("Times tables",),
        points=(AgendaPoint(TITLE, ASK, "18", "Which goes first here?", "Work out 5 + 2 × 6.", "17"),),
    ),
    AgendaShown(to=TO, student=WREN, name="Wren"),
    FromTutor(to=TO, tutor="Ines", text="See you on Thursday."),
    FromTutor(to=TO, tutor="Ines", text="Lovely drawing today.", name="Juniper"),
    HoldsShown(
        to=TO,
        student=WREN,
        name="Wren",
        rows=(
            (
                3,
                Line(
                    "holds-pin",
                    {
                        "title": TITLE,
                        "date_from": "2026-09-15",
                        "date_to": "2026-09-28",
                        "key_days": "holds-days",
                    },
                ),
            ),
            (4, Line("holds-days-off", {"date_from": "2026-12-24", "key_days": "holds-days-one"})),
            (
                5,
                Line(
                    "holds-read-as",
                    {"typed": "seven", "date_from": "2026-09-14", "key_days": "holds-days-open"},
                ),
            ),
        ),
    ),
    HoldsShown(to=TO, student=WREN, name="Wren", rows=()),
    FamilyChanged(to=TO, name="Tove", household="Bramble", lines=(OFF,)),
    FamilyChanged(to=TO, name="Tove", household="Bramble", lines=(OFF,), back=True),
)
