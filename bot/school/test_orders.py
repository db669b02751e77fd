"""Orders about tests: set one, open it, open it once more after it was handed in, a second look."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from sqlalchemy.orm import Session

from bot.messages import Line, Message, TestReopened, TestWaits
from bot.planner.calendar import is_school_day
from bot.records import attempts, days, people
from bot.records.days import ItemState, SchoolDay, Stage
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates, testing
from bot.school.adjustments import of_student
from bot.school.asking import TUTOR, Asked, row_number
from bot.school.changes import Did, Scene, Stale, Step, propose
from bot.school.names import name_of, take_students
from bot.school.planning import open_date
from bot.school.school import School
from bot.school.set_tests import KINDS, WAITS
from bot.school.when import Span, fold, take_dates
from bot.school.wishes import MORE_TIME, WishKind, in_force, wishes_until
from bot.vocabulary import ChatId, DayId, Outcome, Part

MINUTES_AN_ITEM = 2
_OPEN, _REOPEN = {"open", "abrir"}, {"reopen", "reabrir"}
REACH = timedelta(days=14)
"""How far back a test may be opened once more (common practice, no source)."""


def test(asked: Asked) -> list[Message]:
    """Set a test for the next day or one that is named; "open" opens today's, "reopen" one handed in too soon.

    Of another day as well, where it is named: "reopen monday".
    """
    students, rest = take_students(asked)
    word, _, behind = rest.strip().partition(" ")
    if fold(word) in _OPEN and not behind:
        return [_waits(asked, each, _test_of_today(asked, each)) for each in students]
    if fold(word) in _REOPEN:
        return _propose_reopening(asked, students, behind)
    span, left = _span(asked, students, rest)
    number = row_number(left.strip())
    if left.strip() and number is None:
        raise asked.wrong("why-test-how", students[0], last=len(asked.school.syllabus.tests))
    lines: list[Line] = []
    wished: list[Wish] = []
    for student in students:
        on = _day_for(asked, student, span)
        chosen = number or _next_test(asked, student, on)
        if testing.place_of(asked.school, chosen) is None:
            raise asked.wrong("why-no-such-test", student, n=chosen, last=len(asked.school.syllabus.tests))
        picks = testing.picks_of_test(asked.s, asked.school, student, on, chosen)
        title = testing.test_title(asked.school, chosen)
        if len(picks) < testing.FEWEST:
            raise asked.wrong("why-test-too-early", student, name=student.name, title=title)
        minutes = _minutes(asked.s, student, on, len(picks))
        what: dict[str, object] = {"test": chosen, "minutes": minutes, "title": title}
        wished.append(Wish(WishKind.TEST, what, on, on + WAITS, student=student.id))
        lines.append(_line("line-test", asked, student, on, title, len(picks)))
    return propose(asked, "test", lines, wished=wished, notes=[Line("note-test-set")])


def _minutes(s: Session, student: Student, on: date, items: int) -> int:
    """About how long so many items take this student on that day; there is no clock."""
    longer = "time" in of_student(s, student, on)
    return round(items * MINUTES_AN_ITEM * (MORE_TIME if longer else 1))


def _line(key: str, asked: Asked, student: Student, on: date, title: str, items: int) -> Line:
    return Line(
        key,
        {
            "name": name_of(asked, student),
            "date_day": on.isoformat(),
            "title": title,
            "count": items,
            "minutes": _minutes(asked.s, student, on, items),
        },
    )


def _span(asked: Asked, students: Sequence[Student], rest: str) -> tuple[Span | None, str]:
    today = dates.today(students[0], asked.at)
    span, left = take_dates(rest, today)
    if span is not None and span.first < today:
        raise asked.wrong("why-date-past", students[0], date_day=span.first.isoformat())
    return span, left


def _day_for(asked: Asked, student: Student, span: Span | None) -> date:
    """The day that it is for: one to come that holds no other test. Raises Unclear."""
    on = span.first if span else open_date(asked.s, student, asked.at)
    if on is None:
        raise asked.wrong("why-no-day-ahead", student, name=student.name)
    if days.day_on(asked.s, student.id, on) is not None:
        raise asked.wrong("why-own-made", student, name=student.name)
    if not is_school_day(dates.calendar_of(asked.s, student, on), on):
        raise asked.wrong("why-no-school", student, name=student.name, date_day=on.isoformat())
    if any(wish.kind in KINDS for wish in in_force(asked.s, student, on)):
        raise asked.wrong("why-test-set", student, name=student.name)
    return on


def _next_test(asked: Asked, student: Student, on: date) -> int:
    """The first test of the course that wasn't done yet; after the last one, the last."""
    past = days.days_between(asked.s, student.id, on - timedelta(days=400), on)
    done = {day.notes.get("test") for day in past if day.notes.get("handed_in")}
    numbers = [place.n for place in asked.school.syllabus.tests]
    return next((n for n in numbers if n not in done), numbers[-1] if numbers else 1)


