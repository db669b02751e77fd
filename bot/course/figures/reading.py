"""Read the fields of a figure: split what is written, put an item's numbers in, and hand out numbers and labels."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.course.figures.kind import Figure, Holds, Kind, Value

UNKNOWN = "unknown"
BARE = "none"
_NUMBER = re.compile(r"(?P<sign>-?)(?:(?P<whole>\d+) +)?(?P<top>\d+(?:\.\d+)?|\.\d+)(?:/(?P<bottom>\d+))?")
_SPAN = re.compile(r"(?P<low>.+?)\s*\.\.\s*(?P<high>.+?)(?:\s+step\s+(?P<step>.+))?")

Put = Callable[[Holds, str], str]
"""Puts an item's numbers into one piece of a recipe. It gets NUMBER (give back one number, such as 3/4 or -2.5;
for a list letter several with commas), LABEL, EXPRESSION or WORDS, and gives back what people read."""


def number(text: str) -> Fraction | None:
    """The number that plain text spells ("-3", "2.5", "3/4", "1 1/2"), exactly; None if it spells none."""
    found = _NUMBER.fullmatch(text.strip().replace("−", "-"))
    if found is None or (found["bottom"] is not None and int(found["bottom"]) == 0):
        return None
    size = Fraction(found["top"]) / int(found["bottom"] or 1) + int(found["whole"] or 0)
    return -size if found["sign"] else size


def leading_number(label: str) -> Fraction | None:
    """The number a label begins with, its unit left off ("7.5 cm" is 7.5); None if it begins with none."""
    found = _NUMBER.match(label.strip().replace("−", "-").replace(",", ""))
    if found is None or label.strip()[found.end() : found.end() + 1].isalpha():
        return None
    return number(found[0])


def split(text: str) -> list[str]:
    """The parts between commas that stand outside brackets. A comma inside a number, as in 1,200, divides nothing
    where other commas are followed by a space."""
    comma = re.compile(r",\s+" if re.search(r",\s", text) else r",")
    parts, start, depth = [], 0, 0
    for i, sign in enumerate(text):
        depth += (sign in "([") - (sign in ")]")
        if depth == 0 and (found := comma.match(text, i)):
            parts.append(text[start:i].strip())
            start = found.end()
    return [*parts, text[start:].strip()] if text.strip() else []


def several(value: Value) -> list[str]:
    """The values of a field that holds several, whether it was written with commas or as a list.

    YAML cuts `[(1, 2), (3, 4)]` at every comma, so pieces are joined until their brackets close.
    """
    if isinstance(value, str):
        inner = value.strip()
        return split(inner[1:-1] if inner.startswith("[") and inner.endswith("]") else inner)
    whole: list[str] = []
    open_piece = ""
    for piece in value:
        joined = f"{open_piece}, {_flat(piece)}" if open_piece else _flat(piece)
        open_piece = joined if joined.count("(") > joined.count(")") else ""
        if not open_piece:
            whole.append(joined)
    return [*whole, open_piece] if open_piece else whole


def _flat(value: Value) -> str:
    """A pair may be written (1, 2) or as a list of two."""
    return value if isinstance(value, str) else f"({', '.join(_flat(part) for part in value)})"


def rows(value: Value) -> list[list[str]]:
    """The rows of a field that holds rows; a single line of text is one row."""
    if isinstance(value, str):
        return [several(value)]
    if value and all(isinstance(row, str) for row in value) and not any(")" in str(row) for row in value):
        return (
            [several(value)] if not any("," in str(row) for row in value) else [several(row) for row in value]
        )
    return [several(row) for row in value]


def pair(text: str) -> tuple[str, str] | None:
    """The two parts of "(a, b)"; None if it is something else."""
    inner = text.strip()
    parts = split(inner[1:-1]) if inner.startswith("(") and inner.endswith(")") else []
    return (parts[0], parts[1]) if len(parts) == 2 else None


def span(text: str) -> tuple[str, str, str | None] | None:
    """The ends and the step of "0..20 step 5"; None if it is something else."""
    found = _SPAN.fullmatch(text.strip())
    return (found["low"], found["high"], found["step"]) if found else None


def fill(kind: Kind, recipe: Figure, put: Put) -> dict[str, str | list[list[str]]]:
    """The figure with an item's numbers in: texts, several values joined by commas, and rows.

    A part that isn't written as its field asks stays as it is; `check` says what is wrong with it.
    """
    drawn: dict[str, str | list[list[str]]] = {"figure": kind.name}
    for name, value in recipe.items():
        field = kind.field(name)
        if field is not None:
            drawn[name] = _fill(field.holds, value, put)
    return drawn


def _fill(holds: Holds, value: Value, put: Put) -> str | list[list[str]]:
    match holds:
        case Holds.ROWS:
            return [[put(Holds.LABEL, cell) for cell in row] for row in rows(value)]
        case Holds.POINT_ROWS:
            return [[_put_pair(point, put) for point in row] for row in rows(value)]
        case Holds.NUMBERS:
            return ", ".join(put(Holds.NUMBER, piece) for piece in several(value))
        case Holds.LABELS:
            return ", ".join(put(Holds.LABEL, piece) for piece in several(value))
        case Holds.EXPRESSIONS:
            return ", ".join(put(Holds.EXPRESSION, piece) for piece in several(value))
        case Holds.POINT_LIST:
            return ", ".join(_put_pair(piece, put) for piece in several(value))
        case Holds.SPAN:
            ends = span(_flat(value))
            if ends is None:
                return _flat(value)
            low, high = put(Holds.NUMBER, ends[0]), put(Holds.NUMBER, ends[1])
            return f"{low}..{high}" + (f" step {put(Holds.NUMBER, ends[2])}" if ends[2] else "")
        case Holds.CHOICE:
            return _flat(value)
        case _:
            return put(holds, _flat(value))


def _put_pair(text: str, put: Put) -> str:
    parts = pair(text)
    return f"({put(Holds.NUMBER, parts[0])}, {put(Holds.NUMBER, parts[1])})" if parts else text


@dataclass(frozen=True, slots=True)
class Drawn:
    """A figure whose numbers are in, to be read field by field. Meant for figures that `check` found in order:
    a number that can't be read raises ValueError."""

    figure: Figure

    @property
    def kind(self) -> str:
        """The name of its kind."""
        return _flat(self.figure.get("figure", ""))

    def has(self, name: str) -> bool:
        """Whether the field is there and says something."""
        return bool(self.figure.get(name)) and self.figure[name] != BARE

    def text(self, name: str, otherwise: str = "") -> str:
        """The field as text."""
        return _flat(self.figure[name]).strip() if self.has(name) else otherwise

    def yes(self, name: str) -> bool:
        """Whether a yes-or-no field says yes."""
        return self.text(name) == "yes"

    def number(self, name: str, otherwise: Fraction | int = 0) -> Fraction:
        """The field as a number."""
        return _sure(self.text(name)) if self.has(name) else Fraction(otherwise)

    def count(self, name: str, otherwise: int = 0) -> int:
        """The field as a whole number."""
        return int(self.number(name, otherwise))

    def numbers(self, name: str) -> list[Fraction]:
        """The field's numbers in order."""
        return [_sure(piece) for piece in several(self.figure.get(name, ""))]

    def labels(self, name: str) -> list[str]:
        """The field's labels in order."""
        return several(self.figure.get(name, ""))

    def rows(self, name: str) -> list[list[str]]:
        """The field's rows of labels."""
        return rows(self.figure.get(name, ""))

    def pairs(self, name: str) -> list[tuple[Fraction, Fraction]]:
        """The field's pairs of numbers."""
        return [_sure_pair(piece) for piece in several(self.figure.get(name, ""))]

    def pair_rows(self, name: str) -> list[list[tuple[Fraction, Fraction]]]:
        """The field's rows of pairs."""
        return [[_sure_pair(piece) for piece in row] for row in rows(self.figure.get(name, "")) if row]

    def span(self, name: str) -> tuple[Fraction, Fraction, Fraction | None]:
        """The field's ends and step."""
        ends = span(self.text(name))
        if ends is None:
            raise ValueError(name)
        return _sure(ends[0]), _sure(ends[1]), _sure(ends[2]) if ends[2] else None


def _sure(text: str) -> Fraction:
    value = number(text)
    if value is None:
        raise ValueError(f"no number: {text}")
    return value


def _sure_pair(text: str) -> tuple[Fraction, Fraction]:
    parts = pair(text)
    if parts is None:
        raise ValueError(f"no pair: {text}")
    return _sure(parts[0]), _sure(parts[1])


def by_twos(items: Sequence[tuple[Fraction, Fraction]]) -> list[tuple[tuple[Fraction, Fraction], ...]]:
    """Points two by two, as the ends of segments."""
    return [tuple(items[i : i + 2]) for i in range(0, len(items) - 1, 2)]
