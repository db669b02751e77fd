"""Whether a database's tables are those that this program expects, and how they become so."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Any

from alembic import command
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Engine, inspect

from bot.troubles import Trouble

SCRIPTS = Path(__file__).resolve().parent.parent.parent / "migrations"


class Tables(Enum):
    """How a database's tables stand to this program."""

    CURRENT = 1
    EMPTY = 2
    OLDER = 3
    NEWER = 4
    FOREIGN = 5
    """There are tables, but none that says which version they are of."""


@dataclass(frozen=True, slots=True)
class Found:
    """What a database holds: its revision, and the migrations that it lacks, oldest first."""

    tables: Tables
    revision: str | None
    lacks: tuple[str, ...] = ()


def _config() -> Config:
    config = Config()
    config.set_main_option("script_location", str(SCRIPTS).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    return config


def look(engine: Engine) -> Found:
    """Look at a database without changing it."""
    scripts = ScriptDirectory.from_config(_config())
    known = [script.revision for script in reversed(list(scripts.walk_revisions()))]
    with engine.connect() as connection:
        revision = MigrationContext.configure(connection).get_current_revision()
        others = set(inspect(connection).get_table_names()) - {"alembic_version"}
    if revision is None:
        return Found(Tables.FOREIGN if others else Tables.EMPTY, None, tuple(known))
    if revision not in known:
        return Found(Tables.NEWER, revision)
    lacks = tuple(known[known.index(revision) + 1 :])
    return Found(Tables.OLDER if lacks else Tables.CURRENT, revision, lacks)


def require_current(engine: Engine) -> None:
    """Raise Trouble unless the tables are those that this program expects."""
    found = look(engine)
    where = engine.url.render_as_string(hide_password=True)
    match found.tables:
        case Tables.EMPTY:
            raise Trouble("The database is empty.", where, "`evensum migrate` makes its tables.")
        case Tables.OLDER:
            many = f"{len(found.lacks)} migration{'s' if len(found.lacks) > 1 else ''}"
            raise Trouble(
                f"The database needs {many}.", where, "`evensum migrate` makes a backup and does it."
            )
        case Tables.NEWER | Tables.FOREIGN:
            raise unfit(found, where)


def unfit(found: Found, where: str) -> Trouble:
    """Return what to say of a database that can't be migrated."""
    if found.tables is Tables.NEWER:
        return Trouble(
            f"The database was written by a newer Evensum (revision {found.revision}).",
            where,
            "Run that version, or restore a backup made by this one: `evensum restore FILE`.",
        )
    return Trouble(
        "The database holds tables of something else.", where, "Set EVENSUM_DATABASE_URL to one of our own."
    )


def migrate(engine: Engine, told: Callable[[str], None] = lambda revision: None, *, to: str = "head") -> None:
    """Bring a database up to date, all or nothing. `told` hears each revision as it is done."""

    def hear(step: Any, **_: Any) -> None:
        told(step.up_revision_id)

    config = _config()
    with engine.begin() as connection:
        config.attributes["connection"] = connection
        config.attributes["told"] = hear
        command.upgrade(config, to)
