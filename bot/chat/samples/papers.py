"""Samples of what families keep or print."""

from __future__ import annotations

import msgspec

from bot.chat.samples.day import TO, WREN
from bot.messages import (
    AdjustmentsShown,
    AskWritten,
    GraderTold,
    KeyPaper,
    LetterPaper,
    MapPicture,
    MarksShown,
    Message,
    MissedItem,
    MyBest,
    MyView,
    MyWeek,
    PagesShown,
    PagesWaiting,
    RecordDay,
    RecordLesson,
    RecordOf,
    RecordPaper,
    RecordSample,
    RecordsShown,
    RecordTables,
    RecordTest,
    SamplesShown,
    SheetPaper,
    SheetRow,
    UnitStanding,
    WaitingPage,
    WeekLetter,
    WeekLetterLine,
    WeekOf,
    WeekTest,
    YearSoFar,
)

WEEK = WeekOf(
    student=WREN,
    name="Wren",
    monday="2026-09-14",
    signs="dpdtdff",
    days=(
        ("2026-09-14", 6, 1, 1, 0),
        ("2026-09-15", 5, 1, 0, 4),
        ("2026-09-16", 9, 2, 1, 0),
        ("2026-09-18", 11, 1, 0, 0),
    ),
    opened=5,
    planned=5,
    minutes=176,
    untimed=1,
    learned=("Negative numbers", "Factors and divisibility", "Primes"),
    steady=(("Place value", 14), ("Rounding whole numbers", 6), ("Primes", 2)),
    shaky=(("Perimeter and area of rectangles", 9), ("Negative numbers", 3)),
    tests=(
        WeekTest(
            title="Test 1",
            date="2026-09-17",
            right=18,
            out_of=20,
            missed=(
                MissedItem("Negative numbers", "Work out `-3 - 5`.", "2", "-8"),
                MissedItem("Order of operations", "Work out `2 + 3 * 4^2`.", "", "50"),
            ),
        ),
    ),
    coming=(
        ("2026-09-21", "lesson", "Greatest common factor", ""),
        ("2026-09-22", "lesson", "Least common multiple", ""),
        ("2026-09-23", "test", "", "Test 2"),
        ("2026-09-25", "light", "", ""),
    ),
    early="2027-05-28",
    late="2027-07-02",
)
YEAR = YearSoFar(
    start="2026-09-14",
    end="2027-09-14",
    lessons=128,
    done=(("2026-09-14", 0), ("2026-10-15", 18), ("2026-12-11", 47), ("2027-01-29", 63)),
    early="2027-05-28",
    late="2027-07-02",
)

ROWS = (
    SheetRow(
        1,
        "A garden is `9` m long and `4` m wide. How many metres of fence go around it?",
        "Perimeter and area of rectangles",
        {"figure": "rectangle", "width": "9 m", "height": "4 m"},
        answer="26",
        unit="m",
        steps=(("9 + 4 + 9 + 4", "All four sides, once around."), ("26", "")),
    ),
    SheetRow(
        2, "Which is greater?", "Comparing fractions", None, ("`2/3`", "`3/5`", "equal"), 0, answer="2/3"
    ),
    SheetRow(3, "Work out `-3 - 5`.", lines=3, answer="-8", steps=(("-3 + (-5)", "Add the opposite."),)),
    SheetRow(4, "Work out `17.5 * 3.2`.", "Multiplying decimals", lines=4, calculator=True, answer="56"),
)
SHEET = SheetPaper(to=TO, student=WREN, name="Wren", date="2026-09-15", rows=ROWS, fixed=True, side="f")

