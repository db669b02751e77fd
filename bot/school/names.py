"""Who and which lesson is meant: names by their beginning, misspelt ones only as a question."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from rapidfuzz import fuzz, process

from bot.course.lesson import Lesson
from bot.messages import Line
from bot.records import people
from bot.records.people import Household, Student
from bot.school.asking import Asked, name_for
from bot.school.when import fold
from bot.vocabulary import PersonId, Role

T = TypeVar("T")

NEAR = 70
"""Likeness (0 to 100) from which a name may be a misspelt one; it is then asked, never taken for granted."""
ALL = {"all", "everybody", "everyone", "todos", "todas"}
_AND = re.compile(r"^(?:,|&|\+|and\b|y\b)\s*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Named(Generic[T]):
    """Something with a name, and how it is written so that it can't be mistaken."""

    name: str
    exact: str
    label: str
    what: tuple[T, ...]


def take_students(asked: Asked, *, several: bool = True, everybody: bool = True) -> tuple[list[Student], str]:
    """Take the students off the front of a command: "wren", "wren, sol", "bramble", "all"; and give the rest.

    With only one student nobody need be named. Raises Unclear with a question where a name fits several or
    looks misspelt.
    """
    if not asked.students:
        raise asked.wrong("why-no-students")
    named = _students_named(asked)
    found, rest = take_named(asked, asked.text.strip(), named, several=several)
    if found is None:
        if len(asked.students) == 1:
            return list(asked.students), asked.text.strip()
        single = [one for one in reversed(named) if len(one.what) == 1]
        each_once = {one.what: one for one in single}  # a household of one is that student
        raise asked.choose(
            Line("ask-which-student"),
            [(one.label, f"{one.exact} {asked.text}".strip()) for one in reversed(each_once.values())],
        )
    students = list(dict.fromkeys(found))
    if not several and len(students) > 1:
        raise asked.choose(
            Line("ask-which-student"), [(_label(asked, one), f"#{one.id} {rest}".strip()) for one in students]
        )
    return students, rest


def take_student(asked: Asked) -> tuple[Student, str]:
    """Take one student off the front of a command."""
    students, rest = take_students(asked, several=False)
    return students[0], rest


def take_household(asked: Asked) -> tuple[Household, str]:
    """Take a household off the front of a command; a student's name stands for theirs."""
    homes = asked.households
    if not homes:
        raise asked.wrong("why-no-households")
    named = [Named(home.name, home.name, home.name, (home,)) for home in homes]
    for student in asked.students:
        home = next((each for each in homes if each.id == student.household), None)
        if home is not None:
            named.append(Named(student.name, f"#{student.id}", _label(asked, student), (home,)))
    found, rest = take_named(asked, asked.text.strip(), named, several=False)
    if found is None:
        if len(homes) == 1:
            return homes[0], asked.text.strip()
        raise asked.choose(
            Line("ask-which-household"), [(home.name, f"{home.name} {asked.text}".strip()) for home in homes]
        )
    return found[0], rest


def _label(asked: Asked, student: Student) -> str:
    return f"{student.name} ({asked.household_of(student)})"


def _students_named(asked: Asked) -> list[Named[Student]]:
    named = [Named(each.name, f"#{each.id}", _label(asked, each), (each,)) for each in asked.students]
    for home in asked.households:
        members = tuple(each for each in asked.students if each.household == home.id)
        if members and not any(fold(home.name) == fold(each.name) for each in asked.students):
            named.append(Named(home.name, home.name, home.name, members))
    return named


def take_named(
    asked: Asked, text: str, named: Sequence[Named[T]], *, several: bool
) -> tuple[list[T] | None, str]:
    """Take names off the front of a text; None where it begins with none."""
    everything = list(dict.fromkeys(what for one in named for what in one.what))
    found: list[T] = []
    before, rest = "", text
    while True:
        one, left = _take_one(asked, before, rest, named, everything)
        if one is None:
            if found:
                raise asked.wrong("why-no-such-name", name=_first_word(rest)[:40])
            return None, text
        found += one
        before = text[: len(text) - len(left)].rstrip()
        more = _AND.match(left)
        if not several or not more or not left[more.end() :].strip():
            return found, left
        before += left[: more.end()]
        rest = left[more.end() :]


def _take_one(
    asked: Asked, before: str, text: str, named: Sequence[Named[T]], everything: list[T]
) -> tuple[list[T] | None, str]:
    word = _first_word(text)
    if not word:
        return None, text
    left = text[len(word) :].lstrip()
    if fold(word) in ALL:
        return everything, left
    if word[0] in "#@":
        exact = [one for one in named if one.exact == word]
        return (list(exact[0].what), left) if exact else (None, text)
    fits, length = _fits(text, word, named)
    if len(fits) > 1:
        home = _first_word(left)
        narrowed = [one for one in fits if home and f"({fold(home)}" in fold(one.label)]
        if len(narrowed) == 1:
            return list(narrowed[0].what), left[len(home) :].lstrip()
        _ask(asked, Line("ask-several", {"name": word}), before, fits, text[length:].lstrip())
    if fits:
        return list(fits[0].what), text[length:].lstrip()
    near = _near(word, named)
    if near:
        _ask(asked, Line("ask-did-you-mean", {"name": word[:40]}), before, near, left)
    return None, text


