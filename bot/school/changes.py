"""A change is shown first, takes effect on *Do it*, and can be taken back for a day.

What it does is data: wishes, and steps that overwrite something. A step is a dict with the name of its
effect under "op"; each effect knows how to do it and how to take it back.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta

import msgspec
from sqlalchemy.orm import Session

from bot.happened import Pressed
from bot.messages import (
    CannotUndo,
    Changed,
    ChangesShown,
    LeftAsIs,
    Line,
    Message,
    NotForYou,
    Preview,
    TakenBack,
)
from bot.records import days, people, wishes
from bot.records.days import ItemState
from bot.records.people import EARLY, Person
from bot.records.wishes import Change, Wish
from bot.school.asking import TUTOR, Asked, row_number
from bot.school.school import School
from bot.school.wishes import WishKind
from bot.vocabulary import HouseholdId, Role, StudentId

UNDO = timedelta(hours=24)
"""How long a change can be taken back, and how long a preview holds (common practice, no source)."""
HEADINGS = frozenset({"line-day-of", "line-end"})
"""First lines that say nothing without the next."""

Step = dict[str, object]


@dataclass(frozen=True, slots=True)
class Scene:
    """Who changes something, and when."""

    s: Session
    school: School
    person: Person
    at: datetime


@dataclass(frozen=True, slots=True)
class Did:
    """A step was done: what to keep so that it can be taken back, and what else is to be said."""

    step: Step
    said: list[Message] = field(default_factory=list)
    link: str = ""
    name: str = ""


class Stale(Exception):
    """A step can't be done any more, since something happened after it was shown."""


Do = Callable[[Scene, Step], Did]
"""Raises Stale."""
TakeBack = Callable[[Scene, Step], list[Message] | None]
"""None: it can't be taken back any more."""
Effects = Mapping[str, tuple[Do, TakeBack]]


def propose(
    asked: Asked,
    verb: str,
    lines: Sequence[Line],
    *,
    wished: Sequence[Wish] = (),
    steps: Sequence[Step] = (),
    notes: Sequence[Line] = (),
    final: bool = False,
) -> list[Message]:
    """Show a change; nothing of it happens yet. `final`: once done it can't be taken back."""
    change = store(asked, verb, lines, wished=wished, steps=steps, final=final)
    return [
        Preview(
            to=asked.person.chat,
            change=change,
            lines=tuple(lines),
            notes=tuple(notes),
            side=asked.side,
        )
    ]


def store(
    asked: Asked,
    verb: str,
    lines: Sequence[Line],
    *,
    wished: Sequence[Wish] = (),
    steps: Sequence[Step] = (),
    final: bool = False,
) -> int:
    """Store a change that does nothing yet; return its id."""
    return wishes.propose(
        asked.s,
        asked.person.id,
        verb,
        wished,
        asked.at,
        preview=msgspec.json.encode(list(lines)).decode(),
        before={"steps": list(steps), "side": asked.side, "final": final},
    )


def take_press(scene: Scene, what: Pressed, effects: Effects) -> list[Message] | None:
    """*Do it*, *Leave it* and *Undo*; None where it is another button."""
    side, _, verb = what.verb.partition("-")
    if verb not in ("do", "leave", "undo"):
        return None
    number = row_number(what.ref)
    change = wishes.find_change(scene.s, number) if number is not None else None
    if change is None:
        return [NotForYou(to=scene.person.chat, why="gone")]
    if change.by != scene.person.id or change.before.get("side") != side:
        return [NotForYou(to=scene.person.chat, why="other")]
    if verb == "leave":
        return _leave(scene, change)
    return do_it(scene, change, effects) if verb == "do" else undo_it(scene, change, effects)


def _leave(scene: Scene, change: Change) -> list[Message]:
    if change.confirmed_at is not None:
        return [_changed(scene, change, already=True)]
    return left_as_is(scene.person)


def left_as_is(person: Person) -> list[Message]:
    """*Leave it*: nothing happened."""
    return [LeftAsIs(to=person.chat)]


