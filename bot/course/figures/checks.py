"""What is wrong with a figure, said to the person who wrote it, each time with what would be right."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from bot.course.figures.all_kinds import KINDS
from bot.course.figures.graph_rules import GRAPH_RULES
from bot.course.figures.kind import Field, Figure, Holds, Value
from bot.course.figures.part_rules import PART_RULES
from bot.course.figures.reading import Drawn, number, pair, rows, several, span
from bot.course.figures.shape_rules import SHAPE_RULES

_RULES = {**PART_RULES, **SHAPE_RULES, **GRAPH_RULES}


def check_recipe(recipe: Figure) -> list[str]:
    """What is wrong with a recipe before any number is drawn: its kind, its keys, its choices."""
    name = recipe.get("figure", "")
    if not isinstance(name, str) or name not in KINDS:
        return [f"There is no figure called '{name}'. {_nearest(str(name), list(KINDS))}"]
    kind = KINDS[name]
    names = [field.name for field in kind.fields]
    faults = [
        f"A {name} has no '{key}'. {_nearest(key, names)}"
        for key in recipe
        if key != "figure" and key not in names
    ]
    for field in kind.fields:
        if field.needed and not recipe.get(field.name):
            faults.append(f"A {name} needs '{field.name}': {field.means} ({field.holds.value}).")
        if field.choices and (value := recipe.get(field.name)) and value not in field.choices:
            faults.append(f"'{field.name}' is one of {', '.join(field.choices)}; here it is '{value}'.")
    if kind.one_of and not any(recipe.get(key) for key in kind.one_of):
        faults.append(f"A {name} needs one of {', '.join(kind.one_of)}.")
    return faults


def check(figure: Figure) -> list[str]:
    """What is wrong with a figure whose numbers are in. An empty list: it can be drawn and read."""
    faults = check_recipe(figure)
    if faults:
        return faults
    kind = KINDS[str(figure["figure"])]
    for field in kind.fields:
        if field.name in figure:
            faults += _unreadable(field, figure[field.name])
    rule = _RULES.get(kind.name)
    return faults or (list(rule(Drawn(figure))) if rule else [])


def _nearest(name: str, names: Sequence[str]) -> str:
    near = get_close_matches(name, names, 1, 0.6)
    return f"Did you mean '{near[0]}'?" if near else f"There is: {', '.join(names)}."


def _unreadable(field: Field, value: Value) -> Iterator[str]:
    """Pieces that aren't what the field holds."""
    pieces: list[Value]
    match field.holds:
        case Holds.NUMBER:
            pieces, is_fine, wanted = [value], _is_number, "a number"
        case Holds.NUMBERS:
            pieces, is_fine, wanted = [*several(value)], _is_number, "numbers"
        case Holds.POINT_LIST:
            pieces, is_fine, wanted = [*several(value)], _is_pair, "pairs such as (2, 3)"
        case Holds.POINT_ROWS:
            pieces, is_fine, wanted = (
                [p for row in rows(value) for p in row],
                _is_pair,
                "pairs such as (2, 3)",
            )
        case Holds.SPAN:
            pieces, is_fine, wanted = [value], _is_span, "a range such as -5..5"
        case Holds.EXPRESSION | Holds.LABEL | Holds.WORDS:
            pieces, is_fine, wanted = [value], _is_line, "one line of text"
        case _:
            return
    for piece in pieces:
        if not isinstance(piece, str) or not is_fine(piece):
            yield f"'{field.name}' holds {wanted}; '{piece}' doesn't fit."


def _is_line(text: str) -> bool:
    return "\n" not in text


def _is_number(text: str) -> bool:
    return number(text) is not None


def _is_pair(text: str) -> bool:
    parts = pair(text)
    return parts is not None and all(number(part) is not None for part in parts)


def _is_span(text: str) -> bool:
    ends = span(text)
    return ends is not None and all(number(end) is not None for end in ends if end is not None)
