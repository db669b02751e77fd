"""Buttons and commands of the school day: which use case each belongs to, and that its id is the presser's."""

from __future__ import annotations

from collections.abc import Callable

from sqlalchemy.orm import Session

from bot.course.figures import alt
from bot.course.item import plain_text
from bot.happened import Command, Pressed, Typed
from bot.messages import Help, InWords, LanguageChosen, Message, NotForYou
from bot.records import days, people
from bot.records.days import ItemState, SchoolDay, Sent, Stage
from bot.records.people import Person
from bot.school import digest, mine
from bot.school.asking import row_number
from bot.school.commands import find
from bot.school.glossary import word_shown
from bot.school.orders import LANGUAGES
from bot.school.school import School
from bot.school.when import fold
from bot.school_day import assessment as test
from bot.school_day import (
    more,
    morning,
    off_season,
    paper,
    placing,
    reply,
    speaking,
    stuck,
    talk,
    warm_up,
    ways_out,
)
from bot.school_day.asking import Here
from bot.school_day.onward import onward
from bot.vocabulary import PersonId, StudentId

SPEAKING = frozenset({"speak", "back"})
GROWN_UP = frozenset(
    {
        "digest",
        "digest-away",
        "in-full",
        "week",
        "open-test",
        "talk-did-it",
        "talk-still-hard",
        "talk-not-tonight",
        "talk-solution",
        "talk-words",
    }
)

OnItem = Callable[[Session, Here, Sent], list[Message]]
OnDay = Callable[[Session, Here, SchoolDay], list[Message]]

ITEMS: dict[str, OnItem] = {
    "hint": stuck.asked_for_hint,
    "again": stuck.try_again,
    "later": stuck.later,
    "leave": stuck.leave,
    "show": stuck.show_solution,
    "step": stuck.next_step,
    "ask": stuck.ask_tutor,
    "about": stuck.about_this,
    "report": stuck.report,
    "words": stuck.in_words,
    "type": stuck.how_to_type,
    "pass": lambda s, here, sent: stuck.ask_tutor(s, here, sent, why="unreadable"),
    "card": lambda s, here, sent: stuck.look_up_card(s, here, sent.lesson, sent),
    "place-skip": placing.not_met,
    "place-stop": placing.stop_here,
    "test-back": test.back,
    "test-next": test.forward,
    "test-show": test.show_one,
}
"""Buttons whose ref is an item."""

DAYS: dict[str, OnDay] = {
    "start": morning.pressed_start,
    "small": ways_out.make_small,
    "finish": ways_out.take_up_again,
    "enough": ways_out.enough,
    "paper": paper.show_sheet,
    "print": paper.to_print,
    "go": stuck.go_on,
    "known": more.pass_over,
    "more": more.ten_more,
    "hands-on": more.hands_on,
    "answers": more.send_answers,
    "worked-words": stuck.worked_in_words,
    "second": more.second_lesson,
    "test-list": test.list_answers,
    "hand-in": test.hand_in,
    "count-now": test.count_now,
}
"""Buttons whose ref is a day."""


def student(s: Session, here: Here, what: Pressed) -> list[Message]:
    """A student pressed a button."""
    gone: list[Message] = [NotForYou(to=here.chat, why="gone")]
    ref, _, rest = what.ref.partition(":")
    if what.verb in ITEMS or what.verb == "choose":
        sent = days.find_item(s, number) if (number := row_number(ref)) else None
        if sent is None or sent.state is ItemState.DROPPED:
            return gone
        if sent.student != here.student.id:
            return [NotForYou(to=here.chat, why="other")]
        if what.verb == "choose":
            return _choose(s, here, what, sent, rest)
        return ITEMS[what.verb](s, here, sent)
    if what.verb in DAYS:
        day = days.find_day(s, number) if (number := row_number(ref)) else None
        if day is None:
            return gone
        if day.student != here.student.id:
            return [NotForYou(to=here.chat, why="other")]
        return DAYS[what.verb](s, here, day)
    match what.verb:
        case "on" | "today":
            return _on(s, here) if what.verb == "on" else morning.bring_up(s, here)
        case "leave-facts":
            day = days.newest_day(s, here.student.id)
            return warm_up.leave_facts(s, here, day) if day else gone
        case "lesson":
            lesson = here.school.lesson_beginning(ref)
            return stuck.look_up_card(s, here, lesson.id) if lesson else gone
        case "language":
            return _language(s, here, ref)
        case "mine" if ref in mine.SHOWS:
            return mine.SHOWS[ref](s, here.school, here.student, here.chat, here.at)
        case "define":
            return _define(s, here, what.ref)
        case "card-words":
            return _card_in_words(here, ref, rest)
    return gone


def _choose(s: Session, here: Here, what: Pressed, sent: Sent, number: str) -> list[Message]:
    """A choice was pressed: an answer like one that was typed."""
    choices = sent.item.choices
    if not number.isdecimal() or int(number) >= len(choices):
        return [NotForYou(to=here.chat, why="gone")]
    text = plain_text(choices[int(number)])
    typed = Typed(what.update, what.chat, text, what.at, what.message)
    return reply.answer(s, here, typed, sent, text)


