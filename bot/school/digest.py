"""How a day went, as its digest tells it: from the rows as they stand, for any day."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import Any

from sqlalchemy.orm import Session

from bot.course.item import plain_text
from bot.messages import Digest, Message, OpenInFull, OpenItem, Talk, WeekPicture
from bot.planner.plan import DayKind
from bot.records import attempts, days, people, sheets
from bot.records.attempts import CHECKER, Attempt
from bot.records.days import SchoolDay, Sent, Stage
from bot.records.people import Student
from bot.school import dates, pacing, set_tests, testing
from bot.school.closing import study_for
from bot.school.school import School
from bot.school.standing import COUNTED, Counts, count_up, day_counts
from bot.school.wishes import WishKind, in_force, texts, wishes_until
from bot.vocabulary import ChatId, ItemId, LessonId, Outcome, Part, Verdict

BREAK = timedelta(days=14)
"""A break from which on the off-season is offered (common practice, no source)."""
IN_FULL = 2
"""Unsolved items told in full; the others wait behind a button."""


def digest(
    s: Session,
    school: School,
    student: Student,
    day: SchoolDay,
    to: ChatId,
    *,
    key: str = "",
    on_demand: bool = False,
    side: str = "f",
) -> Digest:
    """How a day went, from the rows as they stand."""
    items = days.items_of(s, day.id)
    tried = attempts.attempts_of_day(s, day.id)
    tested = bool(day.notes.get("test_counted"))
    counts = count_up(items, (Part.TEST,) if tested else (Part.REVIEW,))
    missed = [each for each in items if each.outcome is Outcome.UNSOLVED]
    unsolved = [each for each in missed if each.part is Part.TEST] if tested else _worth_telling(missed)
    told = _open_items(school, unsolved[:IN_FULL], items, tried)
    sheet = sheets.sheet_of_day(s, day.id)
    late_answers, late_right = _late(s, student, day)
    comes = dates.next_day(s, student, day.date)
    upcoming = _next_title(s, school, student, comes)
    best = _best(s, student, sheet.id if sheet else 0)
    return Digest(
        to=to,
        key=key,
        day=day.id,
        student=student.id,
        name=student.name,
        date=day.date.isoformat(),
        variant=_variant(day, counts),
        lesson=school.title(day.lesson) if day.lesson and day.notes.get("lesson_met") else "",
        first_try=counts.first_try,
        later_try=counts.later_try,
        tries=counts.tries,
        unsolved=counts.unsolved,
        excused=counts.excused,
        untouched=counts.untouched,
        out_of=counts.asked,
        well=_went_well(items),
        open_items=tuple(told),
        more_open=max(0, len(unsolved) - IN_FULL),
        talk=tuple(_talk(school, each, tried.get(each.id, [])) for each in _to_talk_about(unsolved)),
        facts=(sheet.right, len(sheet.facts)) if sheet and sheet.right is not None else None,
        per_minute=sheet.per_minute if sheet else None,
        best=best if sheet and sheet.per_minute else None,
        late_answers=late_answers,
        late_right=late_right,
        week=week_signs(s, student, day.date),
        tomorrow=upcoming,
        tomorrow_date=comes.isoformat() if comes else "",
        note=" ".join(texts(in_force(s, student, day.date), WishKind.NOTE, "text")),
        accepted=tuple(
            dict.fromkeys(
                each.item.lesson_title
                for each in items
                if any(a.by != CHECKER and a.verdict is Verdict.RIGHT for a in tried.get(each.id, []))
            )
        ),
        enough=day.enough,
        small=day.small,
        paper=day.on_paper,
        minutes=round(day.seconds / 60),
        on_demand=on_demand,
        second_look=_second_look(s, student, day),
        side=side,
        study=_study(s, school, student, day, comes),
        half_year=_half_year(s, school, student, day),
        long_break=_long_break(s, student, day, comes),
        **_placed(school, day, items),
    )


def _study(
    s: Session, school: School, student: Student, day: SchoolDay, comes: date | None
) -> tuple[str, tuple[str, ...]] | None:
    """Where the next school day holds a test: its title, and lessons worth another look, weakest first."""
    if comes is None or day.closed_at is None or days.day_on(s, student.id, comes) is not None:
        return None
    found = study_for(s, school, people.student(s, student.id), comes)
    return (found.title, found.look_again) if found is not None else None


def _half_year(s: Session, school: School, student: Student, day: SchoolDay) -> tuple[str, str]:
    """When half of a school year is behind: the range in which the course may be done, as ISO dates."""
    if not pacing.is_half_year(s, student, day):
        return ("", "")
    found = pacing.half_year(s, school, people.student(s, student.id), day.date + timedelta(days=1))
    range_ = found[0].finish if found else None
    return (range_.early.isoformat(), range_.late.isoformat()) if range_ else ("", "")


def _long_break(s: Session, student: Student, day: SchoolDay, comes: date | None) -> bool:
    """Whether no school day comes for two weeks or more, and the off-season isn't wanted already."""
    if day.kind == DayKind.OFF_SEASON or (comes is not None and comes - day.date < BREAK):
        return False
    return not dates.off_season_wanted(s, student, day.date + timedelta(days=1))


