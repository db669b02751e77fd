"""Who holds the phone: a student speaks on a parent's phone until it is given back."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import GivenBack, Message, NotForYou, Speaking, WhoReads, WhoSpeaks
from bot.records import people
from bot.records.people import Person, Student
from bot.vocabulary import ChatId, StudentId

SILENCE = timedelta(hours=2)
"""After that long without a word the phone counts as given back."""


def who_speaks(s: Session, person: Person, why: str = "choose") -> list[Message]:
    """Ask which student is speaking, with a button each."""
    students = people.shares_phone(s, person.chat)
    if not students:
        return [NotForYou(to=person.chat, why="no-student")]
    return [WhoSpeaks(to=person.chat, students=tuple((each.id, each.name) for each in students), why=why)]


def hand_over(s: Session, person: Person, student_id: StudentId, at: datetime) -> Student | None:
    """Give the phone to a student; None where the student doesn't share this phone."""
    student = next((each for each in people.shares_phone(s, person.chat) if each.id == student_id), None)
    if student is not None:
        people.speak(s, person.chat, student.id, at)
    return student


def greeting(s: Session, chat: ChatId, student: Student) -> list[Message]:
    """What a student hears on taking the phone; the first time also who reads what."""
    said: list[Message] = [Speaking(to=chat, name=student.name, student=student.id)]
    if not student.told:
        said = [tell(s, chat, student), *said]
    return said


def tell(s: Session, chat: ChatId, student: Student) -> Message:
    """The student's first message: what this is, and who reads what."""
    people.change_student(s, student.id, told=True)
    parents = tuple(parent.name for parent in people.parents_of(s, student.id))
    tutor = people.person_name(s, student.tutor)
    return WhoReads(to=chat, name=student.name, tutor=tutor, parents=parents)


def give_back(s: Session, person: Person, at: datetime, *, by_itself: bool = False) -> list[Message]:
    """The phone is the grown-up's again."""
    if person.speaking is None or not person.shared:
        return [NotForYou(to=person.chat, why="gone")]
    people.speak(s, person.chat, None, at)
    return [GivenBack(to=person.chat, name=person.name, by_itself=by_itself)]