def do_it(scene: Scene, change: Change, effects: Effects) -> list[Message]:
    """Let a change take effect, once."""
    if change.confirmed_at is not None:
        return [_changed(scene, change, already=True)]
    if scene.at - change.made_at > UNDO:
        return [CannotUndo(to=scene.person.chat, why="old")]
    if not _may(scene, change):
        return [NotForYou(to=scene.person.chat, why="other")]
    said: list[Message] = []
    link = name = ""
    done: list[Step] = []
    try:
        with scene.s.begin_nested():
            if not wishes.confirm(scene.s, change.id, scene.at):
                return [_changed(scene, change, already=True)]
            for step in _steps(change):
                did = effects[str(step["op"])][0](scene, step)
                done.append(did.step)
                said += did.said
                link, name = did.link or link, did.name or name
            wishes.note_before(scene.s, change.id, {**change.before, "steps": done})
    except Stale:
        return [CannotUndo(to=scene.person.chat, why="stale")]
    _look_again(scene, change)
    fresh = wishes.find_change(scene.s, change.id)
    assert fresh is not None
    return [_changed(scene, fresh, link=link, name=name), *said]


def undo_it(scene: Scene, change: Change, effects: Effects) -> list[Message]:
    """Take a change back, as far as that is still possible."""
    chat = scene.person.chat
    if change.confirmed_at is None or change.undone_at is not None:
        return [CannotUndo(to=chat, why="gone")]
    if change.before.get("final"):
        return [CannotUndo(to=chat, why="final")]
    if scene.at - change.confirmed_at > UNDO:
        return [CannotUndo(to=chat, why="late")]
    if not _may(scene, change):
        return [NotForYou(to=chat, why="other")]
    if not wishes.undo(scene.s, change.id, scene.at):
        return [CannotUndo(to=chat, why="gone")]
    said: list[Message] = []
    kept = _out_of_days_made(scene, change)
    for step in reversed(_steps(change)):
        told = effects[str(step["op"])][1](scene, step)
        if told is None:
            kept.append(Line("kept-step"))
        else:
            said += told
    _look_again(scene, change)
    unique = tuple({line.key: line for line in kept}.values())
    return [TakenBack(to=chat, lines=_lines(change), kept=unique), *said]


def undo_newest(asked: Asked, effects: Effects) -> list[Message]:
    """Take back what was changed last."""
    since = asked.at - UNDO
    scene = Scene(asked.s, asked.school, asked.person, asked.at)
    for change in wishes.recent_changes(asked.s, asked.person.id, since, limit=20):
        if not change.before.get("final") and change.before.get("side") == asked.side:
            return undo_it(scene, change, effects)
    return [CannotUndo(to=asked.person.chat, why="none")]


def show_recent(asked: Asked) -> list[Message]:
    """The changes of the last day that can be taken back."""
    rows = tuple(
        (change.id, change.confirmed_at.isoformat() if change.confirmed_at else "", _in_short(_lines(change)))
        for change in wishes.recent_changes(asked.s, asked.person.id, asked.at - UNDO)
        if change.before.get("side") == asked.side and not change.before.get("final")
    )
    if not rows:
        return [CannotUndo(to=asked.person.chat, why="none")]
    return [ChangesShown(to=asked.person.chat, rows=rows, side=asked.side)]


