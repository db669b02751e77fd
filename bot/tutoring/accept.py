"""An answer that was graded wrong is accepted, or the other way round: a new grading, and all that follows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from bot.answers import taught_form
from bot.course.item import plain_text
from bot.messages import Accepted, Line, Message, Preview
from bot.records import attempts, days, people
from bot.records.attempts import Attempt
from bot.records.days import ItemState, Sent, Stage
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school.asking import Asked, row_number
from bot.school.changes import Did, Scene, Stale, Step, propose, store
from bot.school.dates import today
from bot.school.drawing import short
from bot.school.effects import item_step
from bot.school.names import name_of, take_student
from bot.school.school import TRIES
from bot.school.standing import outcome_of, relearn
from bot.school.when import take_dates
from bot.school.wishes import WishKind
from bot.tutoring.listing import items_at, label, take_numbers
from bot.vocabulary import AttemptId, Outcome, Verdict

NOT_COUNTED = (Verdict.WRONG, Verdict.FORM, Verdict.UNIT, Verdict.UNREADABLE)
READABLE_ANEW = (Verdict.FORM, Verdict.UNIT, Verdict.UNREADABLE)
"""Verdicts that a tutor may settle from now on; a wrong value stays one, whoever types it."""
LATELY = timedelta(days=60)


def accept(asked: Asked) -> list[Message]:
    """Count an answer: this once, or, where only its form was in the way, from now on."""
    student, sent, chosen = _which(asked, NOT_COUNTED, "ask-which-answer")
    step = _step(student, sent, chosen, Verdict.RIGHT)
    lines = [_line("line-accept", asked, student, sent, chosen), *_what_follows(asked, sent, chosen)]
    once = propose(asked, "accept", lines, steps=[step])
    if chosen.verdict not in READABLE_ANEW:
        return once
    alike = attempts.turned_down_alike(
        asked.s, [each.id for each in asked.students], chosen.typed, asked.at - LATELY
    )
    taught: dict[str, object] = {
        "expected": sent.item.key.answer,
        "form": sent.item.key.form,
        "typed": chosen.typed,
        "verdict": Verdict.RIGHT.value,
    }
    wish = Wish(WishKind.READ_AS, taught, asked.at.date(), None, tutor=asked.person.id)
    always = [
        *lines,
        Line("line-accept-always", {"typed": chosen.typed[:60], "answer": sent.item.key.answer}),
    ]
    second = store(asked, "accept", always, wished=[wish], steps=[step])
    notes = [Line("note-alike", {"count": len(alike) - 1})] if len(alike) > 1 else []
    return [
        replace_preview(each, ways=((str(second), "button-from-now-on"),), notes=tuple(notes))
        for each in once
        if isinstance(each, Preview)
    ]


def replace_preview(
    preview: Preview, *, ways: tuple[tuple[str, str], ...], notes: tuple[Line, ...]
) -> Preview:
    """The same preview with another way to do it."""
    return Preview(
        to=preview.to, change=preview.change, lines=preview.lines, notes=notes, side=preview.side, ways=ways
    )


def reject(asked: Asked) -> list[Message]:
    """An answer that was counted is not right after all: this once, or from now on at items of that kind."""
    student, sent, chosen = _which(asked, (Verdict.RIGHT,), "ask-which-answer")
    step = _step(student, sent, chosen, Verdict.WRONG)
    lines = [_line("line-reject", asked, student, sent, chosen)]
    once = propose(asked, "reject", lines, steps=[step])
    if chosen.typed.strip() == sent.item.key.answer or sent.item.choices:
        return once  # the key as it stands: then it is the item that is to be left out
    what: dict[str, object] = {"template": sent.template, "typed": taught_form(chosen.typed)}
    wish = Wish(WishKind.TURNED_DOWN, what, asked.at.date(), None, tutor=asked.person.id)
    always = [
        *lines,
        Line("line-reject-always", {"typed": chosen.typed[:60], "title": sent.item.lesson_title}),
    ]
    second = store(asked, "reject", always, wished=[wish], steps=[step])
    students = [each.id for each in asked.students]
    alike = attempts.counted_alike(asked.s, students, sent.template, chosen.typed, asked.at - LATELY)
    notes = [Line("note-alike-counted", {"count": len(alike) - 1})] if len(alike) > 1 else []
    return [
        replace_preview(each, ways=((str(second), "button-not-from-now-on"),), notes=tuple(notes))
        for each in once
        if isinstance(each, Preview)
    ]


def _line(key: str, asked: Asked, student: Student, sent: Sent, chosen: Attempt) -> Line:
    return Line(
        key,
        {
            "name": name_of(asked, student),
            "n": label(sent.part, sent.place),
            "typed": chosen.typed[:80],
            "ask": short(sent.item.ask, 90),
            "answer": sent.item.key.answer,
        },
    )


def _what_follows(asked: Asked, sent: Sent, chosen: Attempt) -> list[Line]:
    """What the item counts as then."""
    tried = [
        replace(each, verdict=Verdict.RIGHT) if each.id == chosen.id else each
        for each in attempts.attempts_of(asked.s, sent.id)
    ]
    outcome = outcome_of(tried)
    day = days.day(asked.s, sent.day)
    lines = [Line(f"line-counts-{outcome.value}")] if outcome else []
    return [*lines, Line("line-digest-was-sent")] if day.closed_at else lines


def _which(asked: Asked, verdicts: Sequence[Verdict], question: str) -> tuple[Student, Sent, Attempt]:
    """The answer that is meant: "@12" is that attempt, else it is found by name and number. Raises Unclear."""
    text = asked.text.strip()
    if text.startswith("@"):
        number = row_number(text[1:])
        chosen = attempts.find_attempt(asked.s, number) if number is not None else None
        sent = days.item(asked.s, chosen.item) if chosen else None
        student = next((each for each in asked.students if sent and each.id == sent.student), None)
        if chosen is None or sent is None or student is None:
            raise asked.wrong("why-no-such-answer")
        if chosen.verdict not in verdicts:
            raise asked.wrong("why-graded-so-already", student)
        return student, sent, chosen
    student, rest = take_student(asked)
    span, words = take_dates(rest, today(student, asked.at), past=True)
    labels, left = take_numbers(words)
    if len(labels) != 1 or left:
        raise asked.wrong("why-one-number", student, name=student.name)
    day = days.day_on(asked.s, student.id, span.first) if span else days.newest_day(asked.s, student.id)
    if day is None:
        raise asked.wrong("why-no-day-yet", student, name=student.name)
    (sent,) = items_at(asked, student, day, labels)
    fitting = [each for each in attempts.attempts_of(asked.s, sent.id) if each.verdict in verdicts]
    if not fitting:
        key = "why-nothing-to-accept" if Verdict.RIGHT not in verdicts else "why-nothing-to-reject"
        raise asked.wrong(key, student, name=student.name, n=labels[0])
    if len({each.typed for each in fitting}) > 1:
        raise asked.choose(
            Line(question, {"name": student.name, "n": labels[0]}),
            [(each.typed[:40], f"@{each.id}") for each in fitting],
        )
    return student, sent, fitting[0]


def _step(student: Student, sent: Sent, chosen: Attempt, verdict: Verdict) -> Step:
    return {
        "op": "grading",
        "student": student.id,
        "item": sent.id,
        "attempt": chosen.id,
        "verdict": verdict.value,
        "was": {
            "verdict": chosen.verdict.value,
            "read_as": chosen.read_as,
            "reason": chosen.reason,
            "misstep": chosen.misstep,
            "free": chosen.free,
        },
    }


def _regrade(scene: Scene, step: Step) -> Did:
    attempt = attempts.find_attempt(scene.s, int(str(step["attempt"])))
    was = step["was"]
    assert isinstance(was, dict)
    if attempt is None or attempt.verdict.value != was["verdict"]:
        raise Stale
    verdict = Verdict(str(step["verdict"]))
    attempts.add_grading(
        scene.s,
        attempt.id,
        verdict,
        scene.at,
        read_as=attempt.read_as,
        reason="tutor",
        by=str(scene.person.id),
    )
    sent = days.item(scene.s, attempt.item)
    stood = {"state": sent.state.value, "outcome": sent.outcome and sent.outcome.value, "tries": sent.tries}
    dropped = _stand_anew(scene, sent)
    said = _tell(scene, sent, attempt.typed) if verdict is Verdict.RIGHT else []
    return Did({**step, "stood": {**stood, "with_tutor": sent.with_tutor}, "dropped": dropped}, said)


def _stand_anew(scene: Scene, sent: Sent) -> list[int]:
    """Work out anew how an item stands; gives the fresh items of its kind that are not needed any more."""
    s = scene.s
    tried = attempts.attempts_of(s, sent.id)
    outcome = outcome_of(tried)
    day = days.day(s, sent.day)
    solved = outcome in (Outcome.FIRST_TRY, Outcome.LATER_TRY)
    wrong = 0
    for each in tried:
        if each.verdict is Verdict.RIGHT:
            break
        wrong += each.verdict is Verdict.WRONG or (each.verdict is Verdict.FORM and not each.free)
    over = solved or day.closed_at is not None or wrong >= TRIES or sent.solution_shown
    state = ItemState.DONE if over else ItemState.WAITING
    days.change_item(s, sent.id, outcome=outcome, tries=wrong, state=state, with_tutor=False, unread=0)
    if not over and day.stage is Stage.DONE:
        days.change_day(s, day.id, stage=Stage.REVIEW, ended_at=None)
    dropped = []
    if solved and day.closed_at is None:
        for other in days.items_of(s, day.id):
            if other.comeback_of == sent.id and other.state is ItemState.WAITING:
                days.change_item(s, other.id, state=ItemState.DROPPED)
                dropped.append(int(other.id))
    if day.closed_at is not None and outcome is not sent.outcome:
        relearn(s, scene.school, sent.student)
    return dropped


def _tell(scene: Scene, sent: Sent, typed: str) -> list[Message]:
    """Tell the student, but not on a phone that somebody else's child is holding."""
    where = people.chat_of_student(scene.s, sent.student)
    if where is None or not people.student(scene.s, sent.student).consented:
        return []
    chat, shared = where
    owner = people.who(scene.s, chat)
    if shared and owner is not None and owner.speaking not in (None, sent.student):
        return []
    return [Accepted(to=chat, ask=plain_text(sent.item.ask)[:300], typed=typed[:80], tutor=scene.person.name)]


