"""What is written in a picture: a label's text as it is set, and how much room it takes.

"2 1/4 m" becomes a 2, a fraction with a bar, and an upright m; the x of "3x + 5" leans. A label is only ever handed
on as data, so nothing in it can become markup. Thousands stand apart as in the text of a lesson (1,250); in the data
they don't, where a comma parts one label from the next.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import fontpkg_pt_sans as lettering
from PIL import ImageFont

from bot.course.item import grouped

FONTS = Path(lettering.ROOT) / "files"
SIZE = 16.0
"""Height of ordinary labels in points; a picture is 360 points wide, as a small phone."""

_CAPITAL = 0.7  # height of a capital letter beside the font's size, from the font's own tables
_FRACTION = 0.88  # size of the two numbers of a fraction beside the label's
_FRACTION_GAP = 0.21  # from the bar to the numbers
_DATE = re.compile(r"\d+/\d+/\d+")
_UNITS = frozenset(["m", "g", "l", "L", "h", "s", "t", "d"])
_TOKEN = re.compile(
    r"(?P<fraction>(?<![\w.,/])(?:\d+|[a-zA-Z])/(?:\d+|[a-zA-Z])(?![\w/]))"
    r"|\^(?P<power>[−-]?\d+|[a-z](?![a-z]))"
    r"|(?P<letter>(?<![^\W\d_])(?<![a-z]/)[a-z](?![^\W\d_])(?!-[^\W\d_]{2}))"
    r"|(?P<minus>(?<![^\W\d_])-(?=[\d.(a-zA-Z ]))"
)


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of a label set in one way: "text", "letter" (leans), "power" (raised) or "fraction"."""

    how: str
    text: str
    below: str = ""


@lru_cache(maxsize=4096)
def runs(label: str) -> tuple[Run, ...]:
    """The label's stretches in order. An unknown is a question mark."""
    if label == "unknown":
        return (Run("bold", "?"),)
    found, at = [], 0
    label = " ".join(label.split())
    for token in _TOKEN.finditer(label):
        if token.lastgroup == "letter" and _is_word(label, token.start()):
            continue
        if token.lastgroup == "fraction" and _is_rate(label, token.start(), token[0]):
            continue
        if token.start() > at:
            found.append(Run("text", _apart(label[at : token.start()])))
        at = token.end()
        match token.lastgroup:
            case "fraction":
                top, _, below = token[0].partition("/")
                found.append(Run("fraction", grouped(top), grouped(below)))
            case "power":
                found.append(Run("power", token["power"].replace("-", "−")))
            case "letter":
                found.append(Run("letter", token[0]))
            case _:
                found.append(Run("text", "−"))
    if at < len(label):
        found.append(Run("text", _apart(label[at:])))
    return tuple(found)


def _apart(text: str) -> str:
    """Thousands apart, but not in the year of a date."""
    return text if _DATE.search(text) else grouped(text)


def _is_word(label: str, at: int) -> bool:
    """A single letter may be a unit ("12 m") or a word ("a sack"); those don't lean."""
    before, after = label[:at], label[at + 1 :]
    if label[at] in _UNITS and re.search(r"(\d|\?) $", before):
        return True
    return (label[at] in "aoeyu" and bool(re.match(r" [^\W\d_]{2,}", after))) or "'" in after[:1] + before[
        -1:
    ]


def _is_rate(label: str, at: int, written: str) -> bool:
    """ "5 m/s" is a unit, x/y a fraction."""
    return set(written.split("/")) <= _UNITS and bool(re.search(r"(\d|\?) $", label[:at]))


@dataclass(frozen=True, slots=True)
class Room:
    """What a label takes, in points."""

    width: float
    height: float


def room(label: str, size: float = SIZE) -> Room:
    """How wide and high the label is when it is set."""
    width, height = 0.0, _CAPITAL * size
    for run in runs(label):
        if run.how == "fraction":
            numbers = _FRACTION * size
            width += max(_wide(run.text, numbers), _wide(run.below, numbers)) + 0.3 * size
            height = max(height, 2 * _CAPITAL * numbers + 2 * _FRACTION_GAP * size)
        elif run.how == "power":
            width += _wide(run.text, 0.7 * size)
            height = max(height, (_CAPITAL + 0.25) * size)
        else:
            width += _wide(run.text, size, run.how)
    return Room(width, height)


def _wide(text: str, size: float, how: str = "text") -> float:
    return _font("Bold" if how == "bold" else "Regular").getlength(text) * size / 100


@lru_cache(maxsize=4)
def _font(weight: str) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(FONTS / f"PT_Sans-Web-{weight}.ttf"), 100)


def wrap(label: str, width: float, size: float = SIZE) -> list[str]:
    """The label in lines of at most that width where its spaces allow it."""
    lines: list[str] = []
    for word in label.split() or [""]:
        if lines and room(f"{lines[-1]} {word}", size).width <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
