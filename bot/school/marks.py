"""A page done on paper is marked by a grown-up: only the misses are named, all else counts as right at first go."""

from __future__ import annotations

import re
from datetime import date, timedelta

from sqlalchemy.orm import Session

from bot.answers import judge
from bot.messages import AskWritten, MarksShown, Message, NotForYou
from bot.records import attempts, days, focus
from bot.records.attempts import CHECKER
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.records.people import Student
from bot.school import dates
from bot.school.asking import Asked, row_number
from bot.school.names import take_student
from bot.school.standing import relearn
from bot.school.waiting_pages import is_asked_for, still_waiting, waiting
from bot.school.when import fold, take_dates
from bot.vocabulary import Outcome, Part, Verdict

NONE = frozenset({"none", "right", "ninguno", "ninguna", "bien"})
"""What people type for a page without a miss; "all right" and "todo bien" as well."""
EMPTY = frozenset({"empty", "vacio", "blanco"})
ASK = "?"
WAITS = "mark"
"""What a chat waits for after the button of a miss."""
PAPER = "paper"
"""The reason of a grading that a grown-up read off a page."""
REACH = timedelta(days=60)
"""How far back a page may be entered."""
LINES = 10
"""Pages in one message."""


def marks(asked: Asked) -> list[Message]:
    """Enter a page by its misses, or look at its marks; several pages, a line each; "waiting": those not marked."""
    if is_asked_for(asked):
        return waiting(asked)
    student, rest = take_student(asked)
    lines = [line for line in rest.splitlines() if line.strip()] or [""]
    if len(lines) > LINES:
        raise asked.wrong("why-many-pages", student, most=LINES)
    pages = [_read(asked, student, line) for line in lines]  # all are read before any is entered
    said: list[Message] = []
    for day, numbers, detail in pages:
        if detail is not None:
            said += _detail(asked, student, day, numbers[0], detail)
            continue
        if numbers is not _LOOK:
            enter(asked, student, day, numbers)
        said.append(shown(asked, student, days.day(asked.s, day.id), entered=numbers is not _LOOK))
    return said


_LOOK: list[int] = []
"""No numbers and no word for none: the marks are only looked at."""


def _read(asked: Asked, student: Student, line: str) -> tuple[SchoolDay, list[int], str | None]:
    """A line's day, the numbers that were missed, and what is said of a single one."""
    today = dates.today(student, asked.at)
    span, left = take_dates(line, today, past=True)
    words = [word for word in re.split(r"[\s,;]+", left) if word]
    folded = [fold(word) for word in words]
    detail = next((word for word in folded if word in EMPTY or word == ASK), None)
    numbers = [n for word in words if (n := row_number(word.rstrip(".)"))) is not None]
    other = [
        word
        for word in folded
        if row_number(word.rstrip(".)")) is None and word not in NONE | EMPTY | {ASK, "all", "todo"}
    ]
    if other or (detail is not None and len(numbers) != 1):
        raise asked.wrong("why-marks", student, name=student.name)
    day = _day(asked, student, span.first if span else None, today)
    places = {each.place for each in review_of(asked.s, day)}
    unknown = [n for n in numbers if n not in places]
    if unknown:
        raise asked.wrong(
            "why-no-number", student, n=str(unknown[0]), name=student.name, date_day=day.date.isoformat()
        )
    if not numbers and not set(folded) & NONE:
        return day, _LOOK, None
    return day, sorted(set(numbers)), detail


def _day(asked: Asked, student: Student, on: date | None, today: date) -> SchoolDay:
    """The day whose page is meant: of the date, else the newest with a review. Raises Unclear."""
    if on is not None:
        found = [days.day_on(asked.s, student.id, on)]
    else:
        found = list(reversed(days.days_between(asked.s, student.id, today - REACH, today)))
    day = next((each for each in found if each is not None and review_of(asked.s, each)), None)
    if day is None or day.date < today - REACH:
        raise asked.wrong("why-no-page", student, name=student.name, date_day=(on or today).isoformat())
    return day


def review_of(s: Session, day: SchoolDay) -> list[Sent]:
    """The items that stand on a day's sheet."""
    return days.items_of(s, day.id, Part.REVIEW)


def enter(asked: Asked, student: Student, day: SchoolDay, misses: list[int]) -> None:
    """Mark a page: the numbers given are misses, all others right. What was answered in the chat stays as it is."""
    s, by = asked.s, str(asked.person.id)
    for sent in review_of(s, day):
        tried = attempts.attempts_of(s, sent.id)
        if not open_to_marks(sent, tried):
            continue
        right = sent.place not in misses
        if right and not tried:
            made = attempts.add_attempt(s, sent.id, asked.update, "", sent.hints, asked.at)
            attempts.add_grading(s, made, Verdict.RIGHT, asked.at, reason=PAPER, by=by)
        for each in tried:  # entered before, the other way round
            if (each.verdict is Verdict.RIGHT) is not right:
                verdict = Verdict.RIGHT if right else Verdict.WRONG
                attempts.add_grading(s, each.id, verdict, asked.at, reason=PAPER, by=by)
        _settle(s, sent, Outcome.FIRST_TRY if right else Outcome.UNSOLVED)
    _after(asked, student, day)