def _test_of_today(asked: Asked, student: Student) -> SchoolDay:
    day = days.day_on(asked.s, student.id, dates.today(student, asked.at))
    if day is None or "test" not in day.notes or day.closed_at is not None:
        raise asked.wrong("why-no-test-today", student, name=student.name)
    if day.notes.get("handed_in"):
        raise asked.wrong("why-handed-in", student, name=student.name)
    return day


def _waits(asked: Asked, student: Student, day: SchoolDay) -> TestWaits:
    return waits(asked.s, asked.school, student.name, day, asked.person.chat)


def waits(s: Session, school: School, name: str, day: SchoolDay, to: ChatId, key: str = "") -> TestWaits:
    """What a grown-up is told before opening a test."""
    _, items = days.count_items(s, day.id, Part.TEST)
    return TestWaits(
        to=to,
        key=key,
        day=day.id,
        name=name,
        title=testing.test_title(school, day.notes.get("test")),
        items=items,
        minutes=_minutes(s, people.student(s, day.student), day.date, items),
        opened=bool(day.notes.get("test_open")),
        second=bool(day.notes.get("second_of")),
    )


# Once more open ----------------------------------------------------------------------------------------


def _propose_reopening(asked: Asked, students: Sequence[Student], when: str) -> list[Message]:
    lines: list[Line] = []
    steps: list[Step] = []
    notes: list[Line] = []
    for student in students:
        day = _handed_in(asked, student, when)
        name = name_of(asked, student)
        if day.closed_at is None:
            lines.append(Line("line-reopen", {"name": name}))
        else:
            lines.append(Line("line-reopen-closed", {"name": name, **_as_it_counts(asked.s, day)}))
            notes = [Line("note-reopen-closed")]
        steps.append({"op": "reopen", "student": student.id, "day": day.id})
    return propose(asked, "test", lines, steps=steps, notes=notes)


def _handed_in(asked: Asked, student: Student, when: str) -> SchoolDay:
    """The day whose test is meant: of the date, else of the newest test. Raises Unclear."""
    today = dates.today(student, asked.at)
    span, left = take_dates(when, today, past=True)
    if left.strip():
        raise asked.wrong("why-test-how", student, last=len(asked.school.syllabus.tests))
    first, last = (span.first, span.first) if span else (today - REACH, today)
    past = days.days_between(asked.s, student.id, max(first, today - REACH), last)
    day = next((each for each in reversed(past) if each.notes.get("test_open")), None)
    if day is None:
        raise asked.wrong("why-not-reopened", student, name=student.name, days=REACH.days)
    if not day.notes.get("handed_in") or day.notes.get("reopened"):
        raise asked.wrong("why-reopened-already", student, name=student.name, date_day=day.date.isoformat())
    if day.closed_at is not None and _second_look_at(asked.s, student, day, today):
        raise asked.wrong("why-reopen-second", student, name=student.name, date_day=day.date.isoformat())
    return day


def _as_it_counts(s: Session, day: SchoolDay) -> dict[str, str | int | list[str]]:
    items = days.items_of(s, day.id, Part.TEST)
    right = sum(1 for each in items if each.outcome is Outcome.FIRST_TRY)
    return {"date_day": day.date.isoformat(), "right": right, "count": len(items)}


def _second_look_at(s: Session, student: Student, day: SchoolDay, today: date) -> bool:
    """Whether a second look at a day's test was had or is set: it asks what was missed by the count that stands."""
    later = today + WAITS
    wished = wishes_until(s, student, day.date, later)
    if any(wish.kind == WishKind.SECOND_LOOK and wish.what.get("of") == day.id for wish in wished):
        return True
    since = days.days_between(s, student.id, day.date, today)
    return any(each.notes.get("second_of") == day.id for each in since)


