"""Text to tree, in bounded time; where and why it can't be read."""

from __future__ import annotations

import re
from pathlib import Path

from bot.maths.build import SideBySide, number_from
from bot.maths.machine import Machine, Stopped, machine
from bot.maths.normal import normal
from bot.maths.patterns import regex
from bot.maths.tree import Call, Divide, Negative, Number, Tree, every

LONGEST = 400
"""Characters, after normalising, of one formula; a sheet or working lines are split before."""
DEEPEST = 24
"""Brackets, roots and powers inside each other: more than any school exercise has."""

DOORS = ("formula", "varies", "conditions")
LESSON_WORDS = frozenset(
    (
        *("gcd", "lcm", "mean", "median", "range", "count", "value", "mixed", "decimal", "percent", "money"),
        *("floor", "ceiling", "round", "digit", "rest", "factors", "primes", "min", "max", "sum", "sorted"),
    )
)
STUDENT_WORDS = frozenset(("abs", "sqrt"))

_GRAMMAR = Path(__file__).with_name("maths.lark")
_OPEN_CLOSE = str.maketrans("[]{};", "()(),")
_BARS = regex(r"\|([^|]*)\|")
_NUMERAL = regex(r"(-?)(\d{1,15}(?=/|$)|\d{0,15}\.\d{1,15}$)(?:/(\d{1,15}))?")
_TOWER = regex(r"(?:\^[^+*/=<>,]*){5}")


class Unreadable(ValueError):
    """A text that can't be read: `kind` is a name of unreadable.toml, `place` an index into the text."""

    def __init__(self, kind: str, place: int = 0) -> None:
        super().__init__(kind, place)
        self.kind = kind
        self.place = place


def read(text: str, door: str = "formula") -> Tree:
    """Read maths as lessons write it and students type it.

    Doors: `formula` for an expression, equation, inequality, list, ratio or point; `varies` for what a
    lesson draws; `conditions` for which draws it keeps; `reply` for a student's words: as `formula`, but
    without the words that only lessons may use, with letters side by side as a product (`bh`), a letter
    followed by digits as a power (`x2`), and a missing last bracket forgiven.

    Raises Unreadable. Time and depth are bounded whatever the text holds.
    """
    plain = normal(text)
    if not plain:
        raise Unreadable("empty", 0)
    if len(plain) > LONGEST:
        raise Unreadable("too-long", LONGEST)
    try:
        return read_normal(plain, door)
    except Unreadable as trouble:
        if plain != text:
            trouble.place = _place_before(text, trouble.place)
        raise


def read_normal(text: str, door: str = "formula") -> Tree:
    """As `read`, of a text that is normal already and not longer than LONGEST."""
    if (plain := _NUMERAL.fullmatch(text)) is not None and door in ("reply", "formula"):
        return _numeral(*plain.groups())
    if "|" in text:
        text = _BARS.sub(r"abs(\1)", text)
    text = text.translate(_OPEN_CLOSE)
    if door == "reply":
        text = _as_replied(text)
    _check_depth(text)
    try:
        tree: Tree = the_machine().run(text, "formula" if door == "reply" else door)
    except Stopped as stopped:
        raise _trouble(text, stopped) from None
    except SideBySide:
        raise Unreadable("side-by-side", _side_by_side(text)) from None
    if "(" in text:
        _check_words(tree, text, door)
    return tree


def _numeral(minus: str, number: str, bottom: str | None) -> Tree:
    """A plain number or fraction, as most replies are: what the machine would build, without it."""
    tree: Tree = number_from(number)
    if bottom:
        tree = Divide(tree, number_from(bottom), bar=True)
    return Negative(tree) if minus else tree


def the_machine() -> Machine:
    """The machine of the grammar; the first call takes about a tenth of a second."""
    return machine(_GRAMMAR, DOORS)


_RUN = regex(r"[A-Za-z]{2,}")
_LETTER_DIGITS = regex(r"(?<![A-Za-z])([A-Za-z])(\d+)(?![\d.]*[A-Za-z]*\()")
_SIGN_LOST = regex(r"(?<![A-Za-z])[A-Za-z] +(?=[\d.])")
_KNOWN = frozenset(("abs", "sqrt"))
_BARE_ROOT = regex(r"sqrt ?(?=[\d.a-z])")


def _as_replied(text: str) -> str:
    """Letters side by side apart, `x2` as a power, last bracket closed."""
    if (lost := _SIGN_LOST.search(text)) is not None:
        raise Unreadable("signs-lost", lost.end())
    if "sqrt" in text:
        text = _BARE_ROOT.sub("√", text)
    text = _RUN.sub(lambda m: m.group() if m.group() in _KNOWN else " ".join(m.group()), text)
    text = _LETTER_DIGITS.sub(r"\1^\2", text)
    missing = text.count("(") - text.count(")")
    return text + ")" if missing == 1 else text


def _check_depth(text: str) -> None:
    level = signs = 0
    for place, c in enumerate(text):
        if c == "(":
            level += 1
            if level > DEEPEST:
                raise Unreadable("too-deep", place)
        elif c == ")":
            level -= 1
        if c in "-+√∛±":
            signs += 1
            if signs > DEEPEST:
                raise Unreadable("too-deep", place)
        elif c != " " and c != "(":
            signs = 0
    if text.count("^") > 4 and (tower := _TOWER.search(text)) and "(" not in tower.group():
        raise Unreadable("too-deep", tower.start())


def _trouble(text: str, stopped: Stopped) -> Unreadable:
    place, token = stopped.place, stopped.token
    before = text[:place].rstrip()
    if token == "…":
        return Unreadable("too-long", place)
    if token == "":
        still_open = text.count("(") > text.count(")") and before[-1:].isalnum()
        return Unreadable("open-bracket" if still_open else "unfinished", place)
    if token == ")":
        return Unreadable("unfinished" if before[-1:] in tuple("+-*/÷^=<>≤≥,:(") else "close-bracket", place)
    if token[:1].isalpha() and len(token) > 1:
        return Unreadable("unknown-word", place)
    if token.isalpha() and text[place : place + 2].isalpha():
        return Unreadable("unknown-word", place)
    if token == "." or (token[:1] == "." and before[-1:].isdigit()):
        return Unreadable("two-points", place)
    if token[:1].isdigit() and before[-1:].isdigit():
        return Unreadable("side-by-side", place)
    if token in tuple("+*/÷^=<>≤≥,:%"):
        return Unreadable("sign-misplaced", place)
    return Unreadable("unknown-sign", place)


def _side_by_side(text: str) -> int:
    found = re.search(r"[\d.] +(?=[\d.])", text)
    return found.end() if found else 0


def _check_words(tree: Tree, text: str, door: str) -> None:
    allowed = STUDENT_WORDS if door == "reply" else STUDENT_WORDS | LESSON_WORDS
    for one in every(tree):
        if isinstance(one, Call) and one.name not in allowed:
            raise Unreadable("unknown-word", text.find(one.name))
        if isinstance(one, Number) and one.repeats > 30:
            raise Unreadable("too-long", 0)


def _place_before(text: str, place: int) -> int:
    """Where in the text as typed the place of the normal text is."""
    for i in range(len(text)):
        if len(normal(text[: i + 1])) > place:
            return i
    return len(text)
