"""A template and a seed in, an item out: the same arguments give the same item, always."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from bot.answers.key import Key, Misstep, tells_of_pi
from bot.course.faults import CourseErrors, Fault
from bot.course.fill import Draw, is_formula, key_text, same_thing
from bot.course.fill_figure import fill_figure
from bot.course.item import Item, Step, grouped, runs
from bot.course.lesson import Template
from bot.course.prepare import prepare, read_once
from bot.course.prepared import Case, Prepared, Slot, Text
from bot.course.recipes import Rows
from bot.course.vary import Chance, Disagree, EmptyRange, kept, vary
from bot.course.words import Worth, as_tree, work_out
from bot.course.year import Course
from bot.maths.read import Unreadable
from bot.maths.show import plain
from bot.maths.tree import Call, Equation, Letter, Tree, letters_in, number
from bot.maths.value import Undefined, value
from bot.vocabulary import TemplateId

ATTEMPTS = 4000
"""After so many draws that didn't fit the template is taken to have none."""
OWN = 200
"""Draws of what is left open, where some numbers are given."""


@dataclass(frozen=True, slots=True)
class Thrown:
    """A draw that was thrown away, and why: `where` (the author's wish), `clash` or `undefined`."""

    why: str
    detail: str = ""


@dataclass(frozen=True, slots=True)
class Drawn:
    """An item and what it was made of, for proofs."""

    item: Item
    draw: Draw


