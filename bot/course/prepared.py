"""A template made ready for drawing, as data: its maths read, its texts taken apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from bot.course.lesson import Template
from bot.maths.tree import Tree


@dataclass(frozen=True, slots=True)
class Slot:
    """`{who}`, or `{sack for n}`: a word of the item, in the plural where the number isn't one."""

    word: str
    count: Tree | None = None


Text: TypeAlias = "tuple[str | Slot | Tree, ...]"
"""A text taken apart: words, slots for drawn words, and maths."""


@dataclass(frozen=True, slots=True)
class Case:
    """One way an answer may turn out: a formula, or words; `when` is None for the last, which always holds."""

    when: Tree | None
    gives: Tree | Text


@dataclass(frozen=True, slots=True)
class Prepared:
    """A template with its maths read."""

    template: Template
    order: tuple[tuple[str, Tree], ...]
    decimals: frozenset[str]
    """Letters whose numbers are shown as decimals, because the author drew them so."""
    where: Tree | None
    answer: tuple[Case, ...]
    accept: Text | None
    given: Text | None
    unit: Text
    row_letters: frozenset[str]
    """Letters that come with a drawn row of words, such as p in {place: thousands, p: 1000}."""
    row_texts: Mapping[str, Text]
    """Words of rows that hold maths, taken apart."""
    missteps: tuple[tuple[str, tuple[Case, ...]], ...]
    choices: tuple[tuple[Case, ...], ...]
    ask: Text
    hints: tuple[Text, ...]
    steps: tuple[tuple[Tree | Text, Text], ...]
    checks: tuple[Text, ...]


WORD_FORMS = frozenset(("choice", "yes-no", "words"))
LETTER_FORMS = frozenset(
    (
        "expression",
        "expression-any",
        "factored",
        "equation",
        "equation-solution",
        "solutions-set",
        "inequality",
        "choice",
        "scientific",
        "prime-factors",
    )
)


def times_hint(letter: str) -> str:
    return "For times write × or a space: `f n`." if letter in ("x", "X") else ""
