"""What comes next in a student's day: the one place that knows its order."""

from __future__ import annotations

import msgspec
from sqlalchemy.orm import Session

from bot.course.figures import alt
from bot.messages import (
    CardShown,
    CopyTen,
    DayDone,
    ExtraDone,
    FactsSheet,
    Lead,
    Message,
    NothingNow,
    SetDone,
    WorkedShown,
)
from bot.planner.plan import DayKind
from bot.records import days, focus, people, sheets
from bot.records.days import ItemState, SchoolDay, Stage
from bot.records.people import change_student
from bot.school.standing import count_up, lessons_met
from bot.school.wishes import in_force, link_of
from bot.school_day import assessment, offers, placing
from bot.school_day.asking import Here, show
from bot.vocabulary import Outcome, Part

COPY = ("14", "72", "305", "68", "9", "41", "127", "56", "83", "20")
"""Ten numbers to copy once, so that typing time can be taken off; as many digits as a sheet's answers have."""
SET = 4
"""Review comes in sets of four, with a breath between."""


def onward(s: Session, here: Here, day: SchoolDay, lead: Lead | None = None) -> list[Message]:
    """Say what comes next; moves the day's stage on where a part is done."""
    match day.stage:
        case Stage.PUSHED:
            return start(s, here, day)
        case Stage.WARM_UP:
            return _warm_up(s, here, day, lead)
        case Stage.TEST:
            return assessment.onward(s, here, day)
        case Stage.PLACING:
            return placing.onward(s, here, day, lead)
        case Stage.CARD:
            return card(s, here, day, lead)
        case Stage.KNOWN:
            return _known(s, here, day, lead)
        case Stage.EXTRA:
            return _extra(s, here, day, lead)
        case Stage.HANDS_ON:
            return _hands_on(s, here, day, lead)
        case Stage.GUIDED:
            return _guided(s, here, day, lead)
        case Stage.REVIEW:
            return _review(s, here, day, lead)
        case Stage.DONE:
            return [done(s, here, day, lead)]


