"""One item, made from one draw of a template's numbers and words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from bot.answers.key import Key, Misstep, tells_of_pi
from bot.course.fill import Draw, is_formula, key_text, letters_of, same_thing
from bot.course.fill_figure import fill_figure
from bot.course.item import Item, Step, grouped, runs
from bot.course.prepare import read_once
from bot.course.prepared import Case, Prepared, Slot, Text
from bot.course.vary import Chance
from bot.course.words import as_tree
from bot.course.year import Course
from bot.maths.read import Unreadable
from bot.maths.show import plain
from bot.maths.tree import Call, Tree, number
from bot.maths.value import Undefined


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


class Making:
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
        return _Answer(self.draw.once("answer", self._key_text, gives), gives)

    def _key_text(self, gives: Tree) -> str:
        return key_text(self.recipe.form, self.recipe.places, gives, self.draw)

    def _button(self, gives: Tree | Text) -> str:
        """What stands on a button: written choices as written, choices made from missteps worked out."""
        if isinstance(gives, tuple):
            return self.draw.text(gives, marks=False)
        if not self.prepared.choices and letters_of(gives) <= self.draw.letters.keys() and is_formula(gives):
            gives = as_tree(self.draw.worth(gives), decimal=bool(letters_of(gives) & self.draw.decimals))
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
            if one.tree is not None and letters_of(one.tree) <= self.draw.letters.keys():
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
