"""Words of the tutor's own: a note in the evening's digest, a message through the bot."""

from __future__ import annotations

from datetime import date

from bot.messages import FromTutor, Line, Message
from bot.records import days, people
from bot.records.people import Student
from bot.records.wishes import Wish
from bot.school import dates
from bot.school.asking import Asked
from bot.school.changes import Did, Scene, Stale, Step, propose
from bot.school.names import list_names, take_person, take_students
from bot.school.wishes import WishKind
from bot.vocabulary import PersonId, Role, StudentId

LONGEST_NOTE = 400
LONGEST = 3000
"""Letters that are passed on in one message."""


def note(asked: Asked) -> list[Message]:
    """A word that the next digest carries."""
    students, rest = take_students(asked)
    text = rest.strip()
    if not text:
        raise asked.wrong("why-note-missing", students[0])
    if len(text) > LONGEST_NOTE:
        raise asked.wrong("why-too-long", students[0], most=LONGEST_NOTE)
    lines, wished = [], []
    for student in students:
        on = _digest_day(asked, student)
        wished.append(Wish(WishKind.NOTE, {"text": text}, on, on, student=student.id))
        lines.append(
            Line(
                "line-note",
                {"name": list_names(asked, [student])[0], "date_day": on.isoformat(), "text": text},
            )
        )
    return propose(asked, "note", lines, wished=wished)


def _digest_day(asked: Asked, student: Student) -> date:
    """The day whose digest comes next."""
    on = dates.today(student, asked.at)
    day = days.day_on(asked.s, student.id, on)
    if day is not None and day.closed_at is None:
        return on
    local = dates.local(student, asked.at)
    early = local.hour * 60 + local.minute < student.digest_at
    if day is None and early and dates.has_school(asked.s, student, on):
        return on
    comes = dates.next_day(asked.s, student, on)
    if comes is None:
        raise asked.wrong("why-no-day-ahead", student, name=student.name)
    return comes


def tell(asked: Asked) -> list[Message]:
    """A message to a student or a parent; once sent it can't be taken back."""
    somebody, rest = take_person(asked)
    text = rest.strip()
    if not text:
        raise asked.wrong("why-words-missing", name=somebody.name)
    if len(text) > LONGEST:
        raise asked.wrong("why-too-long", most=LONGEST)
    if _where(asked, somebody.person, somebody.role) is None:
        raise asked.wrong("why-no-chat", name=somebody.name)
    if somebody.role is Role.STUDENT and not people.student(asked.s, StudentId(somebody.person)).consented:
        raise asked.wrong("why-no-consent", name=somebody.name)
    step: Step = {
        "op": "tell",
        "household": somebody.household.id,
        "person": somebody.person,
        "role": somebody.role.value,
        "name": somebody.name,
        "text": text,
    }
    line = Line("line-tell", {"name": somebody.name, "text": text})
    return propose(asked, "tell", [line], steps=[step], notes=[Line("note-final")], final=True)


def _where(asked: Asked | Scene, person: PersonId, role: Role) -> tuple[int, bool] | None:
    if role is Role.STUDENT:
        return people.chat_of_student(asked.s, StudentId(person))
    own = people.reach(asked.s, person)
    return (own.chat, False) if own else None


def _send(scene: Scene, step: Step) -> Did:
    """Send the words, unless the phone is in other hands just now."""
    person, role = PersonId(int(str(step["person"]))), Role(str(step["role"]))
    where = _where(scene, person, role)
    if where is None:
        raise Stale
    if role is Role.STUDENT and not people.student(scene.s, StudentId(person)).consented:
        raise Stale
    chat, shared = where
    owner = people.who(scene.s, chat)  # type: ignore[arg-type]
    if owner is not None and owner.shared and owner.speaking not in (None, StudentId(person)):
        raise Stale  # somebody else's child would read it
    name = str(step["name"]) if shared else ""
    return Did(step, [FromTutor(to=chat, tutor=scene.person.name, text=str(step["text"]), name=name)])  # type: ignore[arg-type]


def _sent_is_sent(scene: Scene, step: Step) -> list[Message] | None:
    return None


TELL = (_send, _sent_is_sent)
"""The effect of a message to somebody."""
