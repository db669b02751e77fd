"""A lesson's file that a tutor sent, once its bytes are here: proved outside of any transaction, then shown."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import PurePath

from sqlalchemy.orm import Session

from bot.course.faults import Fault
from bot.course.lesson import Lesson
from bot.course.own import MOST_LETTERS, prove_own_lesson
from bot.messages import Message
from bot.records import own, people
from bot.records.own import Coming
from bot.school.asking import TUTOR, Asked, Unclear, child_speaks
from bot.school.school import School
from bot.tutoring.own import faults_shown, lesson_proposed
from bot.vocabulary import Role


@dataclass(frozen=True, slots=True)
class Proof:
    """What became of a file's bytes: a lesson with what is worth a look, or what is false in it."""

    text: str
    lesson: Lesson | None
    faults: Sequence[Fault]
    notes: Sequence[Fault] = ()
    draws: int = 0


def prove(school: School, name: str, content: bytes | None) -> Proof:
    """Read and prove a file; about a second for a usual lesson. `content` None: the service no longer has it."""
    if content is None:
        return Proof(
            "", None, [Fault("gone", name, 0, "The file couldn't be fetched.", "Please send it again.")]
        )
    try:
        text = content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError:
        fault = Fault("not-utf-8", name, 1, "This file isn't plain text in UTF-8.", "Save it again as UTF-8.")
        return Proof("", None, [fault])
    if len(text) > MOST_LETTERS or "\0" in text:
        return Proof("", None, [Fault("long", name, 1, f"A lesson has at most {MOST_LETTERS} letters.")])
    found = prove_own_lesson(school.course, text, name)
    return Proof(text, found.lesson, found.faults, found.notes, found.draws)


def came(s: Session, school: School, row: Coming, proof: Proof, at: datetime) -> list[Message]:
    """Say what a file holds; nothing changes but that it was read. Twice says it once."""
    if not own.was_read(s, row.id, at):
        return []
    person = people.who(s, row.chat)
    if person is None or person.id != row.by or Role.TUTOR not in person.roles or child_speaks(person):
        return []
    asked = Asked(s, school, person, at, -row.id, TUTOR, "own", row.caption.strip()[:200])
    if proof.lesson is None or proof.faults:
        return [faults_shown(asked, row.name, proof.faults)]
    stem = PurePath(row.name).stem[:120]
    try:
        return lesson_proposed(asked, school.course, stem, proof.text, proof.lesson, proof.notes, proof.draws)
    except Unclear as unclear:
        return unclear.said
