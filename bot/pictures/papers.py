"""Papers to print or keep: worksheets and keys, letters, records, and what is made from the course itself.

Each function takes frozen data and gives PDF. Texts may hold maths in backticks and **bold**; they are typeset, and
whatever else stands in them stays plain text. Wording comes in from outside; English words stand in.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time
from typing import Any

from bot.pictures.canvas import Canvas
from bot.pictures.charts import SkillMap, Week, Year, skill_map, week, year
from bot.pictures.figures import draw, sheet
from bot.pictures.formulas import Formulas
from bot.pictures.typeset import typeset_source

Block = dict[str, object]
SIZES = {"a4": "a4", "letter": "us-letter"}


@dataclass(frozen=True, slots=True)
class Look:
    """How a paper is set: "a4" or "letter", big type or not, the language, and the day it carries."""

    size: str = "a4"
    big: bool = False
    language: str = "en"
    footer: str = ""
    made: date | None = None


@dataclass(frozen=True, slots=True)
class SheetItem:
    """An item on paper. `source` names the lesson it comes from; `lines` are ruled lines to write on."""

    number: str
    ask: str
    source: str = ""
    figure: Mapping[str, Any] | None = None
    choices: Sequence[str] = ()
    lines: int = 2
    answer: str = ""
    steps: Sequence[tuple[str, str]] = ()


@dataclass(frozen=True, slots=True)
class Worksheet:
    """A sheet of items, and its key. `under` is the line below the title: whose, when, from which lessons."""

    title: str
    items: Sequence[SheetItem]
    under: str = ""
    intro: str = ""
    key_title: str = "Key"
    look: Look = field(default_factory=Look)


@dataclass(frozen=True, slots=True)
class Letter:
    """A weekly letter: paragraphs, facts as (name, value), the week as a picture, tables, and the year so far."""

    title: str
    paragraphs: Sequence[str]
    under: str = ""
    facts: Sequence[tuple[str, str]] = ()
    week: Week | None = None
    year: Year | None = None
    closing: str = ""
    look: Look = field(default_factory=Look)
    tables: Sequence[TableOf] = ()


@dataclass(frozen=True, slots=True)
class TableOf:
    """A table with a heading above it. Shares are the widths of the columns beside one another."""

    heading: str
    head: Sequence[str]
    rows: Sequence[Sequence[str]]
    shares: Sequence[float] = ()
    note: str = ""
    figures: Sequence[Mapping[str, Any] | None] = ()
    """A figure for each row, in a column of its own at the end; None leaves it empty."""


@dataclass(frozen=True, slots=True)
class PhotoOf:
    """A small photo and the words below it. The picture is SVG, made by ourselves from what was decoded."""

    picture: str = ""
    under: str = ""


@dataclass(frozen=True, slots=True)
class Record:
    """A record of some length of time: facts, tables (days, lessons, tests, hands-on), the year and a skill map."""

    title: str
    tables: Sequence[TableOf]
    under: str = ""
    facts: Sequence[tuple[str, str]] = ()
    notes: Sequence[str] = ()
    year: Year | None = None
    skills: SkillMap | None = None
    look: Look = field(default_factory=Look)
    intro: Sequence[str] = ()
    blanks: Sequence[str] = ()
    """Words with a line behind which somebody may write by hand."""
    photos: Sequence[PhotoOf] = ()
    """Below the tables, whose last is the list of them."""


@dataclass(frozen=True, slots=True)
class CourseList:
    """A list made from the course: scope and sequence, standards, glossary, formulas, materials, tests to come."""

    title: str
    tables: Sequence[TableOf]
    under: str = ""
    intro: Sequence[str] = ()
    look: Look = field(default_factory=Look)


def worksheet(data: Worksheet) -> bytes:
    """The sheet without answers."""
    formulas = Formulas()
    items = [_item(item, formulas) for item in data.items]
    return _pdf(
        data.title,
        data.under,
        [*_intro(data.intro, formulas), {"is": "items", "items": items}],
        data.look,
        formulas,
    )


def key(data: Worksheet) -> bytes:
    """The answers to a sheet, with the worked solutions where they are given."""
    formulas = Formulas()
    answers = [
        {
            "number": item.number,
            "answer": formulas.text(item.answer),
            "steps": [
                {"write": formulas.bare(write), "because": formulas.text(because)}
                for write, because in item.steps
            ],
        }
        for item in data.items
    ]
    title = f"{data.title}: {data.key_title}"
    return _pdf(title, data.under, [{"is": "answers", "items": answers}], data.look, formulas)


def letter(data: Letter) -> bytes:
    """A letter of about a page."""
    formulas = Formulas()
    blocks: list[Block] = [{"is": "text", "runs": formulas.text(text)} for text in data.paragraphs]
    blocks += _facts(data.facts)
    blocks += _beside([*([week(data.week)] if data.week else []), *([year(data.year)] if data.year else [])])
    for table in data.tables:
        blocks += _table(table, formulas)
    return _pdf(data.title, data.under, [*blocks, *_intro(data.closing, formulas)], data.look, formulas)


def record(data: Record) -> bytes:
    """A record for a family's files, as long as the tables are."""
    formulas = Formulas()
    blocks: list[Block] = [{"is": "text", "runs": formulas.text(text)} for text in data.intro]
    blocks += _facts(data.facts)
    blocks += [{"is": "blank", "runs": formulas.text(blank)} for blank in data.blanks]
    if data.year:
        blocks.append(_picture(year(data.year), 11))
    for table in data.tables:
        blocks += _table(table, formulas)
    photos = [{"picture": photo.picture, "under": photo.under} for photo in data.photos if photo.picture]
    if photos:
        blocks.append({"is": "photos", "photos": photos})
    if data.skills:
        blocks += [{"is": "break"}, _picture(skill_map(data.skills), 12)]
    blocks += [{"is": "text", "runs": formulas.text(note)} for note in data.notes]
    return _pdf(data.title, data.under, blocks, data.look, formulas)


