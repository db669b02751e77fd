"""A day on paper: the whole sheet at once, and its answers in any order, several in one message."""

from __future__ import annotations

from collections.abc import Mapping

from sqlalchemy.orm import Session

from bot.course.item import plain_text
from bot.happened import Typed
from bot.messages import Message, NothingNow, PaperGraded, PaperSheet, SheetPaper
from bot.records import days, focus
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.school.sheets import paper_size, sheet_for, without_answers
from bot.school_day.asking import Here
from bot.school_day.grading import grade
from bot.school_day.onward import onward
from bot.vocabulary import ItemId, Part, PersonId, Verdict

ROWS = 12
"""Items in one message of the sheet; longer sheets go on in a second one."""


def show_sheet(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """Show what is left of review as one sheet, and wait for its answers."""
    left = [each for each in days.items_of(s, day.id, Part.REVIEW) if each.state is not ItemState.DONE]
    if not left:
        return [NothingNow(to=here.chat, why="done", day=day.id)]
    for each in left:
        if each.state is ItemState.WAITING:
            days.change_item(s, each.id, state=ItemState.SHOWN)
    days.change_day(s, day.id, on_paper=True, stage=Stage.REVIEW)
    focus.set_focus(s, here.chat, here.student.id, "paper", here.at, ref=day.id)
    pages = [left[n : n + ROWS] for n in range(0, len(left), ROWS)]
    return [
        PaperSheet(
            to=here.chat,
            day=day.id,
            rows=tuple(
                (
                    each.place,
                    "" if each.lesson == day.lesson else each.item.lesson_title,
                    plain_text(each.item.ask),
                    each.item.key.form,
                    each.item.choices,
                )
                for each in page
            ),
            more=page is not pages[-1],
        )
        for page in pages
    ]


def to_print(s: Session, here: Here, day: SchoolDay) -> list[Message]:
    """The same sheet as a page to print, without answers."""
    found = sheet_for(s, here.school, here.student, day.date, PersonId(here.student.id), here.at)
    if not found.rows:
        return [NothingNow(to=here.chat, why="done", day=day.id)]
    return [
        SheetPaper(
            to=here.chat,
            student=here.student.id,
            name=here.student.name,
            date=day.date.isoformat(),
            rows=without_answers(found.rows),
            size=paper_size(here.student),
            big="big" in found.adjusted,
            dictated="dictated" in found.adjusted,
        )
    ]


def answered(s: Session, here: Here, typed: Typed, numbered: Mapping[int, str]) -> list[Message] | None:
    """Grade answers that carry their numbers; None where none of the numbers is on today's sheet."""
    day = days.newest_day(s, here.student.id)
    if day is None or day.stage not in (Stage.REVIEW, Stage.DONE):
        return None
    by_place = {each.place: each for each in days.items_of(s, day.id, Part.REVIEW)}
    if not set(numbered) & set(by_place):
        return None
    rows: list[tuple[int, Verdict, ItemId, str, str]] = []
    already = []
    for number in sorted(numbered):
        sent = by_place.get(number)
        if sent is None:
            continue
        if sent.state is ItemState.DONE:
            already.append(number)
            continue
        rows.append(_grade_one(s, here, typed, number, sent, numbered[number]))
    left = [each.place for each in days.items_of(s, day.id, Part.REVIEW) if each.state is not ItemState.DONE]
    graded = PaperGraded(
        to=here.chat,
        day=day.id,
        rows=tuple(rows),
        unknown=tuple(n for n in sorted(numbered) if n not in by_place),
        already=tuple(already),
        left=tuple(left),
    )
    fresh = days.day(s, day.id)
    if fresh.stage is Stage.DONE:
        return [graded]
    if left:
        focus.set_focus(s, here.chat, here.student.id, "paper", here.at, ref=day.id)
        return [graded]
    return [graded, *onward(s, here, fresh)]


def _grade_one(
    s: Session, here: Here, typed: Typed, number: int, sent: Sent, text: str
) -> tuple[int, Verdict, ItemId, str, str]:
    # Each grading moves the day's own times, so the day is read anew.
    graded = grade(s, here, days.day(s, sent.day), sent, typed, text)
    judgement = graded.judgement
    says = {misstep.name: misstep.say for misstep in sent.item.key.missteps}
    word = judgement.reason
    if judgement.verdict is Verdict.WRONG:
        word = says.get(judgement.misstep or "", "")
    elif judgement.verdict is Verdict.FORM:
        word = judgement.reason or sent.item.key.form
    if graded.over:
        word = "over"
    return number, judgement.verdict, sent.id, judgement.read_as, word


def unnumbered(s: Session, here: Here, typed: Typed, day_id: int) -> list[Message]:
    """A reply to the sheet without a number: meant for the only item left, else it can't be told."""
    from bot.school_day.reply import answer  # reply calls this module for the numbered ones

    day = days.find_day(s, day_id)
    if day is None or day.student != here.student.id:
        return [NothingNow(to=here.chat, why="done")]
    left = [each for each in days.items_of(s, day.id, Part.REVIEW) if each.state is not ItemState.DONE]
    if len(left) == 1:
        return answer(s, here, typed, left[0], typed.text)
    return [PaperGraded(to=here.chat, day=day.id, rows=(), left=tuple(each.place for each in left))]
