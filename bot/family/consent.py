"""A parent agrees, or doesn't, or takes it back: before that nothing is sent to a student, after it nothing more."""

from __future__ import annotations

from datetime import date, datetime

from sqlalchemy.orm import Session

from bot.messages import (
    AskWithdraw,
    ConsentAsked,
    ConsentGiven,
    ConsentLater,
    Message,
    NotForYou,
    Privacy,
    TutorTold,
    WhoReads,
    Withdrawn,
)
from bot.records import invites, outbox, people
from bot.records.people import EARLY, Household, Person, Student
from bot.school import dates
from bot.school.asking import Asked
from bot.vocabulary import HouseholdId, PersonId, Role, StudentId

VERSION = 1
"""Of the consent's wording. Raise it when what is kept, or who reads it, changes."""


def ask(s: Session, person: Person, home: Household) -> ConsentAsked:
    """The question: what is kept and why, who reads what, how to end it."""
    return ConsentAsked(
        to=person.chat,
        household=home.id,
        students=tuple(each.name for each in _students(s, home.id)),
        tutor=people.person_name(s, home.tutor),
        version=VERSION,
    )


def _students(s: Session, home: HouseholdId) -> list[Student]:
    return [each for each in people.students_of_household(s, home) if each.household == home]


def _home(s: Session, person: Person, ref: str) -> Household | None:
    homes = people.households_of(s, person.id, Role.PARENT)
    return next((home for home in homes if str(home.id) == ref), None)


def agree(s: Session, person: Person, ref: str, at: datetime) -> list[Message]:
    """*I agree*: the consent is recorded, students with a chat of their own are told who reads what."""
    home = _home(s, person, ref)
    if home is None:
        return [NotForYou(to=person.chat, why="other")]
    if home.consented:
        return [ConsentGiven(to=person.chat, firsts=_firsts(s, home, at), already=True)]
    invites.set_consent(s, home.id, person.id, VERSION, at, given=True)
    for student in _students(s, home.id):
        if student.first_day is None:
            people.change_student(s, student.id, first_day=_first_day(s, student, at), next_look=EARLY)
        else:
            people.change_student(s, student.id, next_look=EARLY)
    said: list[Message] = [ConsentGiven(to=person.chat, firsts=_firsts(s, home, at))]
    for student in _students(s, home.id):
        said += tell_student(s, people.student(s, student.id))
    return said + tell_tutor(s, home.tutor, "agreed", person.name, home.name)


def _first_day(s: Session, student: Student, at: datetime) -> date | None:
    """Today where its push is still to come; else the next school day, so that nobody is taken by surprise."""
    local = dates.local(student, at)
    if local.hour * 60 + local.minute < student.push_at and dates.has_school(s, student, local.date()):
        return local.date()
    return dates.next_day(s, student, local.date())


def _firsts(s: Session, home: Household, at: datetime) -> tuple[tuple[str, str, int, str], ...]:
    return tuple(
        (
            each.name,
            each.first_day.isoformat() if each.first_day else "",
            each.push_at,
            _where(s, each.id, at),
        )
        for each in _students(s, home.id)
    )


def _where(s: Session, student: StudentId, at: datetime) -> str:
    if people.reach(s, student) is not None:
        return "own"
    return "link" if invites.waits(s, PersonId(student), at) else "shared"


def tell_student(s: Session, student: Student) -> list[Message]:
    """Tell a student with a chat of their own who reads what, once, and only with consent."""
    own = people.reach(s, student.id)
    if own is None or student.told or not student.consented:
        return []
    people.change_student(s, student.id, told=True)
    parents = tuple(parent.name for parent in people.parents_of(s, student.id))
    tutor = people.person_name(s, student.tutor)
    return [WhoReads(to=own.chat, name=student.name, tutor=tutor, parents=parents, own=True)]


def tell_tutor(
    s: Session,
    tutor: PersonId,
    what: str,
    name: str,
    household: str,
    *,
    role: str = "",
    person: PersonId | None = None,
) -> list[Message]:
    """Tell the tutor, where they have a chat."""
    where = people.reach(s, tutor)
    if where is None:
        return []
    return [
        TutorTold(
            to=where.chat, what=what, name=name, household=household, role=role, person=person or PersonId(0)
        )
    ]


def not_now(s: Session, person: Person, ref: str, at: datetime) -> list[Message]:
    """*Not now*: nothing is sent; the tutor knows."""
    home = _home(s, person, ref)
    if home is None:
        return [NotForYou(to=person.chat, why="other")]
    if home.consented:
        return [ConsentGiven(to=person.chat, firsts=_firsts(s, home, at), already=True)]
    told = tell_tutor(s, home.tutor, "not-now", person.name, home.name)
    return [ConsentLater(to=person.chat), *told]


def withdraw(s: Session, person: Person, ref: str, at: datetime) -> list[Message]:
    """*Stop everything*: consent is taken back, and what waits for the students' chats is dropped at once."""
    home = _home(s, person, ref)
    if home is None:
        return [NotForYou(to=person.chat, why="other")]
    names = tuple(each.name for each in _students(s, home.id))
    told = stop(s, home, person, at) if home.consented else []
    return [Withdrawn(to=person.chat, students=names), *told]


def stop(s: Session, home: Household, person: Person, at: datetime, what: str = "withdrawn") -> list[Message]:
    """Take a household's consent back: what waits for the students is dropped, and the tutor is told."""
    students = _students(s, home.id)
    invites.set_consent(s, home.id, person.id, VERSION, at, given=False)
    for student in students:
        people.change_student(s, student.id, next_look=EARLY)
        own = people.reach(s, student.id)
        if own is not None:
            outbox.withdraw(s, own.chat)
        held = people.phone_held_by(s, student.id)
        if held is not None:
            people.speak(s, held[0], None, at)
    for member in people.members_of(s, home.id):
        phone = people.reach(s, member.person)
        if member.role is Role.PARENT and phone is not None and _nothing_left(s, member.person):
            outbox.withdraw(s, phone.chat, pushes_only=True)
    return tell_tutor(s, home.tutor, what, person.name, home.name)


def _nothing_left(s: Session, parent: PersonId) -> bool:
    return not any(home.consented for home in people.households_of(s, parent, Role.PARENT))


def ask_again(asked: Asked) -> list[Message]:
    """The command: the question once more, or that it was answered."""
    open_ = [home for home in asked.households if not home.consented]
    if open_:
        return [ask(asked.s, asked.person, home) for home in open_]
    firsts = tuple(first for home in asked.households for first in _firsts(asked.s, home, asked.at))
    return [ConsentGiven(to=asked.person.chat, firsts=firsts, already=True)]


def ask_withdraw(asked: Asked) -> list[Message]:
    """The command: what withdrawing does, with a button for each household of theirs."""
    return [
        AskWithdraw(
            to=asked.person.chat,
            household=home.id,
            students=tuple(each.name for each in _students(asked.s, home.id)),
        )
        for home in asked.households
    ]


def privacy(asked: Asked) -> list[Message]:
    """What is kept and why, and who reads what."""
    said: list[Message] = []
    for home in asked.households:
        given = [each for each in invites.consents(asked.s, home.id) if each[2]]
        agreed = None
        if home.consented and given:
            parent, _, _, when = given[-1]
            agreed = (people.person_name(asked.s, parent), when.date().isoformat())
        said.append(
            Privacy(
                to=asked.person.chat,
                students=tuple(each.name for each in _students(asked.s, home.id)),
                tutor=people.person_name(asked.s, home.tutor),
                agreed=agreed,
                keep_months=asked.school.keep_months,
            )
        )
    return said
