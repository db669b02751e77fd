"""The end of the year: strands for the week of review, and the dozen skills of the family's last page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from bot.course.faults import Fault, nearest
from bot.course.recipes import split_commas
from bot.course.source import Entry
from bot.vocabulary import LessonId, SkillId


@dataclass(frozen=True, slots=True)
class Strand:
    """Lessons of the whole year that belong together; reviewed on a day of its own before the final."""

    title: str
    lessons: tuple[LessonId, ...]


@dataclass(frozen=True, slots=True)
class Foundation:
    """One of the skills that algebra rests on, for a family: its name by language, and the skills it is made of."""

    title: Mapping[str, str]
    skills: tuple[SkillId, ...]


def read_strands(rows: Iterable[Mapping[str, Entry]]) -> tuple[Strand, ...]:
    """Read the strands as they stand; `closing_faults` says what is wrong with them."""
    return tuple(Strand(_text(row.get("title")), tuple(_lessons(row.get("lessons")))) for row in rows)


def read_foundations(rows: Iterable[Mapping[str, Entry]]) -> tuple[Foundation, ...]:
    """Read the skills that algebra rests on."""
    return tuple(
        Foundation(
            {"en": _text(row.get("title")), **({"es": _text(row["es"])} if "es" in row else {})},
            tuple(SkillId(name) for name in split_commas(_text(row.get("skills"))) if name),
        )
        for row in rows
    )


def _lessons(entry: Entry | None) -> Iterator[LessonId]:
    listed = [] if entry is None or isinstance(entry.value, (str, Mapping)) else entry.value
    return (LessonId(one.text or "") for one in listed)


def closing_faults(
    file: str,
    strands: tuple[Strand, ...],
    foundations: tuple[Foundation, ...],
    lessons: Iterable[LessonId],
    skills: Iterable[SkillId],
) -> Iterator[Fault]:
    """Every lesson of the year stands in one strand, and every skill of the last page is taught."""
    order = tuple(lessons)
    seen: dict[LessonId, str] = {}
    for strand in strands:
        for lesson in strand.lessons:
            if lesson not in order:
                what = f"No unit holds a lesson called '{lesson}'."
                yield Fault("strand", file, 1, what, nearest(lesson, order), f"strand {strand.title}")
            elif lesson in seen:
                what = f"{lesson} stands in the strand {seen[lesson]} already."
                yield Fault("strand", file, 1, what, "Keep one of the two.", f"strand {strand.title}")
            seen[lesson] = strand.title
    for lesson in order if strands else ():
        if lesson not in seen:
            yield Fault(
                "strand", file, 1, f"{lesson} stands in no strand.", "Add it to the one it belongs to."
            )
    known = frozenset(skills)
    for foundation in foundations:
        for skill in foundation.skills:
            if skill not in known:
                what, where = f"No lesson teaches '{skill}'.", f"foundation {foundation.title['en']}"
                yield Fault("foundation", file, 1, what, nearest(skill, known), where)


def _text(entry: Entry | None) -> str:
    return "" if entry is None else entry.text or ""
