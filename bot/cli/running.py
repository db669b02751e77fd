"""Commands for running: the bot, the demo, its database, its first tutor, its backups."""

from __future__ import annotations

import asyncio
import os
import sys
import traceback
from collections.abc import Generator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from rich.console import Console
from rich.markup import escape
from rich.progress import (
    BarColumn,
    MofNCompleteColumn,
    Progress,
    SpinnerColumn,
    TextColumn,
    TimeElapsedColumn,
)

from bot.settings import Settings, read_settings
from bot.troubles import Trouble

if TYPE_CHECKING:
    from bot.app import App

OWN_FILE = Path("evensum.env")
"""Settings are also read from here, if it is there."""

SettingsFile = Annotated[
    Path | None,
    typer.Option("--settings", help=f"File of NAME=value lines; without it {OWN_FILE} if there is one."),
]
Verbose = Annotated[bool, typer.Option("--verbose", "-v", help="Show the traceback of an error.")]

out = Console()
err = Console(stderr=True)


def add_to(app: typer.Typer) -> None:
    """Add this area's commands."""
    for command in (run, demo, migrate, doctor, tutor, backup, restore):
        app.command()(command)


@contextmanager
def told_plainly(verbose: bool) -> Generator[None, None, None]:
    """Say what is wrong, where and what to do next, and end with exit code 2."""
    from bot.course.faults import CourseErrors

    try:
        yield
    except (Trouble, CourseErrors) as trouble:
        if verbose:
            traceback.print_exc()
        err.print(escape(str(trouble)), style="bold", highlight=False, soft_wrap=True)
        raise typer.Exit(2) from None
    except OSError as error:
        if verbose:
            traceback.print_exc()
        err.print(escape(f"{error.strerror or error}\n  {error.filename or ''}".rstrip()), highlight=False)
        raise typer.Exit(2) from None


def settings_from(file: Path | None) -> Settings:
    """Read the settings from the environment and from a file."""
    return read_settings(os.environ, file or (OWN_FILE if OWN_FILE.exists() else None))


def run(settings: SettingsFile = None, verbose: Verbose = False) -> None:
    """Run the bot until it is told to stop (Ctrl-C).

    EVENSUM_TOKEN=… evensum run

    evensum run --settings school.env
    """
    with told_plainly(verbose):
        found = settings_from(settings)
        from bot import app

        app.set_up_log(found.log)
        joined = app.build(found)
        _require_one_leader(joined)
        how = f"webhook {found.webhook}" if found.webhook else "polling"
        where = joined.engine.url.render_as_string(hide_password=True)
        err.print(f"Evensum runs: {how}, {where}. Ctrl-C ends it.", highlight=False)
        asyncio.run(app.run(joined))


def _require_one_leader(joined: App) -> None:
    """With SQLite a second process can't help, it would only get in the way."""
    from bot.records.leader import Leader

    if joined.engine.dialect.name != "sqlite":
        return
    leader = Leader(joined.engine)
    if not leader.try_to_lead():
        raise Trouble(
            "Another Evensum runs on this database.",
            joined.engine.url.render_as_string(hide_password=True),
            "End that one first. For several processes at once use PostgreSQL.",
        )
    leader.step_down()


def demo(
    port: Annotated[int, typer.Option(help="Port of the phone page; 0 takes a free one.")] = 8321,
    folder: Annotated[Path, typer.Option(help="Where the demo keeps its state.")] = Path("demo"),
    fresh: Annotated[bool, typer.Option("--fresh", help="Begin anew: forget what was.")] = False,
    verbose: Verbose = False,
) -> None:
    """Live a school day in the browser: the bot, its clock and everybody's phone on this machine.

    evensum demo

    evensum demo --fresh --port 0
    """
    with told_plainly(verbose):
        from bot import app

        app.set_up_log(os.environ.get("EVENSUM_LOG", "warning"))
        if fresh:
            _forget(folder)
        asyncio.run(_demo(folder, port))


def _forget(folder: Path) -> None:
    """Remove the demo's own files, and nothing else that somebody may have put there."""
    import shutil

    for name in ("evensum.sqlite", "evensum.sqlite-wal", "evensum.sqlite-shm", "evensum.sqlite.lock"):
        (folder / name).unlink(missing_ok=True)
    for name in ("clock", "phones.jsonl"):
        (folder / name).unlink(missing_ok=True)
    shutil.rmtree(folder / "files", ignore_errors=True)


async def _demo(folder: Path, port: int) -> None:
    from bot import app

    stop = app.stopped_by_signal()
    async with app.build_demo(folder, port) as opened:
        out.print(f"The phones are at [bold]{opened.served.address}/[/bold]", highlight=False)
        out.print(
            "Press Start on Wren's phone. The clock on the page goes on to the evening. Ctrl-C ends it."
        )
        sys.stdout.flush()
        await opened.app.run(stop)


def migrate(settings: SettingsFile = None, verbose: Verbose = False) -> None:
    """Bring the database's tables up to date, after a backup.

    evensum migrate
    """
    with told_plainly(verbose):
        found = settings_from(settings)
        from bot.app import open_database
        from bot.records import keeping, migrating
        from bot.records.migrating import Tables

        engine = open_database(found.database)
        where = engine.url.render_as_string(hide_password=True)
        before = migrating.look(engine)
        if before.tables is Tables.CURRENT:
            out.print("The database is up to date.")
            return
        if before.tables in (Tables.NEWER, Tables.FOREIGN):
            raise migrating.unfit(before, where)
        if before.tables is Tables.OLDER:
            with _bar() as bar:
                archive = keeping.backup(engine, found.files, found.backups, datetime.now(UTC), _on(bar))
            out.print(f"Backup: {archive}", highlight=False)
        with _bar() as bar:
            task = bar.add_task("migrations", total=len(before.lacks))
            migrating.migrate(engine, lambda revision: bar.advance(task))
        out.print(f"Done: {len(before.lacks)} migration(s) on {where}", highlight=False)


