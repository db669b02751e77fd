"""A tutor's own items and lessons: read from what was typed or sent, and proved before anybody sees them.

Each is known by its text: the same text has the same id for ever, so that what was drawn from it stays what it was
when a later version takes its place.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from hashlib import blake2b

from bot.answers.examples import examples
from bot.answers.key import Key, tells_of_pi
from bot.course.faults import Fault, nearest
from bot.course.item import Item, Step
from bot.course.lesson import Lesson
from bot.course.lesson_file import read_lesson
from bot.course.prepare import prepare
from bot.course.prove import check_lesson
from bot.course.prove_template import FEWEST, answer_problems
from bot.course.recipes import FORMS
from bot.course.rules import lesson_faults
from bot.course.source import take_apart
from bot.course.year import OWN, Course
from bot.vocabulary import LessonId, TemplateId

DRAWS = FEWEST
"""Draws of each template of a lesson that was sent: the fewest that say something of shares."""
MOST_LETTERS = 60_000
MOST_TEMPLATES = 16
"""A lesson of four to six templates is usual; a file far over that is no lesson."""
LONGEST_ASK, LONGEST_ANSWER = 600, 60
MOST_ITEMS = 12
_APART = re.compile(r"(?<!:)//")
_UNIT = re.compile(r"^(?P<number>[-−+]?[\d.,/ ]*\d)\s*(?P<unit>[^\W\d_][^\d]*)$")
_SHAPE = frozenset(("level-falls", "not-rising", "one-level"))
"""Faults of shape: worth a look in a lesson of one's own, nothing false."""


def own_id(text: str) -> LessonId:
    """The id of a piece of one's own, from its text alone."""
    return LessonId(OWN + blake2b(text.strip().encode(), digest_size=6).hexdigest())


@dataclass(frozen=True, slots=True)
class OwnLesson:
    """A lesson as sent: what can be drawn from it, what is false in it, and what is worth a look."""

    lesson: Lesson | None
    faults: Sequence[Fault]
    notes: Sequence[Fault] = ()
    draws: int = 0


def read_own_lesson(course: Course, text: str, file: str = "") -> OwnLesson:
    """Read a lesson's file. What is false in its structure or its maths is in `faults`, nothing is drawn yet."""
    name = own_id(text)
    source = take_apart(file or name, text)
    lesson = read_lesson(source, name, -1, course.units[-1].n if course.units else 1, course.lists)
    faults = list(source.faults)
    if not lesson.templates and not faults:
        faults.append(Fault("no-items", source.file, len(source.lines), "There is no item under # Items."))
    if len(lesson.templates) > MOST_TEMPLATES:
        what = f"{len(lesson.templates)} templates are more than a lesson holds ({MOST_TEMPLATES})."
        faults.append(Fault("too-many", source.file, 1, what))
    return OwnLesson(lesson if lesson.templates else None, faults)


def with_own(course: Course, lesson: Lesson) -> Course:
    """The course with one lesson of one's own beside it, for drawing; nothing else knows it."""
    notes = {note.name: note for note in lesson.missteps}
    return replace(
        course, missteps={**course.missteps, **notes}, own={**course.own, lesson.id: lesson}, ready={}
    )


def prove_own_lesson(course: Course, text: str, file: str = "") -> OwnLesson:
    """Prove a lesson as the course's own are proved: rules, then draws of each template.

    What is false stops it; rules on shape and wording that the course keeps for itself are notes.
    """
    found = read_own_lesson(course, text, file)
    if found.lesson is None or found.faults:
        return found
    beside = with_own(course, found.lesson)
    report = check_lesson(beside, found.lesson, DRAWS)
    around = {(fault.kind, fault.line) for fault in lesson_faults(beside, found.lesson)}
    notes = [f for f in report.faults if (f.kind, f.line) in around or f.kind in _SHAPE]
    faults = [fault for fault in report.faults if fault not in notes]
    notes += [fault for one in report.templates for fault in one.warnings]
    return OwnLesson(found.lesson, sorted(faults, key=_place), sorted(notes, key=_place), DRAWS)


def _place(fault: Fault) -> int:
    return fault.line


def learn_lesson(course: Course, text: str) -> LessonId | None:
    """Make a lesson that was proved before drawable in this course; None where it can't be read any more.

    A course that has changed since may make it so, never a text: texts are kept as they were proved.
    """
    found = read_own_lesson(course, text)
    if found.lesson is None or found.faults:
        return None
    beside = with_own(course, found.lesson)
    ready = {}
    for template in found.lesson.templates:
        prepared, faults = prepare(template, found.lesson.file, beside.missteps)
        if prepared is None or faults:
            return None
        ready[template.id] = prepared
    course.ready.update(ready)
    course.own[found.lesson.id] = found.lesson
    return found.lesson.id


# Items that are typed in one line -----------------------------------------------------------------------