def _placed(school: School, day: SchoolDay, items: Sequence[Sent]) -> dict[str, Any]:
    """What a look at where to start came to: questions, the lesson's title, how sure it is in percent."""
    asked = sum(1 for each in items if each.part is Part.PLACEMENT and each.outcome is not None)
    start, sure = day.notes.get("placed"), day.notes.get("placed_sure")
    return {
        "questions": asked,
        "start": school.title(LessonId(str(start))) if start else "",
        "sure": sure if isinstance(sure, int) else 0,
    }


def _second_look(s: Session, student: Student, day: SchoolDay) -> bool:
    """Whether the one second look at the day's test is open: offered, and neither had nor set."""
    found = testing.result_of(s, day)
    if found is None or not found.offered:
        return False
    later = day.date + set_tests.WAITS
    is_set = any(wish.kind == WishKind.SECOND_LOOK for wish in wishes_until(s, student, day.date, later))
    return not is_set and not testing.was_looked_at_again(s, student, found, later)


def _variant(day: SchoolDay, counts: Counts) -> str:
    if day.notes.get("off"):
        return "day-off"
    if day.late and day.started_at is None:
        return "our-fault"
    if day.started_at is None:
        return "nothing-started"
    if day.kind == DayKind.PLACEMENT:
        return "placed" if "placed" in day.notes else "placing"
    if day.notes.get("test_counted"):
        return "test"
    if day.kind == DayKind.TEST and not counts.asked:
        return "test-begun"
    if counts.asked and counts.first_try == counts.asked:
        return "all-right"
    if counts.untouched == counts.asked:
        return "paper-waiting" if day.on_paper else "only-begun"
    return "only-paper" if day.on_paper else "worked"


def _worth_telling(unsolved: Sequence[Sent]) -> list[Sent]:
    """Unsolved items of review and guided practice, those that were tried most first."""
    mine = [each for each in unsolved if each.part in COUNTED]
    return sorted(mine, key=lambda each: (each.part is Part.GUIDED, -each.tries, each.place))


def _open_items(
    school: School, unsolved: Sequence[Sent], items: Sequence[Sent], tried: Mapping[ItemId, Sequence[Attempt]]
) -> list[OpenItem]:
    """Unsolved items as a parent reads them, those last whose fresh one went right on the same day."""
    right = {each.comeback_of for each in items if each.outcome is Outcome.FIRST_TRY}
    found = [
        _open_item(school, each, tried.get(each.id, []), put_right=each.id in right) for each in unsolved
    ]
    return sorted(found, key=lambda each: each.put_right)


def _open_item(school: School, sent: Sent, tried: Sequence[Attempt], *, put_right: bool) -> OpenItem:
    wrong = [attempt for attempt in tried if attempt.verdict is not Verdict.HELP]
    named = [attempt.misstep for attempt in wrong if attempt.misstep]
    return OpenItem(
        item=sent.id,
        title=sent.item.lesson_title,
        ask=plain_text(sent.item.ask),
        answered=wrong[-1].typed[:80] if wrong else "",
        misstep=_say(school, sent, named[-1]) if named else "",
        answer=sent.item.answer_shown,
        put_right=put_right,
    )


def _say(school: School, sent: Sent, name: str | None) -> str:
    says = {misstep.name: misstep.say for misstep in sent.item.key.missteps}
    if name in says:
        return says[name]
    note = school.course.missteps.get(name or "")
    return note.say if note else f"={name}" if name else ""


def _to_talk_about(unsolved: Sequence[Sent]) -> list[Sent]:
    """One or two things for ten minutes, of different lessons."""
    chosen: list[Sent] = []
    for sent in unsolved:
        if all(sent.lesson != other.lesson for other in chosen):
            chosen.append(sent)
    return chosen[:2]


