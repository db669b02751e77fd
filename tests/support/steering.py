"""Looking at what grown-ups' commands do: everything that is stored, and every answer in words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

from sqlalchemy.engine import Engine
from support.group import Somebody, only
from support.reading import as_typed

from bot.chat.render import render
from bot.chat.rendered import faults
from bot.messages import Changed, Message, Preview
from bot.records.base import all_tables, transaction

NOT_KEPT = {"outbox", "inbox", "focus", "change", "wish"}
"""Tables that any answer may write to: what is said, and changes that do nothing yet."""
M = TypeVar("M", bound=Message)


def stored(engine: Engine) -> dict[str, list[tuple[object, ...]]]:
    """Everything that counts, table by table; of changes and wishes those in force."""
    found: dict[str, list[tuple[object, ...]]] = {}
    with transaction(engine) as s:
        for table in all_tables().sorted_tables:
            columns = [each for each in table.columns if each.name not in ("spoke_at", "next_look")]
            query = table.select().with_only_columns(*columns).order_by(*table.primary_key.columns)
            if table.name == "change":
                query = query.where(table.c.confirmed_at.is_not(None))
            elif table.name == "wish":
                query = query.where(table.c.active)
            elif table.name in NOT_KEPT:
                continue
            found[table.name] = [tuple(row) for row in s.execute(query)]
    return found


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
