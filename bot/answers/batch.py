"""JSON Lines in, JSON Lines out: the checker for whoever wants to measure it."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator
from typing import Any

from bot.answers.judge import FORMS, judge
from bot.answers.key import Key
from bot.answers.working import look_over


class BadRow(ValueError):
    """A row that lacks something; the message says what."""


def answers(lines: Iterable[str]) -> Iterator[str]:
    """Grade rows {"id","expected","form","unit","typed"[,"given"]}, in order, one at a time."""
    return _rows(lines, _answer)


def workings(lines: Iterable[str]) -> Iterator[str]:
    """Look over rows {"id","given","lines"}, in order, one at a time."""
    return _rows(lines, _working)


def _rows(lines: Iterable[str], handle: Callable[[dict[str, Any]], dict[str, Any]]) -> Iterator[str]:
    for n, line in enumerate(lines, 1):
        if not line.strip():
            continue
        try:
            row = json.loads(line)
            if not isinstance(row, dict):
                raise BadRow("a row is an object in curly brackets")
            result = handle(row)
        except (BadRow, ValueError, RecursionError) as trouble:
            result = {"error": str(trouble) or type(trouble).__name__, "line": n}
        yield json.dumps(result, ensure_ascii=False)


def _text(row: dict[str, Any], name: str, optional: bool = False) -> str | None:
    value = row.get(name)
    if value is None and optional:
        return None
    if not isinstance(value, str):
        raise BadRow(f'"{name}" has to be a text')
    return value


def key_from(row: dict[str, Any]) -> Key:
    """The key of a row. Raises BadRow."""
    form = _text(row, "form") or ""
    if form not in FORMS:
        raise BadRow(f'no form is called "{form}"; there are {", ".join(sorted(FORMS))}')
    return Key(
        answer=_text(row, "expected") or "",
        form=form,
        unit=_text(row, "unit", optional=True) or None,
        given=_text(row, "given", optional=True) or None,
    )


def _answer(row: dict[str, Any]) -> dict[str, Any]:
    judgement = judge(_text(row, "typed") or "", key_from(row))
    return {
        "id": row.get("id"),
        "verdict": judgement.verdict.value,
        "misstep": judgement.misstep,
        "read_as": judgement.read_as,
    }


def _working(row: dict[str, Any]) -> dict[str, Any]:
    lines = row.get("lines")
    if not isinstance(lines, list) or not all(isinstance(line, str) for line in lines):
        raise BadRow('"lines" has to be a list of texts')
    looked = look_over(lines, _text(row, "given") or "")
    return {
        "id": row.get("id"),
        "first_bad": looked.first_wrong,
        "misstep": looked.misstep,
        "unsure": looked.unsure,
    }