def _on(s: Session, here: Here) -> list[Message]:
    day = days.newest_day(s, here.student.id)
    return onward(s, here, day) if day else [NotForYou(to=here.chat, why="gone")]


def _card_in_words(here: Here, lesson_id: str, sitting: str) -> list[Message]:
    lesson = here.school.lesson_beginning(lesson_id)
    number = row_number(sitting or "1")
    if lesson is None or not number or number > len(lesson.cards):
        return [NotForYou(to=here.chat, why="gone")]
    card = lesson.cards[number - 1]
    return [InWords(to=here.chat, alt=alt(card.figure) if card.figure else "")]


def _more_practice(s: Session, here: Here, words: str) -> list[Message]:
    """`/more`, `/more weak`, `/more fractions`."""
    day = days.newest_day(s, here.student.id)
    if day is None or day.stage is not Stage.DONE:
        return morning.bring_up(s, here)
    return more.practise(s, here, day, words)


def _language(s: Session, here: Here, words: str) -> list[Message]:
    """The language in which the student is spoken to; without a word, buttons for each."""
    chosen = LANGUAGES.get(fold(words.strip()))
    if chosen is None:
        choices = tuple(dict.fromkeys(LANGUAGES.values()))
        return [LanguageChosen(to=here.chat, choices=choices, side="s")]
    people.set_language(s, PersonId(here.student.id), chosen)
    return [LanguageChosen(to=here.chat, language=chosen, side="s")]


def _define(s: Session, here: Here, words: str) -> list[Message]:
    """What a word means; not while a test is open, where it would be a hint."""
    if test.any_open(s, here.student, here.at):
        return [NotForYou(to=here.chat, why="in-test")]
    return [word_shown(here.school, here.chat, words, "s")]


def student_command(s: Session, here: Here, what: Command) -> list[Message] | None:
    """A student's command, by any of its names; None where it is none."""
    spec = find(what.name)
    name = spec.name if spec else what.name
    if name in ("start", "day"):
        said = morning.bring_up(s, here)
        return said if here.student.told else [speaking.tell(s, here.chat, here.student), *said]
    if name == "help":
        return [Help(to=here.chat, role="student")]
    if name == "language":
        return _language(s, here, what.rest)
    if name == "define":
        return _define(s, here, what.rest)
    if name == "privacy":
        return [speaking.who_reads(s, here.chat, here.student)]
    on_day: dict[str, OnDay] = {
        "small": ways_out.make_small,
        "enough": ways_out.enough,
        "paper": paper.show_sheet,
    }
    if name in on_day:
        day = days.newest_day(s, here.student.id)
        return on_day[name](s, here, day) if day else morning.bring_up(s, here)
    if name == "offseason":
        return off_season.asked_for(s, here, what.rest)
    if name == "mine":
        return mine.view(s, here.school, here.student, here.chat, here.at)
    if name == "more":
        return _more_practice(s, here, what.rest)
    on_item: dict[str, OnItem] = {
        "hint": stuck.asked_for_hint,
        "tutor": stuck.ask_tutor,
        "report": stuck.report,
    }
    if name in on_item:
        sent = reply.in_focus(s, here)
        return on_item[name](s, here, sent) if sent else morning.bring_up(s, here)
    return None


def hold_the_phone(s: Session, school: School, person: Person, what: Pressed) -> list[Message]:
    """*Wren is speaking*, or *Give the phone back*."""
    if what.verb == "back":
        return speaking.give_back(s, school, person, what.at)
    if not row_number(what.ref):
        return speaking.give_back(s, school, person, what.at) if person.speaking and person.shared else []
    chosen = speaking.hand_over(s, person, StudentId(row_number(what.ref) or 0), what.at)
    if chosen is None:
        return [NotForYou(to=person.chat, why="other")]
    here = Here(school, chosen, person.chat, what.at)
    return [*speaking.greeting(s, person.chat, chosen, what.at), *morning.bring_up(s, here)]


def grown_up(s: Session, school: School, person: Person, what: Pressed) -> list[Message]:
    """Buttons under a digest, and the opening of a test: for a parent of that student, not while it speaks."""
    if person.speaking is not None:
        return [NotForYou(to=person.chat, why="grown-up")]
    ref = what.ref.partition(":")[0]
    number = row_number(ref) or 0
    if what.verb.startswith("talk-"):
        sent = days.find_item(s, number)
        if sent is None or not people.is_grown_up_of(s, person.id, sent.student):
            return [NotForYou(to=person.chat, why="other")]
        return talk.pressed(s, school, person, sent, what.verb.removeprefix("talk-"), what.at)
    day = days.find_day(s, number)
    if day is None or not people.is_grown_up_of(s, person.id, day.student):
        return [NotForYou(to=person.chat, why="other")]
    of = people.student(s, day.student)
    match what.verb:
        case "digest":
            return [digest.digest(s, school, of, day, person.chat)]
        case "in-full":
            return digest.in_full(s, school, day, person.chat, of.name)
        case "week":
            return [digest.week_picture(s, of, day, person.chat)]
        case "open-test":
            return test.open_it(s, school, person, of, day, what.at)
    return [NotForYou(to=person.chat, why="gone")]
