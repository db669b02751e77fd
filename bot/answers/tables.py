"""The tables beside this module, each read once by what needs it."""

from __future__ import annotations

from pathlib import Path
from typing import Any


def table(name: str) -> dict[str, Any]:
    """What the file `name`.toml of this folder holds."""
    import tomllib  # with its dates and patterns a tenth of the time to import the checker

    return tomllib.loads(Path(__file__).with_name(f"{name}.toml").read_text(encoding="utf-8"))