def start(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Start was pressed: the warm-up comes first. A test waits until a grown-up opened it."""
    if assessment.waits_for_grown_up(day):
        return [NothingNow(to=here.chat, why="test-waits")]
    first = Stage.PLACING if day.kind == DayKind.PLACEMENT else Stage.WARM_UP
    days.change_day(s, day.id, stage=first, started_at=here.at, last_reply_at=here.at)
    return onward(s, here, days.day(s, day.id))


def _warm_up(s: Session, here: Here, day: SchoolDay, lead: Lead | None) -> list[Message]:
    sheet = sheets.sheet_of_day(s, day.id)
    if sheet is not None and sheet.answered_at is None and not day.notes.get("facts_left"):
        if sheet.timed and here.student.typing_seconds is None and not day.notes.get("copied"):
            days.note_day(s, day, copied=True)
            focus.set_focus(s, here.chat, here.student.id, "copy", here.at, ref=day.id)
            return [CopyTen(to=here.chat, day=day.id, numbers=COPY)]
        focus.set_focus(s, here.chat, here.student.id, "sheet", here.at, ref=sheet.id)
        first = not sheets.answered_sheets(s, here.student.id, 1)
        asked = tuple(question for question, _ in sheet.facts)
        return [
            FactsSheet(to=here.chat, sheet=sheet.id, facts=asked, timed=sheet.timed, first=first, lead=lead)
        ]
    waiting = days.next_item(s, day.id, Part.WARM_UP)
    if waiting is not None:
        return [show(s, here, day, waiting, lead)]
    if assessment.is_open(day):
        return _enter(s, here, day, Stage.TEST, lead)
    return _enter(s, here, day, Stage.CARD if day.lesson else Stage.REVIEW, lead)


def _enter(s: Session, here: Here, day: SchoolDay, stage: Stage, lead: Lead | None) -> list[Message]:
    days.change_day(s, day.id, stage=stage)
    return onward(s, here, days.day(s, day.id), lead)


def card(s: Session, here: Here, day: SchoolDay, lead: Lead | None = None) -> list[Message]:
    """The card of the day, its worked example, and the way on to guided practice.

    A lesson that was taken out of the course since the morning is passed over.
    """
    lesson = here.school.lesson_still_here(day.lesson)
    if lesson is None:
        return _enter(s, here, day, Stage.REVIEW, lead)
    sitting = min(day.sitting, len(lesson.cards))
    shown, example = lesson.cards[sitting - 1], lesson.examples[min(sitting, len(lesson.examples)) - 1]
    wishes = in_force(s, here.student, day.date)
    focus.set_focus(s, here.chat, here.student.id, "go", here.at, ref=day.id)
    return [
        CardShown(
            to=here.chat,
            lesson=lesson.id,
            title=lesson.title,
            text=shown.text,
            figure=shown.figure,
            alt=alt(shown.figure) if shown.figure else "",
            video=link_of(wishes, lesson.id) or lesson.video or "",
            sitting=sitting,
            sittings=len(lesson.cards),
            lead=lead,
        ),
        WorkedShown(
            to=here.chat,
            title=lesson.title,
            ask=example.ask,
            steps=tuple((step.write, step.because) for step in example.steps),
            figure=example.figure,
            alt=alt(example.figure) if example.figure else "",
            day=day.id,
            may_pass=day.sitting == 1 and lesson.id in here.school.syllabus.by_id,
        ),
    ]


def _known(s: Session, here: Here, day: SchoolDay, lead: Lead | None) -> list[Message]:
    """Five right answers pass the lesson over; the first miss leads back to it."""
    items = days.items_of(s, day.id, Part.KNOWN)
    missed = any(each.tries or each.outcome not in (None, Outcome.FIRST_TRY) for each in items)
    waiting = days.next_item(s, day.id, Part.KNOWN)
    if missed:
        _drop(s, day, Part.KNOWN)
        return _enter(s, here, day, Stage.GUIDED, Lead(kind="not-known"))
    if waiting is not None:
        return [show(s, here, day, waiting, lead)]
    _drop(s, day, Part.GUIDED)
    _lesson_met(s, here, day, all_sittings=True)
    return _enter(s, here, day, Stage.REVIEW, Lead(kind="known"))


def _drop(s: Session, day: SchoolDay, part: Part) -> None:
    for each in days.items_of(s, day.id, part):
        if each.state is not ItemState.DONE:
            days.change_item(s, each.id, state=ItemState.DROPPED)


def _extra(s: Session, here: Here, day: SchoolDay, lead: Lead | None) -> list[Message]:
    waiting = days.next_item(s, day.id, Part.EXTRA)
    if waiting is not None:
        return [show(s, here, day, waiting, lead)]
    days.change_day(s, day.id, stage=Stage.DONE)
    focus.clear_focus(s, here.chat, here.student.id)
    counts = count_up(days.items_of(s, day.id), (Part.EXTRA,))
    right = counts.first_try + counts.later_try
    return [ExtraDone(to=here.chat, day=day.id, right=right, out_of=counts.asked, lead=lead)]


def _hands_on(s: Session, here: Here, day: SchoolDay, lead: Lead | None) -> list[Message]:
    waiting = days.next_item(s, day.id, Part.HANDS_ON)
    if waiting is not None:
        return [show(s, here, day, waiting, lead)]
    days.note_day(s, day, hands_on_done=True)
    days.change_day(s, day.id, stage=Stage.DONE)
    task = here.school.course.hands_on_lesson(str(day.notes["hands_on"]))
    said = done(s, here, days.day(s, day.id), lead)
    return [msgspec.structs.replace(said, task_done=task.title)]


def _guided(s: Session, here: Here, day: SchoolDay, lead: Lead | None) -> list[Message]:
    waiting = days.next_item(s, day.id, Part.GUIDED)
    if waiting is not None:
        return [show(s, here, day, waiting, lead)]
    if day.lesson not in lessons_met(day):
        _lesson_met(s, here, day)
    return _enter(s, here, days.day(s, day.id), Stage.REVIEW, lead)


def _lesson_met(s: Session, here: Here, day: SchoolDay, *, all_sittings: bool = False) -> None:
    """The lesson was met: the next school day brings its second sitting, or the lesson after it."""
    assert day.lesson is not None
    days.note_day(s, day, lesson_met=True, met=[*lessons_met(day), day.lesson])
    lesson = here.school.lesson_still_here(day.lesson)
    if lesson is None:
        return  # it was taken out of the course since; tomorrow's plan finds the next one
    if lesson.n != people.student(s, here.student.id).lesson:
        return  # the tutor moved the student on in the meantime
    if day.sitting < lesson.sittings and not all_sittings:
        change_student(s, here.student.id, sitting=day.sitting + 1)
    else:
        change_student(s, here.student.id, lesson=lesson.n + 1, sitting=1)


def _review(s: Session, here: Here, day: SchoolDay, lead: Lead | None) -> list[Message]:
    done_so_far, out_of = days.count_items(s, day.id, Part.REVIEW)
    waiting = days.next_item(s, day.id, Part.REVIEW)
    if waiting is None:
        days.change_day(s, day.id, stage=Stage.DONE, ended_at=here.at)
        return [done(s, here, days.day(s, day.id), lead)]
    breath = done_so_far and done_so_far % SET == 0 and day.notes.get("breath") != done_so_far
    if breath and out_of - done_so_far > 1:
        days.note_day(s, day, breath=done_so_far)
        focus.set_focus(s, here.chat, here.student.id, "go", here.at, ref=day.id)
        return [
            SetDone(
                to=here.chat,
                day=day.id,
                done=done_so_far,
                out_of=out_of,
                may_stop=done_so_far * 2 >= out_of,
                lead=lead,
            )
        ]
    return [show(s, here, day, waiting, lead)]


def done(s: Session, here: Here, day: SchoolDay, lead: Lead | None = None) -> Message:
    """Say how the day went and what stands open."""
    focus.clear_focus(s, here.chat, here.student.id)
    items = days.items_of(s, day.id)
    counted = count_up(items)
    still_open = [each for each in items if each.part is Part.REVIEW and each.state is not ItemState.DONE]
    puzzle = any(each.part is Part.WARM_UP and each.state is not ItemState.DONE for each in items)
    return DayDone(
        to=here.chat,
        day=day.id,
        first_try=counted.first_try,
        later_try=counted.later_try,
        open=counted.unsolved,
        out_of=counted.asked,
        enough=day.enough,
        comes_back=sum(each.outcome is Outcome.UNSOLVED and each.part is not Part.WARM_UP for each in items),
        still_open=len(still_open),
        puzzle_open=puzzle,
        lead=lead,
        more=not still_open and day.closed_at is None,
        hands_on=offers.hands_on_offered(here.school, day),
        second=offers.second_lesson_offered(s, here, day),
        catch_up=day.kind == DayKind.LIGHT,
    )
