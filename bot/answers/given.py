"""The question's own expression, and items with many right answers."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from bot.answers.amounts import read_amounts
from bot.answers.expressions import expression_text
from bot.answers.key import Key
from bot.answers.units import wanted
from bot.maths import Tree, Undefined, Unreadable, holds, normal, read
from bot.maths.patterns import regex
from bot.maths.tree import Number, every

_PERCENT_OF = regex(r"^(.+?)% of (.+)$")
_CHANGED = regex(r"^(.+?) (increased|decreased|raised|reduced) by (.+?)%$")


@lru_cache(maxsize=2048)
def given_tree(given: str) -> Tree | None:
    """The question's expression or equation; None where it can't be read as maths."""
    text = normal(given).lower()
    if (found := _PERCENT_OF.match(text)) is not None:
        text = f"{found.group(1)}% * {found.group(2)}"
    elif (found := _CHANGED.match(text)) is not None:
        sign = "+" if found.group(2) in ("increased", "raised") else "-"
        text = f"{found.group(1)} * (1 {sign} {found.group(3)}%)"
    try:
        return read(expression_text(text, frozenset("abcdefghijklmnopqrstuvwxyz")), "reply")
    except Unreadable:
        return None


def length_of(tree: Tree) -> int:
    """How much is written: numbers count their digits, everything else one."""
    return sum(len(str(one.value)) + one.places if isinstance(one, Number) else 1 for one in every(tree))


def accepting(text: str, key: Key) -> Key:
    """A key whose answer is the typed number, if that number is among those accepted.

    Raises Unreadable where no single number can be read.
    """
    amounts = read_amounts(
        text.rpartition("=")[2].strip(), None, key.form, wanted(key.unit) if key.unit else None
    )
    if len(amounts) != 1:
        raise Unreadable("several-answers")
    number = amounts[0].value.rational()
    if number is None or key.accept is None:
        return key
    unit = amounts[0].unit
    asked = wanted(key.unit).unit if key.unit else None
    if unit is not None and asked is not None and unit.kinds == asked.kinds:
        number = number * unit.size / asked.size
    try:
        fits = holds(read(key.accept, "conditions"), {"answer": number})
    except (Unreadable, Undefined):
        return key
    return replace(key, answer=str(number), accept=None) if fits else key
