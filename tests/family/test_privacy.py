"""What a family takes along is described and whole; what is past the limit is gone, and so are its bytes."""

from __future__ import annotations

import io
import logging
import zipfile
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import date
from pathlib import Path

import msgspec
import pytest
from PIL import Image
from support.group import Group, Somebody, only
from support.steering import does, words_of

from bot import demo
from bot.chat.render import render
from bot.clock.leavings import Leavings
from bot.messages import Exported, ExportedPhotos, Privacy
from bot.records import attempts, files, forgetting, own, people, photo_archive
from bot.records.base import all_tables, transaction

TYPED = "8128000496"
"""Something that only Wren types."""


@pytest.fixture
def tove(group: Group) -> Somebody:
    """Tove, after a morning on which Wren typed something."""
    group.tick()
    group.at(9)
    wren = group.who(demo.WREN)
    wren.gets_to_review()
    wren.types(TYPED)
    return group.who(demo.TOVE)


def keeps(group: Group, folder: Path, months: int) -> Leavings:
    return Leavings(group.engine, ThreadPoolExecutor(1), group.clock, folder, months)


def photo(group: Group, folder: Path, name: str, on: date) -> Path:
    wren = group.who(demo.WREN).id
    (folder / name).parent.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (30, 20)).save(folder / name, "JPEG")
    with transaction(group.engine) as s:
        row = files.add_file(s, wren, None, on, "f1", group.clock.now())
        files.fetched(s, row, name)
    return folder / name


KINDS = {"integer": int, "boolean": bool, "number": (int, float), "string": str, "null": type(None)}


def test_every_row_of_the_export_is_as_its_schema_says(tove: Somebody) -> None:
    packed = zipfile.ZipFile(io.BytesIO(only(Exported, tove.types("/export")).content))
    schema = msgspec.json.decode(packed.read("schema.json"))
    found = msgspec.json.decode(packed.read("rows.json"))
    assert found["schema"] == schema["properties"]["schema"]["const"]
    tables = schema["properties"]["rows"]["properties"]
    assert set(found["rows"]) == set(tables)
    assert sum(len(rows) for rows in found["rows"].values()) > 20
    for name, rows in found["rows"].items():
        columns = tables[name]["items"]["properties"]
        for row in rows:
            assert set(row) == set(columns) == set(tables[name]["items"]["required"]), name
            for key, value in row.items():
                said = columns[key]["type"]
                kinds = tuple(KINDS[one] for one in ([said] if isinstance(said, str) else said))
                assert isinstance(value, kinds), (name, key, value, said)
                if columns[key].get("format") == "date" and value is not None:
                    date.fromisoformat(value)


def test_photos_come_in_files_of_their_own(tove: Somebody, group: Group, tmp_path: Path) -> None:
    for n in range(25):
        photo(group, tmp_path, f"000/{n}.jpg", date(2026, 9, 14))
    said = tove.types("/export")
    parts = [each for each in said if isinstance(each, ExportedPhotos)]
    assert [len(each.photos) for each in parts] == [20, 5] and only(Exported, said).photos == 25
    assert words_of(said) and words_of(said, "es")
    (document,) = render(parts[0], "en").documents
    packed = zipfile.ZipFile(io.BytesIO(photo_archive.pack(tmp_path, document.content.data)))  # type: ignore[union-attr]
    assert len(packed.namelist()) == 20 and packed.namelist()[0].startswith("2026-09-14 Wren")
    assert Image.open(io.BytesIO(packed.read(packed.namelist()[0]))).size == (30, 20)


def test_a_photo_that_is_gone_or_elsewhere_is_left_out_and_a_large_one_made_smaller(tmp_path: Path) -> None:
    outside = tmp_path / "secret.jpg"
    outside.write_bytes(b"x")
    folder = tmp_path / "files"
    folder.mkdir()
    Image.effect_noise((2600, 2600), 90).convert("RGB").save(folder / "big.png")
    (folder / "odd.heic").write_bytes(b"\0" * (photo_archive.LARGE + 1))
    large = (folder / "big.png").stat().st_size
    assert large > photo_archive.LARGE
    given = [("../secret.jpg", "a"), ("gone.jpg", "b"), ("big.png", "c"), ("odd.heic", "d")]
    packed = zipfile.ZipFile(io.BytesIO(photo_archive.pack(folder, given)))
    assert packed.namelist() == ["c.png", "d.heic"]
    assert packed.getinfo("c.png").file_size < large
    assert max(Image.open(io.BytesIO(packed.read("c.png"))).size) == photo_archive.SIDE