Made = dict[tuple[tuple[tuple[str, Worth], ...], tuple[tuple[str, str], ...]], Drawn | Thrown]
"""What came of numbers and words."""


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
            return _Making(course, prepared, _draw_of(course, prepared, found, chosen), chance).key()
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
    made: Made | None = None,
) -> Drawn | Thrown:
    """One attempt at a seed: an item, or why this draw doesn't do.

    `made` keeps what was made of the same numbers and words before, for a proof that draws hundreds of times: it gets
    the very same object again, with the seed of the first. Leave it out where chance also mixes the buttons.
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
    key = (tuple(letters.items()), tuple(words.items()))
    if made is not None and key in made:
        return made[key]
    found: Drawn | Thrown
    try:
        found = _Making(course, prepared, _draw_of(course, prepared, letters, words), chance).item(seed)
    except Undefined as undefined:
        found = Thrown("undefined", undefined.kind)
    if made is not None:
        made[key] = found
    return found


def _draw_of(
    course: Course, prepared: Prepared, letters: Mapping[str, Worth], words: Mapping[str, str]
) -> Draw:
    return Draw(letters, words, prepared.decimals, course.plurals, row_texts=prepared.row_texts)


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


def _gives_away(hint: str, answer: str) -> bool:
    """Whether a stretch of the hint is the answer, thousands apart or not."""
    ways = (answer, grouped(answer))
    bare = hint.replace("`", "")  # most hints don't hold it at all, and taking a text apart is slow
    return (ways[0] in bare or ways[1] in bare) and any(run.text in ways for run in runs(hint))


@dataclass(frozen=True, slots=True)
class _Answer:
    """An answer or misstep with the numbers in: as text for the key, and as maths where it is some."""

    text: str
    tree: Tree | None


class _Making:
    """Makes one item from one draw."""

    def __init__(self, course: Course, prepared: Prepared, draw_: Draw, chance: Chance) -> None:
        self.course, self.prepared, self.draw, self.chance = course, prepared, draw_, chance
        self.template = prepared.template
        self.recipe = self.template.recipe

    def key(self) -> Key:
        """The key alone, whatever the rest of the item would be."""
        answer = self._answer(self.prepared.answer)
        if answer is None:
            raise Undefined("no-number", "no case of the answer holds")
        answer = self._as_choice(answer)
        choices = self._written_choices
        accept = self._bare(self.prepared.accept)
        ask = self._with_answer(answer).text(self.prepared.ask)
        return self._key(ask, answer, accept, tuple(one.text for one in choices), {})

    def item(self, seed: int) -> Drawn | Thrown:
        answer = self._answer(self.prepared.answer)
        if answer is None:
            return Thrown("undefined", "no case of the answer holds")
        answer = self._as_choice(answer)
        missteps = self._missteps(answer)
        if isinstance(missteps, Thrown):
            return missteps
        choices = self._choices(answer, missteps)
        if isinstance(choices, Thrown):
            return choices
        accept = self._bare(
            self.prepared.accept
        )  # before the answer is known: here `it` has to stay a letter
        self.draw = self._with_answer(answer)
        template, text = self.template, self.draw.text
        hints = tuple(text(hint) for hint in self.prepared.hints)
        if self.prepared.accept is None and any(_gives_away(hint, answer.text) for hint in hints):
            return Thrown("clash", "a hint shows the answer")
        ask = text(self.prepared.ask)
        key = self._key(ask, answer, accept, choices, missteps)
        lesson = self.course.title_of(template)
        return Drawn(
            Item(
                template=template.id,
                version=template.version,
                seed=seed,
                lesson=template.lesson,
                lesson_title=lesson,
                skills=template.skills,
                ask=ask,
                key=key,
                hints=hints,
                steps=tuple(self._step(write, because) for write, because in self.prepared.steps),
                figure=fill_figure(self.recipe.figure, self.draw),
                choices=choices,
                level=template.level,
                calculator=self.course.calculator_for(template),
            ),
            self.draw,
        )

    # Answers -------------------------------------------------------------------------------------------

    def _key(
        self,
        ask: str,
        answer: _Answer,
        accept: str | None,
        choices: tuple[str, ...],
        missteps: Mapping[str, _Answer],
    ) -> Key:
        say = {name: self.course.says(name, self.template) for name in missteps}
        return Key(
            answer=answer.text,
            form=self.recipe.form,
            unit=self.draw.text(self.prepared.unit, marks=False) or None,
            given=self._bare(self.prepared.given),
            accept=accept,
            choices=choices,
            form_is_the_skill=self.recipe.form_is_the_skill,
            missteps=tuple(Misstep(name, wrong.text, say[name]) for name, wrong in missteps.items()),
            circles=tells_of_pi(ask),
        )

    def _answer(self, cases: tuple[Case, ...]) -> _Answer | None:
        gives = self.draw.case(cases)
        if gives is None:
            return None
        if isinstance(gives, tuple):
            apart = self.recipe.form not in ("remainder", "time")
            return _Answer(self.draw.text(gives, marks=False, apart=apart), None)
        if self.recipe.form == "choice":
            return _Answer(self._button(gives), gives)
        return _Answer(key_text(self.recipe.form, self.recipe.places, gives, self.draw), gives)

    def _button(self, gives: Tree | Text) -> str:
        """What stands on a button: written choices as written, choices made from missteps worked out."""
        if isinstance(gives, tuple):
            return self.draw.text(gives, marks=False)
        if not self.prepared.choices and letters_in(gives) <= self.draw.letters.keys() and is_formula(gives):
            gives = as_tree(self.draw.worth(gives), decimal=bool(letters_in(gives) & self.draw.decimals))
        shown = self.draw.show(gives)
        unit = self.draw.text(self.prepared.unit, marks=False)
        return f"{shown} {unit}" if unit else shown

    def _missteps(self, answer: _Answer) -> dict[str, _Answer] | Thrown:
        """The wrong answers of this draw. With buttons a misstep that leads to the right one falls away."""
        found: dict[str, _Answer] = {}
        for name, cases in self.prepared.missteps:
            made = self._answer(cases)
            if made is None:
                continue
            wrong = self._as_choice(made)
            clash = next(
                (
                    other
                    for other in ("the answer", *found)
                    if self._same(wrong, answer if other == "the answer" else found[other])
                ),
                None,
            )
            if clash is None:
                found[name] = wrong
            elif not self.template.by_button:
                return Thrown("clash", f"{name} gives the same as {clash}")
        return found

    def _as_choice(self, one: _Answer) -> _Answer:
        """The written choice that equals this answer (`max(a/b, c/d)` may mean the button a/b)."""
        return next((choice for choice in self._written_choices if self._same(one, choice)), one)

    @cached_property
    def _written_choices(self) -> list[_Answer]:
        return [found for cases in self.prepared.choices if (found := self._answer(cases)) is not None]

    def _same(self, one: _Answer, other: _Answer) -> bool:
        if one.tree is None or other.tree is None:
            return one.text == other.text
        return one.text == other.text or same_thing(one.tree, other.tree, self.draw)

    def _choices(self, answer: _Answer, missteps: dict[str, _Answer]) -> tuple[str, ...] | Thrown:
        """The buttons in their order: as written, or the answer and its missteps by size or by chance."""
        if self.recipe.form == "yes-no":
            return ("yes", "no")
        if self.recipe.form != "choice":
            return ()
        if not self.prepared.choices:
            return self._made_choices([answer, *missteps.values()])
        shown = [choice.text for choice in self._written_choices]
        if len(set(shown)) < len(shown):
            return Thrown("clash", "two choices are the same")
        for name, one in {"the answer": answer, **missteps}.items():
            if one.text not in shown:
                return Thrown("clash", f"{name} is {one.text}, which is no choice")
        return tuple(self.chance.shuffled(shown) if self.recipe.shuffle else shown)

    def _made_choices(self, answers: list[_Answer]) -> tuple[str, ...] | Thrown:
        if len(answers) < 3:
            return Thrown("clash", "fewer than three choices are left")
        if self.recipe.shuffle:
            return tuple(self.chance.shuffled([one.text for one in answers]))
        sizes: list[tuple[Fraction, str]] = []
        for one in answers:
            worth = None
            if one.tree is not None and letters_in(one.tree) <= self.draw.letters.keys():
                try:
                    worth = self.draw.worth(one.tree)
                except Undefined:
                    worth = None
            if not isinstance(worth, Fraction):
                return tuple(self.chance.shuffled([one.text for one in answers]))
            sizes.append((worth, one.text))
        return tuple(text for _, text in sorted(sizes))

    def _with_answer(self, answer: _Answer) -> Draw:
        """The draw, knowing what the word *answer* stands for in the steps."""
        tree: Tree | None = None
        shown = ""
        if self.recipe.form == "money" and answer.tree is not None:
            shown = plain(Call("money", (number(self._number(answer.tree)),)))
        elif answer.tree is None:
            shown = answer.text
        try:
            tree = read_once(answer.text)
        except Unreadable:
            shown = shown or answer.text
        if self.recipe.form == "choice" and answer.tree is not None:
            tree, shown = self.draw.tree(answer.tree), answer.text
        return replace(self.draw, answer=tree, answer_text=shown)

    def _number(self, tree: Tree) -> Fraction:
        worth = self.draw.worth(tree)
        if isinstance(worth, tuple):
            raise Undefined("no-number")
        return worth

    # Texts ---------------------------------------------------------------------------------------------

    def _bare(self, text: Text | None) -> str | None:
        if text is None:
            return None
        return "".join(self.draw.bare(part) for part in text if not isinstance(part, (str, Slot)))

    def _step(self, write: Tree | Text, because: Text) -> Step:
        shown = "" if isinstance(write, tuple) else self.draw.show(write)
        return Step(shown, self.draw.text(because))
