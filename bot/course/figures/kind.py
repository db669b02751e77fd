"""What a kind of figure is, and what a recipe has to give for it.

A figure is data: the kind, and a few fields. In a recipe the fields are formulas, labels and words; once an
item's numbers are drawn they are plain text ("3/4", "7.5 cm", "unknown") or rows of it. Nothing is drawn here.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias

Value: TypeAlias = "str | Sequence[Value]"
Figure: TypeAlias = Mapping[str, Value]
"""The kind under "figure", the other fields under their own names. Several values in one field may be one text
with commas or a list; rows are a list of lists."""


class Holds(Enum):
    """What stands in a field, and so what has to happen to it when the numbers are drawn."""

    NUMBER = "a number or formula, such as 3/4 or a + b"
    NUMBERS = "numbers or formulas with commas between, or one list letter"
    LABEL = "what is written there: maths, then unit words if wanted, such as 7.5 cm, x, or unknown"
    LABELS = "labels with commas between"
    ROWS = "rows of labels, a line each: - [hours, 1, 2]"
    EXPRESSION = "maths that is shown as it is, such as 3 x + 5"
    EXPRESSIONS = "expressions or equations with commas between, such as y = 2 x + 1"
    POINT_LIST = "pairs in brackets with commas between, such as (1, 2), (a, b)"
    POINT_ROWS = "rows of pairs, a line each: - (0, 0), (4, 0), (4, 3)"
    SPAN = "a range with two dots, such as -5..5 or 0..20 step 5"
    WORDS = "plain words"
    CHOICE = "one of a few words"


@dataclass(frozen=True, slots=True)
class Field:
    """One key of a figure: what it holds, whether it must be there, and what it is for."""

    name: str
    holds: Holds
    means: str
    needed: bool = False
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of figure. `one_of` names fields of which at least one has to be given."""

    name: str
    shows: str
    fields: tuple[Field, ...]
    example: Figure
    one_of: tuple[str, ...] = ()

    def field(self, name: str) -> Field | None:
        """The field of that name, or None."""
        return next((field for field in self.fields if field.name == name), None)


def need(name: str, holds: Holds, means: str) -> Field:
    return Field(name, holds, means, needed=True)


def may(name: str, holds: Holds, means: str) -> Field:
    return Field(name, holds, means)


def pick(name: str, means: str, *choices: str, needed: bool = False) -> Field:
    return Field(name, Holds.CHOICE, means, needed, choices)


YES_NO = ("yes", "no")
