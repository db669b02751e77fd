"""What we believe of one skill for one student: how firm it is, how hard it has been, when it was last met.

The model is FSRS-6 from the library `fsrs`, without its random spread of due dates, on whole calendar days
of the student's own time zone. It hears outcomes, hints and missteps, never the time taken.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time

from fsrs import Card, Rating, Scheduler, State

from bot.vocabulary import Outcome, SkillId

STEADY = 0.8
"""Of a skill with this recall or more we say steady, of one below it shaky. Common practice, no source."""

CONTAINED = 0.1
"""How much of a practice an earlier skill gets when a later one that contains it went right (0 to 1)."""

# Learning steps are for cards shown again within minutes; a school skill goes straight into review.
SCHEDULER = Scheduler(learning_steps=(), relearning_steps=(), enable_fuzzing=False)
_W = SCHEDULER.parameters
_DECAY = -_W[20]
_FACTOR = 0.9 ** (1 / _DECAY) - 1
_NOON = time(12, tzinfo=UTC)


@dataclass(frozen=True, slots=True)
class Memory:
    """What is believed of one skill.

    `stability`: days until the chance of knowing it falls to 90 %. `difficulty`: 1 to 10. `last`: the school
    day on which it was last met. `met` and `missed` count items, for explaining only.
    """

    skill: SkillId
    stability: float
    difficulty: float
    last: date
    met: int = 0
    missed: int = 0


@dataclass(frozen=True, slots=True)
class Evidence:
    """What one item, or one lesson, told about a skill.

    `hints` taken before the answer; `misstep` the name of the likely wrong path, if one was recognised;
    `lesson` marks the skill's own lesson (card, worked example, guided practice) rather than an item.
    """

    outcome: Outcome
    hints: int = 0
    misstep: str | None = None
    lesson: bool = False


def remember(before: Memory | None, skill: SkillId, evidence: Evidence, at: date) -> Memory | None:
    """What is believed after the evidence of day `at`. Untouched and excused items tell nothing."""
    rating = _rating(evidence)
    if rating is None:
        return before
    card = Card(
        card_id=1,
        state=State.Learning if before is None else State.Review,
        step=0 if before is None else None,
        stability=before.stability if before else None,
        difficulty=before.difficulty if before else None,
        due=_noon(at),
        last_review=_noon(before.last) if before else None,
    )
    card, _ = SCHEDULER.review_card(card, rating, _noon(at))
    assert card.stability is not None and card.difficulty is not None
    asked = 0 if evidence.lesson else 1
    return Memory(
        skill=skill,
        stability=card.stability,
        difficulty=card.difficulty,
        last=at,
        met=(before.met if before else 0) + asked,
        missed=(before.missed if before else 0) + (asked if evidence.outcome is not Outcome.FIRST_TRY else 0),
    )


def remember_item(
    memories: Mapping[SkillId, Memory],
    skills: Sequence[SkillId],
    contained_in: Mapping[SkillId, tuple[SkillId, ...]],
    evidence: Evidence,
    at: date,
) -> dict[SkillId, Memory]:
    """The memories that change by one item: all its skills, and on success the earlier skills inside them.

    A miss is laid on the skill that was likeliest to fail; the others are only a little less sure, since one
    of them at most was at fault as far as we can tell.
    """
    changed: dict[SkillId, Memory] = {}
    weakest = min(skills, key=lambda skill: _chance(memories.get(skill), at), default=None)
    for skill in skills:
        told = evidence
        if _missed(evidence) and skill != weakest:
            told = replace(evidence, outcome=Outcome.LATER_TRY, hints=0, misstep=None)
        after = remember(memories.get(skill), skill, told, at)
        if after is not None:
            changed[skill] = after
    if evidence.outcome is Outcome.FIRST_TRY:
        for skill in skills:
            for earlier in contained_in.get(skill, ()):
                held = memories.get(earlier)
                if held is not None and earlier not in changed:
                    changed[earlier] = _refreshed(held, at)
    return changed


def recall(memory: Memory, at: date) -> float:
    """Chance (0 to 1) that the skill is known on day `at`."""
    return recall_after(memory.stability, (at - memory.last).days)


def recall_after(stability: float, days: float) -> float:
    """The forgetting curve: chance of knowing after `days` at a stability, both in days."""
    return float((1 + _FACTOR * max(0.0, days) / stability) ** _DECAY)


def gain(memory: Memory, at: date, ahead: int, relied_on: float = math.inf) -> float:
    """How much likelier the skill is known `ahead` days from `at` if it is practised on `at` than if it
    isn't.

    A stability above `relied_on` days counts as that many.
    """
    gone = max(0, (at - memory.last).days)
    stability, difficulty = min(memory.stability, relied_on), memory.difficulty
    now = recall_after(stability, gone)
    idle = recall_after(stability, gone + ahead)
    right = _after_right(stability, difficulty, gone)
    if gone == 0:
        wrong = stability * math.exp(_W[17] * (_W[18] - 2)) * stability ** -_W[19]
        now = 0.8  # a curve that starts at 1 knows nothing of the first hour; what a lesson leaves is less
    else:
        wrong = min(
            _W[11] * difficulty ** -_W[12] * ((stability + 1) ** _W[13] - 1) * math.exp((1 - now) * _W[14]),
            stability / math.exp(_W[17] * _W[18]),
        )
    return now * recall_after(right, ahead) + (1 - now) * recall_after(max(wrong, 0.001), ahead) - idle


def _after_right(stability: float, difficulty: float, gone: int) -> float:
    """Stability after a first-try success, `gone` days after the skill was last met: what the library says.

    Said here once more because making and copying the library's cards takes most of a simulated year.
    """
    if gone <= 0:
        times = max(1.0, math.exp(_W[17] * _W[18]) * math.pow(stability, -_W[19]))
    else:
        lost = 1 - recall_after(stability, gone)
        room = (11 - difficulty) * math.pow(stability, -_W[9])
        times = 1 + math.exp(_W[8]) * room * (math.exp(lost * _W[10]) - 1)
    return stability * times


def replay(
    events: Iterable[tuple[date, Sequence[SkillId], Evidence]],
    contained_in: Mapping[SkillId, tuple[SkillId, ...]],
) -> dict[SkillId, Memory]:
    """All memories of a student, rebuilt from what happened, in the order in which it happened."""
    memories: dict[SkillId, Memory] = {}
    for at, skills, evidence in events:
        memories.update(remember_item(memories, skills, contained_in, evidence, at))
    return memories


def _rating(evidence: Evidence) -> Rating | None:
    match evidence.outcome:
        case Outcome.UNTOUCHED | Outcome.EXCUSED:
            return None
        case Outcome.UNSOLVED:
            return Rating.Again
        case Outcome.FIRST_TRY:
            return Rating.Good if evidence.hints == 0 else Rating.Hard
        case Outcome.LATER_TRY:
            # Put right alone, without a hint and without a known wrong path: most likely carelessness.
            return Rating.Hard if evidence.hints == 0 and evidence.misstep is None else Rating.Again


def _missed(evidence: Evidence) -> bool:
    return _rating(evidence) is Rating.Again


def _chance(memory: Memory | None, at: date) -> float:
    return 0.0 if memory is None else recall(memory, at)


def _refreshed(memory: Memory, at: date) -> Memory:
    """Part of a practice: the stability moves part of the way, and so does the day it was last met."""
    full = _after_right(memory.stability, memory.difficulty, (at - memory.last).days)
    stability = memory.stability + CONTAINED * (full - memory.stability)
    return replace(memory, stability=stability, last=memory.last + CONTAINED * (at - memory.last))


def _noon(day: date) -> datetime:
    return datetime.combine(day, _NOON)
