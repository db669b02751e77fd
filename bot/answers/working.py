"""The working, line by line: which line doesn't follow from the one before, and what probably happened."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.answers.around import small
from bot.answers.faults import first_number
from bot.answers.lines import Line, read_line
from bot.answers.meaning import Roots, meaning_of, rounds_to, same_solutions, value_of
from bot.answers.no_or_all import special
from bot.answers.why import why_expression, why_relation
from bot.maths import Tree, Undefined, Unreadable, letters_in, normal
from bot.maths.algebra import (
    equivalent,
)
from bot.maths.exact import Beyond
from bot.maths.tree import Equation, Inequality, Letter, Number

MOST_LINES = 60


@dataclass(frozen=True, slots=True)
class Looked:
    """What came of looking over the working.

    `first_wrong` counts from 0, None if every line follows. `unsure` where a line before it, or the end,
    could not be decided; then nobody is accused. `fine` are the lines that surely follow.
    """

    first_wrong: int | None
    misstep: str | None
    unsure: bool
    fine: tuple[int, ...]


class _Unsure(Exception):
    """A line that can't be decided."""


class _Bad(Exception):
    """A line that doesn't follow, and the misstep if one is plain."""

    def __init__(self, misstep: str | None = None) -> None:
        super().__init__(misstep)
        self.misstep = misstep


def first_wrong_line(lines: Sequence[str], given: str) -> int | None:
    """The first line that doesn't follow from the one before, counted from 0; None if all do or nobody can say."""
    return look_over(lines, given).first_wrong


def look_over(lines: Sequence[str], given: str) -> Looked:
    """Judge each line against the one before; the first against `given`. Never raises."""
    fine: list[int] = []
    unsure = False
    start = read_line(given, None)
    if start is None or not start.trees:
        return Looked(None, None, True, ())
    relation = isinstance(start.trees[0], (Equation, Inequality))
    work = _Work(start, relation)
    for n, text in enumerate(lines[:MOST_LINES]):
        try:
            work.take(text)
            fine.append(n)
        except _Bad as bad:
            return Looked(n, bad.misstep, unsure, tuple(fine))
        except (_Unsure, Unreadable, Undefined, Beyond, RecursionError):
            unsure = True
            work.lost()
    if len(lines) > MOST_LINES:
        return Looked(None, None, True, tuple(fine))
    if not unsure and fine and work.ends_elsewhere():
        return Looked(fine[-1], work.why_elsewhere(), False, tuple(fine[:-1]))
    return Looked(None, None, unsure, tuple(fine))


# The work as a whole ----------------------------------------------------------------------------------------


