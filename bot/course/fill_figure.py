"""Numbers put into a figure as its author wrote it: data, ranges, labels."""

from __future__ import annotations

from collections.abc import Callable

from bot.course import figures
from bot.course.fill import Draw
from bot.course.item import Figure
from bot.course.prepare import read_once
from bot.maths.read import Unreadable
from bot.maths.show import plain
from bot.maths.tree import Call, Tree, letters_in, number
from bot.maths.value import Undefined, value

_NO_UNITS = frozenset("abcefijknopqruvwxyz")
"""Letters that count something unknown, never a unit of its own as m, g, l, h, s, t and d do: 12 x is 12x."""


def fill_figure(recipe: figures.Figure | None, draw_: Draw) -> Figure | None:
    """A figure with the numbers in; None where there is none."""
    if recipe is None:
        return None
    kind = figures.KINDS[str(recipe["figure"])]
    return figures.fill(kind, {name: one for name, one in recipe.items() if name != "figure"}, _putter(draw_))


def _putter(draw_: Draw) -> Callable[[figures.Holds, str], str]:
    def put(holds: figures.Holds, text: str) -> str:
        for word in draw_.words:
            text = text.replace(f"{{{word}}}", draw_.word(word))
        match holds:
            case figures.Holds.WORDS | figures.Holds.CHOICE:
                return text
            case figures.Holds.NUMBER:
                return _number_or_list(text, draw_)
            case figures.Holds.EXPRESSION:
                return _expression(text, draw_)
        return _label(text, draw_)

    return put


def _number_or_list(text: str, draw_: Draw) -> str:
    try:
        tree = read_once(text)
    except Unreadable:
        return text
    worth = draw_.worth(tree)
    decimal = bool(letters_in(tree) & draw_.decimals) or "." in text
    each = worth if isinstance(worth, tuple) else (worth,)
    return ", ".join(plain(number(one, decimal)) for one in each)


def _expression(text: str, draw_: Draw) -> str:
    try:
        return draw_.bare(read_once(text))
    except Unreadable:
        return text


def _label(text: str, draw_: Draw) -> str:
    """A label: maths, then unit words if wanted. A last letter that wasn't drawn is a unit: `a m`, `a b cm`."""
    if text in ("unknown", "none", ""):
        return text
    before, _, last = text.rpartition(" ")
    for maths, unit in ((text, ""), (before, last if last not in _NO_UNITS else "")):
        if not unit and maths != text:
            break
        try:
            tree = read_once(maths)
        except Unreadable:
            continue
        if unit or len(maths) == 1 or letters_in(tree) <= draw_.letters.keys() or "=" in maths:
            try:
                shown = draw_.bare(Call("value", (tree,))) if _is_value(tree, draw_) else draw_.bare(tree)
            except Undefined:
                continue
            return f"{shown} {unit}".rstrip().replace(" °", "°")  # degrees stand close to their number
    try:  # a sum that keeps a letter, such as x + a
        return draw_.bare(read_once(text))
    except (Unreadable, Undefined):
        return text


def _is_value(tree: Tree, draw_: Draw) -> bool:
    """Whether a label is a number to be worked out (`2 a`), not maths to be shown (`x + 3`, `mixed(r)`)."""
    if isinstance(tree, Call) or not letters_in(tree) <= draw_.letters.keys():
        return False
    try:
        value(tree, draw_.letters)
    except Undefined:
        return False
    return bool(letters_in(tree)) and not letters_in(tree) & draw_.decimals
