"""How to type an answer: three examples a form."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path


@cache
def _table() -> dict[str, tuple[str, ...]]:
    rows = tomllib.loads(Path(__file__).with_name("forms.toml").read_text(encoding="utf-8"))
    return {form: tuple(row["examples"]) for form, row in rows.items()}


def examples(form: str) -> tuple[str, ...]:
    """Three texts that a student may type in this form; none for a form that doesn't exist."""
    return _table().get(form, ())
