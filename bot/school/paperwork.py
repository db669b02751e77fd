"""Commands of grown-ups that end in something to read, keep or print."""

from __future__ import annotations

from datetime import date

from bot.messages import LetterPaper, Message, WeekLetter
from bot.records import people
from bot.records.people import Student
from bot.school import dates
from bot.school.asking import Asked, Function
from bot.school.names import take_student
from bot.school.weekly import monday_of, week_of, year_so_far
from bot.school.when import Span, fold, take_dates

LETTER_COUNTRIES = frozenset({"US", "CA", "MX", "PH", "CO", "CL", "VE", "GT", "CR", "PA", "SV", "DO", "PR"})
"""Where paper is Letter (8.5 by 11 inches) rather than A4 of ISO 216; from memory. A word in the command decides."""
SIZES = {"a4": "a4", "us": "letter", "letter": "letter", "carta": "letter"}
BIG = frozenset({"big", "grande", "large"})
PDF = frozenset({"pdf", "print", "imprimir"})


def paper_size(student: Student) -> str:
    """The paper that is usual where a household lives: "a4" or "letter"."""
    return "letter" if student.country in LETTER_COUNTRIES else "a4"


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
    week = week_of(asked.s, asked.school, wanted.student, monday_of(on), asked.at)
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
    sunday = monday_of(on).toordinal() + 6
    return min(date.fromordinal(sunday), today)


FUNCTIONS: dict[str, Function] = {
    "letter": letter,
}
"""Commands that a parent and a tutor have alike."""
