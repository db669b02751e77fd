"""What a tutor types and presses, and which function each belongs to."""

from __future__ import annotations

from sqlalchemy.orm import Session

from bot.happened import Command, Pressed, SentFile, Typed
from bot.messages import Message, NotForYou
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
from bot.school.asking import TUTOR, Asked, Function, child_speaks
from bot.school.commands import Who
from bot.school.school import School
from bot.tutoring import (
    accept,
    adjust,
    course,
    doubts,
    handover,
    holding,
    lasting,
    looking,
    needs,
    own,
    people,
    standing,
    words,
)
from bot.vocabulary import Role

EFFECTS: changes.Effects = {
    **effects.EFFECTS,
    **people.EFFECTS,
    "grading": accept.GRADING,
    "tell": words.TELL,
    "end-wish": holding.END,
    "reopen": test_orders.REOPEN,
    "handover": handover.OFFER,
    "own-keep": own.KEEP,
    "own-set": own.SET,
}
"""What the steps of a tutor's changes do."""

FUNCTIONS: dict[str, Function] = {
    "small": orders.small,
    "needs": needs.needs,
    "today": looking.today,
    "plan": looking.plan,
    "item": looking.item,
    "map": standing.map_,
    "pace": standing.pace,
    "agenda": standing.agenda,
    "doubts": doubts.show,
    "digest": overview.digest_of,
    "add": adjust.add,
    "drop": adjust.drop,
    "swap": adjust.swap,
    "repeat": adjust.repeat,
    "pin": lasting.pin,
    "practice": lasting.practice,
    "items": lasting.items,
    "minutes": orders.minutes,
    "review": lasting.review,
    "holds": holding.show,
    "end": holding.end,
    "test": test_orders.test,
    "second": test_orders.second,
    "own": own.own_,
    "give": own.give,
    "off": orders.off,
    "sick": orders.sick,
    "open": course.open_,
    "week": course.week,
    "morning": orders.morning,
    "evening": orders.evening,
    "begin": course.begin,
    "pause": course.pause,
    "resume": course.resume,
    "lesson": course.lesson,
    "placement": year_orders.placement,
    "finish": year_orders.finish,
    "standing": year_orders.standing,
    "offseason": year_orders.off_season,
    "skip": course.skip,
    "link": course.link,
    "accept": accept.accept,
    "reject": accept.reject,
    "excuse": accept.excuse,
    **paperwork.FUNCTIONS,
    "note": words.note,
    "tell": words.tell,
    "people": people.show,
    "handover": handover.hand_over,
    "household": people.household,
    "parent": people.parent,
    "student": people.student,
    "invite": people.invite,
    "unlink": people.unlink,
    "zone": people.zone,
    "country": people.country,
    "timing": orders.timing,
    "undo": lambda asked: changes.undo_newest(asked, EFFECTS),
    "changes": changes.show_recent,
    "language": orders.language,
    "define": glossary.define,
    "help": asking.help_,
}
"""A function for every command of a tutor's in the table; a test holds that."""


def take_command(s: Session, school: School, person: Person, command: Command) -> list[Message] | None:
    """Do what a tutor's command says; None where it is none, or the person no tutor.

    Somebody who is a parent as well, of children with another tutor, is a parent where the command names one.
    """
    if Role.TUTOR not in person.roles or child_speaks(person):
        return None
    spec = asking.is_for(Who.TUTOR, command.name)
    if spec is None:
        return None
    text = command.rest[: asking.MOST]
    asked = Asked(s, school, person, command.at, command.update, TUTOR, spec.name, text)
    if Role.PARENT in person.roles and asking.is_for(Who.PARENT, spec.name) and asking.means_a_parent(asked):
        return None
    return asking.follow(asked, FUNCTIONS)


def take_text(s: Session, school: School, person: Person, typed: Typed) -> list[Message] | None:
    """A command typed without its stroke ("plan wren"); None for anything else."""
    command = asking.without_stroke(typed, Who.TUTOR)
    if command is not None:
        return take_command(s, school, person, command)
    if Role.TUTOR not in person.roles or child_speaks(person):
        return None
    asked = Asked(s, school, person, typed.at, typed.update, TUTOR, "marks", "")
    return marks.take_written(asked, typed.text)


def take_press(s: Session, school: School, person: Person, pressed: Pressed) -> list[Message] | None:
    """Do what a tutor's button says; None where it is none."""
    if not pressed.verb.startswith("t-"):
        return None
    if child_speaks(person):
        return [NotForYou(to=person.chat, why="grown-up")]
    if Role.TUTOR not in person.roles:
        return [NotForYou(to=person.chat, why="other")]
    changed = changes.take_press(changes.Scene(s, school, person, pressed.at), pressed, EFFECTS)
    if changed is not None:
        return changed
    if pressed.verb in ("t-take", "t-not-now"):
        return handover.pressed(s, person, pressed)
    if pressed.verb == "t-accept":
        command: Command | Message = Command(
            pressed.update, pressed.chat, "accept", f"@{pressed.ref}", pressed.at, pressed.message
        )
    elif pressed.verb in ("t-pick", "t-run"):
        command = asking.pressed_command(s, person, pressed, TUTOR)
    else:
        return None
    if not isinstance(command, Command):
        return [command]
    return take_command(s, school, person, command) or [NotForYou(to=person.chat, why="other")]


def take_file(s: Session, school: School, person: Person, sent: SentFile) -> list[Message] | None:
    """A lesson's file is noted and read afterwards; None for other files lets the caller say so kindly."""
    return own.take_file(s, person, sent)
