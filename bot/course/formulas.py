"""The formula sheet: what each formula is for, the lesson that owns it, and a figure where one helps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from bot.course.item import Figure
from bot.course.lesson_file import fixed_figure, shown_text
from bot.course.recipes import read_figure
from bot.course.source import Entry, Source
from bot.vocabulary import LessonId

_ROW = ("what", "es", "lesson", "formula", "es-formula")


@dataclass(frozen=True, slots=True)
class FormulaRow:
    """One formula. `what` and `formula` are by language, English always there; maths stands in backticks
    as it was written, so that it can be typeset."""

    what: Mapping[str, str]
    formula: Mapping[str, str]
    lesson: LessonId
    figure: Figure | None = None
    file: str = ""
    line: int = 0


@dataclass(frozen=True, slots=True)
class FormulaPart:
    """Formulas that belong together, under a heading by language."""

    title: Mapping[str, str]
    rows: tuple[FormulaRow, ...]


def read_formulas(source: Source, entries: Mapping[str, Entry]) -> Iterator[FormulaPart]:
    """Read the sheet; what is wrong with it is noted in `source`."""
    for title, entry in entries.items():
        own = entry.value if isinstance(entry.value, Mapping) else {}
        rows = own.get("rows")
        listed = [] if rows is None or isinstance(rows.value, (str, Mapping)) else rows.value
        if not listed:
            source.fault("formulas", entry.line, f"The part '{title}' has no rows.", "", title)
        found = [_row(source, row.value, row.line) for row in listed if isinstance(row.value, Mapping)]
        yield FormulaPart(_by_language(title, own.get("es")), tuple(row for row in found if row is not None))


def _row(source: Source, row: Mapping[str, Entry], line: int) -> FormulaRow | None:
    names = list(row)
    plain = names[: names.index("figure")] if "figure" in names else names
    text = {name: row[name].text or "" for name in plain}
    for name in plain:
        if name not in _ROW:
            source.fault(
                "formulas", row[name].line, f"A formula has no '{name}'.", f"It has: {', '.join(_ROW)}."
            )
    missing = [name for name in ("what", "lesson", "formula") if not text.get(name)]
    if missing:
        source.fault(
            "formulas", line, f"This formula lacks: {', '.join(missing)}.", "Each is a line of its own."
        )
        return None
    formula = _by_language(text["formula"], row.get("es-formula"))
    for one in formula.values():
        shown_text(source, one, line)  # maths that can't be read is a fault
    figure = read_figure(source, row, text["what"])
    return FormulaRow(
        what=_by_language(text["what"], row.get("es")),
        formula=formula,
        lesson=LessonId(text["lesson"]),
        figure=fixed_figure(source, figure, line),
        file=source.file,
        line=line,
    )


def _by_language(english: str, spanish: Entry | None) -> dict[str, str]:
    return {"en": english, **({"es": spanish.text} if spanish is not None and spanish.text else {})}