@pytest.mark.parametrize(
    ("today", "months", "first"),
    [
        (date(2026, 9, 14), 12, date(2025, 9, 14)),
        (date(2026, 3, 31), 1, date(2026, 2, 28)),
        (date(2026, 1, 15), 3, date(2025, 10, 15)),
        (date(2024, 2, 29), 12, date(2023, 2, 28)),
        (date(2026, 9, 14), 0, date.min),
    ],
)
def test_the_limit_counts_calendar_months(today: date, months: int, first: date) -> None:
    assert forgetting.limit(today, months) == first


def test_answers_and_photos_past_the_limit_are_gone_from_rows_and_raw_bytes(
    tove: Somebody, group: Group, tmp_path: Path
) -> None:
    old = photo(group, tmp_path, "000/1.jpg", date(2026, 9, 14))
    wren = group.who(demo.WREN)
    item = next(each for each in wren.items() if each.state == "shown")
    group.at(20)
    group.tick()
    outcomes = [each.outcome for each in wren.items()]
    group.at(9, day=120)
    assert keeps(group, tmp_path, 0).look() == 0 and old.exists(), "no limit, nothing goes"
    keeps(group, tmp_path, 12).look()
    assert old.exists(), "not yet"

    keeps(group, tmp_path, 3).look()

    assert not old.exists()
    with transaction(group.engine) as s:
        assert attempts.attempts_of(s, item.id) == []
    assert [each.outcome for each in wren.items()] == outcomes, "the record of the day stays"
    with group.engine.connect() as connection:
        for table in all_tables().sorted_tables:
            for row in connection.execute(table.select()):
                assert TYPED not in str(row), table.name
    if group.engine.dialect.name == "sqlite":
        file = Path(str(group.engine.url.database))
        beside = [file, file.with_name(file.name + "-wal"), file.with_name(file.name + "-shm")]
        assert TYPED.encode() not in b"".join(each.read_bytes() for each in beside if each.exists())
    assert words_of(tove.types("/digest wren 14 sep")), "the day can still be told"


def test_the_privacy_screen_says_how_long(tove: Somebody, group: Group) -> None:
    assert "until you have it erased" in words_of(tove.types("/privacy"))
    group.route._school = replace(group.school, keep_months=18)
    shown = only(Privacy, tove.types("/privacy"))
    assert "after 18 months" in words_of([shown]) and "18 meses" in words_of([shown], "es")


def test_what_a_tutor_wrote_of_a_child_goes_when_the_household_is_erased(
    tove: Somebody, group: Group, tmp_path: Path
) -> None:
    ines = group.who(demo.INES)
    does(ines, "/own juniper Wren has 2 sacks of 4 kg. How many kg? // 8 // whole")
    does(ines, "/own juniper 2 sacks of 4 kg hold how many kg? // 8 // whole")
    does(ines, "/handover bramble")
    does(tove, "/erase")
    group.at(9, day=8)
    assert keeps(group, tmp_path, 0).look() == 1
    with transaction(group.engine) as s:
        me = people.who(s, demo.INES.chat)
        assert me is not None
        assert [each.title for each in own.all_own(s, me.id)] == ["2 sacks of 4 kg hold how many kg"]


def test_no_log_holds_what_a_student_typed(
    group: Group, caplog: pytest.LogCaptureFixture, tmp_path: Path
) -> None:
    """At info level, whatever happens with it: graded, reported, exported, erased."""
    caplog.set_level(logging.INFO)
    group.tick()
    group.at(9)
    wren = group.who(demo.WREN)
    first = wren.gets_to_review()
    wren.types(TYPED)
    wren.presses("report", first.id)
    tove = group.who(demo.TOVE)
    tove.types("/export")
    does(tove, "/erase")
    group.at(9, day=8)
    keeps(group, tmp_path, 3).look()
    assert TYPED not in caplog.text and "Wren" not in caplog.text
