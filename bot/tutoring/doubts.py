"""The queue of doubts: one list of all that only a grown-up can judge, oldest first, cleared by buttons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from bot.course.item import plain_text
from bot.messages import DoubtRow, DoubtShown, Message, NoDoubts
from bot.records import attempts, days, doubts
from bot.records.attempts import CHECKER
from bot.records.days import Sent
from bot.records.doubts import DoubtKind
from bot.school.asking import Asked, row_number
from bot.school.doubtful import LATELY, MANY, missed_by
from bot.tutoring.listing import label, title_of
from bot.vocabulary import Outcome, Verdict

SOLVED = (Outcome.FIRST_TRY, Outcome.LATER_TRY)


@dataclass(frozen=True, slots=True)
class Waiting:
    """One thing that waits. `ref` goes into its button: the item's number, or a doubt's with a "d" before it."""

    kind: str
    ref: str
    since: datetime
    sent: Sent | None
    template: str


def waiting(asked: Asked) -> list[Waiting]:
    """All that waits for the tutor, the oldest first."""
    mine = [each.id for each in asked.students]
    rows = doubts.open_doubts(asked.s, asked.person.id, mine)
    asked_at = {row.item: row.at for row in rows if row.kind is DoubtKind.ASKED}
    found = []
    for sent in days.doubtful_items(asked.s, mine):
        tried = attempts.attempts_of(asked.s, sent.id)
        since = tried[-1].at if tried else days.day(asked.s, sent.day).opened_at
        since = asked_at.get(sent.id, since)
        kind = "asked" if sent.with_tutor else "unreadable"
        found.append(Waiting(kind, str(sent.id), since, sent, sent.template))
    for doubt in (row for row in rows if row.kind is not DoubtKind.ASKED):
        about = days.find_item(asked.s, doubt.item) if doubt.item is not None else None
        if about is not None and _settled(asked, about):
            continue
        found.append(Waiting(doubt.kind.value, f"d{doubt.id}", doubt.at, about, doubt.template))
    return sorted(found, key=lambda each: (each.since, each.ref))


def _settled(asked: Asked, sent: Sent) -> bool:
    """Whether the tutor has decided about an item: excused it, or graded an answer by hand."""
    by_hand = any(each.by != CHECKER for each in attempts.attempts_of(asked.s, sent.id))
    return sent.outcome is Outcome.EXCUSED or by_hand


def show(asked: Asked) -> list[Message]:
    """The oldest doubt; "seen 12" clears that one and shows the next."""
    word, _, ref = asked.text.strip().partition(" ")
    found = waiting(asked)
    if word == "seen" and row_number(ref.removeprefix("d")) is not None:
        _clear(asked, [each for each in found if each.ref == ref])
        found = waiting(asked)
    elif word:
        raise asked.wrong("why-doubts")
    if not found:
        return [NoDoubts(to=asked.person.chat)]
    return [DoubtShown(to=asked.person.chat, row=_row(asked, found[0]), left=len(found) - 1)]


def _clear(asked: Asked, chosen: Sequence[Waiting]) -> None:
    for each in chosen:
        if each.ref.startswith("d"):
            doubts.clear_doubt(asked.s, int(each.ref[1:]), asked.at)
        elif each.sent is not None:
            days.change_item(asked.s, each.sent.id, with_tutor=False, unread=0)
            doubts.clear_item(asked.s, each.sent.id, asked.at)


def _row(asked: Asked, each: Waiting) -> DoubtRow:
    sent = each.sent
    if sent is None:
        return _kind_row(asked, each)
    student = next(one for one in asked.students if one.id == sent.student)
    tried = attempts.attempts_of(asked.s, sent.id)
    open_ones = [one for one in tried if one.verdict not in (Verdict.RIGHT, Verdict.HELP)]
    solved = sent.outcome in SOLVED
    on = days.day(asked.s, sent.day).date.isoformat()
    count = missed_by(asked.s, student.tutor, sent.template, asked.at)
    return DoubtRow(
        kind=each.kind,
        ref=each.ref,
        student=f"{student.name} ({asked.household_of(student)})",
        title=sent.item.lesson_title,
        ask=plain_text(sent.item.ask)[:600],
        answer=sent.item.answer_shown,
        typed=tuple(one.typed[: 300 if each.kind == DoubtKind.WORKING else 120] for one in open_ones[-4:]),
        attempt=open_ones[-1].id if open_ones and not solved else 0,
        since=on,
        count=count if count >= MANY else 0,
        excuse=f"#{student.id} {label(sent.part, sent.place)} {on}" if not solved else "",
    )


def _kind_row(asked: Asked, each: Waiting) -> DoubtRow:
    """A kind of item that several missed: its newest one, with what was typed there."""
    typed: list[str] = []
    newest: Sent | None = None
    for student in asked.students:
        for past in days.past_items(asked.s, student.id, *_lately(asked)):
            if past.template == each.template and past.outcome is Outcome.UNSOLVED:
                newest = days.item(asked.s, past.id)
                wrong = [
                    a.typed for a in attempts.attempts_of(asked.s, past.id) if a.verdict is not Verdict.HELP
                ]
                typed += wrong[-1:]
    return DoubtRow(
        kind=each.kind,
        ref=each.ref,
        student="",
        title=title_of(asked, each.template),
        ask=plain_text(newest.item.ask)[:600] if newest else "",
        answer=newest.item.answer_shown if newest else "",
        typed=tuple(text[:120] for text in typed[-4:]),
        since=each.since.date().isoformat(),
        count=len(typed),
    )


def _lately(asked: Asked) -> tuple[date, date]:
    return (asked.at - LATELY).date(), asked.at.date() + timedelta(days=2)
