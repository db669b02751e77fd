"""How to type an answer: three examples a form."""

from __future__ import annotations

from functools import cache

from bot.answers.tables import table


@cache
def _table() -> dict[str, tuple[str, ...]]:
    rows = table("forms")
    return {form: tuple(row["examples"]) for form, row in rows.items()}


def examples(form: str) -> tuple[str, ...]:
    """Three texts that a student may type in this form; none for a form that doesn't exist."""
    return _table().get(form, ())
