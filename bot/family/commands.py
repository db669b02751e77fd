"""What a parent types and presses, and which function each belongs to."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy.orm import Session

from bot.family import consent, grader, join, leave, phone
from bot.happened import Command, Pressed, Typed
from bot.messages import Changed, FamilyChanged, Message, NotForYou, TakenBack
from bot.records import people
from bot.records.people import Person
from bot.school import (
    asking,
    changes,
    effects,
    glossary,
    marks,
    orders,
    overview,
    paperwork,
    test_orders,
    year_orders,
)
from bot.school.asking import PARENT, Asked, Function, child_speaks
from bot.school.commands import Who
from bot.school.school import School
from bot.vocabulary import Role


def _undo(asked: Asked) -> list[Message]:
    said = changes.undo_newest(asked, EFFECTS)
    return [*said, *_tell_tutors(asked.s, asked.person, said)]


def _tell_tutors(s: Session, person: Person, said: Sequence[Message]) -> list[Message]:
    """What a parent changed, or took back, is told to the tutor, so that nothing happens unseen."""
    told: list[Message] = []
    for message in said:
        if not isinstance(message, Changed | TakenBack) or (isinstance(message, Changed) and message.already):
            continue
        homes = people.households_of(s, person.id, Role.PARENT)
        for tutor in dict.fromkeys(home.tutor for home in homes if home.tutor != person.id):
            phone = people.reach(s, tutor)
            if phone is not None:
                names = ", ".join(home.name for home in homes if home.tutor == tutor)
                told.append(
                    FamilyChanged(
                        to=phone.chat,
                        name=person.name,
                        household=names,
                        lines=message.lines,
                        back=isinstance(message, TakenBack),
                    )
                )
    return told


EFFECTS: changes.Effects = {**effects.EFFECTS, "stop": leave.STOP, "grader": grader.EFFECT}
"""What the steps of a parent's changes do."""

FUNCTIONS: dict[str, Function] = {
    "small": orders.small,
    "today": overview.today,
    "digest": overview.digest_of,
    "minutes": orders.minutes,
    "off": orders.off,
    "sick": orders.sick,
    "morning": orders.morning,
    "evening": orders.evening,
    "timing": orders.timing,
    "placement": year_orders.placement,
    "second": test_orders.second,
    "finish": year_orders.finish,
    "standing": year_orders.standing,
    "offseason": year_orders.off_season,
    **paperwork.FUNCTIONS,
    "hand": phone.hand,
    "grader": grader.grader,
    "privacy": consent.privacy,
    "agree": consent.ask_again,
    "withdraw": consent.ask_withdraw,
    "export": leave.export,
    "erase": leave.erase,
    "keep": leave.keep,
    "undo": _undo,
    "changes": changes.show_recent,
    "language": orders.language,
    "define": glossary.define,
    "help": asking.help_,
}
"""A function for every command of a parent's in the table; a test holds that."""


def take_command(s: Session, school: School, person: Person, command: Command) -> list[Message] | None:
    """Do what a parent's command says; None where it is none, or the person no parent."""
    if Role.PARENT not in person.roles or child_speaks(person):
        return None
    spec = asking.is_for(Who.PARENT, command.name)
    if spec is None:
        return None
    asked = Asked(
        s, school, person, command.at, command.update, PARENT, spec.name, command.rest[: asking.MOST]
    )
    return asking.follow(asked, FUNCTIONS)


def take_text(s: Session, school: School, person: Person, typed: Typed) -> list[Message] | None:
    """A command typed without its stroke ("today"), or what is written at a miss; None for anything else."""
    command = asking.without_stroke(typed, Who.PARENT)
    if command is not None:
        return take_command(s, school, person, command)
    if Role.PARENT not in person.roles or child_speaks(person):
        return None
    asked = Asked(s, school, person, typed.at, typed.update, PARENT, "marks", "")
    return marks.take_written(asked, typed.text)


def take_press(s: Session, school: School, person: Person, pressed: Pressed) -> list[Message] | None:
    """Do what a parent's button says; None where it is none."""
    if pressed.verb in ("f-yes", "f-no"):
        return join.take_stranger_press(s, school, pressed)
    if not pressed.verb.startswith("f-"):
        return None
    if child_speaks(person):
        return [NotForYou(to=person.chat, why="grown-up")]
    if Role.PARENT not in person.roles:
        return [NotForYou(to=person.chat, why="other")]
    scene = changes.Scene(s, school, person, pressed.at)
    changed = changes.take_press(scene, pressed, EFFECTS)
    if changed is not None:
        return [*changed, *_tell_tutors(s, person, changed)]
    match pressed.verb:
        case "f-agree":
            return consent.agree(s, person, pressed.ref, pressed.at)
        case "f-not-now":
            return consent.not_now(s, person, pressed.ref, pressed.at)
        case "f-withdraw":
            return consent.withdraw(s, person, pressed.ref, pressed.at)
        case "f-stay":
            return changes.left_as_is(person)
        case "f-pick" | "f-run":
            command = asking.pressed_command(s, person, pressed, PARENT)
            if not isinstance(command, Command):
                return [command]
            return take_command(s, school, person, command) or [NotForYou(to=person.chat, why="other")]
    return None
