"""Commands say what is wrong and what to do next; what they do is done whole."""

from __future__ import annotations

import asyncio
import re
import shutil
import signal
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from bot import cli
from bot.now import RealClock
from bot.records import migrating
from bot.records.base import create_engine
from bot.standin import Person, StandIn, serve

TOKEN = "900000001:loopback-only"
SMALL = Path(__file__).parents[1] / "course" / "small"
EVENSUM = [sys.executable, "-c", "from bot.cli import main; main()"]


@pytest.fixture(scope="module")
def app():
    for area in cli.AREAS:
        __import__(f"bot.cli.{area}", fromlist=["add_to"]).add_to(cli.app)
    return cli.app


@pytest.fixture
def evensum(app, tmp_path, monkeypatch, small_course):
    """Run a command in a folder of its own and return (exit code, all that was said)."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("EVENSUM_CONTENT", str(small_course))
    monkeypatch.setenv("COLUMNS", "200")

    def run(*words, **settings):
        for name, value in settings.items():
            monkeypatch.setenv(f"EVENSUM_{name}", value)
        result = CliRunner().invoke(app, list(words))
        return result.exit_code, result.output

    return run


@pytest.fixture
def small_course():
    return Path(cli.__file__).parent.parent.parent / "content"


def test_every_fault_of_the_settings_is_told_at_once(evensum):
    code, said = evensum("run", TOKN="x", TOKEN="no token", DATABASE_URL="mysql://x")
    assert code == 2
    assert "Did you mean EVENSUM_TOKEN?" in said
    assert said.count("can't be this") == 2


def test_run_refuses_a_database_that_needs_a_migration_and_says_how(evensum):
    code, said = evensum("run", TOKEN=TOKEN)
    assert code == 2
    assert "The database is empty." in said and "`evensum migrate`" in said
    assert "Traceback" not in said


def test_run_refuses_a_database_of_a_newer_evensum(evensum, tmp_path):
    evensum("migrate", TOKEN=TOKEN)
    change(tmp_path, "update alembic_version set version_num = 'f00'")
    code, said = evensum("run")
    assert (code, "newer Evensum" in said) == (2, True)
    code, said = evensum("migrate")
    assert (code, "newer Evensum" in said) == (2, True)


def test_run_without_a_token_says_where_to_get_one(evensum):
    evensum("migrate")
    code, said = evensum("run")
    assert code == 2 and "There is no token." in said


def change(folder, sql):
    with sqlite3.connect(folder / "var" / "evensum.sqlite") as connection:
        connection.execute(sql)


def test_migrating_twice_does_it_once(evensum):
    assert evensum("migrate")[0] == 0
    code, said = evensum("migrate")
    assert code == 0 and "up to date" in said


def test_a_backup_goes_back(evensum, tmp_path):
    evensum("migrate")
    change(
        tmp_path,
        "insert into person (name, language, roles, made_at) values ('Ines', 'en', 'tutor', '2026-09-14')",
    )
    code, said = evensum("backup")
    [archive] = (tmp_path / "var" / "backups").glob("evensum-*.zip")
    assert code == 0 and archive.name in said
    change(tmp_path, "delete from person")
    code, said = evensum("restore", str(archive), DATABASE_URL="sqlite:///new.sqlite")
    assert code == 0 and "1 rows" in said
    with sqlite3.connect(tmp_path / "new.sqlite") as connection:
        assert connection.execute("select name from person").fetchall() == [("Ines",)]


def test_a_backup_of_nothing_is_not_made(evensum):
    code, said = evensum("backup")
    assert code == 2 and "nothing to keep" in said


@pytest.fixture
async def service():
    people = [Person(1001, "Ines", started=True)]
    async with serve(StandIn(RealClock(), TOKEN, people)) as served:
        yield served


@pytest.fixture(scope="module")
def migrated(tmp_path_factory):
    """A database as `evensum migrate` leaves it; that command has its own tests."""
    file = tmp_path_factory.mktemp("migrated") / "evensum.sqlite"
    engine = create_engine(f"sqlite:///{file}")
    migrating.migrate(engine)
    engine.dispose()
    return file


@pytest.fixture
def house(tmp_path, migrated):
    """A folder with a database, and settings by which a course of one lesson is taught; `evensum doctor` alone is tried
    on the real course as well."""
    (tmp_path / "var").mkdir()
    shutil.copy(migrated, tmp_path / "var" / "evensum.sqlite")
    return {"TOKEN": TOKEN, "CONTENT": str(SMALL)}


async def command(folder, *words, **settings):
    given = {f"EVENSUM_{name}": value for name, value in settings.items()}
    process = await asyncio.create_subprocess_exec(
        *EVENSUM, *words, cwd=folder, env={"PATH": "/usr/bin:/bin", "COLUMNS": "200", **given},
        stdout=asyncio.subprocess.PIPE, stderr=asyncio.subprocess.STDOUT,
    )  # fmt: skip
    said, _ = await process.communicate()
    return process.returncode, said.decode()


async def test_a_tutors_link_is_printed_and_a_second_one_for_the_same_tutor_too(tmp_path, service):
    given = {"TOKEN": TOKEN, "API_URL": service.address}
    await command(tmp_path, "migrate", **given)
    for _ in range(2):
        code, said = await command(tmp_path, "tutor", "Ines", **given)
        assert code == 0
        assert re.search(r"https://t\.me/evensum_bot\?start=[A-Za-z0-9_-]{16,64}\n", said)
    code, said = await command(tmp_path, "tutor", "Marek", "--instead-of", "Nobody", **given)
    assert code == 2 and "no tutor called Nobody" in said
    with sqlite3.connect(tmp_path / "var" / "evensum.sqlite") as connection:
        assert connection.execute("select name from person").fetchall() == [("Ines",)]


async def test_the_doctor_finds_nothing_wrong_where_nothing_is(tmp_path, service, house):
    given = {"TOKEN": TOKEN, "API_URL": service.address}  # the real course
    _, said = await command(tmp_path, "doctor", **given)
    assert "FAULT" not in said.replace(
        "FAULT content", ""
    )  # lessons being written are their own test's business
    assert "@evensum_bot" in said and "none set aside" in said


async def test_the_doctor_names_a_token_of_another_bot(tmp_path, service, house):
    given = {**house, "API_URL": service.address}
    change(
        tmp_path,
        "insert into inbox (bot, update_id, dated, raw, received_at, tries) values (77, 1, 0, '', '2026-09-14', 0)",
    )
    code, said = await command(tmp_path, "doctor", **given)
    assert code == 1 and "belongs to bot 900000001, but this database was used with bot 77" in said


async def test_the_doctor_says_when_the_service_does_not_know_the_token(tmp_path, service, house):
    given = {**house, "TOKEN": "900000002:other", "API_URL": service.address}
    code, said = await command(tmp_path, "doctor", **given)
    assert code == 1 and "doesn't know this token" in said and "Copy it again" in said


async def test_run_ends_well_when_told_to_and_a_second_one_is_refused(tmp_path, service, house):
    house["API_URL"] = service.address
    given = {"PATH": "/usr/bin:/bin"} | {f"EVENSUM_{name}": value for name, value in house.items()}
    running = await asyncio.create_subprocess_exec(
        *EVENSUM, "run", cwd=tmp_path, env=given, stderr=asyncio.subprocess.PIPE
    )
    service.standin.phones.say(1001, "hello")
    await service.standin.next_message(1001, after=1, seconds=60)
    code, said = await command(tmp_path, "run", **house)
    assert code == 2 and "Another Evensum runs on this database." in said
    running.send_signal(signal.SIGTERM)
    async with asyncio.timeout(60):
        assert await running.wait() == 0


def test_a_demo_that_was_killed_goes_on_where_it_was(tmp_path):
    def start():
        demo = subprocess.Popen(
            [*EVENSUM, "demo", "--port", "0", "--folder", str(tmp_path / "demo")],
            stdout=subprocess.PIPE, text=True, cwd=tmp_path,
        )  # fmt: skip
        assert demo.stdout is not None
        return demo, re.search(r"http://\S+", demo.stdout.readline())

    demo, address = start()
    assert address
    demo.kill()
    demo.wait()
    before = (tmp_path / "demo" / "clock").read_text()
    again, address = start()
    again.send_signal(signal.SIGINT)
    assert address and again.wait(timeout=60) == 0
    assert float((tmp_path / "demo" / "clock").read_text()) == pytest.approx(float(before), abs=1)
    with sqlite3.connect(tmp_path / "demo" / "evensum.sqlite") as connection:
        assert connection.execute("select count(*) from person").fetchone()[0] == 6


def test_every_command_has_an_example(app):
    for name in ("run", "demo", "migrate", "doctor", "tutor", "backup", "restore"):
        said = CliRunner().invoke(app, [name, "--help"]).output
        assert f"evensum {name}" in said.replace("Usage: root", "").split("Options")[0]


def test_a_broken_lesson_is_left_out_told_by_the_doctor_and_stops_nothing(evensum, tmp_path, caplog):
    from bot import app
    from bot.settings import read_settings

    course = tmp_path / "content"
    shutil.copytree(
        Path(cli.__file__).parents[2] / "content",
        course,
        ignore=shutil.ignore_patterns("unit-[01][2-9]", "unit-1*"),
    )
    (course / "unit-01" / "negative-numbers.md").write_text("not a lesson", encoding="utf-8")
    evensum("migrate", CONTENT=str(course))
    code, said = evensum("doctor", CONTENT=str(course))
    assert code == 1 and "lessons that have one are left out: negative-numbers.md" in said

    settings = read_settings(
        {"EVENSUM_TOKEN": TOKEN, "EVENSUM_CONTENT": str(course), "EVENSUM_API_URL": "http://127.0.0.1:9"},
        None,
    )
    joined = app.build(settings)
    joined.pictures.close()
    joined.engine.dispose()
    assert "negative-numbers.md:1" in caplog.text and "left out" in caplog.text