def _talk(school: School, sent: Sent, tried: Sequence[Attempt]) -> Talk:
    named = [attempt.misstep for attempt in tried if attempt.misstep]
    figure = str(sent.item.figure.get("figure", "")) if sent.item.figure else ""
    return Talk(
        skill=sent.item.skills[0] if sent.item.skills else "",
        title=sent.item.lesson_title,
        item=sent.id,
        ask=plain_text(sent.item.ask),
        say=_say(school, sent, named[-1]) if named else "",
        draw=figure or sent.item.key.form,
    )


def _went_well(items: Sequence[Sent]) -> str:
    """The lesson with most first tries and no miss; the hardest of several."""
    good: dict[str, list[Sent]] = {}
    for sent in items:
        if sent.part in COUNTED:
            good.setdefault(sent.item.lesson_title, []).append(sent)
    sure = {
        title: (len(sents), max(sent.item.level for sent in sents))
        for title, sents in good.items()
        if all(sent.outcome is Outcome.FIRST_TRY for sent in sents)
    }
    return max(sure, key=lambda title: sure[title]) if sure else ""


def _late(s: Session, student: Student, day: SchoolDay) -> tuple[int, int]:
    """Answers to the day before that came after its digest: how many, and how many of them right."""
    earlier = days.last_days(s, student.id, day.date, 1)
    if not earlier or earlier[0].closed_at is None:
        return 0, 0
    closed_at = earlier[0].closed_at
    tests = {each.id for each in days.items_of(s, earlier[0].id, Part.TEST)}  # they have a line of their own
    late = [
        attempt
        for item, tried in attempts.attempts_of_day(s, earlier[0].id).items()
        for attempt in tried
        if item not in tests and attempt.at > closed_at and attempt.verdict in (Verdict.RIGHT, Verdict.WRONG)
    ]
    return len(late), sum(1 for attempt in late if attempt.verdict is Verdict.RIGHT)


def _best(s: Session, student: Student, but: int) -> float | None:
    rates = [
        each.per_minute
        for each in sheets.answered_sheets(s, student.id)
        if each.per_minute and each.id != but
    ]
    return max(rates, default=None)


def _next_title(s: Session, school: School, student: Student, comes: date | None) -> str:
    if comes is None:
        return ""
    fresh = people.student(s, student.id)
    calendar_week = fresh.week[comes.weekday()]
    lesson = school.lesson_at(fresh.lesson)
    return lesson.title if lesson is not None and calendar_week != dates.LIGHT else ""


def week_signs(s: Session, student: Student, on: date) -> str:
    """The week of a date, Monday first, one letter a day.

    d done, p partly, t a test, n not opened, o a day off, f free, . still to come.
    """
    monday = dates.monday_of(on)
    made = {day.date: day for day in days.days_between(s, student.id, monday, monday + timedelta(days=6))}
    signs = ""
    for n in range(7):
        date_of = monday + timedelta(days=n)
        day = made.get(date_of)
        if day is not None and day.started_at is None:
            signs += "n" if day.closed_at or date_of <= on else "."
        elif day is not None and day.kind == DayKind.TEST:
            signs += "t"
        elif day is not None:
            signs += "d" if day.stage is Stage.DONE and not day.enough else "p"
        elif student.week[n] == "0":
            signs += "f"
        elif date_of > on:
            signs += "."
        else:
            signs += "o"
    return signs


def in_full(s: Session, school: School, day: SchoolDay, to: ChatId, name: str) -> list[Message]:
    """All unsolved items of a day in full, behind the digest's button."""
    tried = attempts.attempts_of_day(s, day.id)
    items = days.items_of(s, day.id)
    missed = [each for each in items if each.outcome is Outcome.UNSOLVED]
    tested = [each for each in missed if each.part is Part.TEST]
    unsolved = tested if day.notes.get("test_counted") else _worth_telling(missed)
    told = tuple(_open_items(school, unsolved, items, tried))
    return [OpenInFull(to=to, day=day.id, name=name, items=told)]


def week_picture(s: Session, student: Student, day: SchoolDay, to: ChatId) -> WeekPicture:
    """The week of a day as a picture: what was done, day by day."""
    monday = dates.monday_of(day.date)
    made = days.days_between(s, student.id, monday, monday + timedelta(days=6))
    return WeekPicture(
        to=to,
        student=student.id,
        name=student.name,
        monday=monday.isoformat(),
        signs=week_signs(s, student, day.date),
        days=tuple(day_counts(s, each) for each in made),
    )
