"""What to tell an author whose maths can't be read: kinds of mistakes as a table, each with one way to mend it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from bot.course.faults import nearest
from bot.course.words import WORDS
from bot.maths.read import Unreadable

_WORD_NAMES = tuple(word.partition("(")[0] for word in WORDS)


@dataclass(frozen=True, slots=True)
class Trouble:
    """A mistake in one piece of maths: its kind, what is wrong, one way to mend it, and the part that is meant."""

    kind: str
    what: str
    fix: str
    mark: str


@dataclass(frozen=True, slots=True)
class _Sign:
    kind: str
    door: str
    """Where the mistake can stand: `varies`, `conditions`, `formula`, or `any`."""
    looks_like: str
    what: str
    fix: str


# In the order in which they are tried. {0} is the text that matched, {1} and on its groups.
_SIGNS = (
    _Sign(
        "range-in-words",
        "varies",
        r"(\S+) +(?:to|bis|until|through) +(\S+)",
        "A range isn't written in words.",
        "Write {1}..{2}",
    ),
    _Sign("three-dots", "varies", r"(\w+) *\.\.\.+ *(\w+)", "A range has two dots.", "Write {1}..{2}"),
    _Sign(
        "decimal-comma",
        "varies",
        r"(\d+),(\d+)(?= *\.\.)",
        "{0} is read as two numbers.",
        "In a lesson decimals have a point: {1}.{2}",
    ),
    _Sign("equals-doubled", "any", r"==", "Two equals signs stand together.", "Write one ="),
    _Sign(
        "and-in-words",
        "conditions",
        r" (?:and|&&) ",
        "Conditions that must all hold have a comma between them.",
        "Write a comma for 'and'.",
    ),
    _Sign(
        "not-equal",
        "conditions",
        r"!=|<>",
        "Different is written ≠.",
        "Write ≠ (or /= is read as a fraction).",
    ),
    _Sign(
        "several-letters",
        "any",
        r"(?<![A-Za-z])([a-z]{2,})(?=_\w|\d)",
        "A number's name is one letter; {0} is several.",
        "Give it a letter of its own.",
    ),
    _Sign("currency", "any", r"[$€£¢]", "A currency sign isn't maths.", "Write money(p) for a price."),
    _Sign(
        "backtick", "any", r"`", "A backtick stands inside the maths.", "In a recipe leave all backticks out."
    ),
)


def explain(text: str, door: str, trouble: Unreadable) -> Trouble:
    """Say what is wrong with a piece of maths that `read` refused."""
    for sign in _SIGNS:
        if sign.door not in ("any", door):
            continue
        found = re.search(sign.looks_like, text)
        if found:
            groups = [found[0], *(group or "" for group in found.groups())]
            return Trouble(sign.kind, sign.what.format(*groups), sign.fix.format(*groups), found[0])
    if trouble.kind == "unknown-word":
        return _word(text, trouble.place)
    kind, what, fix = _KINDS.get(trouble.kind, _KINDS["unknown-sign"])
    mark = text[trouble.place : trouble.place + 1]
    return Trouble(kind, what.format(mark or "the end"), fix, mark)


def _word(text: str, place: int) -> Trouble:
    found = re.compile(r"[A-Za-z]{2,}").search(text, max(0, place - 1)) or re.search(r"[A-Za-z]{2,}", text)
    word = found[0] if found else text
    if found and text[found.end() :].lstrip().startswith("("):
        fix = nearest(word, _WORD_NAMES) or "The words are: " + ", ".join(dict.fromkeys(_WORD_NAMES)) + "."
        return Trouble("unknown-word", f"The maths language has no word '{word}'.", fix, word)
    return Trouble(
        "several-letters",
        f"A number's name is one letter; '{word}' is several.",
        f"Use one letter, or put spaces between for a product: {' '.join(word)}",
        word,
    )


_KINDS: Mapping[str, tuple[str, str, str]] = {
    "empty": ("empty", "There is nothing here to read.", "Write a formula, such as a + b."),
    "unfinished": ("unfinished", "This stops too early.", "Something is missing at the end."),
    "open-bracket": ("bracket", "A bracket is opened and not closed.", "Close it with )."),
    "close-bracket": ("bracket", "A bracket is closed that was never opened.", "Take it out or open one."),
    "side-by-side": ("side-by-side", "Two numbers stand side by side.", "Write × between them."),
    "sign-misplaced": ("sign-misplaced", "'{0}' can't stand here.", "Something is missing before it."),
    "two-points": ("two-points", "A number has one point.", "A range has two dots: 2..9"),
    "too-long": ("too-long", "This is too long to be read.", "At most 400 characters."),
    "too-deep": (
        "too-deep",
        "There are too many brackets or powers inside each other.",
        "Write it more simply.",
    ),
    "unknown-sign": ("unknown-sign", "'{0}' can't be read here.", "Look at the signs around it."),
}


def explain_value(kind: str, show: Callable[[], str]) -> str:
    """Say why a formula has no value with some draw; `show` gives the draw as words."""
    return {
        "zero-bottom": f"With {show()} this divides by zero.",
        "unbound": f"With {show()} a letter here has no number.",
        "not-exact": f"With {show()} this isn't a whole number or an exact root.",
        "too-big": f"With {show()} this number is too large.",
    }.get(kind, f"With {show()} this has no single value.")
