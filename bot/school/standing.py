"""How an item and a day stand: outcomes from gradings, counts, and what they tell about skills."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from sqlalchemy.orm import Session

from bot.planner.memory import Evidence, remember_item
from bot.records import attempts, days
from bot.records.attempts import Attempt
from bot.records.days import Past, SchoolDay, Sent
from bot.records.memories import forget_memories, keep_memories, memories
from bot.school.school import School
from bot.vocabulary import ItemId, LessonId, Outcome, Part, SkillId, StudentId, Verdict

COUNTED = (Part.REVIEW, Part.GUIDED)
"""Parts whose items a digest counts; a warm-up and a test speak for themselves."""


def outcome_of(tried: Sequence[Attempt]) -> Outcome | None:
    """What the gradings that count make of an item; None while nothing was tried."""
    wrong = 0
    for attempt in tried:
        if attempt.verdict is Verdict.RIGHT:
            return Outcome.LATER_TRY if wrong else Outcome.FIRST_TRY
        if attempt.verdict is Verdict.WRONG or (attempt.verdict is Verdict.FORM and not attempt.free):
            wrong += 1
    return Outcome.UNSOLVED if tried else None


@dataclass(frozen=True, slots=True)
class Counts:
    """How many items stand how. `tries` are the tries that later-try items took, all together."""

    first_try: int = 0
    later_try: int = 0
    unsolved: int = 0
    excused: int = 0
    untouched: int = 0
    tries: int = 0

    @property
    def asked(self) -> int:
        """All items but the excused ones."""
        return self.first_try + self.later_try + self.unsolved + self.untouched


def count_up(items: Iterable[Sent | Past], parts: Sequence[Part] = (Part.REVIEW,)) -> Counts:
    """Count the items of some parts by outcome; an item without one was not reached."""
    tally = dict.fromkeys(Outcome, 0)
    tries = 0
    for item in items:
        if item.part not in parts:
            continue
        outcome = item.outcome or Outcome.UNTOUCHED
        tally[outcome] += 1
        if outcome is Outcome.LATER_TRY:
            tries += item.tries + 1
    return Counts(
        first_try=tally[Outcome.FIRST_TRY],
        later_try=tally[Outcome.LATER_TRY],
        unsolved=tally[Outcome.UNSOLVED],
        excused=tally[Outcome.EXCUSED],
        untouched=tally[Outcome.UNTOUCHED],
        tries=tries,
    )


def day_counts(s: Session, day: SchoolDay) -> tuple[str, int, int, int, int]:
    """A day of a week's chart: (date, first-try, later-try, unsolved, not reached) of its review."""
    counts = count_up(days.items_of(s, day.id))
    return day.date.isoformat(), counts.first_try, counts.later_try, counts.unsolved, counts.untouched


def learn_from_day(s: Session, school: School, day: SchoolDay) -> None:
    """Fold a closed day into what is believed of the student's skills."""
    _fold(s, school, day.student, [day])


def relearn(s: Session, school: School, student: StudentId) -> None:
    """Rebuild all that is believed of a student from what happened; needed when an old grading changes."""
    forget_memories(s, student)
    closed = [d for d in days.days_between(s, student, date.min, date.max) if d.closed_at is not None]
    _fold(s, school, student, closed)


def _fold(s: Session, school: School, student: StudentId, closed: Sequence[SchoolDay]) -> None:
    if not closed:
        return
    first, last = closed[0].date, closed[-1].date
    by_day: dict[date, list[Past]] = {}
    for item in days.past_items(s, student, first, last + timedelta(days=1)):
        by_day.setdefault(item.date, []).append(item)
    missteps = attempts.missteps_by_item(s, student, first)
    believed = memories(s, student)
    changed: set[SkillId] = set()
    for day in closed:
        for skills, evidence in _evidence(school, day, by_day.get(day.date, []), missteps):
            known = tuple(skill for skill in skills if skill)
            new = remember_item(believed, known, school.syllabus.contained_in, evidence, day.date)
            believed.update(new)
            changed.update(new)
    keep_memories(s, student, [believed[skill] for skill in changed])


def lessons_met(day: SchoolDay) -> list[LessonId]:
    """The lessons that were met on a day, in order; on a good day there may be two."""
    met = day.notes.get("met")
    return [LessonId(str(lesson)) for lesson in met] if isinstance(met, list) else []


def _evidence(
    school: School, day: SchoolDay, items: Sequence[Past], missteps: dict[ItemId, list[str]]
) -> Iterable[tuple[tuple[SkillId, ...], Evidence]]:
    for lesson in lessons_met(day):
        if lesson in school.syllabus.by_id:
            yield school.syllabus.by_id[lesson].skills, Evidence(Outcome.FIRST_TRY, lesson=True)
    for item in items:
        if item.part is Part.WARM_UP or item.outcome is None:
            continue
        if item.part is Part.PLACEMENT and item.outcome is not Outcome.FIRST_TRY:
            continue  # what wasn't met yet is no miss
        named = missteps.get(item.id)
        yield item.skills, Evidence(item.outcome, hints=item.hints, misstep=named[0] if named else None)