def tutor(
    name: Annotated[str, typer.Argument(help="The tutor's name, as families know it.")],
    instead_of: Annotated[
        str | None, typer.Option("--instead-of", help="The tutor whose households this one takes over.")
    ] = None,
    settings: SettingsFile = None,
    verbose: Verbose = False,
) -> None:
    """Print a single-use link for a tutor: the first one, or one who takes over.

    evensum tutor "Ines"

    evensum tutor "Marek" --instead-of "Ines"
    """
    with told_plainly(verbose):
        found = settings_from(settings)
        from bot.app import line_of, open_database
        from bot.chat.asking import ask
        from bot.family import join
        from bot.records import migrating
        from bot.records.base import transaction

        called = asyncio.run(ask(line_of(found))).name
        engine = open_database(found.database)
        migrating.require_current(engine)
        try:
            with transaction(engine) as s:
                token = join.first_tutor(s, name, datetime.now(UTC), instead_of=instead_of)
        except LookupError:
            raise Trouble(
                f"There is no tutor called {instead_of}.", "--instead-of", "Names must be whole."
            ) from None
        except ValueError:
            raise Trouble("A tutor needs a name.", "NAME", 'As in: evensum tutor "Ines"') from None
        out.print(f"https://t.me/{called}?start={token}", highlight=False, soft_wrap=True)
        err.print("Open it on the tutor's phone. It works once and ends by itself after a few days.")


def backup(settings: SettingsFile = None, verbose: Verbose = False) -> None:
    """Put everything into one archive: all rows, all photos. The bot may run meanwhile.

    evensum backup
    """
    with told_plainly(verbose):
        found = settings_from(settings)
        from bot.app import open_database
        from bot.records import keeping, migrating

        engine = open_database(found.database)
        if migrating.look(engine).revision is None:
            raise Trouble("There is nothing to keep: the database is empty.", found.database)
        with _bar() as bar:
            archive = keeping.backup(engine, found.files, found.backups, datetime.now(UTC), _on(bar))
        out.print(str(archive), highlight=False, soft_wrap=True)
        err.print("It holds children's data: keep it where only you can read it.")


def restore(
    archive: Annotated[Path, typer.Argument(help="What `evensum backup` made.")],
    replace: Annotated[
        bool, typer.Option("--replace", help="Over what is there now, which is then gone.")
    ] = False,
    settings: SettingsFile = None,
    verbose: Verbose = False,
) -> None:
    """Take an archive back into the database, of either kind. Stop the bot first.

    evensum restore var/backups/evensum-20260914-120000.zip

    EVENSUM_DATABASE_URL=postgresql://… evensum restore FILE
    """
    with told_plainly(verbose):
        found = settings_from(settings)
        from bot.app import open_database
        from bot.records import keeping
        from bot.records.leader import Leader

        engine = open_database(found.database)
        leader = Leader(engine)
        if not leader.try_to_lead():
            raise Trouble(
                "An Evensum runs on this database.", found.database.partition("@")[2], "End it first."
            )
        with _bar() as bar:
            back = keeping.restore(engine, found.files, archive, replace=replace, told=_on(bar))
        leader.step_down()
        rows = sum(back.about.rows.values())
        out.print(f"{rows} rows and {back.files} files as of {back.about.made_at:%Y-%m-%d %H:%M} UTC.")
        err.print("`evensum migrate` brings its tables up to date, if they are older.")


def doctor(settings: SettingsFile = None, verbose: Verbose = False) -> None:
    """Check settings, database, clock, content and the chat service, and say what to do about each fault.

    evensum doctor
    """
    with told_plainly(verbose):
        found = settings_from(settings)
        from bot.cli.doctoring import Finding, examine

        wrong = 0
        for finding in examine(found):
            wrong += finding.state is Finding.State.FAULT
            sign = {Finding.State.GOOD: "ok  ", Finding.State.FAULT: "FAULT", Finding.State.NOTE: "note"}
            out.print(
                f"{sign[finding.state]:6}{finding.what}: {finding.says}", highlight=False, soft_wrap=True
            )
            if finding.fix:
                out.print(f"      {finding.fix}", highlight=False, soft_wrap=True)
        if wrong:
            raise typer.Exit(1)


def _bar() -> Progress:
    return Progress(
        SpinnerColumn(),
        TextColumn("{task.description}"),
        BarColumn(),
        MofNCompleteColumn(),
        TimeElapsedColumn(),
        console=err,
        transient=True,
    )


class _on:  # reads as a preposition where it is used
    """Show on a bar how far something is, a line for each kind of thing."""

    def __init__(self, bar: Progress) -> None:
        self._bar = bar
        self._tasks: dict[str, object] = {}

    def __call__(self, what: str, done: int, of: int) -> None:
        if what not in self._tasks:
            self._tasks[what] = self._bar.add_task(what, total=of)
        self._bar.update(self._tasks[what], completed=done, total=of)  # type: ignore[arg-type]
