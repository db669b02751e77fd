"""Shared fixtures: an empty database with all tables, on SQLite and on a PostgreSQL that the tests start."""

from __future__ import annotations

import os
import pwd
import shutil
import socket
import sqlite3
import subprocess
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import psycopg
import pytest
from sqlalchemy import event
from sqlalchemy.engine import Dialect, Engine, make_url
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlalchemy.orm import Session
from support.group import Group, Lived, LiveOnce

from bot.course.year import Course
from bot.records.base import all_tables, create_engine, transaction


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--sqlite-only", action="store_true", help="leave PostgreSQL out (only while developing)"
    )


def _in_memory() -> Path | None:
    """A folder in memory with room enough, if this machine has one: nothing here waits for a disk."""
    folder = Path("/dev/shm")
    enough = folder.is_dir() and os.access(folder, os.W_OK) and shutil.disk_usage(folder).free > 2 * 2**30
    return folder if enough else None


def pytest_configure() -> None:
    """Give tests their folders in memory; whoever names another place with `--basetemp` or TMPDIR gets it."""
    folder = _in_memory()
    if folder is not None and "TMPDIR" not in os.environ:
        os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", str(folder))


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    if "database_kind" in metafunc.fixturenames:
        only = metafunc.config.getoption("--sqlite-only")
        metafunc.parametrize(
            "database_kind", ["sqlite"] if only else ["sqlite", "postgresql"], scope="session"
        )


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Leave PostgreSQL out where a test, or one of its cases, is marked so."""
    items[:] = [item for item in items if not (_on_postgresql(item) and _sqlite_is_enough(item))]


def _on_postgresql(item: pytest.Item) -> bool:
    case = getattr(item, "callspec", None)
    return case is not None and case.params.get("database_kind") == "postgresql"


def _sqlite_is_enough(item: pytest.Item) -> bool:
    return item.get_closest_marker("sqlite_is_enough") is not None


@dataclass(frozen=True)
class Server:
    """A PostgreSQL of the tests' own."""

    port: int
    folder: Path

    def url(self, database: str) -> str:
        return f"postgresql://evensum@127.0.0.1:{self.port}/{database}"

    def say(self, sql: str) -> None:
        with psycopg.connect(self.url("postgres"), autocommit=True) as connection:
            connection.execute(sql)


def _binary(name: str) -> str:
    places = [shutil.which(name), *sorted(Path("/usr/lib/postgresql").glob(f"*/bin/{name}"), reverse=True)]
    for place in places:
        if place:
            return str(place)
    raise RuntimeError(
        "PostgreSQL is not installed. `make test-setup` installs it (Debian package: postgresql)."
    )


def _somebody_else() -> list[str]:
    """PostgreSQL refuses to run as root: hand it to its own user, or to nobody."""
    if os.geteuid() != 0:
        return []
    names = {entry.pw_name: entry for entry in pwd.getpwall()}
    user = names.get("postgres") or names["nobody"]
    return ["setpriv", f"--reuid={user.pw_uid}", f"--regid={user.pw_gid}", "--clear-groups"]


def _free_port() -> int:
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        port: int = s.getsockname()[1]
        return port


@pytest.fixture(scope="session")
def postgresql() -> Iterator[Server]:
    """Start a PostgreSQL on a free port, without fsync: it lives as long as the tests."""
    folder = Path(tempfile.mkdtemp(prefix="evensum-postgresql-", dir=os.environ.get("PYTEST_DEBUG_TEMPROOT")))
    as_user = _somebody_else()
    if as_user:
        shutil.chown(folder, int(as_user[1].split("=")[1]), int(as_user[2].split("=")[1]))
    data, log = folder / "data", folder / "log"
    initdb = [
        _binary("initdb"),
        "--no-sync",
        "-A",
        "trust",
        "-U",
        "evensum",
        "-E",
        "UTF8",
        "--locale=C",
        "-D",
        str(data),
    ]
    subprocess.run([*as_user, *initdb], check=True, capture_output=True, cwd="/")
    server = Server(_free_port(), folder)
    options = ["fsync=off", "synchronous_commit=off", "full_page_writes=off", "max_connections=200"]
    options += ["listen_addresses=127.0.0.1", f"port={server.port}", f"unix_socket_directories={folder}"]
    with (folder / "log").open("wb") if not as_user else tempfile.TemporaryFile() as output:
        running = subprocess.Popen(
            [*as_user, _binary("postgres"), "-D", str(data), *(f"-c{option}" for option in options)],
            stdout=output,
            stderr=output,
            cwd="/",
        )
    try:
        _wait_until_it_answers(server, running, log)
        yield server
    finally:
        running.terminate()
        running.wait(timeout=30)
        shutil.rmtree(folder, ignore_errors=True)


