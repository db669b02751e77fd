"""Commands of grown-ups that end in something to read, keep or print."""

from __future__ import annotations

from datetime import date, timedelta

from bot.messages import (
    KeyPaper,
    LetterPaper,
    Message,
    PagesShown,
    RecordPaper,
    RecordsShown,
    RecordTables,
    SamplesShown,
    SheetPaper,
    WeekLetter,
)
from bot.records import days, files, people
from bot.records.days import Stage
from bot.records.people import Student
from bot.school import dates
from bot.school.adjustments import adjust
from bot.school.asking import GRADER, Asked, Function
from bot.school.marks import marks
from bot.school.names import take_student
from bot.school.planning import open_date
from bot.school.record import photos_of, record_of, tables_of
from bot.school.sheets import Sheet, is_printed, paper_size, sheet_for, without_answers
from bot.school.waiting_pages import is_asked_for, waiting
from bot.school.weekly import week_of, year_so_far
from bot.school.when import Span, fold, take_dates

SIZES = {"a4": "a4", "us": "letter", "letter": "letter", "carta": "letter"}
BIG = frozenset({"big", "grande", "large"})
PDF = frozenset({"pdf", "print", "imprimir"})


CSV = frozenset({"csv", "spreadsheet", "tabla", "tablas"})
HANDOVER = frozenset({"handover", "entrega"})
PHOTOS = frozenset({"photos", "fotos"})
MOST_PHOTOS = 10
"""Photos in one message, as many as are kept a day."""
LONGEST = 3 * 366
"""Days that one record may reach over."""
AHEAD = timedelta(days=14)
"""How far ahead a sheet may be printed: the further, the less it knows of how the days until then go."""


class Wanted:
    """What a command about a paper asks for: whose, of which days, and how it is set."""

    def __init__(self, asked: Asked, *, past: bool) -> None:
        self.student, rest = take_student(asked)
        self.today = dates.today(self.student, asked.at)
        words = rest.split()
        folded = [fold(word) for word in words]
        self.size = next((SIZES[word] for word in folded if word in SIZES), paper_size(self.student))
        self.big = any(word in BIG for word in folded)
        self.pdf = any(word in PDF for word in folded)
        known = set(SIZES) | BIG | PDF
        left = " ".join(word for word, low in zip(words, folded, strict=True) if low not in known)
        self.span, self.left = take_dates(left, self.today, past=past)

    def only_dates(self, asked: Asked) -> Span | None:
        """The dates that were named, if nothing else was. Raises Unclear."""
        if self.left:
            raise asked.wrong("why-not-a-date", self.student, words=self.left[:60])
        return self.span


def letter(asked: Asked) -> list[Message]:
    """A week in a short message, or as a letter to print: of the week that a date lies in, else of this one."""
    wanted = Wanted(asked, past=True)
    span = wanted.only_dates(asked)
    on = span.first if span else wanted.today
    if on > wanted.today:
        raise asked.wrong("why-date-ahead", wanted.student, date_day=on.isoformat())
    week = week_of(asked.s, asked.school, wanted.student, dates.monday_of(on), asked.at)
    if not wanted.pdf:
        return [WeekLetter(to=asked.person.chat, week=week, side=asked.side)]
    return [
        LetterPaper(
            to=asked.person.chat,
            week=week,
            year=year_so_far(asked.s, asked.school, wanted.student, _end_of(on, wanted.today)),
            tutor=people.person_name(asked.s, wanted.student.tutor),
            made=wanted.today.isoformat(),
            size=wanted.size,
            big=wanted.big,
        )
    ]


def _end_of(on: date, today: date) -> date:
    sunday = dates.monday_of(on).toordinal() + 6
    return min(date.fromordinal(sunday), today)


def sheet(asked: Asked) -> list[Message]:
    """A day's review as a sheet to print: of the day that is named, else of the next one to come."""
    wanted = Wanted(asked, past=False)
    found, on = _sheet(asked, wanted)
    return [
        SheetPaper(
            to=asked.person.chat,
            student=wanted.student.id,
            name=wanted.student.name,
            date=on.isoformat(),
            rows=without_answers(found.rows),
            size=wanted.size,
            big=wanted.big or "big" in found.adjusted,
            dictated="dictated" in found.adjusted,
            fixed=found.fixed,
            side=asked.side,
        )
    ]


def key(asked: Asked) -> list[Message]:
    """The answers to a sheet, with the steps."""
    wanted = Wanted(asked, past=False)
    found, on = _sheet(asked, wanted)
    return [
        KeyPaper(
            to=asked.person.chat,
            student=wanted.student.id,
            name=wanted.student.name,
            date=on.isoformat(),
            rows=found.rows,
            size=wanted.size,
            big=wanted.big or "big" in found.adjusted,
        )
    ]


