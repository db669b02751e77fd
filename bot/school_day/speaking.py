"""Who holds the phone: a student speaks on a parent's phone until it is given back."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.messages import GivenBack, Message, NotForYou, Speaking, WhoReads, WhoSpeaks
from bot.records import outbox, people
from bot.records.people import Person, Student
from bot.school.school import School
from bot.school_day import evening
from bot.vocabulary import ChatId, StudentId

SILENCE = timedelta(hours=2)
"""After that long without a word the phone counts as given back."""
DELETABLE = timedelta(hours=47)
"""A bot may delete what it sent less than 48 hours ago (Bot API)."""
PAPERS = (
    "WeekLetter",
    "WeekLetterLine",
    "LetterPaper",
    "RecordsShown",
    "RecordPaper",
    "RecordTables",
    "SamplesShown",
    "SheetPaper",
    "KeyPaper",
    "MarksShown",
    "PagesShown",
    "PagesWaiting",
    "AdjustmentsShown",
)
FOR_GROWN_UPS = (
    "Digest",
    "OpenInFull",
    "WeekPicture",
    "DigestLine",
    "TestCountedAgain",
    "TalkNoted",
    *PAPERS,
)
"""Messages that a child isn't shown on a phone that goes round."""


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


def greeting(s: Session, chat: ChatId, student: Student, at: datetime) -> list[Message]:
    """What a student hears on taking the phone; the first time also who reads what.

    What a grown-up had opened is taken off the screen.
    """
    away = tuple(outbox.shown_kinds(s, chat, FOR_GROWN_UPS, at - DELETABLE))
    said: list[Message] = [Speaking(to=chat, name=student.name, student=student.id, away=away)]
    if not student.told:
        said = [tell(s, chat, student), *said]
    return said


def tell(s: Session, chat: ChatId, student: Student, key: str = "") -> Message:
    """The student's first message: what this is, and who reads what."""
    people.change_student(s, student.id, told=True)
    return who_reads(s, chat, student, key)


def who_reads(s: Session, chat: ChatId, student: Student, key: str = "") -> Message:
    """What this is, and who reads what, in a child's words."""
    parents = tuple(parent.name for parent in people.parents_of(s, student.id))
    tutor = people.person_name(s, student.tutor)
    own = people.reach(s, student.id) is not None
    return WhoReads(to=chat, key=key, name=student.name, tutor=tutor, parents=parents, own=own)


def give_back(s: Session, school: School, person: Person, at: datetime) -> list[Message]:
    """The phone is the grown-up's again; what was held for them meanwhile follows."""
    if person.speaking is None or not person.shared:
        return [NotForYou(to=person.chat, why="gone")]
    people.speak(s, person.chat, None, at)
    back = GivenBack(to=person.chat, name=person.name, roles=tuple(sorted(person.roles)))
    return [back, *evening.held(s, school, person.id, at)]


def give_back_if_forgotten(s: Session, school: School, student: Student, now: datetime) -> list[Message]:
    """After a long silence the phone counts as given back."""
    held = people.phone_held_by(s, student.id)
    if held is None or (held[2] is not None and now - held[2] < SILENCE):
        return []
    chat, owner, spoke_at = held
    people.speak(s, chat, None, now)
    back = GivenBack(
        to=chat,
        key=f"back/{chat}/{spoke_at.timestamp() if spoke_at else 0:.0f}",
        name=people.person_name(s, owner),
        by_itself=True,
    )
    return [back, *evening.held(s, school, owner, now)]
