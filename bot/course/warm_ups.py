"""Number facts: sheets of a dozen, and which stage comes next.

Mental-math strings and puzzles are ordinary templates (`Course.mental_math`, `Course.puzzles`).
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from bot.course.facts import STAGES, Fact, Stage
from bot.course.vary import Chance
from bot.vocabulary import LessonId

SHEET = 12
MISSES = 1
"""Misses that a sheet may have and still count towards its stage (common practice, no source)."""
OF_LAST = (3, 5)
"""So many of the last so many sheets have to be that good (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class FactSheet:
    """A sheet as sent: its facts in their order, which is also its key."""

    stage: str
    seed: int
    facts: tuple[Fact, ...]


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


def passed(misses: Sequence[int]) -> bool:
    """Whether a stage is passed by accuracy: of the last five sheets (newest last) three had at most one miss.

    The rate, where it is measured, is the family's business to add; on the untimed road accuracy alone counts.
    """
    good, of = OF_LAST
    return sum(miss <= MISSES for miss in list(misses)[-of:]) >= good


def open_stages(passed_stages: Collection[str], met: Collection[LessonId] | None = None) -> list[Stage]:
    """Stages that a student may work at: not passed yet, everything they need passed, their lesson met.

    `met` are the lessons that were met; None stands for all.
    """
    done = set(passed_stages)
    return [
        stage
        for stage in STAGES.values()
        if stage.id not in done
        and done >= set(stage.needs)
        and (met is None or stage.opens_after is None or stage.opens_after in met)
    ]
