"""A backup holds everything, goes back into either kind of database, and never over what is there unasked."""

from __future__ import annotations

import stat
import zipfile
from datetime import UTC, datetime

import pytest
from sqlalchemy import text

from bot.messages import Help
from bot.records import inbox, keeping, outbox
from bot.records.base import all_tables, create_engine, transaction
from bot.records.inbox import Received
from bot.records.migrating import Tables, look, migrate
from bot.troubles import Trouble

NOON = datetime(2026, 9, 14, 12, tzinfo=UTC)


@pytest.fixture
def school(engine, tmp_path):
    """A database with a few rows of each kind of column, and a photo."""
    with engine.begin() as connection:
        all_tables().drop_all(connection)
    migrate(engine)
    with transaction(engine) as s:
        inbox.receive(s, 7, [Received(n, 0, 2**40 + n, bytes([n, 0, 255])) for n in range(3)], NOON)
        inbox.finish(s, 1, 2**40, NOON)
        outbox.put(s, [Help(to=5, key=f"k{n}", role="student", topic="½ “3”") for n in range(2500)], NOON)
    photo = tmp_path / "files" / "3" / "12.jpg"
    photo.parent.mkdir(parents=True)
    photo.write_bytes(b"\xff\xd8photo")
    return engine


def rows(engine):
    with engine.connect() as connection:
        return {
            name: sorted(map(str, connection.execute(table.select())))
            for name, table in all_tables().tables.items()
        }


@pytest.fixture(params=["sqlite", "postgresql"])
def other(request, tmp_path):
    """An empty database of the one kind or of the other."""
    if request.param == "sqlite":
        engine = create_engine(f"sqlite:///{tmp_path / 'other.sqlite'}")
        yield engine
        engine.dispose()
        return
    server = request.getfixturevalue("postgresql")
    server.say("create database other")
    engine = create_engine(server.url("other"))
    yield engine
    engine.dispose()
    server.say("drop database other with (force)")


def test_a_backup_goes_back_into_either_kind_of_database(school, other, tmp_path):
    told = []
    archive = keeping.backup(
        school, tmp_path / "files", tmp_path / "backups", NOON, lambda *how_far: told.append(how_far)
    )
    back = keeping.restore(other, tmp_path / "files2", archive)
    assert rows(other) == rows(school)
    assert (tmp_path / "files2" / "3" / "12.jpg").read_bytes() == b"\xff\xd8photo"
    assert (back.files, back.about.made_at, look(other).tables) == (1, NOON, Tables.CURRENT)
    assert ("rows", 2503, 2503) in told and told[-1] == ("files", 1, 1)
    with transaction(other) as s:  # new rows get new numbers
        outbox.put(s, [Help(to=5, key="new", role="student")], NOON)
        assert s.scalar(text("select max(id) from outbox")) == 2501


def test_a_backup_is_for_its_owner_only_and_named_by_its_time(school, tmp_path):
    archive = keeping.backup(school, tmp_path / "none", tmp_path / "backups", NOON)
    assert archive.name == "evensum-20260914-120000.zip"
    assert stat.S_IMODE(archive.stat().st_mode) == 0o600
    assert [path.name for path in archive.parent.iterdir()] == [archive.name]


def test_what_is_there_is_not_written_over_unasked(school, tmp_path):
    archive = keeping.backup(school, tmp_path / "files", tmp_path / "backups", NOON)
    before = rows(school)
    with pytest.raises(Trouble, match="isn't empty"):
        keeping.restore(school, tmp_path / "files", archive)
    assert rows(school) == before


def test_with_replace_all_is_as_it_was(school, tmp_path):
    archive = keeping.backup(school, tmp_path / "files", tmp_path / "backups", NOON)
    before = rows(school)
    with transaction(school) as s:
        s.execute(text("delete from outbox where id > 10"))
        outbox.put(s, [Help(to=5, key="later", role="student")], NOON)
    keeping.restore(school, tmp_path / "files", archive, replace=True)
    assert rows(school) == before


def test_a_damaged_or_foreign_file_changes_nothing(school, tmp_path):
    archive = keeping.backup(school, tmp_path / "files", tmp_path / "backups", NOON)
    before = rows(school)
    whole = archive.read_bytes()
    archive.write_bytes(whole[: len(whole) // 2])
    text_file = tmp_path / "notes.txt"
    text_file.write_text("hello")
    other_zip = tmp_path / "other.zip"
    with zipfile.ZipFile(other_zip, "w") as other:
        other.writestr("a", "b")
    for file in (archive, text_file, other_zip, tmp_path / "missing.zip"):
        with pytest.raises(Trouble):
            keeping.restore(school, tmp_path / "files", file, replace=True)
    assert rows(school) == before


def test_a_file_can_not_leave_its_folder(school, tmp_path):
    archive = keeping.backup(school, tmp_path / "files", tmp_path / "backups", NOON)
    with zipfile.ZipFile(archive, "a") as opened:
        opened.writestr("files/../../outside.txt", "x")
    with pytest.raises(Trouble, match="outside its folder"):
        keeping.restore(school, tmp_path / "files", archive, replace=True)
    assert not (tmp_path / "outside.txt").exists()