def _sheet(asked: Asked, wanted: Wanted) -> tuple[Sheet, date]:
    """The sheet of the day that is meant. Raises Unclear where that day has none."""
    student = wanted.student
    span = wanted.only_dates(asked)
    on = span.first if span else _day_meant(asked, student)
    made = days.day_on(asked.s, student.id, on)
    if made is None and not dates.has_school(asked.s, student, on):
        raise asked.wrong("why-no-school", student, name=student.name, date_day=on.isoformat())
    if made is None and (on < wanted.today or on > wanted.today + AHEAD):
        raise asked.wrong("why-no-sheet-then", student, name=student.name, date_day=on.isoformat())
    if made is None and asked.side == GRADER and not is_printed(asked.s, student, on):
        raise asked.wrong("why-not-printed", student, name=student.name, date_day=on.isoformat())
    found = sheet_for(asked.s, asked.school, student, on, asked.person.id, asked.at, asked.side)
    if not found.rows:
        raise asked.wrong("why-no-sheet", student, name=student.name, date_day=on.isoformat())
    return found, on


def _day_meant(asked: Asked, student: Student) -> date:
    """Today while its review is still open, else the next school day."""
    today = dates.today(student, asked.at)
    made = days.day_on(asked.s, student.id, today)
    if made is not None and made.closed_at is None and made.stage is not Stage.DONE:
        return today
    if asked.side == GRADER and (newest := days.newest_day(asked.s, student.id)) is not None:
        return newest.date  # a page that was done waits for its marks
    coming = open_date(asked.s, student, asked.at)
    if coming is None:
        raise asked.wrong("why-no-day-ahead", student, name=student.name)
    return coming


def pages(asked: Asked) -> list[Message]:
    """Photos of pages that a student sent: of the day that is named, else the newest; "waiting": what waits."""
    if asked.text.strip() and is_asked_for(asked):
        return waiting(asked)
    student, rest = take_student(asked)
    today = dates.today(student, asked.at)
    span, left = take_dates(rest, today, past=True)
    if left:
        raise asked.wrong("why-not-a-date", student, words=left[:60])
    on = span.first if span else files.newest_date(asked.s, student.id)
    found = files.files_on(asked.s, student.id, on) if on else []
    if not on or not found:
        day = (span.first if span else today).isoformat()
        return [PagesShown(to=asked.person.chat, name=student.name, date=day, pages=())]
    return [PagesShown(to=asked.person.chat, name=student.name, date=on.isoformat(), pages=tuple(found))]


def records(asked: Asked) -> list[Message]:
    """What is kept of some days, else of all since the first: in a message, on paper, or for a spreadsheet."""
    wanted = Wanted(asked, past=True)
    words = set(map(fold, wanted.left.split()))
    csv, handover, photos = bool(words & CSV), bool(words & HANDOVER), bool(words & PHOTOS)
    known = CSV | HANDOVER | PHOTOS
    wanted.left = " ".join(word for word in wanted.left.split() if fold(word) not in known)
    span = wanted.only_dates(asked)
    student, today = wanted.student, wanted.today
    first = span.first if span else student.first_day or today
    last = span.last if span and span.last > span.first else today
    if first > today or last < first or (last - first).days > LONGEST:
        raise asked.wrong("why-record-range", student)
    if photos:
        return [_samples(asked, student, first, min(last, today))]
    found = record_of(asked.s, asked.school, student, first, min(last, today), today)
    if csv:
        return [
            RecordTables(
                to=asked.person.chat,
                name=found.name,
                first=found.first,
                last=found.last,
                files=tables_of(found),
            )
        ]
    if wanted.pdf or handover:
        return [
            RecordPaper(
                to=asked.person.chat,
                record=found,
                made=today.isoformat(),
                handover=handover,
                size=wanted.size,
                big=wanted.big,
            )
        ]
    return [
        RecordsShown(
            to=asked.person.chat,
            student=student.id,
            name=found.name,
            first=found.first,
            last=found.last,
            opened=len(found.days),
            minutes=found.minutes,
            on_paper=found.on_paper,
            lessons=len(found.lessons),
            tests=len(found.tests),
            hands_on=len(found.hands_on),
            standards=len(found.standards),
            samples=len(found.work),
            side=asked.side,
        )
    ]


def _samples(asked: Asked, student: Student, first: date, last: date) -> Message:
    """Photos of work, whole days as far as one message holds them; a button leads on to the next days."""
    found = photos_of(asked.s, asked.school, student, first, last)
    found = [(photo, lesson) for photo, lesson in found if photo.path != ""]
    shown = found[:MOST_PHOTOS]
    if len(found) > len(shown):
        cut = found[len(shown)][0].date
        shown = [each for each in shown if each[0].date < cut] or shown
    further = found[len(shown) :]
    return SamplesShown(
        to=asked.person.chat,
        student=student.id,
        name=student.name,
        first=first.isoformat(),
        last=last.isoformat(),
        photos=tuple(photo.file_id for photo, _ in shown),
        rows=tuple((photo.date.isoformat(), lesson, photo.caption) for photo, lesson in shown),
        further=(further[0][0].date.isoformat(), last.isoformat()) if further else None,
        left=len(further),
        side=asked.side,
    )


FUNCTIONS: dict[str, Function] = {
    "adjust": adjust,
    "letter": letter,
    "sheet": sheet,
    "key": key,
    "marks": marks,
    "pages": pages,
    "records": records,
}
"""Commands that a parent and a tutor have alike."""
