"""The lines of a worked solution: each follows from the one above, and the last is the answer."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from bot.course.fill import same_numbers
from bot.course.item import Item, Step
from bot.course.lesson import Template
from bot.course.prepare import read_once
from bot.maths.read import Unreadable
from bot.maths.tree import Equation, Inequality, Letter, Tree, letters_in
from bot.maths.value import Undefined, holds, value


@dataclass(frozen=True, slots=True)
class Problem:
    """Something wrong with one item or example: what, and in which line; the draw is told by the caller."""

    kind: str
    what: str
    fix: str = ""
    line: int = 0
    shown: str = ""


def chain_faults(item: Item, template: Template) -> Iterator[Problem]:
    """Check the steps of an item and the lines that say Check."""
    lines = [write.line if write.text else because.line for write, because in template.steps]
    shown = [
        f"`{write.text}` {because.text}" if write.text else because.text for write, because in template.steps
    ]
    yield from _lines(item.steps, lines, shown, _solution(item))
    if item.steps and not _says(item.steps[-1], item.key.answer):
        yield Problem(
            "last-step",
            f"The last step doesn't give the answer `{item.key.answer}`",
            "Let it be `answer`.",
            lines[-1],
            shown[-1],
        )


def example_faults(steps: tuple[Step, ...]) -> Iterator[Problem]:
    """Check the steps of a worked example, whose numbers are fixed."""
    last = read_plain(steps[-1].write) if steps and steps[-1].write else None
    solution: Mapping[str, Fraction] = {}
    if isinstance(last, Equation) and isinstance(last.sides[0], Letter):
        try:
            solution = {last.sides[0].name: value(last.sides[1])}
        except Undefined:
            solution = {}
    yield from _lines(steps, [0] * len(steps), [step.write for step in steps], solution)


_THOUSANDS = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")


def read_plain(shown: str) -> Tree | None:
    """Read maths back from how it is shown; None where it is no maths (money, remainders, words)."""
    try:
        return read_once(_THOUSANDS.sub("", shown) if "," in shown else shown)
    except Unreadable:
        return None


def _lines(
    steps: tuple[Step, ...], lines: list[int], shown: list[str], solution: Mapping[str, Fraction]
) -> Iterator[Problem]:
    above: Tree | None = None
    for number, step in enumerate(steps):
        tree = read_plain(step.write) if step.write else None
        if tree is None:
            continue
        if not _true(tree, solution):
            yield Problem(
                f"step {number + 1}",
                f"Step {number + 1}, `{step.write}`, isn't true",
                "",
                lines[number],
                shown[number],
            )
        elif above is not None and not _follows(above, tree):
            yield Problem(
                f"step {number + 1}",
                f"Step {number + 1}, `{step.write}`, doesn't follow from the line above it",
                "A line that is no next line begins with a word instead of maths.",
                lines[number],
                shown[number],
            )
        above = tree


def _true(tree: Tree, solution: Mapping[str, Fraction]) -> bool:
    """Whether an equation or inequality holds for the solution; where that can't be told it may stand."""
    if not isinstance(tree, (Equation, Inequality)):
        return True
    try:
        return letters_in(tree) - solution.keys() != frozenset() or holds(tree, solution)
    except Undefined:
        return True


def _follows(above: Tree, tree: Tree) -> bool:
    if isinstance(above, (Equation, Inequality)) or isinstance(tree, (Equation, Inequality)):
        return True  # told by `_true`, and by the checker of working lines
    return same_numbers(above, tree)


def _solution(item: Item) -> Mapping[str, Fraction]:
    tree = read_plain(item.key.answer)
    if isinstance(tree, Equation) and isinstance(tree.sides[0], Letter):
        try:
            return {tree.sides[0].name: value(tree.sides[1])}
        except Undefined:
            return {}
    if tree is None or isinstance(tree, (Equation, Inequality)):
        return {}
    try:
        number = value(tree)
    except Undefined:
        return {}
    # A word problem names its own unknown: one letter in the steps, whose value is the answer.
    named: set[str] = set()
    for step in item.steps:
        line = read_plain(step.write) if step.write else None
        named |= letters_in(line) if line is not None else set()
    return {named.pop(): number} if len(named) == 1 else {}


def _says(step: Step, answer: str) -> bool:
    texts = [step.write, *re.findall(r"`([^`]*)`", step.because)]
    if any(_bare(text) == _bare(answer) or _sum(text) == _sum(answer) is not None for text in texts):
        return True
    one, other = (read_plain(step.write) if step.write else None), read_plain(answer)
    if one is None or other is None:
        return False
    if isinstance(one, Equation) and isinstance(one.sides[0], Letter) and not isinstance(other, Equation):
        one = one.sides[1]
    return same_numbers(one, other)


def _bare(text: str) -> str:
    return text.replace(",", "").removeprefix("$")


def _sum(text: str) -> Fraction | None:
    """A sum of money, or a number as its key has it: $15 and 15.00 are one."""
    found = re.fullmatch(r"\$?(\d+(?:\.\d\d)?)", text.replace(",", ""))
    return Fraction(found[1]) if found else None
