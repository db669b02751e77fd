"""A grown-up asks for something in one line: who asks, for whom, and what is said when it isn't clear."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cached_property

from sqlalchemy.orm import Session

from bot.happened import Command, Pressed, Typed
from bot.messages import Choose, CommandShown, CommandsShown, Line, Message, NotForYou, WrongCommand
from bot.records import attempts, days, focus, own, people, wishes
from bot.records.people import Household, Person, Student
from bot.school import dates
from bot.school.commands import GROUPS, SPECS, Spec, Who, find
from bot.school.school import School
from bot.vocabulary import Outcome, Part, Role, Verdict

TUTOR, PARENT, GRADER = "t", "f", "g"
"""The sides of a command: a tutor's households, those in which somebody is a parent, or marks pages."""
CHOICE = "choice"
"""What a chat waits for after a question with buttons."""
MOST = 3500
"""Letters of a command that are read."""
MOST_OPTIONS = 24


@dataclass(frozen=True)
class Asked:
    """One command of one grown-up: its `name`, and the `text` after it."""

    s: Session
    school: School
    person: Person
    at: datetime
    update: int
    side: str
    name: str
    text: str

    @cached_property
    def students(self) -> list[Student]:
        """The students whom it may be about."""
        if self.side == TUTOR:
            return people.students_of_tutor(self.s, self.person.id)
        if self.side == GRADER:
            homes = [home for home in self.households if home.consented]
            return [each for home in homes for each in people.students_of_household(self.s, home.id)]
        return people.students_of_parent(self.s, self.person.id)

    @cached_property
    def households(self) -> list[Household]:
        """The households that it may be about."""
        if self.side == TUTOR:
            return people.households_of_tutor(self.s, self.person.id)
        role = Role.GRADER if self.side == GRADER else Role.PARENT
        return people.households_of(self.s, self.person.id, role)

    def household_of(self, student: Student) -> str:
        """Name of a student's household."""
        return next((home.name for home in self.households if home.id == student.household), "")

    def wrong(self, key: str, student: Student | None = None, **holes: str | int | list[str]) -> Unclear:
        """The command can't be followed: why, and examples that would have worked."""
        spec = find(self.name)
        examples = examples_of(self, spec, student) if spec else ()
        return Unclear(
            WrongCommand(
                to=self.person.chat, command=self.name, why=Line(key, dict(holes)), examples=examples
            )
        )

    def choose(self, question: Line, options: Sequence[tuple[str, str]]) -> Unclear:
        """Ask which is meant. Options are (label, the text that goes on with this command); nothing changes."""
        shown = options[:MOST_OPTIONS]
        data: dict[str, object] = {
            "ref": str(self.update),
            "name": self.name,
            "side": self.side,
            "texts": [text for _, text in shown],
        }
        focus.set_focus(self.s, self.person.chat, 0, CHOICE, self.at, data=data)
        labels = tuple(label for label, _ in shown)
        return Unclear(
            Choose(
                to=self.person.chat,
                question=question,
                options=labels,
                ref=str(self.update),
                side=self.side,
            )
        )


class Unclear(Exception):
    """A command that can't be followed as it stands; `said` is the answer, and nothing changed."""

    def __init__(self, *said: Message) -> None:
        super().__init__(*said)
        self.said: list[Message] = list(said)


Function = Callable[[Asked], list[Message]]


def row_number(text: str) -> int | None:
    """The number of a row, as a button or a command gives it; None where it can't be one."""
    return int(text) if text.isdecimal() and len(text) <= 9 else None


def child_speaks(person: Person) -> bool:
    """Whether a child holds this grown-up's phone just now."""
    return person.shared and person.speaking is not None


def follow(asked: Asked, functions: Mapping[str, Function]) -> list[Message]:
    """Do what a command says; where it isn't clear, say so."""
    try:
        return functions[asked.name](asked)
    except Unclear as unclear:
        return unclear.said


def is_for(who: Who, name: str) -> Spec | None:
    """The command of that name, if it is one of theirs."""
    spec = find(name)
    return spec if spec is not None and who in spec.who else None


def means_a_parent(asked: Asked) -> bool:
    """Whether a command of somebody with both roles names a child whom they don't teach but are a parent of."""
    name = asked.text.strip().split(" ")[0].strip(",").casefold()
    taught = {each.name.casefold() for each in asked.students} | {
        home.name.casefold() for home in asked.households
    }
    own = {each.name.casefold() for each in people.students_of_parent(asked.s, asked.person.id)}
    return (name in own and name not in taught) or (not asked.students and bool(own))


def picked(s: Session, person: Person, pressed: Pressed, side: str) -> Command | Message:
    """The command that a pressed answer to a question goes on with."""
    ref, _, n = pressed.ref.partition(".")
    middle = focus.focus(s, person.chat, 0)
    gone = NotForYou(to=person.chat, why="gone")
    if middle is None or middle.waits_for != CHOICE or middle.data.get("ref") != ref:
        return gone
    texts = middle.data.get("texts")
    chosen = row_number(n)
    if middle.data.get("side") != side or not isinstance(texts, list) or chosen is None:
        return gone
    if chosen >= len(texts):
        return gone
    focus.clear_focus(s, person.chat, 0)
    return Command(
        pressed.update,
        pressed.chat,
        str(middle.data["name"]),
        str(texts[chosen]),
        pressed.at,
        pressed.message,
    )


def pressed_command(s: Session, person: Person, pressed: Pressed, side: str) -> Command | Message:
    """The command behind a button: an answer to a question ("pick"), or one that is written out ("run")."""
    if pressed.verb.endswith("pick"):
        return picked(s, person, pressed, side)
    name, _, rest = pressed.ref.partition(" ")
    return Command(pressed.update, pressed.chat, name, rest, pressed.at, pressed.message)


