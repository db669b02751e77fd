"""Records: every total is recomputed by a query of its own, and the papers and files hold nothing else."""

from __future__ import annotations

import csv
import io
import re
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader
from sqlalchemy import text
from support.group import Group, Somebody, only
from support.steering import stored, words_of

from bot import demo
from bot.chat.render import render
from bot.chat.rendered import Drawing, Kept
from bot.messages import PagesShown, RecordPaper, RecordsShown, RecordTables, SamplesShown, WrongCommand
from bot.pictures.recipes import make
from bot.planner.plan import Because, Pick
from bot.records import days, files, photo_archive
from bot.records.attempts import add_attempt, add_grading
from bot.records.base import transaction
from bot.records.days import Fresh, ItemState
from bot.school.drawing import draw_all
from bot.vocabulary import Outcome, Part, TemplateId, Verdict, Why

FIRST = date(2026, 9, 14)
DAYS = 171


def kept_year(group: Group, count: int = DAYS) -> date:
    """A year of Wren's rows as the day's use cases leave them; return its last day. Invented, but whole."""
    wren = group.who(demo.WREN).id
    lessons = group.school.course.lessons
    on = FIRST
    with transaction(group.engine) as s:
        for n in range(count):
            while on.weekday() > 4:
                on += timedelta(days=1)
            at = datetime(on.year, on.month, on.day, 9, tzinfo=UTC)
            lesson = lessons[n % len(lessons)]
            tested = n % 9 == 8
            notes: dict[str, object] = {"met": [lesson.id], "lesson_met": True}
            if tested:
                notes = {"test": group.school.course.tests[n // 9 % len(group.school.course.tests)].n}
                notes |= {"handed_in": True, "test_counted": True}
            if n % 40 == 3:
                notes |= {"hands_on": group.school.course.hands_on[0].id, "hands_on_done": True}
            kind = "test" if tested else "lesson"
            day = days.add_day(s, wren, on, kind, None if tested else lesson.id, at, notes=notes)
            assert day is not None
            days.change_day(s, day, started_at=at, closed_at=at, seconds=0 if n % 13 == 5 else 1500 + 37 * n)
            if n % 13 == 5:
                days.change_day(s, day, on_paper=True)
            part = Part.TEST if tested else Part.REVIEW
            days.add_items(s, day, wren, drawn(group, n, part))
            for sent in days.items_of(s, day):
                outcome = (Outcome.FIRST_TRY, Outcome.LATER_TRY, Outcome.UNSOLVED)[(n + sent.place) % 7 % 3]
                if tested and outcome is Outcome.LATER_TRY:
                    outcome = Outcome.FIRST_TRY
                days.change_item(s, sent.id, outcome=outcome, state=ItemState.DONE)
                attempt = add_attempt(s, sent.id, n * 100 + sent.place, "=1+1", 0, at)
                add_grading(s, attempt, Verdict.WRONG, at)
            if n % 6 == 0:
                files.add_file(s, wren, day, on, f"photo-{n}", at, caption='@page, "two"\nlines')
            last, on = on, on + timedelta(days=1)
    return last


def drawn(group: Group, n: int, part: Part) -> list[Fresh]:
    templates = [each.id for each in group.school.course.lessons[n % 40].templates][:4]
    picks = [Pick(TemplateId(each), n, Why.DUE, Because()) for each in templates]
    return draw_all(group.school, picks, part)


@pytest.fixture
def tove(group: Group) -> Somebody:
    group.at(8)
    return group.who(demo.TOVE)


def counted(group: Group, first: date, last: date) -> dict[str, int]:
    """The totals by a query that shares nothing with the code under test."""
    with group.engine.connect() as connection:
        rows = connection.execute(
            text(
                "select d.date, d.seconds, d.on_paper, d.notes from school_day d join person p on p.id = d.student_id"
                " where p.name = 'Wren' and d.started_at is not null and d.date between :first and :last"
            ),
            {"first": str(first), "last": str(last)},
        ).all()
        samples = connection.execute(
            text(
                "select count(*) from file f join person p on p.id = f.student_id"
                " where p.name = 'Wren' and f.date between :first and :last"
            ),
            {"first": str(first), "last": str(last)},
        ).scalar_one()
    notes = [str(row.notes) for row in rows]
    return {
        "opened": len(rows),
        "minutes": sum((row.seconds + 30) // 60 for row in rows),
        "on_paper": sum(1 for row in rows if row.on_paper),
        "tests": sum('"test_counted":true' in each for each in notes),
        "hands_on": sum('"hands_on_done":true' in each for each in notes),
        "samples": samples,
    }


@pytest.mark.parametrize(
    ("words", "first", "last"),
    [
        ("", FIRST, None),
        ("1 oct - 30 nov", date(2026, 10, 1), date(2026, 11, 30)),
        ("2026-12-01 - 2027-02-28", date(2026, 12, 1), date(2027, 2, 28)),
    ],
)
def test_totals_are_those_of_an_independent_query(
    group: Group, tove: Somebody, words: str, first: date, last: date | None
) -> None:
    end = kept_year(group)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    shown = only(RecordsShown, tove.types(f"/records wren {words or f'{FIRST} - {end}'}"))
    truth = counted(group, first, last or end)
    assert {name: getattr(shown, name) for name in truth} == truth
    assert truth["opened"] > 30 and truth["minutes"] > 500
    if not words:
        assert truth["opened"] == DAYS
    assert "differs from place to place" in words_of([shown])


def test_the_files_are_csv_after_rfc_4180_and_add_up_to_the_totals(group: Group, tove: Somebody) -> None:
    end = kept_year(group, 60)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    sent = only(RecordTables, tove.types(f"/records wren csv {FIRST} - {end}"))
    words_of([sent])
    found = {name: content.decode("utf-8") for name, content in sent.files}
    assert set(found) == {
        "days.csv",
        "lessons.csv",
        "tests.csv",
        "standards.csv",
        "samples.csv",
        "columns.txt",
    }
    tables = {}
    for name, content in found.items():
        if not name.endswith(".csv"):
            continue
        assert content.endswith("\r\n") and "\n" not in content.replace("\r\n", "").replace(
            'two""\nlines', ""
        )
        rows = list(csv.DictReader(io.StringIO(content, newline=""), strict=True))
        assert all(None not in row and None not in row.values() for row in rows), name
        assert all(
            f"  {column}" in found["columns.txt"] or column in found["columns.txt"] for column in rows[0]
        )
        tables[name] = rows
    truth = counted(group, FIRST, end)
    assert sum(int(row["minutes"]) for row in tables["days.csv"]) == truth["minutes"]
    assert len(tables["days.csv"]) == truth["opened"] and len(tables["tests.csv"]) == truth["tests"]
    assert len(tables["samples.csv"]) == truth["samples"]
    assert tables["samples.csv"][0]["caption"] == '\'@page, "two"\nlines'  # no formula, and whole
    with group.engine.connect() as connection:
        items, solved = connection.execute(
            text(
                "select count(*), sum(case when i.outcome in ('first-try', 'later-try') then 1 else 0 end)"
                " from item i join school_day d on d.id = i.day_id join person p on p.id = i.student_id"
                " where p.name = 'Wren' and i.part in ('review', 'guided') and d.started_at is not null"
            )
        ).one()
    assert sum(int(row["items"]) for row in tables["days.csv"]) == items
    assert sum(int(row["solved"]) for row in tables["days.csv"]) == solved


def test_standards_are_those_that_the_lessons_met_name(group: Group, tove: Somebody) -> None:
    end = kept_year(group, 25)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    record = only(RecordPaper, tove.types(f"/records wren pdf {FIRST} - {end}")).record
    met = {lesson.title: lesson for lesson in group.school.course.lessons}
    codes = {code for one in record.lessons for code in met[one.title].standards}
    assert {code for code, _, _ in record.standards} == codes and codes
    assert all(gist for _, gist, _ in record.standards)


def pdf_text(message: RecordPaper, language: str = "en") -> str:
    content = render(message, language).documents[0].content
    assert isinstance(content, Drawing)
    pages = PdfReader(io.BytesIO(make(content.recipe, content.data))).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


@pytest.mark.sqlite_is_enough(
    "the record is read from PostgreSQL by most tests here; this one is about paper"
)
def test_the_paper_for_the_next_school_describes_the_course_and_leaves_the_mark_blank(
    group: Group, tove: Somebody
) -> None:
    end = kept_year(group, 90)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    paper = only(RecordPaper, tove.types(f"/records wren handover {FIRST} - {end}"))
    for language, mark in (("en", "none is worked out here"), ("es", "aquí no se calcula ninguna")):
        written = pdf_text(paper, language)
        assert mark in written and "Wren" in written and not re.search(r"\bSol\b", written)
        for unit in group.school.course.units[:3]:
            assert unit.title in written
        assert all(lesson.title in written for lesson in paper.record.lessons[:5])
    english = pdf_text(paper)
    assert "September 2026" in english and "differs from place to place" in english
    for test in paper.record.tests:
        assert f"{test.right} / {test.out_of}" in english


def test_a_record_names_every_day_for_the_drawer(group: Group, tove: Somebody) -> None:
    end = kept_year(group, 30)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    paper = only(RecordPaper, tove.types(f"/records wren pdf {FIRST} - {end}"))
    written = pdf_text(paper)
    assert "on paper" in written and "Mon 14 Sep 2026" in written
    assert sum(written.count(f"{day.minutes}") > 0 for day in paper.record.days) == len(paper.record.days)


@pytest.mark.parametrize("words", ["2030-01-01", "2026-09-20 - 2026-09-14", "1999-01-01 - 2026-09-14", "zzz"])
def test_a_range_that_has_not_begun_or_is_too_long_is_refused(
    group: Group, tove: Somebody, words: str
) -> None:
    before = stored(group.engine)
    only(WrongCommand, tove.types(f"/records wren {words}"))
    assert stored(group.engine) == before


def test_a_parent_of_another_household_reads_no_record(group: Group, tove: Somebody) -> None:
    kept_year(group, 3)
    said = group.who(demo.ANSELM).types("/records wren")
    assert [type(each) for each in said] == [WrongCommand] and "Wren" not in words_of(said).replace(
        "wren", ""
    )


def photos(group: Group, folder: Path, count: int) -> None:
    """Photos of Wren's, eight a day, in several colours; the last is no picture, the one before is gone."""
    wren = group.who(demo.WREN).id
    with transaction(group.engine) as s:
        for n in range(count):
            on = FIRST + timedelta(days=n // 8)
            day = days.day_on(s, wren, on)
            at = datetime(on.year, on.month, on.day, 9, n % 8, tzinfo=UTC)
            row = files.add_file(s, wren, day.id if day else None, on, f"Ag{n}", at, caption=f"`page` {n}")
            files.fetched(s, row, f"000/{n}.jpg")
            (folder / "000").mkdir(exist_ok=True)
            Image.new("RGB", (3000, 2000), (9 * n % 256, 80, 90)).save(folder / f"000/{n}.jpg")
    (folder / f"000/{count - 1}.jpg").write_bytes(b"<svg onload='x'/>")
    (folder / f"000/{count - 2}.jpg").unlink()


@pytest.mark.sqlite_is_enough(
    "photos are read from PostgreSQL where they come by a button; this one is about paper"
)
def test_photos_of_work_stand_in_the_record_with_their_lesson_small(
    group: Group, tove: Somebody, tmp_path: Path
) -> None:
    end = kept_year(group, 6)
    photos(group, tmp_path, 40)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    paper = only(RecordPaper, tove.types(f"/records wren pdf {FIRST} - {end}"))
    first = group.school.course.lessons[0].title
    assert [(each.date, each.lesson) for each in paper.record.work[:2]] == [("2026-09-14", first)] * 2
    for language, heading in (("en", "Photos of work"), ("es", "Fotos de trabajos")):
        content = render(paper, language).documents[0].content
        assert isinstance(content, Drawing) and "svg" not in str(content.data)
        made = make(content.recipe, photo_archive.onto_paper(tmp_path, content.data))
        read = PdfReader(io.BytesIO(made))
        written = " ".join(" ".join(page.extract_text() for page in read.pages).split())
        assert heading in written and written.count(first) > 8 and "'page' 17" in written
        shown = [image for page in read.pages for image in page.images]
        assert 20 <= len(shown) <= 24 and len(made) < 2_000_000
        assert max(image.image.size[0] for image in shown) == 700
    handed_over = render(only(RecordPaper, tove.types("/records wren handover")), "en").documents[0].content
    assert isinstance(handed_over, Drawing) and "000/" not in str(handed_over.data), (
        "nobody sends a child's photos on"
    )


def test_a_photo_outside_the_folder_is_left_out(tmp_path: Path) -> None:
    inside = tmp_path / "in"
    inside.mkdir()
    Image.new("RGB", (30, 20)).save(tmp_path / "out.png")
    Image.new("RGB", (30, 20)).save(inside / "here.png")
    data = {"photos": [{"path": "../out.png"}, {"path": str(tmp_path / "out.png")}, {"path": "here.png"}]}
    found = photo_archive.onto_paper(inside, data)
    assert isinstance(found, dict) and [each["path"] for each in found["photos"]] == ["here.png"]


def test_the_photos_themselves_come_by_a_button_ten_in_a_message_day_by_day(
    group: Group, tove: Somebody, tmp_path: Path
) -> None:
    end = kept_year(group, 6)
    photos(group, tmp_path, 20)
    group.clock.at = datetime(end.year, end.month, end.day, 18, tzinfo=UTC)
    shown = only(RecordsShown, tove.types(f"/records wren {FIRST} - {end}"))
    data = next(
        one.data for row in render(shown, "en").buttons for one in row if one.label == "Photos of work"
    )
    seen: list[str] = []
    while data:
        verb, _, ref = data.partition(":")
        said = tove.presses(verb, ref)
        if isinstance(said[0], PagesShown):
            seen += [file_id for file_id, _ in said[0].pages]
            break
        page = only(SamplesShown, said)
        rendered = render(page, "es")
        assert len(page.photos) <= 10 and words_of([page])
        assert [each.content for each in rendered.pictures] == [Kept(each) for each in page.photos]
        seen += page.photos
        data = rendered.buttons[0][0].data if rendered.buttons else ""
    assert [each for each in seen if each.startswith("Ag")] == [f"Ag{n}" for n in range(20)]
