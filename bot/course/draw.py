"""A template and a seed in, an item out: the same arguments give the same item, always."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from bot.answers.key import Key
from bot.course.faults import CourseErrors, Fault
from bot.course.fill import Draw, Known
from bot.course.item import Item
from bot.course.lesson import Template
from bot.course.make_item import Drawn, Making, Thrown
from bot.course.prepare import prepare, read_once
from bot.course.prepared import Case, Prepared
from bot.course.recipes import Rows
from bot.course.vary import Chance, Disagree, EmptyRange, kept, vary
from bot.course.words import Worth, work_out
from bot.course.year import Course
from bot.maths.tree import Call, Equation, Letter
from bot.maths.value import Undefined, value
from bot.vocabulary import TemplateId

ATTEMPTS = 4000
"""After so many draws that didn't fit the template is taken to have none."""
OWN = 200
"""Draws of what is left open, where some numbers are given."""


@dataclass(frozen=True, slots=True)
class Before:
    """What came of earlier draws of a template, for a proof that draws hundreds of times.

    `made` holds what was made of numbers and words; leave it None where chance also mixes the buttons.
    """

    made: dict[tuple[object, ...], Drawn | Thrown] | None
    known: Known = field(default_factory=Known)


def draw(course: Course, template: TemplateId, seed: int) -> Item:
    """Draw an item.

    Raises NoSuchThing for a template that isn't there, CourseErrors for one that can't be drawn (a course that
    passes `evensum check-content` has none).
    """
    return draw_whole(course, course.template(template), seed).item


def draw_whole(course: Course, template: Template, seed: int) -> Drawn:
    """As `draw`, with the numbers that were drawn."""
    prepared = prepared_of(course, template)
    last = Thrown("where")
    for attempt in range(ATTEMPTS):
        found = try_once(course, prepared, seed, attempt)
        if isinstance(found, Drawn):
            return found
        last = found
    raise CourseErrors(
        [
            Fault(
                "no-draws",
                course.file_of(template),
                template.line,
                "No draw of this template fits.",
                f"The last one was thrown away: {last.why} {last.detail}".rstrip()
                + ". Widen the ranges or loosen `where`.",
                f"template {template.name}",
            )
        ]
    )


def prepared_of(course: Course, template: Template) -> Prepared:
    """The template with its maths read, kept for the next draw. Raises CourseErrors."""
    ready = course.ready.get(template.id)
    if not isinstance(ready, Prepared):
        found, faults = prepare(template, course.file_of(template), course.missteps)
        if found is None or faults:
            raise CourseErrors(faults)
        course.ready[template.id] = ready = found
    return ready


def key_with(
    course: Course, template: Template, letters: Mapping[str, str], words: Mapping[str, str]
) -> Key | Thrown:
    """What the template takes to be right for numbers of one's own, such as those of a published exercise.

    `letters` gives some or all of the drawn numbers as typed maths (a list as `2, 5, 7`), in or out of their ranges;
    the rest is drawn so that every number that is a formula of others agrees with it. Where the author's formulas
    leave no such numbers (p = 3 k for a p of 7), the numbers given win, unless the answer is one of them as it stands.
    `words` choose the rows of words. The author's wishes (`where`, missteps that differ) don't count here.
    """
    prepared = prepared_of(course, template)
    fixed = {name: work_out(read_once(text), {}) for name, text in letters.items()}
    bare = any(_names_a_number(case) for case in prepared.answer)
    last = Thrown("undefined")
    for attempt in range(2 * OWN):
        agreeing = bare or attempt < OWN
        chance = Chance(f"{template.id}/own/{attempt}")
        chosen: dict[str, str] = {}
        for rows in template.recipe.words:
            fit = _fitting(rows, fixed, words) or rows
            chosen.update(fit[chance.below(len(fit))])
        begun = {name: value(read_once(chosen[name])) for name in prepared.row_letters} | fixed
        try:
            found = vary(prepared.order, chance, begun, agreeing)
            return Making(course, prepared, _draw_of(course, prepared, found, chosen), chance).key()
        except EmptyRange:
            last = Thrown("undefined", "an empty range")
        except Undefined as undefined:
            last = Thrown("undefined", undefined.kind)
        except Disagree as other:
            last = Thrown("formula", f"{other} isn't what its formula gives")
    return last


def try_once(
    course: Course,
    prepared: Prepared,
    seed: int,
    attempt: int,
    before: Before | None = None,
) -> Drawn | Thrown:
    """One attempt at a seed: an item, or why this draw doesn't do.

    With `before` the same numbers and words give the very same object again, with the seed of the first.
    """
    chance = Chance(f"{prepared.template.id}/{seed}/{attempt}")
    words: dict[str, str] = {}
    for rows in prepared.template.recipe.words:
        words.update(rows[chance.below(len(rows))])
    numbers = {name: value(read_once(words[name])) for name in prepared.row_letters}
    try:
        letters = vary(prepared.order, chance, numbers)
        if not kept(prepared.where, letters):
            return Thrown("where")
    except EmptyRange:
        return Thrown("where")
    except Undefined as undefined:
        return Thrown("undefined", undefined.kind)
    draw_ = _draw_of(course, prepared, letters, words, before.known if before else None)
    made = before.made if before else None
    key = (*draw_.marks.values(), *words.values())
    if made is not None and key in made:
        return made[key]
    found: Drawn | Thrown
    try:
        found = Making(course, prepared, draw_, chance).item(seed)
    except Undefined as undefined:
        found = Thrown("undefined", undefined.kind)
    if made is not None:
        made[key] = found
    return found


def _draw_of(
    course: Course,
    prepared: Prepared,
    letters: Mapping[str, Worth],
    words: Mapping[str, str],
    known: Known | None = None,
) -> Draw:
    return Draw(
        letters,
        words,
        prepared.decimals,
        course.plurals,
        row_texts=prepared.row_texts,
        known=known or Known(),
    )


def _names_a_number(case: Case) -> bool:
    """Whether an answer is a drawn number as it stands: `s`, `x = s`, `q R r`."""
    gives = case.gives.sides[-1] if isinstance(case.gives, Equation) else case.gives
    if isinstance(gives, tuple):
        return any(isinstance(part, Call) and isinstance(part.parts[0], Letter) for part in gives)
    return isinstance(gives, Letter)


def _fitting(rows: Rows, fixed: Mapping[str, Worth], wanted: Mapping[str, str]) -> Rows:
    """The rows that hold the wanted words, and for letters that stand in them the numbers."""
    return tuple(
        row
        for row in rows
        if all(row.get(name, word) == word for name, word in wanted.items())
        and all(value(read_once(row[name])) == worth for name, worth in fixed.items() if name in row)
    )
