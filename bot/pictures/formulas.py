"""Maths in text that is typeset: read by the maths language, so that only what it writes reaches the typesetter.

Text that it can't read ($4.50, 7 R 2) is set as it stands, as data.
"""

from __future__ import annotations

from bot.course.item import RunKind, runs
from bot.maths import Unreadable, read, typst


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
            code = typst(read(text))
        except (Unreadable, ValueError):
            return ["shown", text]
        if code not in self._codes:
            self._codes.append(code)
        return ["maths", str(self._codes.index(code))]

    def source(self) -> str:
        """The formulas as a list for the layout file. Each was written by us from a tree that our grammar read."""
        return "#let formulas = (" + "".join(f"$ {code} $, " for code in self._codes) + ")\n"
