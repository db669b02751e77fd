"""After the digest: *We did it*, *Still hard*, *Not tonight*, and the worked solution to do together."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy.orm import Session

from bot.messages import InWords, Message, Solution, StillHard, TalkNoted
from bot.records import people, talks
from bot.records.days import Sent
from bot.records.people import Person
from bot.school.drawing import alt_of, steps_of
from bot.school.school import School


def pressed(s: Session, school: School, person: Person, sent: Sent, how: str, at: datetime) -> list[Message]:
    """Note how it went; *Still hard* twice on one skill reaches the tutor."""
    student = people.student(s, sent.student)
    if how == "solution":
        return [
            Solution(
                to=person.chat,
                item=sent.id,
                ask=sent.item.ask,
                steps=steps_of(sent.item),
                answer=sent.item.answer_shown,
                unit=sent.item.key.unit or "",
                figure=sent.item.figure,
                alt=alt_of(sent.item),
                to_grown_up=True,
            )
        ]
    if how == "words":
        return [InWords(to=person.chat, alt=alt_of(sent.item))]
    skill = sent.item.skills[0] if sent.item.skills else sent.lesson
    first_time = talks.note(s, student.id, sent.id, skill, how, person.id, at)
    if how != "still-hard" or not first_time or talks.count(s, student.id, skill, "still-hard") < 2:
        return [TalkNoted(to=person.chat, how=how, name=student.name)]
    tutor = people.reach(s, student.tutor)
    told: list[Message] = []
    if tutor is not None:
        household = people.household(s, student.household)
        told = [
            StillHard(
                to=tutor.chat,
                key=f"still-hard/{student.id}/{sent.id}",
                student=student.name,
                household=household.name,
                title=sent.item.lesson_title,
            )
        ]
    name = people.person_name(s, student.tutor)
    return [TalkNoted(to=person.chat, how=how, name=student.name, tutor=name), *told]
