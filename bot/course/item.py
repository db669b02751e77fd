"""What a student gets: one template with its numbers drawn, as plain data.

Text is plain sentences in which backticks hold maths, spelled as people read it, numbers in ("Work out
`3/4 ÷ 2/5`."). A chat drops the marks (`plain_text`, or `runs` for entities); a picture typesets the maths.
Maths that `maths.read` can't take (`$4.50`, `7 R 2`) is shown as it stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import IntEnum, StrEnum

from bot.answers.key import Key
from bot.vocabulary import LessonId, SkillId, TemplateId

Figure = dict[str, str | list[list[str]]]
"""A figure as written under `figure:`: its kind under "figure", the rest under their own names, numbers in.
A list of values is one text with commas; only a table's rows are lists of cells."""


class Level(IntEnum):
    """How hard a template is among those of its lesson."""

    EASY = 1
    MIDDLE = 2
    HARD = 3


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a worked solution.

    `write` is bare maths (no backticks), empty where the line is words alone; `because` is text that may hold
    maths in backticks.
    """

    write: str
    because: str = ""


@dataclass(frozen=True, slots=True)
class Item:
    """All that was drawn for one student; stored whole, so that editing a lesson never rewrites history.

    A field that is added needs a default: rows of earlier releases are read with it.
    `choices` are the buttons in the order shown, empty where the answer is typed; `key.choices` are the same.
    """

    template: TemplateId
    version: str
    seed: int
    lesson: LessonId
    lesson_title: str
    skills: tuple[SkillId, ...]
    ask: str
    key: Key
    hints: tuple[str, ...]
    steps: tuple[Step, ...]
    figure: Figure | None = None
    choices: tuple[str, ...] = ()
    level: Level = Level.MIDDLE
    calculator: bool = False

    @property
    def answer_shown(self) -> str:
        """The answer as people read it: as stored, and thousands apart where it is one number."""
        return grouped(self.key.answer) if self.key.form in _ONE_NUMBER else self.key.answer

    @property
    def unit_shown(self) -> str:
        """The unit that is said behind the answer: empty where there is none, or where buttons say it themselves."""
        return "" if self.choices else self.key.unit or ""


_ONE_NUMBER = frozenset(
    ("number", "decimal", "decimal-rounded", "whole", "integer", "money", "quantity", "quantity-exact-unit")
)
_LONG = re.compile(r"(?<![\d.,])(?<!\.\()(?<!\.\d\()(?<!\.\d\d\()\d{4,}(?![\d]*\.?\d*%)")


def grouped(shown: str) -> str:
    """Whole numbers of four digits and more with their thousands apart: 47305 as 47,305."""
    if len(shown) < 4:
        return shown
    return _LONG.sub(lambda found: f"{int(found[0]):,}" if found[0][0] != "0" else found[0], shown)


class RunKind(StrEnum):
    """What a stretch of text is."""

    WORDS = "words"
    MATHS = "maths"
    BOLD = "bold"
    SLANTED = "slanted"


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text of one kind, its marks taken off."""

    kind: RunKind
    text: str


_MARKS = re.compile(
    r"`(?P<maths>[^`]*)`|\*\*(?P<bold>.+?)\*\*|(?<!\*)\*(?P<slanted>[^*\s](?:[^*]*[^*\s])?)\*(?!\*)"
)


def runs(text: str) -> Iterator[Run]:
    """Take a text apart into words, maths, bold and slanted stretches, for entities and typesetting."""
    at = 0
    for found in _MARKS.finditer(text):
        if found.start() > at:
            yield Run(RunKind.WORDS, text[at : found.start()])
        kind = RunKind(found.lastgroup or "words")
        marked = found[kind.value]
        # Bold text may hold maths ("the **`3` in front**"); its backticks aren't shown.
        yield Run(kind, marked if kind is RunKind.MATHS else marked.replace("`", ""))
        at = found.end()
    if at < len(text):
        yield Run(RunKind.WORDS, text[at:])


def plain_text(text: str) -> str:
    """Give the text as one reads it aloud or in a chat: no marks, maths in Unicode."""
    return "".join(run.text for run in runs(text))
