"""Somebody who marks pages for one household, a grandparent say: invited by a parent, sees sheets, keys and marks."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.happened import Command, Pressed, Typed
from bot.messages import GraderTold, Line, Message, NotForYou, PhoneMoved
from bot.records import invites, outbox, people
from bot.records.people import Member, Person
from bot.school import asking, marks, paperwork
from bot.school.asking import GRADER, Asked, Function
from bot.school.changes import Did, Scene, Stale, Step, propose
from bot.school.commands import Who
from bot.school.names import take_household
from bot.school.orders import NO, language
from bot.school.school import School
from bot.school.when import fold
from bot.vocabulary import HouseholdId, PersonId, Role

LONGEST_NAME = 40

FUNCTIONS: dict[str, Function] = {
    "sheet": paperwork.sheet,
    "key": paperwork.key,
    "marks": marks.marks,
    "language": language,
    "help": asking.help_,
}
"""A function for every command of a grader's in the table; a test holds that."""


def grader(asked: Asked) -> list[Message]:
    """A parent invites somebody who marks pages, or lets them go ("off")."""
    home, rest = take_household(asked)
    words = rest.split()
    off = bool(words) and fold(words[-1]) in NO
    name = " ".join(words[:-1] if off else words)
    if not name or not name[0].isalpha():
        raise asked.wrong("why-person-name", household=home.name)
    if len(name) > LONGEST_NAME:
        raise asked.wrong("why-name-too-long", most=LONGEST_NAME)
    known = _named(asked.s, home.id, name)
    step: Step = {"op": "grader", "household": home.id, "name": name, "off": off}
    if off:
        if known is None:
            raise asked.wrong("why-no-such-name", name=name)
        step["person"] = known.person
        return propose(
            asked,
            "grader",
            [Line("line-grader-off", {"name": known.name, "household": home.name})],
            steps=[step],
            final=True,
        )
    if known is None and people.same_name(asked.s, home.id, name):
        raise asked.wrong("why-same-name", name=name, household=home.name)
    key = "line-grader-again" if known else "line-grader"
    if known:
        step["person"] = known.person
    line = Line(key, {"name": name, "household": home.name})
    return propose(asked, "grader", [line], steps=[step], notes=[Line("note-grader")])


def _named(s: Session, home: HouseholdId, name: str) -> Member | None:
    found = [each for each in people.members_of(s, home) if each.role is Role.GRADER]
    return next((each for each in found if fold(each.name) == fold(name)), None)


def _do(scene: Scene, step: Step) -> Did:
    home = HouseholdId(int(str(step["household"])))
    if step["off"]:
        return _let_go(scene, step, home)
    made = "person" not in step
    if made:
        name = str(step["name"])
        if people.same_name(scene.s, home, name):
            raise Stale
        person = people.add_person(scene.s, name, scene.at, scene.person.language)
        people.add_member(scene.s, person, home, Role.GRADER, scene.at)
    else:
        person = PersonId(int(str(step["person"])))
    token = invites.make_invite(scene.s, person, scene.person.id, scene.at)
    link = f"https://t.me/{scene.school.bot_name}?start={token}"
    told = _tell_students(scene.s, home, str(step["name"])) if made else []
    return Did({**step, "person": person, "made": made}, told, link=link, name=str(step["name"]))


def _tell_students(s: Session, home: HouseholdId, name: str) -> list[Message]:
    """Children with a chat of their own hear who looks at their pages; others are told by their parent."""
    phones = [people.reach(s, each.id) for each in people.students_of_household(s, home) if each.consented]
    return [GraderTold(to=phone.chat, name=phone.name, grader=name) for phone in phones if phone]


def _let_go(scene: Scene, step: Step, home: HouseholdId) -> Did:
    person = PersonId(int(str(step["person"])))
    phone = people.reach(scene.s, person)
    people.remove_member(scene.s, person, home, Role.GRADER)
    invites.revoke(scene.s, person, scene.at)
    said: list[Message] = []
    if phone is not None and not people.roles_of(scene.s, person):
        outbox.withdraw(scene.s, phone.chat)
        people.unlink(scene.s, person)
        said = [PhoneMoved(to=phone.chat, name=phone.name, why="unlinked")]
    return Did(step, said)


def _take_back(scene: Scene, step: Step) -> list[Message] | None:
    """The link ends; somebody who linked a phone stays until they are let go."""
    person = PersonId(int(str(step["person"])))
    if step["off"] or people.reach(scene.s, person) is not None:
        return None
    invites.revoke(scene.s, person, scene.at)
    if step.get("made"):
        people.remove_member(scene.s, person, HouseholdId(int(str(step["household"]))), Role.GRADER)
    return []


EFFECT = (_do, _take_back)
"""The effect of inviting somebody who marks pages, or of letting them go."""


def take_command(s: Session, school: School, person: Person, command: Command) -> list[Message] | None:
    """Do what a grader's command says; None where it is none, or the person no grader."""
    if Role.GRADER not in person.roles or asking.child_speaks(person):
        return None
    spec = asking.is_for(Who.GRADER, command.name)
    if spec is None:
        return None
    return asking.follow(_asked(s, school, person, command, spec.name), FUNCTIONS)


def _asked(s: Session, school: School, person: Person, what: Command, name: str) -> Asked:
    return Asked(s, school, person, what.at, what.update, GRADER, name, what.rest[: asking.MOST])


def take_text(s: Session, school: School, person: Person, typed: Typed) -> list[Message] | None:
    """What is written at a miss, or a page in one line ("wren mon 3 7"); None where the person is no grader."""
    if Role.GRADER not in person.roles or asking.child_speaks(person):
        return None
    command = asking.without_stroke(typed, Who.GRADER)
    if command is None:
        command = Command(typed.update, typed.chat, "marks", typed.text, typed.at, 0)
        written = marks.take_written(_asked(s, school, person, command, "marks"), typed.text)
        if written is not None:
            return written
    return take_command(s, school, person, command)


def take_press(s: Session, school: School, person: Person, pressed: Pressed) -> list[Message] | None:
    """Do what a grader's button says; None where it is none."""
    if pressed.verb not in ("g-run", "g-pick"):
        return None
    if Role.GRADER not in person.roles or asking.child_speaks(person):
        return [NotForYou(to=person.chat, why="other")]
    command = asking.pressed_command(s, person, pressed, GRADER)
    if not isinstance(command, Command):
        return [command]
    return take_command(s, school, person, command) or [NotForYou(to=person.chat, why="other")]
