"""Backups: every row and every file in one archive, which either kind of database can take back.

An archive holds one JSON line a row, so that a school may begin on SQLite and move to PostgreSQL.
"""

from __future__ import annotations

import base64
import contextlib
import os
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import msgspec
from sqlalchemy import Connection, DateTime, Engine, LargeBinary, MetaData, Table, func, select, text

from bot.records import migrating
from bot.records.migrating import Tables
from bot.troubles import Trouble

ABOUT = "about.json"
ROWS = "rows/"
FILES = "files/"
AT_ONCE = 1000
_VERSION = "alembic_version"

Told = Callable[[str, int, int], None]
"""Hears what is being done, how far it is and how far it goes."""


class About(msgspec.Struct, frozen=True):
    """What an archive says of itself."""

    revision: str
    made_at: datetime
    rows: dict[str, int]


@dataclass(frozen=True, slots=True)
class Restored:
    """What was taken back."""

    about: About
    files: int


def quiet(what: str, done: int, of: int) -> None:
    """Hear nothing."""


def backup(engine: Engine, files: Path, into: Path, now: datetime, told: Told = quiet) -> Path:
    """Write an archive of all rows and files as they stand at one moment, and return where it is.

    It appears under its name only when it is whole. Children's data: it is readable for its owner only.
    """
    into.mkdir(parents=True, exist_ok=True)
    target = into / f"evensum-{now.astimezone(UTC):%Y%m%d-%H%M%S}.zip"
    unfinished = target.with_suffix(".part")
    with os.fdopen(os.open(unfinished, os.O_CREAT | os.O_TRUNC | os.O_RDWR, 0o600), "w+b") as output:
        with zipfile.ZipFile(output, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as archive:
            about = _write_rows(engine, archive, now, told)
            _write_files(files, archive, told)
            archive.writestr(ABOUT, msgspec.json.encode(about))
        output.flush()
        os.fsync(output.fileno())
    unfinished.rename(target)
    return target


def _write_rows(engine: Engine, archive: zipfile.ZipFile, now: datetime, told: Told) -> About:
    with _one_moment(engine) as connection:
        tables = _tables(connection)
        revision = connection.execute(text(f"SELECT version_num FROM {_VERSION}")).scalar_one()
        counts = {
            name: connection.execute(select(func.count()).select_from(table)).scalar_one()
            for name, table in tables.items()
        }
        of, done = sum(counts.values()), 0
        for name, table in tables.items():
            with archive.open(f"{ROWS}{name}.jsonl", "w") as output:
                for row in connection.execution_options(yield_per=AT_ONCE).execute(select(table)).mappings():
                    output.write(
                        msgspec.json.encode({key: _plain(value) for key, value in row.items()}) + b"\n"
                    )
                    done += 1
                    if done % AT_ONCE == 0:
                        told("rows", done, of)
        told("rows", of, of)
    return About(revision, now, counts)


def _write_files(files: Path, archive: zipfile.ZipFile, told: Told) -> None:
    found = sorted(path for path in files.rglob("*") if path.is_file()) if files.is_dir() else []
    for n, path in enumerate(found, 1):
        with contextlib.suppress(FileNotFoundError):  # erased in the meantime
            archive.write(path, f"{FILES}{path.relative_to(files).as_posix()}", zipfile.ZIP_STORED)
        told("files", n, len(found))


@contextlib.contextmanager
def _one_moment(engine: Engine) -> Iterator[Connection]:
    """Read as of one moment, without keeping anybody from writing."""
    options = {"reading": True} if engine.dialect.name == "sqlite" else {"isolation_level": "REPEATABLE READ"}
    with engine.connect().execution_options(**options) as connection, connection.begin():
        yield connection


def _tables(connection: Connection) -> dict[str, Table]:
    """Return the tables as they are in the database, those that others point to first."""
    found = MetaData()
    found.reflect(connection)
    return {table.name: table for table in found.sorted_tables if table.name != _VERSION}


def _plain(value: Any) -> Any:
    match value:
        case datetime():
            return (value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)).isoformat()
        case date():
            return value.isoformat()
        case bytes():
            return base64.b64encode(value).decode()
    return value