def course_list(data: CourseList) -> bytes:
    """A list made from the course."""
    formulas = Formulas()
    blocks: list[Block] = [{"is": "text", "runs": formulas.text(text)} for text in data.intro]
    for table in data.tables:
        blocks += _table(table, formulas)
    return _pdf(data.title, data.under, blocks, data.look, formulas)


def _item(item: SheetItem, formulas: Formulas) -> Block:
    return {
        "number": item.number,
        "ask": formulas.text(item.ask),
        "source": formulas.text(item.source),
        "picture": sheet(draw(item.figure)) if item.figure else None,
        "choices": [formulas.text(choice) for choice in item.choices],
        "lines": item.lines,
    }


def _intro(text: str, formulas: Formulas) -> Iterator[Block]:
    if text:
        yield {"is": "text", "runs": formulas.text(text)}


def _facts(facts: Sequence[tuple[str, str]]) -> Iterator[Block]:
    if facts:
        yield {"is": "facts", "rows": [list(fact) for fact in facts]}


def _table(table: TableOf, formulas: Formulas) -> Iterator[Block]:
    if table.heading:
        yield {"is": "heading", "text": table.heading}
    if table.note:
        yield {"is": "text", "runs": formulas.text(table.note), "sticky": True}
    # A column of figures has a heading of its own, so the words have one column less.
    columns = max([len(table.head) - bool(table.figures), *(len(row) for row in table.rows)])
    if not columns:  # a heading and its note, without any rows
        return
    rows = [[_cell(cell, formulas) for cell in [*row, *[""] * columns][:columns]] for row in table.rows]
    if table.figures:
        columns += 1
        for row, figure in zip(rows, [*table.figures, *[None] * len(rows)], strict=False):
            row.append({"picture": sheet(draw(figure))} if figure else "")
    shares = [*table.shares, *[1.0] * columns][:columns]
    head = [*table.head, *[""] * columns][:columns] if table.head else []
    yield {"is": "table", "head": head, "rows": rows, "shares": shares}


def _cell(cell: str, formulas: Formulas) -> object:
    """Most cells are plain words; only those with marks are taken apart."""
    return {"runs": formulas.text(cell)} if "`" in cell or "*" in cell else cell


def _beside(canvases: Sequence[Canvas]) -> Iterator[Block]:
    """Charts beside one another; a single one as it is."""
    if len(canvases) == 1:
        yield _picture(canvases[0], 8.5)
    elif canvases:
        yield {"is": "beside", "pictures": [sheet(canvas) for canvas in canvases]}


def _picture(canvas: Canvas, wide: float) -> Block:
    return {"is": "picture", "picture": sheet(canvas), "wide": wide}


def _pdf(
    title: str, under: str, blocks: Sequence[Mapping[str, object]], look: Look, formulas: Formulas
) -> bytes:
    made = datetime.combine(look.made, time(12), UTC) if look.made else None
    data = {
        "title": title,
        "under": under,
        "blocks": blocks,
        "size": SIZES[look.size],
        "big": look.big,
        "language": look.language,
        "footer": look.footer,
    }
    source = formulas.source() + '#import "/paper.typ": paper\n#paper(formulas)\n'
    return typeset_source(source, data, "pdf", made=made)