def _reopen(scene: Scene, step: Step) -> Did:
    """Open a test that was handed in: all answers stay.

    On the day itself none counts until it is handed in anew. Once the evening told of it, its count stands
    until there is a new one, so that no paper has a hole and a day isn't lost where nobody hands in again.
    """
    day = days.day(scene.s, DayId(int(str(step["day"]))))
    if not day.notes.get("handed_in") or day.notes.get("reopened"):
        raise Stale
    told = day.closed_at is not None
    tried = attempts.attempts_of_day(scene.s, day.id)
    stood = []
    for sent in days.items_of(scene.s, day.id, Part.TEST):
        stood.append([sent.id, sent.state.value, sent.outcome.value if sent.outcome else None])
        state = ItemState.NOTED if tried.get(sent.id) else ItemState.WAITING
        outcome = sent.outcome if told else None
        days.change_item(scene.s, sent.id, state=state, outcome=outcome)
    names = ("handed_in", "typing_again", "test_counted", "again", "reopened")
    was = {name: day.notes.get(name) for name in names}
    if told:
        days.note_day(scene.s, day, reopened=True, typing_again=False, again=[])
    else:
        days.note_day(scene.s, day, handed_in=False, typing_again=False, test_counted=False, again=[])
        days.change_day(scene.s, day.id, stage=Stage.TEST, ended_at=None)
    count = sum(len(each) for each in tried.values())
    done = {**step, "stood": stood, "was": was, "answers": count, "stage": day.stage.value, "told": told}
    return Did(done, _tell_student(scene, day, told))


def _tell_student(scene: Scene, day: SchoolDay, told: bool) -> list[Message]:
    where = people.chat_of_student(scene.s, day.student)
    if where is None:
        return []
    owner = people.who(scene.s, where[0])
    if where[1] and (owner is None or owner.speaking != day.student):
        return []
    name = people.student(scene.s, day.student).name
    return [TestReopened(to=where[0], day=day.id, name=name, date=day.date.isoformat() if told else "")]


def _hand_in_again(scene: Scene, step: Step) -> list[Message] | None:
    """It counts as it did, unless something was answered since, or it was handed in anew."""
    day = days.day(scene.s, DayId(int(str(step["day"]))))
    tried = attempts.attempts_of_day(scene.s, day.id)
    count = sum(len(each) for each in tried.values())
    was, stood, told = step["was"], step["stood"], bool(step.get("told"))
    assert isinstance(was, dict) and isinstance(stood, list)
    still_open = day.notes.get("reopened") if told else not day.notes.get("handed_in") and not day.closed_at
    if not still_open or day.notes.get("typing_again") or count != step["answers"]:
        return None
    for item, state, outcome in stood:
        days.change_item(scene.s, item, state=ItemState(state), outcome=outcome)
    days.note_day(scene.s, day, **was)
    if not told:
        days.change_day(scene.s, day.id, stage=Stage(str(step["stage"])), ended_at=scene.at)
    return []


REOPEN = (_reopen, _hand_in_again)
"""The effect of opening a test once more."""


# A second look -----------------------------------------------------------------------------------------


def second(asked: Asked) -> list[Message]:
    """One second look at the last test: eight to ten items with new numbers, on a day of its own."""
    students, rest = take_students(asked)
    span, left = _span(asked, students, rest)
    if left.strip():
        raise asked.wrong("why-not-a-date", students[0], words=left[:60])
    lines: list[Line] = []
    wished: list[Wish] = []
    for student in students:
        found = _to_look_at_again(asked, student)
        on = _day_for(asked, student, span)
        picks = testing.picks_of_second_look(asked.s, asked.school, student, on, found.day.id)
        if not picks:
            raise asked.wrong("why-nothing-to-look-at", student, name=student.name)
        title = testing.test_title(asked.school, found.number)
        what: dict[str, object] = {
            "test": found.number,
            "of": found.day.id,
            "minutes": _minutes(asked.s, student, on, len(picks)),
            "title": title,
        }
        wished.append(Wish(WishKind.SECOND_LOOK, what, on, on + WAITS, student=student.id))
        lines.append(_line("line-second", asked, student, on, title, len(picks)))
    return propose(asked, "second", lines, wished=wished, notes=[Line("note-test-set")])


def _to_look_at_again(asked: Asked, student: Student) -> testing.Result:
    """The test that is meant. Raises Unclear where there is none, or its one second look was had."""
    today = dates.today(student, asked.at)
    found = testing.newest_result(asked.s, student, today)
    if found is None:
        raise asked.wrong("why-no-test-yet", student, name=student.name)
    if not found.missed:
        raise asked.wrong("why-nothing-to-look-at", student, name=student.name)
    if testing.was_looked_at_again(asked.s, student, found, today + timedelta(days=1)):
        raise asked.wrong("why-second-had", student, name=student.name)
    if asked.side != TUTOR and not found.offered:
        raise asked.wrong("why-second-not-offered", student, name=student.name)
    return found