def read_own_items(text: str) -> tuple[list[tuple[str, Item]], list[Fault]]:
    """Read typed items, a line each: "question // answer // form // hint", the last two if wished.

    Gives (line as typed, item) of those in order, and every fault with its line.
    """
    made: list[tuple[str, Item]] = []
    faults: list[Fault] = []
    lines = [(n, line.strip()) for n, line in enumerate(text.strip().splitlines(), 1) if line.strip()]
    for n, line in lines[:MOST_ITEMS]:
        found = _read_line(n, line)
        if isinstance(found, Fault):
            faults.append(found)
        else:
            made.append((line, found))
    if len(lines) > MOST_ITEMS:
        n = lines[MOST_ITEMS][0]
        faults.append(
            Fault("too-many", "", n, f"At most {MOST_ITEMS} items at a time.", shown=lines[MOST_ITEMS][1])
        )
    return made, faults


def _read_line(n: int, line: str) -> Item | Fault:
    def fault(kind: str, what: str, fix: str = "", mark: str = "") -> Fault:
        return Fault(kind, "", n, what, fix, shown=line[:120], mark=mark)

    fields = [field.strip() for field in _APART.split(line)]
    if len(fields) < 2 or not fields[0]:
        return fault("no-answer", "There is no answer.", "question // answer, then // form if it matters.")
    if len(fields) > 4:
        return fault(
            "too-many-fields", "There are more than four parts.", "question // answer // form // hint"
        )
    ask, answer = _shown(fields[0]), fields[1]
    hint = _shown(fields[3]) if len(fields) == 4 else ""
    if not answer:
        return fault("no-answer", "The answer is empty.", "question // answer")
    if len(ask) > LONGEST_ASK or len(hint) > LONGEST_ASK:
        return fault("long", f"A question or hint has at most {LONGEST_ASK} letters.")
    if len(answer) > LONGEST_ANSWER:
        return fault("long", f"An answer has at most {LONGEST_ANSWER} letters.", mark=answer)
    form, _, rest = (fields[2] if len(fields) > 2 else "").partition(" ")
    form = form.lower()
    choices: tuple[str, ...] = ()
    if form == "choice":
        choices = tuple(one.strip() for one in re.split(r"[,|]", rest) if one.strip())
        if answer not in choices:
            return fault(
                "choice", f"The answer “{answer}” is not among the choices.", "choice red, blue, green"
            )
        if not 2 <= len(set(choices)) <= 5 or len(set(choices)) < len(choices):
            return fault("choice", "Two to five different choices, please.", mark=rest)
    elif form == "yes-no":
        choices = ("yes", "no")
    elif rest or (form and form not in FORMS):
        near = nearest(f"{form} {rest}".strip(), FORMS)
        return fault("unknown-form", f"No form is called “{form} {rest}”.".replace(" ”", "”"), near, form)
    elif form == "decimal-rounded":
        return fault("unknown-form", "A rounded answer needs a lesson file.", "Write decimal here.", form)
    made = _first_that_holds(line, ask, answer, form, choices, hint)
    problems = list(answer_problems(made))
    if problems:
        such = ", ".join(examples(made.key.form))
        return fault("answer-refused", f"{problems[0].what}.", f"{problems[0].fix} {such}".strip(), answer)
    return made


def _shown(text: str) -> str:
    """Typed text as the text of an item: a star is a times sign, and nothing becomes a mark."""
    return " ".join(re.sub(r"(?<=\w)\*(?=\w)", "×", text).replace("*", "×").replace("`", "").split())


def _first_that_holds(
    line: str, ask: str, answer: str, form: str, choices: tuple[str, ...], hint: str
) -> Item:
    """The item in the form that is named; without one, in the first of the usual forms that reads its answer."""
    tried = [form] if form else ["number", "quantity", "expression", "equation-solution", "list", "words"]
    items = [_item(line, ask, answer, one, choices, hint) for one in tried]
    return next((item for item in items if not list(answer_problems(item))), items[0])


def _item(line: str, ask: str, answer: str, form: str, choices: tuple[str, ...], hint: str) -> Item:
    name = own_id(line)
    unit = None
    found = _UNIT.match(answer)
    if form.startswith("quantity") and found:
        answer, unit = found["number"].strip(), found["unit"].strip()
    key = Key(answer=answer, form=form, unit=unit, choices=choices, circles=tells_of_pi(ask))
    return Item(
        template=TemplateId(f"{name}/item"),
        version=name,
        seed=0,
        lesson=name,
        lesson_title=title_of(ask),
        skills=(),
        ask=ask,
        key=key,
        hints=(hint,) if hint else (),
        steps=(Step(answer),),
        choices=choices,
    )


def title_of(ask: str, most: int = 32) -> str:
    """The first words of a question, which stand for its title."""
    words = ask.rstrip("?.! ")
    return words if len(words) <= most else words[:most].rsplit(" ", 1)[0] + "…"