RECORD = RecordOf(
    student=WREN,
    name="Wren",
    household="Bramble",
    tutor="Ines",
    first="2026-09-14",
    last="2026-10-02",
    course="Pre-algebra at Harrow Mill",
    days=(
        RecordDay("2026-09-14", "lesson", ("Negative numbers",), 41, False, 16, 15),
        RecordDay("2026-09-15", "lesson", ("Order of operations", "Primes"), 0, True, 16, 14),
        RecordDay("2026-09-16", "test", (), 47),
        RecordDay("2026-10-02", "light", (), 24, False, 14, 14),
    ),
    lessons=(
        RecordLesson("2026-09-14", 1, "Numbers and number sense", "Negative numbers", ("6.NS.C.5",)),
        RecordLesson(
            "2026-09-15", 2, "Numbers and number sense", "Order of operations", ("6.EE.A.1", "5.OA.A.1")
        ),
        RecordLesson("2026-09-15", 3, "Numbers and number sense", "Primes", ("4.OA.B.4",)),
    ),
    tests=(RecordTest("2026-09-16", "Test 1", 17, 20),),
    hands_on=(("2026-09-15", "A number line across the room"),),
    standards=(
        ("4.OA.B.4", "Find factor pairs and multiples; tell primes from composites.", ("Primes",)),
        ("6.NS.C.5", "Use signed numbers for amounts with two directions.", ("Negative numbers",)),
    ),
    work=(
        RecordSample("2026-09-15", "Order of operations, Primes", "page one", "000/12.jpg"),
        RecordSample("2026-09-15"),
    ),
    units=(
        UnitStanding("Numbers and number sense", ("steady", "steady", "shaky", "not met", "not met")),
        UnitStanding("Ratios and rates", ("not met", "not met", "not met")),
    ),
    met_by=(("2026-09-14", 0), ("2026-09-14", 1), ("2026-09-15", 3)),
)
SAMPLES: tuple[Message, ...] = (
    WeekLetter(to=TO, key="week/7", week=WEEK),
    WeekLetter(
        to=TO,
        key="week/8",
        week=msgspec.structs.replace(WEEK, tests=(), coming=(), shaky=(), untimed=5, minutes=0),
        side="t",
    ),
    WeekLetter(to=TO, week=msgspec.structs.replace(WEEK, opened=0, days=(), learned=(), early="")),
    WeekLetterLine(to=TO, key="week/9", student=WREN, name="Wren", monday="2026-09-14"),
    LetterPaper(to=TO, week=WEEK, year=YEAR, tutor="Ines", made="2026-09-19"),
    LetterPaper(
        to=TO,
        week=msgspec.structs.replace(
            WEEK, tests=(msgspec.structs.replace(WEEK.tests[0], right=20, missed=()),)
        ),
        year=None,
        tutor="Ines",
        made="2026-09-19",
        size="letter",
        big=True,
    ),
    SHEET,
    msgspec.structs.replace(SHEET, size="letter", big=True, fixed=False, side="t"),
    KeyPaper(to=TO, student=WREN, name="Wren", date="2026-09-15", rows=ROWS),
    PagesShown(to=TO, name="Wren", date="2026-09-15", pages=(("AgACA1", "page one"), ("AgACA2", ""))),
    PagesShown(to=TO, name="Wren", date="2026-09-15", pages=()),
    PagesWaiting(
        to=TO,
        rows=(
            WaitingPage(WREN, "Wren", "2026-09-14", items=12),
            WaitingPage(WREN, "Wren", "2026-09-15", photos=2, items=1),
            WaitingPage(WREN, "Wren", "2026-09-16", photos=1),
        ),
    ),
    PagesWaiting(
        to=TO,
        rows=tuple(WaitingPage(WREN, "Wren", f"2026-09-{n}", photos=1, items=2) for n in range(10, 26)),
        side="t",
    ),
    PagesWaiting(to=TO, rows=(), side="g"),
    RecordsShown(
        to=TO,
        student=WREN,
        name="Wren",
        first="2026-09-14",
        last="2027-06-11",
        opened=171,
        minutes=6712,
        on_paper=9,
        lessons=118,
        tests=22,
        hands_on=1,
        standards=74,
        samples=31,
    ),
    SamplesShown(
        to=TO,
        student=WREN,
        name="Wren",
        first="2026-09-14",
        last="2026-10-02",
        photos=("AgACA1", "AgACA2"),
        rows=(("2026-09-15", "Order of operations", "page one"), ("2026-09-16", "", "")),
        further=("2026-09-17", "2026-10-02"),
        left=7,
    ),
    SamplesShown(
        to=TO,
        student=WREN,
        name="Wren",
        first="2026-09-14",
        last="2026-10-02",
        photos=("AgACA1",),
        rows=(("2026-09-15", "", ""),),
        further=("2026-10-02", "2026-10-02"),
        left=1,
        side="t",
    ),
    SamplesShown(to=TO, student=WREN, name="Wren", first="2026-09-14", last="2026-10-02", photos=(), rows=()),
    RecordPaper(to=TO, record=RECORD, made="2026-10-02"),
    RecordPaper(to=TO, record=RECORD, made="2026-10-02", handover=True, size="letter"),
    RecordTables(
        to=TO,
        name="Wren",
        first="2026-09-14",
        last="2026-10-02",
        files=(("tests.csv", b"date,test,right,items\r\n"), ("columns.txt", b"All files: CSV.\n")),
    ),
    MyView(to=TO, name="Wren", week="dp...ff", lessons=("Negative numbers", "Primes")),
    MyWeek(to=TO, name="Wren", monday=WEEK.monday, signs=WEEK.signs, days=WEEK.days),
    MyBest(
        to=TO,
        name="Wren",
        facts=(12, 12),
        per_minute=16.5,
        day=("2026-09-18", 11, 12),
        turned=("Negative numbers",),
    ),
    MyBest(to=TO, name="Wren"),
    MapPicture(to=TO, name="Wren", units=RECORD.units, own=True),
    MapPicture(to=TO, name="Wren", units=RECORD.units),
    MarksShown(
        to=TO,
        student=WREN,
        name="Wren",
        date="2026-09-15",
        rows=(
            (1, "first-try", "", False),
            (2, "unsolved", "", False),
            (3, "unsolved", "12", False),
            (4, "", "", False),
        ),
        misses=(2, 3),
        entered=True,
        side="g",
    ),
    MarksShown(
        to=TO,
        student=WREN,
        name="Wren",
        date="2026-09-15",
        rows=((1, "first-try", "", False), (2, "later-try", "5", True)),
        entered=True,
    ),
    AskWritten(
        to=TO, student=WREN, name="Wren", date="2026-09-15", n=3, ask="Work out `3/4 + 1/6`.", side="g"
    ),
    GraderTold(to=TO, name="Wren", grader="Opa"),
    AdjustmentsShown(
        to=TO, student=WREN, name="Wren", off=("time", "big", "fewer", "dictated", "calculator")
    ),
    AdjustmentsShown(
        to=TO,
        student=WREN,
        name="Wren",
        on=("time", "big", "fewer", "dictated", "calculator"),
        timing=True,
        side="t",
    ),
    msgspec.structs.replace(SHEET, dictated=True, side=""),
)