class _Work:
    """The line that the next one is compared with, and how to compare."""

    def __init__(self, given: Line, relation: bool) -> None:
        self.given = given
        self.before: Line | None = given
        self.relation = relation
        self.unknown = bool(letters_in(given.trees[0])) if not relation else True
        self.last_value: Tree | None = None
        self.last_line: Line | None = None

    def lost(self) -> None:
        """A line could not be read: the next one is not compared with anything."""
        self.before = None

    def take(self, text: str) -> None:
        """Take a line; raises _Bad, _Unsure, or what reading raises."""
        line = read_line(text, self.given)
        if line is None:
            if (
                self.relation
                and self.before is not None
                and (words := special(small(normal(text)))) is not None
            ):
                self.concluded(words)
            return
        if self.relation:
            self.relation_line(line)
        else:
            self.expression_line(line)

    def concluded(self, words: str) -> None:
        """`no solution`, `all numbers`."""
        assert self.before is not None
        meaning = meaning_of(self.before.trees)
        if meaning is None or not isinstance(meaning[1], Roots) or words == "counted":
            raise _Unsure
        roots = meaning[1]
        if (words == "all") != roots.every or (words == "none" and roots.values):
            raise _Bad

    # Expressions -------------------------------------------------------------------------------------------

    def expression_line(self, line: Line) -> None:
        if len(line.trees) != 1:
            raise _Unsure
        tree = line.trees[0]
        if isinstance(tree, Inequality):
            raise _Unsure
        if (
            line.told
            and isinstance(tree, Number)
            and not (self.before and self.same(self.value_before(), tree))
        ):
            return
        sides: list[Tree] = list(tree.sides) if isinstance(tree, Equation) else [tree]
        if (
            len(sides) == 2
            and isinstance(sides[0], Letter)
            and sides[0].name not in letters_in(self.given.trees[0])
        ):
            sides = sides[1:]  # A = 1/2 b h, y = ...
        self.chain(sides, line.nearly)
        if (
            line.goes_on
            or len(sides) == 1
            or (self.before is not None and self.same(self.value_before(), sides[0]))
        ):
            if self.before is not None and not self.same_or_nearly(
                self.value_before(), sides[0], line.nearly and len(sides) == 1
            ):
                raise _Bad(why_expression(self.value_before(), sides[0]))
            self.before = Line((sides[-1],), False)
        elif any(letters_in(side) for side in sides):
            raise _Bad(why_expression(self.value_before(), sides[0])) if self.before is not None else _Unsure
        self.last_value = sides[-1]
        self.last_line = line

    def value_before(self) -> Tree:
        assert self.before is not None
        return self.before.trees[0]

    def same(self, one: Tree, other: Tree) -> bool:
        return equivalent(one, other)

    def same_or_nearly(self, one: Tree, other: Tree, nearly: bool) -> bool:
        return equivalent(one, other) or (nearly and rounds_to(one, other))

    def chain(self, sides: list[Tree], nearly: bool) -> None:
        """Every equals sign of a chain has to hold."""
        for one, other in itertools.pairwise(sides):
            if not self.same_or_nearly(one, other, nearly):
                runs_on = first_number(other)
                if runs_on is not None and len(sides) > 2 and value_of(one) == runs_on:
                    raise _Bad("run-on-equals")
                raise _Bad(why_expression(one, other))

    def ends_elsewhere(self) -> bool:
        """Whether true side calculations end at another number than the question's."""
        if self.relation or self.unknown or self.last_value is None or self.before is None:
            return False
        return not self.same(self.given.trees[0], self.last_value) and not (
            self.last_line is not None and self.last_line.nearly
        )

    def why_elsewhere(self) -> str | None:
        assert self.last_value is not None
        return why_expression(self.given.trees[0], self.last_value)

    # Equations and inequalities -------------------------------------------------------------------------------

    def relation_line(self, line: Line) -> None:
        trees = line.trees
        if len(trees) == 1 and not isinstance(trees[0], (Equation, Inequality)):
            self.bare_line(trees[0], line)
            return
        if not any(letters_in(tree) for tree in trees):
            self.side_calculation(line)
            return
        if len(trees) == 1 and isinstance(trees[0], Equation) and len(trees[0].sides) > 2:
            sides = list(trees[0].sides)
            with_letters = [side for side in sides if letters_in(side)]
            without = [side for side in sides if not letters_in(side)]
            if len(with_letters) == 1 and with_letters[0] == sides[0]:
                self.chain(without, line.nearly)
                trees = (Equation((sides[0], sides[-1])),)
            else:
                raise _Unsure
        if self.before is None:
            self.before = Line(trees, False)
            raise _Unsure
        decided = same_solutions(self.before.trees, trees, line.nearly)
        if decided is None:
            self.before = Line(trees, False)
            raise _Unsure
        if not decided:
            raise _Bad(why_relation(self.before.trees, trees))
        self.before = Line(trees, False)

    def bare_line(self, tree: Tree, line: Line) -> None:
        """A lone number after an equation: the answer."""
        if self.before is None or letters_in(tree):
            raise _Unsure
        meaning = meaning_of(self.before.trees)
        number = value_of(tree)
        if line.told and meaning is not None and meaning[1] != Roots(frozenset((number or Fraction(0),))):
            return
        if meaning is None or number is None or not isinstance(meaning[1], Roots):
            raise _Unsure
        if meaning[1].every or meaning[1].values == {number}:
            return
        if len(meaning[1].values) > 1 and number in meaning[1].values:
            raise _Unsure
        raise _Bad(why_relation(self.before.trees, (Equation((Letter(meaning[0]), tree)),)))

    def side_calculation(self, line: Line) -> None:
        """A statement without the unknown: fine if it is true, or if the equation has no solution."""
        for tree in line.trees:
            if isinstance(tree, Equation):
                try:
                    self.chain(list(tree.sides), line.nearly)
                except _Bad:
                    meaning = meaning_of(self.before.trees) if self.before is not None else None
                    if meaning is not None and meaning[1] == Roots(frozenset()):
                        return
                    raise
            elif isinstance(tree, Inequality) and _interval_of_numbers(tree) is False:
                raise _Bad


def _interval_of_numbers(tree: Inequality) -> bool | None:
    from bot.maths import holds

    try:
        return holds(tree)
    except Undefined:
        return None
