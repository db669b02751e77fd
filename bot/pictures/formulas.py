"""Maths in text that is typeset: read by the maths language, so that only what it writes reaches the typesetter.

Text that it can't read ($4.50, 7 R 2) is set as it stands, as data.
"""

from __future__ import annotations

import re

from bot.course.item import RunKind, runs
from bot.maths import Unreadable, read, typst

_THOUSANDS = re.compile(r"(?<![\d.,(])\d{1,3}(?:,\d{3})+(?![\d,])|(?<=\()\d{1,3}(?:,\d{3})+(?![\d,)])")
"""A number with commas between its thousands. In a list or a point there is a space behind each comma."""


class Formulas:
    """Collects the formulas of one document. Text refers to them by number."""

    def __init__(self) -> None:
        self._codes: list[str] = []

    def text(self, text: str) -> list[list[str]]:
        """A text whose backticks hold maths, as (kind, content) pairs for the layout file."""
        return [self._run(run.kind, run.text) for run in runs(text)]

    def bare(self, maths: str) -> list[list[str]]:
        """Maths without backticks around it."""
        return [self._run(RunKind.MATHS, maths)] if maths else []

    def _run(self, kind: RunKind, text: str) -> list[str]:
        if kind is not RunKind.MATHS:
            return [kind.value, text]
        try:
            code = _code(text)
        except (Unreadable, ValueError):
            return ["shown", text]
        if code not in self._codes:
            self._codes.append(code)
        return ["maths", str(self._codes.index(code))]

    def source(self) -> str:
        """The formulas as a list for the layout file. Each was written by us from a tree that our grammar read."""
        return "#let formulas = (" + "".join(f"$ {code} $, " for code in self._codes) + ")\n"


def _code(text: str) -> str:
    """Maths as code for the typesetter; 10,000 is one number and keeps its comma."""
    grouped = {found[0].replace(",", ""): found[0] for found in _THOUSANDS.finditer(text)}
    code = typst(read(_THOUSANDS.sub(lambda found: found[0].replace(",", ""), text)))
    for digits, written in grouped.items():
        code = re.sub(rf"(?<![\d.]){digits}(?!\d)", f'"{written}"', code)
    return code
