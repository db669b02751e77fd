"""Looking at what grown-ups' commands do: everything that is stored, and every answer in words."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any, TypeVar

from sqlalchemy import Select
from sqlalchemy.engine import Engine
from support.group import Somebody, only
from support.reading import as_typed

from bot.chat.render import render
from bot.chat.rendered import faults
from bot.messages import Changed, Message, Preview
from bot.records.base import all_tables

NOT_KEPT = {"outbox", "inbox", "focus", "change", "wish"}
"""Tables that any answer may write to: what is said, and changes that do nothing yet."""
M = TypeVar("M", bound=Message)


@cache
def _what_counts() -> dict[str, Select[Any]]:
    # Made once: tests look at everything thousands of times, and to make a query costs more than to run it.
    found: dict[str, Select[Any]] = {}
    for table in all_tables().sorted_tables:
        columns = [each for each in table.columns if each.name not in ("spoke_at", "next_look")]
        query = table.select().with_only_columns(*columns).order_by(*table.primary_key.columns)
        if table.name == "change":
            query = query.where(table.c.confirmed_at.is_not(None))
        elif table.name == "wish":
            query = query.where(table.c.active)
        elif table.name in NOT_KEPT:
            continue
        found[table.name] = query
    return found


def stored(engine: Engine) -> dict[str, list[tuple[object, ...]]]:
    """Everything that counts, table by table; of changes and wishes those in force."""
    with engine.connect().execution_options(reading=True) as connection:
        return {
            name: [tuple(row) for row in connection.execute(query)] for name, query in _what_counts().items()
        }


def words_of(said: Sequence[Message], language: str = "en") -> str:
    """All that is said, in words; every message keeps the service's limits."""
    texts = []
    for message in said:
        rendered = render(message, language)
        assert faults(rendered) == [], (message, faults(rendered))
        texts.append(as_typed(rendered.text))
    return "\n---\n".join(texts)


def does(who: Somebody, command: str) -> list[Message]:
    """Type a command and press *Do it*."""
    shown = only(Preview, who.types(command))
    assert words_of([shown]) and words_of([shown], "es")
    said = who.presses(f"{shown.side}-do", shown.change)
    assert words_of(said) and words_of(said, "es")
    only(Changed, said)
    return said


def undoes(who: Somebody, done: Sequence[Message]) -> list[Message]:
    """Press *Undo* under what was done."""
    changed = only(Changed, done)
    said = who.presses(f"{changed.side}-undo", changed.change)
    assert words_of(said) and words_of(said, "es")
    return said