def read_about(archive: Path) -> About:
    """Return what an archive says of itself. Raises Trouble if it isn't one of ours or is damaged."""
    try:
        with zipfile.ZipFile(archive) as opened:
            broken = opened.testzip()
            if broken is not None:
                raise Trouble(f"The backup is damaged at {broken}.", str(archive), "Use another one.")
            return msgspec.json.decode(opened.read(ABOUT), type=About)
    except FileNotFoundError as error:
        raise Trouble(
            "There is no such file.", str(archive), "`evensum backup` says where it puts them."
        ) from error
    except (zipfile.BadZipFile, KeyError, msgspec.DecodeError) as error:
        raise Trouble("This is no backup of Evensum.", str(archive)) from error


def restore(
    engine: Engine, files: Path, archive: Path, *, replace: bool = False, told: Told = quiet
) -> Restored:
    """Put an archive into an empty database, or with `replace` over all that is there. All or nothing.

    The database's tables are made as they were when the archive was written; migrate afterwards.
    """
    about = read_about(archive)
    found = migrating.look(engine)
    where = engine.url.render_as_string(hide_password=True)
    if found.tables in (Tables.FOREIGN, Tables.NEWER) and not replace:
        raise migrating.unfit(found, where)
    if found.tables is Tables.EMPTY:
        migrating.migrate(engine, to=about.revision)
    elif found.revision != about.revision:
        raise Trouble(
            f"The backup is of revision {about.revision}, the database of {found.revision}.",
            where,
            "Restore into an empty database, then `evensum migrate`.",
        )
    with zipfile.ZipFile(archive) as opened:
        with engine.begin() as connection:
            _put_back(connection, opened, about, replace, where, told)
        names = [name for name in opened.namelist() if name.startswith(FILES) and not name.endswith("/")]
        for n, name in enumerate(names, 1):
            _put_file(files, name.removeprefix(FILES), opened.read(name))
            told("files", n, len(names))
    return Restored(about, len(names))


def _put_back(
    connection: Connection, opened: zipfile.ZipFile, about: About, replace: bool, where: str, told: Told
) -> None:
    tables = _tables(connection)
    for table in reversed(tables.values()):
        if replace:
            connection.execute(table.delete())
        elif connection.execute(select(func.count()).select_from(table)).scalar_one():
            raise Trouble(
                "The database isn't empty.",
                where,
                "Restore into an empty one, or say --replace: all that is there is then gone.",
            )
    done, of = 0, sum(about.rows.values())
    for name, table in tables.items():
        rows: list[dict[str, Any]] = []
        with opened.open(f"{ROWS}{name}.jsonl") as lines:
            for line in lines:
                rows.append(_back(table, msgspec.json.decode(line), connection.dialect.name))
                if len(rows) == AT_ONCE:
                    connection.execute(table.insert(), rows)
                    done += len(rows)
                    rows = []
                    told("rows", done, of)
        if rows:
            connection.execute(table.insert(), rows)
            done += len(rows)
        _count_on(connection, table)
    told("rows", of, of)


def _back(table: Table, row: dict[str, Any], dialect: str) -> dict[str, Any]:
    for column in table.columns:
        value = row.get(column.name)
        if value is None:
            continue
        if isinstance(column.type, DateTime):
            at = datetime.fromisoformat(value)
            row[column.name] = at.replace(tzinfo=None) if dialect == "sqlite" else at
        elif isinstance(column.type, LargeBinary):
            row[column.name] = base64.b64decode(value)
        elif column.type.python_type is date:
            row[column.name] = date.fromisoformat(value)
    return row


def _count_on(connection: Connection, table: Table) -> None:
    """Let PostgreSQL number new rows after those that were put back; SQLite does so by itself."""
    if connection.dialect.name != "postgresql" or "id" not in table.columns:
        return
    sequence = connection.execute(
        text("SELECT pg_get_serial_sequence(:table, 'id')"), {"table": f'"{table.name}"'}
    ).scalar_one()
    if sequence:
        highest = connection.execute(select(func.max(table.c.id))).scalar_one()
        connection.execute(
            text("SELECT setval(:sequence, :highest, :called)"),
            {"sequence": sequence, "highest": highest or 1, "called": highest is not None},
        )


def _put_file(files: Path, name: str, content: bytes) -> None:
    target = (files / name).resolve()
    if not target.is_relative_to(files.resolve()):
        raise Trouble(
            "The backup holds a file outside its folder.", name, "It isn't one of ours; don't use it."
        )
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(content)
