"""Number facts: sheets of a dozen, what was answered on them, and which stage comes next.

Mental-math strings and puzzles are ordinary templates (`Course.mental_math`, `Course.puzzles`).
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from bot.course.vary import Chance

SHEET = 12
TYPING = 10
MISSES = 1
"""Misses that a sheet may have and still count towards its stage (common practice, no source)."""
OF_LAST = (3, 5)
"""So many of the last so many sheets have to be that good (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Fact:
    """One number fact. `id` is its name for the record of what is slow: "7 × 8"."""

    id: str
    answer: int

    @property
    def ask(self) -> str:
        """How it stands on the sheet."""
        return self.id


@dataclass(frozen=True, slots=True)
class Stage:
    """A family of facts. It opens once the stages it `needs` are passed."""

    id: str
    family: str
    holds: str
    needs: tuple[str, ...]
    facts: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class FactSheet:
    """A sheet as sent: its facts in their order, which is also its key."""

    stage: str
    seed: int
    facts: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class SheetLine:
    """One fact of an answered sheet; `typed` is None where nothing was given."""

    fact: Fact
    typed: int | None

    @property
    def right(self) -> bool:
        """Whether the answer is the fact's."""
        return self.typed == self.fact.answer


def fact_sheet(stage: str, seed: int, slow: Collection[str] = (), size: int = SHEET) -> FactSheet:
    """Make a sheet of a stage; the same arguments give the same sheet.

    `slow` names facts of the student's own that come slowly or go wrong: up to half the sheet is made of them.
    No fact stands twice while there are enough. Raises KeyError for a stage that isn't there.
    """
    chance = Chance(f"facts/{stage}/{seed}")
    facts = {fact.id: fact for fact in STAGES[stage].facts}
    wanted = [name for name in chance.shuffled(sorted(slow)) if name in facts][: size // 2]
    rest = [name for name in chance.shuffled(list(facts)) if name not in wanted]
    names = chance.shuffled((wanted + rest)[:size])
    return FactSheet(stage, seed, tuple(facts[name] for name in names))


def typing_sheet(seed: int) -> tuple[int, ...]:
    """Ten numbers to copy, so that a student's own typing time is known before any rate is worked out."""
    chance = Chance(f"typing/{seed}")
    return tuple(10 + chance.below(90) for _ in range(TYPING))


def read_sheet(typed: str, sheet: FactSheet) -> tuple[SheetLine, ...]:
    """Read the answers to a sheet, numbered ("3) 56  4) 42") or simply in order, with - or ? for one left out.

    Never raises; what can't be read counts as not given.
    """
    given: dict[int, int] = dict(_numbered(typed)) or dict(_in_order(typed))
    return tuple(SheetLine(fact, given.get(place)) for place, fact in enumerate(sheet.facts, 1))


def passed(misses: Sequence[int]) -> bool:
    """Whether a stage is passed by accuracy: of the last five sheets (newest last) three had at most one miss.

    The rate, where it is measured, is the family's business to add; on the untimed road accuracy alone counts.
    """
    good, of = OF_LAST
    return sum(miss <= MISSES for miss in list(misses)[-of:]) >= good


def open_stages(passed_stages: Collection[str]) -> list[Stage]:
    """Stages that a student may work at: not passed yet, everything they need passed."""
    done = set(passed_stages)
    return [stage for stage in STAGES.values() if stage.id not in done and done >= set(stage.needs)]


_NUMBERED = re.compile(r"(?<![\d.,])(\d{1,2})\s*[).:]\s*[–−-]?\s*(\d{1,6}|[-?–])(?![\d.,]*[).:])")
_WORD = re.compile(r"\d{1,6}|[-?–—]|\b[xX]\b")


def _numbered(typed: str) -> Iterator[tuple[int, int]]:
    for found in _NUMBERED.finditer(typed[:2000]):
        if found[2].isdigit():
            yield int(found[1]), int(found[2])


def _in_order(typed: str) -> Iterator[tuple[int, int]]:
    for place, found in enumerate(_WORD.finditer(typed[:2000]), 1):
        if found[0].isdigit():
            yield place, int(found[0])


# The stages: all facts of the four operations to 12 -----------------------------------------------------


def _sums() -> Iterator[Fact]:
    return (Fact(f"{a} + {b}", a + b) for a in range(1, 13) for b in range(1, 13))


def _differences() -> Iterator[Fact]:
    return (Fact(f"{a + b} − {a}", b) for a in range(1, 13) for b in range(1, 13))


def _products(*of: int) -> Iterator[Fact]:
    for a in of:
        for b in range(1, 13):
            yield Fact(f"{a} × {b}", a * b)
            if b not in of:
                yield Fact(f"{b} × {a}", a * b)


def _quotients() -> Iterator[Fact]:
    return (Fact(f"{a * b} ÷ {a}", b) for a in range(2, 13) for b in range(1, 13))


def _stage(id_: str, family: str, holds: str, needs: tuple[str, ...], facts: Iterator[Fact]) -> Stage:
    return Stage(id_, family, holds, needs, tuple(facts))


STAGES: dict[str, Stage] = {
    stage.id: stage
    for stage in (
        _stage("add-12", "addition facts", "sums with both numbers 1 to 12", (), _sums()),
        _stage(
            "sub-12", "subtraction facts", "differences that undo those sums", ("add-12",), _differences()
        ),
        _stage("mul-2-5-10", "multiplication facts", "times 2, 5 and 10", (), _products(2, 5, 10)),
        _stage("mul-3-4", "multiplication facts", "times 3 and 4", ("mul-2-5-10",), _products(3, 4)),
        _stage("mul-6-9", "multiplication facts", "times 6 and 9", ("mul-3-4",), _products(6, 9)),
        _stage("mul-7-8", "multiplication facts", "times 7 and 8", ("mul-6-9",), _products(7, 8)),
        _stage("mul-11-12", "multiplication facts", "times 11 and 12", ("mul-7-8",), _products(11, 12)),
        _stage(
            "div-12",
            "division facts",
            "quotients that undo products to 12 times 12",
            ("mul-7-8",),
            _quotients(),
        ),
    )
}
"""In the order in which they are met."""