def _wait_until_it_answers(server: Server, running: subprocess.Popen[bytes], log: Path) -> None:
    for _ in range(300):
        if running.poll() is not None:
            break
        try:
            server.say("select 1")
        except psycopg.OperationalError:
            time.sleep(0.05)
        else:
            return
    raise RuntimeError(f"PostgreSQL did not start: {log.read_text() if log.exists() else 'no log'}")


@pytest.fixture(scope="session")
def empty_database(
    database_kind: str, request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> str:
    """Make one empty database with all tables, to be copied for each test; return its file or name."""
    if database_kind == "sqlite":
        file = tmp_path_factory.mktemp("empty") / "empty.sqlite"
        _make_tables(f"sqlite:///{file}")
        return str(file)
    server: Server = request.getfixturevalue("postgresql")
    server.say("create database empty")
    _make_tables(server.url("empty"))
    return "empty"


def _make_tables(url: str) -> None:
    engine = create_engine(url)
    all_tables().create_all(engine)
    engine.dispose()


@pytest.fixture(scope="session")
def live_once(
    database_kind: str,
    empty_database: str,
    request: pytest.FixtureRequest,
    tmp_path_factory: pytest.TempPathFactory,
) -> LiveOnce:
    """Have a group live something in a database that is kept: many tests begin alike, and begin with a copy."""

    def lived(name: str, course: Course, live: Callable[[Group], object]) -> Lived:
        if database_kind == "sqlite":
            database = str(tmp_path_factory.mktemp(name) / f"{name}.sqlite")
            shutil.copy(empty_database, database)
            url = f"sqlite:///{database}"
        else:
            database = f"{name}_{time.time_ns()}"
            server: Server = request.getfixturevalue("postgresql")
            server.say(f"create database {database} template {empty_database} strategy file_copy")
            url = server.url(database)
        engine = create_engine(url)
        group = Group(engine, course)
        live(group)
        engine.dispose()
        return Lived(database, group.clock.at, group.updates, group.message_ids)

    return lived


@pytest.fixture(scope="session")
def database_to_copy(empty_database: str) -> str:
    """What each test gets a copy of; a folder whose tests all begin alike puts its own here."""
    return empty_database


@pytest.fixture
def database_url(
    database_kind: str, database_to_copy: str, request: pytest.FixtureRequest, tmp_path: Path
) -> Iterator[str]:
    """A database of this test's own, as a URL that a second process may open too."""
    if database_kind == "sqlite":
        shutil.copy(database_to_copy, tmp_path / "evensum.sqlite")
        yield f"sqlite:///{tmp_path / 'evensum.sqlite'}"
        return
    server: Server = request.getfixturevalue("postgresql")
    name = f"test_{time.time_ns()}"
    server.say(f"create database {name} template {database_to_copy} strategy file_copy")
    yield server.url(name)
    server.say(f"drop database {name} with (force)")


@pytest.fixture(scope="session")
def engine_of_all(database_kind: str, empty_database: str) -> dict[str, Engine]:
    """The engine that the tests of one kind of database share; made with the first database."""
    return {}


@pytest.fixture
def engine(engine_of_all: dict[str, Engine], database_kind: str, database_url: str) -> Iterator[Engine]:
    """An engine on a database of the test's own, once on SQLite and once on PostgreSQL.

    The engine itself is the same for all tests of a kind, led to another database each time: what SQLAlchemy made of
    a statement is kept with the engine, and to make it anew for every test is a quarter of the time.
    """
    if database_kind not in engine_of_all:
        engine_of_all[database_kind] = _engine_that_is_led(database_url)
    engine = engine_of_all[database_kind]
    engine.url = engine.url.set(database=make_url(database_url).database)
    yield engine
    engine.dispose()


def _engine_that_is_led(url: str) -> Engine:
    """An engine whose new connections go to whatever database its `url` names by then."""
    engine = create_engine(url)

    def connect(
        dialect: Dialect, _record: object, _args: object, given: dict[str, object]
    ) -> DBAPIConnection:
        args, params = dialect.create_connect_args(engine.url)
        return dialect.connect(*args, **{**given, **params})

    event.listen(engine, "do_connect", connect)
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _wait_for_no_disk)
    return engine


def _wait_for_no_disk(connection: sqlite3.Connection, _record: object) -> None:
    # What a test wrote need not survive a loss of power; on a slow disk the waiting was most of a test's time.
    connection.execute("PRAGMA synchronous=OFF").close()


@pytest.fixture
def session(engine: Engine) -> Iterator[Session]:
    """One open transaction on an empty database; committed when the test ends well."""
    with transaction(engine) as s:
        yield s


@pytest.fixture
def free_port() -> int:
    """A port of this machine where nobody listens."""
    return _free_port()