def _first_word(text: str) -> str:
    return re.split(r"[\s,&+]", text.strip(), maxsplit=1)[0] if text.strip() else ""


def _fits(text: str, word: str, named: Sequence[Named[T]]) -> tuple[list[Named[T]], int]:
    """What the front of a text names: whole names first, the longest; else those that begin like its word."""
    whole = [one for one in named if re.match(rf"{re.escape(fold(one.name))}(?![\w])", fold(text))]
    if whole:
        longest = max(len(one.name) for one in whole)
        return [one for one in whole if len(one.name) == longest], longest
    begins = [one for one in named if fold(one.name).startswith(fold(word))]
    return (begins, len(word)) if word[0].isalpha() else ([], 0)


def _near(word: str, named: Sequence[Named[T]]) -> list[Named[T]]:
    if len(word) < 3 or not word.isalpha():
        return []
    names = {n: fold(one.name) for n, one in enumerate(named)}
    hits = process.extract(fold(word), names, scorer=fuzz.ratio, score_cutoff=NEAR, limit=4)
    return [named[n] for _, _, n in hits]


def _ask(asked: Asked, question: Line, before: str, options: Sequence[Named[T]], rest: str) -> None:
    raise asked.choose(question, [(one.label, f"{before} {one.exact} {rest}".strip()) for one in options])


@dataclass(frozen=True, slots=True)
class Somebody:
    """Somebody of a household: a parent or a student."""

    person: PersonId
    name: str
    role: Role
    household: Household
    linked: bool


def take_person(asked: Asked) -> tuple[Somebody, str]:
    """Take a parent or a student off the front of a command; "@7" is the person of that number."""
    everybody = [
        Somebody(each.person, each.name, each.role, home, each.linked)
        for home in asked.households
        for each in people.members_of(asked.s, home.id)
    ]
    if not everybody:
        raise asked.wrong("why-no-people")
    named = [
        Named(each.name, f"@{each.person}", f"{each.name} ({each.household.name})", (each,))
        for each in everybody
    ]
    found, rest = take_named(asked, asked.text.strip(), named, several=False)
    if found is None:
        raise asked.choose(
            Line("ask-which-person"), [(one.label, f"{one.exact} {asked.text}".strip()) for one in named]
        )
    return found[0], rest


def find_lesson(
    asked: Asked, text: str, goes_on: Callable[[str], str], lessons: Sequence[Lesson] | None = None
) -> Lesson:
    """The lesson that some words of its title, or its number, mean.

    Raises Unclear with buttons where several fit; `goes_on` gives the text that a button goes on with, with
    the lesson's exact name in it.
    """
    course = asked.school.course
    among = list(lessons if lessons is not None else (*course.lessons, *course.before))
    words = fold(text).strip(" .\"'")
    if not words:
        raise asked.wrong("why-lesson-missing")
    if words.isdecimal():
        found = next((one for one in among if one.n and str(one.n) == words.lstrip("0")), None)
        if found is None:
            raise asked.wrong(
                "why-no-such-number", n=int(words[:6]), last=max((one.n for one in among), default=0)
            )
        return found
    fits = _lessons_with(words, among)
    if len(fits) == 1:
        return fits[0]
    question = Line("ask-which-lesson", {"words": text[:60]})
    if not fits:
        titles = {n: fold(one.title) for n, one in enumerate(among)}
        hits = process.extract(words, titles, scorer=fuzz.WRatio, score_cutoff=60, limit=5)
        fits = [among[n] for _, _, n in hits]
        question = Line("ask-did-you-mean", {"name": text[:60]})
    if not fits:
        raise asked.wrong("why-no-such-lesson", words=text[:60])
    raise asked.choose(question, [(one.title, goes_on(one.title)) for one in fits[:8]])


def _lessons_with(words: str, among: Iterable[Lesson]) -> list[Lesson]:
    """Lessons in whose title every word is the beginning of one; only the exact title, if there is one."""
    found = []
    for lesson in among:
        title = fold(lesson.title)
        if words in (title, lesson.id):
            return [lesson]
        of_title = re.findall(r"\w+", title)
        if all(any(has.startswith(word) for has in of_title) for word in re.findall(r"\w+", words)):
            found.append(lesson)
    return found


def name_of(asked: Asked, student: Student) -> str:
    """A name for a preview; with the household where two have the same."""
    alone = not name_for(student, asked.students).startswith("#")
    return student.name if alone else _label(asked, student)


def list_names(asked: Asked, students: Sequence[Student]) -> list[str]:
    """Names for a preview."""
    return [name_of(asked, each) for each in students]