def without_stroke(typed: Typed, who: Who) -> Command | None:
    """A command typed without its stroke ("plan wren"); None for any other text."""
    name, _, rest = typed.text.strip().partition(" ")
    if is_for(who, name) is None:
        return None
    return Command(typed.update, typed.chat, name.lower(), rest.strip(), typed.at, typed.message)


def examples_of(asked: Asked, spec: Spec, student: Student | None = None) -> tuple[str, ...]:
    """A command's examples, filled with people and lessons of whoever asks, so that they work as they stand."""
    fitting, number = _with_work(asked, spec.name) if student is None else (None, None)
    holes = {
        **_holes(asked, student or fitting),
        "n": number or "1",
        "wish": _some_wish(asked),
        "own": _some_own(asked),
    }
    filled = []
    for example in spec.examples:
        if spec.name == "small" and "{" not in example and len(asked.students) != 1:
            continue  # without a name it is for an only child
        filled.append(example.format(**holes))
    return tuple(filled)


def _with_work(asked: Asked, name: str) -> tuple[Student | None, str | None]:
    """A student, and the number of an item of theirs, for whom a command on work done can be followed."""
    for student in asked.students:
        if name == "resume" and student.paused:
            return student, None
        if name not in ("item", "accept", "reject", "excuse", "repeat"):
            continue
        newest = days.newest_day(asked.s, student.id)
        if newest is None:
            continue
        tried = attempts.attempts_of_day(asked.s, newest.id)
        for sent in days.items_of(asked.s, newest.id, Part.REVIEW):
            verdicts = {each.verdict for each in tried.get(sent.id, [])} - {Verdict.HELP}
            fits = {
                "accept": len(verdicts) == 1 and Verdict.RIGHT not in verdicts,
                "reject": verdicts == {Verdict.RIGHT},
                "repeat": sent.outcome is Outcome.UNSOLVED,
            }
            if fits.get(name, bool(verdicts)):
                return student, str(sent.place)
    return None, None


def _some_wish(asked: Asked) -> str:
    """The number of a wish that is in force or to come, as an example."""
    for student in asked.students if asked.name in ("end", "help") and asked.side == TUTOR else ():
        today = dates.today(student, asked.at)
        last = today + timedelta(days=400)
        found = wishes.wishes_for(asked.s, student.id, student.household, student.tutor, today, last)
        if found:
            return str(found[0].id)
    return "12"


def _some_own(asked: Asked) -> str:
    """The number of a piece of the tutor's own, as an example."""
    mine = own.all_own(asked.s, asked.person.id) if asked.name in ("give", "help") else []
    return str(mine[0].id) if mine else "3"


def _holes(asked: Asked, student: Student | None) -> dict[str, str]:
    students = asked.students
    chosen = student or (students[0] if students else None)
    others = [each for each in students if chosen is None or each.id != chosen.id]
    now = dates.today(chosen, asked.at) if chosen else asked.at.date()
    soon = dates.next_day(asked.s, chosen, now) if chosen else None
    soon = soon or now + timedelta(days=1)
    later = dates.next_day(asked.s, chosen, soon + timedelta(days=6)) if chosen else None
    later = later or soon + timedelta(days=7)
    name = name_for(chosen, students) if chosen else "wren"
    lesson = asked.school.lesson_at(chosen.lesson if chosen else 1)
    met = [each for each in asked.school.course.lessons if chosen and each.n < chosen.lesson]
    askable = met[-1] if met else next(iter(asked.school.course.before), lesson)
    home = next((each for each in asked.households if chosen and each.id == chosen.household), None)
    home = home or next(iter(asked.households), None)
    parents = people.parents_of(asked.s, chosen.id) if chosen else []
    return {
        "student": name,
        "students": f"{name}, {name_for(others[0], students)}" if others else name,
        "household": home.name.lower() if home else "bramble",
        "parent": parents[0].name.lower() if parents else name,
        "lesson": askable.title.lower() if askable else "fractions",
        "next": lesson.title.lower() if lesson else "fractions",
        "weekday": f"{soon:%a}".lower(),
        "date": f"{later.day} {later:%b}".lower(),
        "range": f"{soon.day} {soon:%b} - {later.day} {later:%b}".lower(),
        "past": "yesterday",
    }


def name_for(student: Student, students: Sequence[Student]) -> str:
    """A name as it can be typed: with a number where two have the same."""
    alike = [each for each in students if each.name.casefold() == student.name.casefold()]
    return student.name.lower() if len(alike) == 1 else f"#{student.id}"


def help_(asked: Asked) -> list[Message]:
    """What one can do here, or one command with its examples."""
    who = {TUTOR: Who.TUTOR, GRADER: Who.GRADER}.get(asked.side, Who.PARENT)
    topic = asked.text.strip().lstrip("/").lower()
    if topic:
        spec = is_for(who, topic)
        if spec is None:
            raise asked.wrong("why-no-such-command", name=topic[:40])
        return [
            CommandShown(to=asked.person.chat, command=spec.name, examples=examples_of(asked, spec)),
        ]
    groups = []
    for group in GROUPS:
        names = tuple(spec.name for spec in SPECS if spec.group == group and who in spec.who)
        if names:
            groups.append((group, names))
    roles = tuple(sorted(role.value for role in asked.person.roles))
    return [CommandsShown(to=asked.person.chat, groups=tuple(groups), side=asked.side, roles=roles)]
