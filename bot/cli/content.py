"""Commands for content."""

from __future__ import annotations

import typer


def add_to(app: typer.Typer) -> None:
    """Add this area's commands."""
