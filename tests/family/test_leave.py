from __future__ import annotations

import io
import zipfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import msgspec
import pytest
from sqlalchemy import text
from sqlalchemy.engine import Engine
from support.group import Group, Somebody, only
from support.steering import does, stored, undoes, words_of

from bot import demo
from bot.clock.leavings import Leavings
from bot.family import leave
from bot.messages import ConsentAsked, EraseKept, Exported, NoSuchCommand, NotLinked, TutorTold, WrongCommand
from bot.records import files, people
from bot.records.base import all_tables, transaction
from bot.school import spreadsheet
from bot.vocabulary import Part

SECRET = "8128000496"
"""Something that only Wren types."""


@pytest.fixture
def tove(group: Group) -> Somebody:
    """Tove, after a morning on which Wren worked."""
    group.tick()
    group.at(9)
    wren = group.who(demo.WREN)
    wren.gets_to_review()
    wren.types(SECRET)
    wren.presses("ask", next(each for each in wren.items(Part.REVIEW) if each.state == "shown").id)
    group.at(10)
    return group.who(demo.TOVE)


def leavings(group: Group, folder: Path) -> Leavings:
    return Leavings(group.engine, ThreadPoolExecutor(1), group.clock, folder)


def test_the_export_holds_what_was_typed_and_nothing_of_another_household(
    tove: Somebody, group: Group
) -> None:
    sent = only(Exported, tove.types("/export"))
    words_of([sent])
    packed = zipfile.ZipFile(io.BytesIO(sent.content))
    assert set(packed.namelist()) == {"about.txt", "rows.json", "schema.json", "days.csv", "answers.csv"}
    rows = msgspec.json.decode(packed.read("rows.json"))
    assert rows["schema"] == leave.SCHEMA
    assert {row["name"] for row in rows["rows"]["person"]} == {"Tove", "Wren", "Sol"}
    assert SECRET in packed.read("answers.csv").decode()
    assert all("Juniper" not in packed.read(name).decode() for name in packed.namelist())
    assert "token_hash" not in packed.read("rows.json").decode()


def test_the_export_has_every_attempt_of_the_database(tove: Somebody, group: Group) -> None:
    sent = only(Exported, tove.types("/export"))
    rows = msgspec.json.decode(zipfile.ZipFile(io.BytesIO(sent.content)).read("rows.json"))["rows"]
    with group.engine.connect() as connection:
        for table in ("attempt", "grading"):
            assert len(rows[table]) == connection.execute(text(f"select count(*) from {table}")).scalar_one()


@pytest.mark.parametrize(
    ("cell", "safe"),
    [
        ("=1+1", "'=1+1"),
        ("-3", "-3"),
        ("-3.5", "-3.5"),
        ("@x", "'@x"),
        ("+cmd|x", "'+cmd|x"),
        ("-x", "'-x"),
        ("7", "7"),
    ],
)
def test_no_cell_is_taken_for_a_formula(cell: str, safe: str) -> None:
    assert spreadsheet.safe(cell) == safe


def test_asking_to_erase_stops_everything_at_once_and_erases_nothing_yet(
    tove: Somebody, group: Group, tmp_path: Path
) -> None:
    said = does(tove, "/erase")
    assert only(TutorTold, said).what == "erase"
    group.at(8, 1, day=1)
    assert not [each for each in group.tick() if each.to in (tove.chat, demo.WREN.chat)]
    group.at(9, day=6)
    assert leavings(group, tmp_path).look() == 0
    assert only(WrongCommand, tove.types("/erase")).why.key == "why-erase-asked"


def test_a_week_is_there_to_change_ones_mind(tove: Somebody, group: Group, tmp_path: Path) -> None:
    does(tove, "/erase")
    group.at(9, day=6)
    only(EraseKept, tove.types("/keep"))
    group.at(9, day=20)
    assert leavings(group, tmp_path).look() == 0
    assert only(ConsentAsked, tove.types("/agree"))


def test_undo_within_a_day_goes_on_as_if_nothing_was_asked(
    tove: Somebody, group: Group, tmp_path: Path
) -> None:
    before = stored(group.engine)["household"]
    undoes(tove, does(tove, "/erase"))
    assert stored(group.engine)["household"] == before
    group.at(9, day=20)
    assert leavings(group, tmp_path).look() == 0


def test_after_the_week_nothing_is_left_of_the_household_and_all_of_the_others(
    tove: Somebody, group: Group, tmp_path: Path
) -> None:
    photo = tmp_path / "000" / "1.jpg"
    photo.parent.mkdir()
    photo.write_bytes(b"x")
    wren = group.who(demo.WREN).id
    with transaction(group.engine) as s:
        kept = files.add_file(s, wren, None, group.clock.now().date(), "abc", group.clock.now())
        files.fetched(s, kept, "000/1.jpg")
    ines = group.who(demo.INES)
    does(ines, "/note wren Wren counted sacks.")
    does(ines, "/minutes all 30")
    does(tove, "/erase")
    group.at(9, day=8)
    assert leavings(group, tmp_path).look() == 1
    assert leavings(group, tmp_path).look() == 0
    assert not photo.exists()
    for name, rows in everything(group.engine).items():
        for row in rows:
            for word in ("Wren", "Tove", "Bramble", SECRET):
                assert word not in str(row), (name, row)
    assert [type(each) for each in tove.types("/today")] == [NotLinked]
    assert [type(each) for each in group.who(demo.WREN).types("42")] == [NotLinked]
    assert "Juniper" in words_of(ines.types("/today"))


def everything(engine: Engine) -> dict[str, list[tuple[object, ...]]]:
    with engine.connect() as connection:
        return {
            table.name: [tuple(row) for row in connection.execute(table.select())]
            for table in all_tables().sorted_tables
        }


def test_on_sqlite_the_file_holds_nothing_of_them_any_more(
    tove: Somebody, group: Group, tmp_path: Path
) -> None:
    if group.engine.dialect.name != "sqlite":
        return  # a server's own files age out in their time; the tables are looked at above
    file = Path(str(group.engine.url.database))
    beside = [file, file.with_name(file.name + "-wal"), file.with_name(file.name + "-shm")]
    raw = b"".join(each.read_bytes() for each in beside if each.exists())
    assert SECRET.encode() in raw
    does(tove, "/erase")
    group.at(9, day=8)
    leavings(group, tmp_path).look()
    raw = b"".join(each.read_bytes() for each in beside if each.exists())
    assert SECRET.encode() not in raw
    assert b"Bramble" not in raw and b"Tove" not in raw


def test_a_child_with_another_home_stays_there(new, rosalind: Somebody, group: Group, tmp_path: Path) -> None:
    does(rosalind, "/student hazel Linnet shared")
    does(rosalind, "/household Alder")
    with transaction(group.engine) as s:
        linnet = people.students_of_tutor(s, people.who(s, rosalind.chat).id)[0].id  # type: ignore[union-attr]
    does(rosalind, f"/student alder #{linnet}")
    robin = new.opens(new.link_of(rosalind, "/parent hazel Robin"))
    does(robin, "/erase")
    group.at(9, day=8)
    assert leavings(group, tmp_path).look() == 1
    with transaction(group.engine) as s:
        student = people.student(s, linnet)
        assert people.household(s, student.household).name == "Alder"


def test_a_child_can_erase_nothing(tove: Somebody, group: Group) -> None:
    assert [type(each) for each in group.who(demo.WREN).types("/erase")] == [NoSuchCommand]