def _grade_as_before(scene: Scene, step: Step) -> list[Message] | None:
    """Taking it back is a grading too: the one that stood before."""
    attempt = attempts.find_attempt(scene.s, int(str(step["attempt"])))
    was, stood, dropped = step["was"], step["stood"], step["dropped"]
    assert isinstance(was, dict) and isinstance(stood, dict) and isinstance(dropped, list)
    if attempt is None or attempt.verdict.value != step["verdict"]:
        return None
    attempts.add_grading(
        scene.s,
        AttemptId(attempt.id),
        Verdict(was["verdict"]),
        scene.at,
        read_as=was["read_as"],
        reason=was["reason"],
        misstep=was["misstep"],
        free=was["free"],
        by=str(scene.person.id),
    )
    sent = days.item(scene.s, attempt.item)
    newer = [each for each in attempts.attempts_of(scene.s, sent.id) if each.id > attempt.id]
    if newer:
        _stand_anew(scene, sent)
    else:
        days.change_item(scene.s, sent.id, **stood)
        day = days.day(scene.s, sent.day)
        if day.closed_at is not None and sent.outcome != stood["outcome"]:
            relearn(scene.s, scene.school, sent.student)
    for other in dropped:
        days.change_item(scene.s, other, state=ItemState.WAITING)
    return []


def excuse(asked: Asked) -> list[Message]:
    """Items of the latest day that shall not count, whatever came of them."""
    student, rest = take_student(asked)
    span, words = take_dates(rest, today(student, asked.at), past=True)
    labels, left = take_numbers(words)
    if not labels or left:
        raise asked.wrong("why-numbers", student, name=student.name)
    day = days.day_on(asked.s, student.id, span.first) if span else days.newest_day(asked.s, student.id)
    if day is None:
        raise asked.wrong("why-no-day-yet", student, name=student.name)
    sents = items_at(asked, student, day, labels)
    lines = [
        Line(
            "line-excuse",
            {
                "name": name_of(asked, student),
                "n": label(each.part, each.place),
                "ask": short(each.item.ask, 80),
            },
        )
        for each in sents
    ]
    steps = [item_step(each, outcome=Outcome.EXCUSED.value, state=ItemState.DONE.value) for each in sents]
    return propose(asked, "excuse", lines, steps=steps)


GRADING = (_regrade, _grade_as_before)
"""The effect of a new grading."""