def _in_short(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """A change's first line, with the next one where the first is no more than a heading."""
    return lines[: 2 if lines[0].key in HEADINGS else 1]


def _changed(
    scene: Scene, change: Change, *, link: str = "", name: str = "", already: bool = False
) -> Changed:
    return Changed(
        to=scene.person.chat,
        change=change.id,
        lines=_lines(change),
        side=str(change.before.get("side", TUTOR)),
        undo=not change.before.get("final") and change.undone_at is None,
        link=link,
        name=name,
        already=already,
    )


def _lines(change: Change) -> tuple[Line, ...]:
    return tuple(msgspec.json.decode(change.preview, type=list[Line])) if change.preview else ()


def _steps(change: Change) -> list[Step]:
    found = change.before.get("steps")
    return [dict(step) for step in found if isinstance(step, dict)] if isinstance(found, list) else []


def _may(scene: Scene, change: Change) -> bool:
    """Whether everybody whom a change is about is still somebody of theirs."""
    person, s = scene.person.id, scene.s
    if change.before.get("side") == TUTOR:
        students = {each.id for each in people.students_of_tutor(s, person)}
        homes = {each.id for each in people.households_of_tutor(s, person)}
    else:
        students = {each.id for each in people.students_of_parent(s, person)}
        homes = {each.id for each in people.households_of(s, person, Role.PARENT)}
    wished = wishes.wishes_of(s, change.id)
    about = {wish.student for wish in wished} | {step.get("student") for step in _steps(change)}
    at_home = {wish.household for wish in wished} | {step.get("household") for step in _steps(change)}
    everybody = {wish.tutor for wish in wished}
    return about <= {*students, None} and at_home <= {*homes, None} and everybody <= {person, None}


def _look_again(scene: Scene, change: Change) -> None:
    """The clock looks again at everybody whose days or hours may have moved."""
    wished = wishes.wishes_of(scene.s, change.id)
    students = {wish.student for wish in wished if wish.student}
    for home in {wish.household for wish in wished if wish.household}:
        students |= {each.id for each in people.students_of_household(scene.s, home)}
    for tutor in {wish.tutor for wish in wished if wish.tutor}:
        students |= {each.id for each in people.students_of_tutor(scene.s, tutor)}
    for student in students:
        people.change_student(scene.s, student, next_look=EARLY)


def _out_of_days_made(scene: Scene, change: Change) -> list[Line]:
    """Take an undone wish's items out of days that were made already; what was begun stays."""
    kept: list[Line] = []
    for wish in wishes.wishes_of(scene.s, change.id):
        if wish.student is None:
            continue
        if wish.kind in (WishKind.OWN_ITEM, WishKind.OWN_LESSON):
            kept += _own_out(scene, wish.student, wish)
            continue
        day = days.day_on(scene.s, wish.student, wish.starts)
        if day is None or wish.kind not in (WishKind.PIN, WishKind.DROP, WishKind.REVIEW_ITEMS):
            continue
        if wish.kind != WishKind.PIN:
            kept.append(Line("kept-day", {"date_day": day.date.isoformat()}))
            continue
        for sent in days.items_of(scene.s, day.id):
            if sent.template == wish.what.get("template") and sent.why == "tutor-asked":
                if sent.state is ItemState.WAITING and not day.closed_at:
                    days.change_item(scene.s, sent.id, state=ItemState.DROPPED)
                else:
                    kept.append(Line("kept-step"))
    return kept


def _own_out(scene: Scene, student: StudentId, wish: Wish) -> list[Line]:
    """Take an item of the tutor's own out of the days made since, if it waits there still; a lesson stays."""
    kept: list[Line] = []
    item = wish.what.get("item")
    template, ask = (item["template"], item["ask"]) if isinstance(item, dict) else ("", "")
    for day in days.days_between(scene.s, student, wish.starts, wish.ends or date.max):
        if not template and day.lesson == wish.what.get("lesson"):
            kept.append(Line("kept-day", {"date_day": day.date.isoformat()}))
        for sent in days.items_of(scene.s, day.id) if template else ():
            if (sent.template, sent.item.ask) != (template, ask):
                continue
            if sent.state is ItemState.WAITING and not day.closed_at:
                days.change_item(scene.s, sent.id, state=ItemState.DROPPED)
            else:
                kept.append(Line("kept-step"))
    return kept


def student_step(student: StudentId, **values: object) -> Step:
    """A step that overwrites columns of a student."""
    return {"op": "student", "student": student, "set": values}


def household_step(household: HouseholdId, **values: object) -> Step:
    """A step that overwrites columns of a household."""
    return {"op": "household", "household": household, "set": values}
