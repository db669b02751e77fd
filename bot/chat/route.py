"""What happened -> the use case it belongs to. Who is speaking decides; nothing is worked out here."""

from __future__ import annotations

from rapidfuzz import fuzz, process
from sqlalchemy.orm import Session

from bot import family, tutoring
from bot.answers import Key, judge
from bot.family import grader
from bot.happened import Command, Edited, Happened, InGroup, Left, Pressed, SentFile, Typed
from bot.messages import (
    Help,
    LeaveGroup,
    Message,
    NoSuchCommand,
    NotForYou,
    NotLinked,
    NotText,
    Trouble,
    Unreachable,
)
from bot.now import Clock
from bot.records import outbox, people
from bot.records.people import Person
from bot.school import own
from bot.school.commands import commands_for, find
from bot.school.school import School
from bot.school_day import besides, presses, reply, speaking
from bot.school_day.asking import Here
from bot.vocabulary import ChatId, Role, Verdict


class Route:
    """Everything that can happen in a chat goes through here, inside an open transaction."""

    def __init__(self, school: School, clock: Clock) -> None:
        self._school = school
        self._clock = clock

    def __call__(self, s: Session, what: Happened) -> list[Message]:
        """Return what is to be said."""
        own.learn(s, self._school)
        if isinstance(what, InGroup):
            return [LeaveGroup(to=what.chat, key=f"group/{what.chat}/{what.at.date()}")]
        if isinstance(what, Left):
            people.block(s, what.chat, blocked=not what.back)
            return [] if what.back else self.blocked(s, what.chat)
        if isinstance(what, Command) and what.name == "start" and what.rest:
            handed = tutoring.open_link(s, people.who(s, what.chat), what.rest, what.at)
            return handed or family.start_link(s, self._school, what.chat, what.rest, what.at)
        person = people.who(s, what.chat)
        if person is None:
            return self._stranger(s, what)
        if isinstance(what, Pressed):
            about = outbox.shown(s, what.chat, what.message)
            if about is None:
                outbox.arrived(s, what.chat, _about_of(what), what.message)
            return self._pressed(s, person, what)
        if isinstance(what, Command):
            return self._command(s, person, what)
        if person.speaking is not None:
            return self._student(s, person, what)
        return self._grown_up(s, person, what)

    def sorry(self, s: Session, what: Happened) -> list[Message]:
        """What a chat hears when its update could not be handled."""
        return [Trouble(to=what.chat)]

    def blocked(self, s: Session, chat: ChatId) -> list[Message]:
        """Somebody turned us away: their tutor hears of it, once a day."""
        person = people.who(s, chat)
        if person is None:
            return []
        homes = [
            home for role in (Role.PARENT, Role.STUDENT) for home in people.households_of(s, person.id, role)
        ]
        tutor = people.reach(s, homes[0].tutor) if homes else None
        if tutor is None or tutor.chat == chat:
            return []
        key = f"blocked/{chat}/{self._clock.now().date()}"
        return [Unreachable(to=tutor.chat, key=key, name=person.name, household=homes[0].name)]

    def _stranger(self, s: Session, what: Happened) -> list[Message]:
        if isinstance(what, Pressed):
            answered = family.take_stranger_press(s, self._school, what)
            if answered is not None:
                return answered
        return [NotLinked(to=what.chat)]

    def _here(self, s: Session, person: Person, what: Happened) -> Here | None:
        if person.speaking is None:
            return None
        student = people.student(s, person.speaking)
        if person.shared:
            people.speak(s, person.chat, student.id, self._clock.now())
        return Here(self._school, student, person.chat, what.at)

    def _student(self, s: Session, person: Person, what: Typed | Edited | SentFile) -> list[Message]:
        here = self._here(s, person, what)
        assert here is not None
        if not here.student.consented:
            return [NotForYou(to=person.chat, why="no-consent")]
        told = [] if here.student.told else [speaking.tell(s, person.chat, here.student)]
        match what:
            case Typed():
                return told + reply.take_reply(s, here, what)
            case Edited():
                return told + besides.edited(s, here, what)
            case SentFile():
                return told + besides.take_file(s, here, what)

    def _grown_up(self, s: Session, person: Person, what: Typed | Edited | SentFile) -> list[Message]:
        if isinstance(what, SentFile):
            taken = tutoring.take_file(s, self._school, person, what) if Role.TUTOR in person.roles else None
            return taken if taken is not None else [NotText(to=person.chat, what="grown-up")]
        if isinstance(what, Edited):
            return []
        for take in (tutoring.take_text, family.take_text, grader.take_text):
            taken = take(s, self._school, person, what)
            if taken is not None:
                return taken
        if people.shares_phone(s, person.chat) and _reads_like_an_answer(what.text):
            return speaking.who_speaks(s, person, why="words")
        return [Help(to=person.chat, role=_role(person))]

    def _command(self, s: Session, person: Person, what: Command) -> list[Message]:
        if person.speaking is not None:
            here = self._here(s, person, what)
            assert here is not None
            spec = find(what.name)
            if person.shared and spec is not None and spec.name == "back":
                return speaking.give_back(s, self._school, person, what.at)
            if not here.student.consented:
                if spec is not None and spec.name in ("privacy", "language"):
                    return presses.student_command(s, here, what) or []  # to be read before anybody agrees
                return [NotForYou(to=person.chat, why="no-consent")]
            answered = presses.student_command(s, here, what)
            if answered is not None:
                return answered
            if person.shared:
                return [Help(to=person.chat, role="student")]
        for take in (tutoring.take_command, family.take_command, grader.take_command):
            answered = take(s, self._school, person, what)
            if answered is not None:
                return answered
        if what.name in ("start", "help"):
            return [Help(to=person.chat, role=_role(person))]
        names = commands_for(person.roles, shared=person.shared and person.speaking is not None)
        near = process.extract(what.name[:32], names, scorer=fuzz.ratio, limit=2, score_cutoff=60)
        return [NoSuchCommand(to=person.chat, near=tuple(name for name, _, _ in near))]

    def _pressed(self, s: Session, person: Person, what: Pressed) -> list[Message]:
        if what.verb.startswith("t-"):
            taken = tutoring.take_press(s, self._school, person, what)
            return taken if taken is not None else [NotForYou(to=person.chat)]
        if what.verb.startswith("f-"):
            taken = family.take_press(s, self._school, person, what)
            return taken if taken is not None else [NotForYou(to=person.chat)]
        if what.verb.startswith("g-"):
            taken = grader.take_press(s, self._school, person, what)
            return taken if taken is not None else [NotForYou(to=person.chat)]
        if what.verb in presses.SPEAKING:
            return presses.hold_the_phone(s, self._school, person, what)
        if what.verb in presses.GROWN_UP:
            return presses.grown_up(s, self._school, person, what)
        here = self._here(s, person, what)
        if here is None:
            return [NotForYou(to=person.chat, why="student")]
        if not here.student.consented:
            return [NotForYou(to=person.chat, why="no-consent")]
        return presses.student(s, here, what)


def _about_of(what: Pressed) -> str:
    """What the message showed under which a button was pressed, as far as the button tells."""
    ref = what.ref.partition(":")[0]
    return f"item/{ref}" if what.verb in ("hint", "later", "again", "about", "choose", "step") else ""


def _role(person: Person) -> str:
    if person.speaking is not None:
        return "student"
    if Role.TUTOR in person.roles:
        return "tutor"
    return "grader" if person.roles == {Role.GRADER} else "parent"


def _reads_like_an_answer(text: str) -> bool:
    """Whether words of a grown-up look like a child's answer: a number, mostly."""
    return judge(text, Key(answer="0", form="number")).verdict not in (Verdict.UNREADABLE, Verdict.HELP)