def open_to_marks(sent: Sent, tried: list[attempts.Attempt]) -> bool:
    """Whether an item may be marked by hand: nobody answered it in the chat, nor was it excused."""
    if sent.outcome is Outcome.EXCUSED:
        return False
    return all(each.reason == PAPER and each.by != CHECKER for each in tried)


def _settle(s: Session, sent: Sent, outcome: Outcome) -> None:
    tries = 1 if outcome is Outcome.UNSOLVED else 0
    days.change_item(s, sent.id, state=ItemState.DONE, outcome=outcome, tries=tries)


def _after(asked: Asked, student: Student, day: SchoolDay) -> None:
    """The day was worked on, on paper; where it is over already, what is believed is worked out anew."""
    changes: dict[str, object] = {"on_paper": True}
    if day.started_at is None:
        changes["started_at"] = asked.at
    if day.stage is Stage.REVIEW or (day.closed_at is not None and day.stage is Stage.PUSHED):
        changes |= {"stage": Stage.DONE, "ended_at": day.ended_at or asked.at}
    days.change_day(asked.s, day.id, **changes)
    if day.closed_at is not None:
        relearn(asked.s, asked.school, student.id)


def shown(asked: Asked, student: Student, day: SchoolDay, *, entered: bool) -> MarksShown:
    """A page's marks: (number, how it stands, what was written)."""
    rows, misses = [], []
    for sent in review_of(asked.s, day):
        tried = attempts.attempts_of(asked.s, sent.id)
        by_hand = open_to_marks(sent, tried)
        written = next((each.typed for each in reversed(tried) if each.typed), "")
        rows.append((sent.place, sent.outcome.value if sent.outcome else "", written[:60], not by_hand))
        if sent.outcome is Outcome.UNSOLVED and by_hand:
            misses.append(sent.place)
    return MarksShown(
        to=asked.person.chat,
        student=student.id,
        name=student.name,
        date=day.date.isoformat(),
        rows=tuple(rows),
        misses=tuple(misses),
        entered=entered,
        side=asked.side,
        others=still_waiting(asked, (student.id, day.date)),
    )


def _detail(asked: Asked, student: Student, day: SchoolDay, number: int, detail: str) -> list[Message]:
    """What is written at a miss: asked for, or that it was left empty."""
    sent = next(each for each in review_of(asked.s, day) if each.place == number)
    if sent.outcome is not Outcome.UNSOLVED or not open_to_marks(
        sent, attempts.attempts_of(asked.s, sent.id)
    ):
        raise asked.wrong("why-no-miss", student, n=number, name=student.name)
    if detail in EMPTY:
        focus.clear_focus(asked.s, asked.person.chat, 0)
        return [shown(asked, student, day, entered=False)]
    data: dict[str, object] = {"item": sent.id, "side": asked.side}
    focus.set_focus(asked.s, asked.person.chat, 0, WAITS, asked.at, data=data)
    return [
        AskWritten(
            to=asked.person.chat,
            student=student.id,
            name=student.name,
            date=day.date.isoformat(),
            n=number,
            ask=sent.item.ask,
            side=asked.side,
        )
    ]


def take_written(asked: Asked, text: str) -> list[Message] | None:
    """What is written at a miss, typed after its button; None where the chat waits for nothing of the kind.

    The checker reads it, so that a likely misstep is named. Where it reads as right, the miss was none.
    """
    middle = focus.focus(asked.s, asked.person.chat, 0)
    if middle is None or middle.waits_for != WAITS or middle.data.get("side") != asked.side:
        return None
    focus.clear_focus(asked.s, asked.person.chat, 0)
    sent = days.find_item(asked.s, int(str(middle.data.get("item"))))
    student = next((each for each in asked.students if sent and each.id == sent.student), None)
    if sent is None or student is None:
        return [NotForYou(to=asked.person.chat, why="other")]
    if not open_to_marks(sent, attempts.attempts_of(asked.s, sent.id)):
        return [NotForYou(to=asked.person.chat, why="gone")]
    found = judge(text, sent.item.key)
    made = attempts.add_attempt(asked.s, sent.id, asked.update, text[:4096], sent.hints, asked.at)
    attempts.add_grading(
        asked.s,
        made,
        found.verdict,
        asked.at,
        read_as=found.read_as[:400],
        reason=PAPER,
        misstep=found.misstep,
        by=str(asked.person.id),
    )
    if found.verdict is Verdict.RIGHT:
        _settle(asked.s, sent, Outcome.FIRST_TRY)
    day = days.day(asked.s, sent.day)
    _after(asked, student, day)
    return [shown(asked, student, days.day(asked.s, day.id), entered=False)]
