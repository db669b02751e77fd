"""Where a new student starts: twelve to twenty items, each chosen by what the answers so far leave open.

It is a look at where to begin and what to patch, never a mark. Everything follows from the answers given so
far, so it may be broken off and taken up again on another day.

Belief: up to some lesson the student was taught, and of that part knows a share; beyond it next to nothing.
Both are unknown; each answer shifts the odds. A miss where knowledge was expected is followed down the
prerequisites.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from math import log

from bot.planner.plan import Because, Pick
from bot.planner.plan_day import seed_of
from bot.planner.syllabus import Lesson, Syllabus, Template
from bot.vocabulary import LessonId, SkillId, TemplateId, Why

FEWEST, MOST = 12, 20
SURE_ENOUGH = 0.9
"""Chance of being within `NEAR` lessons at which placement ends early."""
NEAR = 5
GIVEN_UP = 0.1
"""Chance of being within `NEAR` lessons that is given up for a start nearer the middle of what is likely."""
READY = 0.7
"""Share of the prerequisites of the next three lessons that a student needs to know to go on."""
SUCCESSORS = 3
LEVELS = (0.95, 0.85, 0.7, 0.5)
"""Share of what was taught that a student may still know."""
BEYOND = 0.04
SLIP, GUESS = 0.05, 0.06
"""Chance of missing what is known, and of hitting what isn't. Common practice, no source."""
FRESH, NEW_LESSON = 8, 0.5
"""Lessons for which a new one is not yet firm, and how firm it is at first (a share)."""
TWICE = 2
"""Most items of one lesson."""
DOWN = 4
"""Most items spent on following misses down the prerequisites."""


@dataclass(frozen=True, slots=True)
class Answer:
    """One placement item that was answered: right at first try or not."""

    template: TemplateId
    right: bool


@dataclass(frozen=True, slots=True)
class Placed:
    """Where to start and what to patch first. `sure` is the chance (0 to 1) that the start is within 5
    lessons.

    `start` is None when all of the course seems known. `done` says whether more items would help.
    """

    start: LessonId | None
    patch: tuple[SkillId, ...]
    sure: float
    asked: int
    done: bool


def next_item(syllabus: Syllabus, answers: Sequence[Answer], day: date, seed: int) -> Pick | None:
    """The next item to ask, None when it is sure enough where to start or twenty were asked."""
    if len(answers) >= MOST or not syllabus.lessons:
        return None
    odds = _odds(syllabus, answers)
    if len(answers) >= FEWEST and _placed(syllabus, answers, odds)[1] >= SURE_ENOUGH:
        return None
    asked = _by_lesson(syllabus, answers)
    spent = {syllabus.by_number[n].id for n, rights in asked.items() if len(rights) >= TWICE}
    used = {answer.template for answer in answers}
    lesson = _follow_down(syllabus, answers, odds, asked) or _most_telling(syllabus, answers, odds, spent)
    template = _middle_template(syllabus, lesson, used) if lesson is not None else None
    if lesson is None or template is None:
        return None
    return Pick(
        template.id,
        seed_of(seed, day, template.id, 500 + len(answers)),
        Why.TEST,
        Because(skill=lesson.skills[0] if lesson.skills else None),
    )


def placed(syllabus: Syllabus, answers: Sequence[Answer]) -> Placed:
    """What the answers so far say. With none it says: start at the beginning, not sure at all."""
    odds = _odds(syllabus, answers)
    start, sure = _placed(syllabus, answers, odds)
    known = _known(syllabus, answers, odds)
    needed = _ancestors(syllabus, start + 1, start + 2 * SUCCESSORS)
    missed = {
        syllabus.by_id[syllabus.template[answer.template].lesson].n
        for answer in answers
        if not answer.right and answer.template in syllabus.template
    }
    patch = tuple(
        skill
        for lesson in syllabus.lessons
        if lesson.n < start and known[lesson.n] < 0.5 and (lesson.n in needed or lesson.n in missed)
        for skill in lesson.skills
    )
    done = len(answers) >= MOST or (len(answers) >= FEWEST and sure >= SURE_ENOUGH)
    at = syllabus.by_number.get(start)
    return Placed(at.id if at is not None else None, patch, sure, len(answers), done)


Odds = list[list[float]]
"""Chance of each pair of level (row) and number of lessons taught (column, from 0)."""


def _odds(syllabus: Syllabus, answers: Sequence[Answer]) -> Odds:
    count = len(syllabus.lessons)
    odds: Odds = [[1.0] * (count + 1) for _ in LEVELS]
    for n, rights in _by_lesson(syllabus, answers).items():
        beyond = _chance_of(BEYOND, rights)
        for row, level in enumerate(LEVELS):
            line = odds[row]
            fresh = [_chance_of(level * _settled(gone), rights) for gone in range(FRESH)]
            firm = _chance_of(level, rights)
            for k in range(count + 1):
                line[k] *= beyond if n > k else fresh[k - n] if k - n < FRESH else firm
    total = sum(map(sum, odds))
    return [[chance / total for chance in line] for line in odds]


def _by_lesson(syllabus: Syllabus, answers: Sequence[Answer]) -> dict[int, list[bool]]:
    found: dict[int, list[bool]] = {}
    for answer in answers:
        template = syllabus.template.get(answer.template)
        if template is not None and template.lesson in syllabus.by_id:
            found.setdefault(syllabus.by_id[template.lesson].n, []).append(answer.right)
    return found


def _settled(gone: int) -> float:
    """Share of its later firmness that a lesson has when `gone` lessons came after it: new ones are still
    shaky.
    """
    return 1.0 if gone >= FRESH else NEW_LESSON + (1 - NEW_LESSON) * gone / FRESH


def _chance_of(known: float, rights: Sequence[bool]) -> float:
    """Chance of these answers to items of one lesson that is known with that chance."""
    yes, no = known, 1 - known
    for right in rights:
        yes *= 1 - SLIP if right else SLIP
        no *= GUESS if right else 1 - GUESS
    return yes + no


def _known(syllabus: Syllabus, answers: Sequence[Answer], odds: Odds) -> dict[int, float]:
    """Chance that each lesson's skills are known: by the odds, and for lessons asked by the answer itself."""
    direct = _by_lesson(syllabus, answers)
    known: dict[int, float] = {}
    weight = [sum(line) for line in odds]
    for lesson in syllabus.lessons:
        rights = direct.get(lesson.n, ())
        known[lesson.n] = 0.0
        for row, level in enumerate(LEVELS):
            reach = sum(odds[row][lesson.n :])
            known[lesson.n] += reach * _after(level, rights) + (weight[row] - reach) * _after(BEYOND, rights)
    return known


def _after(known: float, answers: Sequence[bool]) -> float:
    for right in answers:
        yes = known * ((1 - SLIP) if right else SLIP)
        no = (1 - known) * (GUESS if right else 1 - GUESS)
        known = yes / (yes + no)
    return known


def _placed(syllabus: Syllabus, answers: Sequence[Answer], odds: Odds) -> tuple[int, float]:
    """Number of the lesson to start with (one past the last: all is known), and how sure that is."""
    starts: dict[int, float] = {}
    for row, level in enumerate(LEVELS):
        table = _starts(_shape(syllabus), level)
        for k, chance in enumerate(odds[row]):
            starts[table[k]] = starts.get(table[k], 0.0) + chance
    near = {n: _near(starts, n, NEAR) for n in range(1, len(syllabus.lessons) + 2)}
    best = max(near, key=lambda n: (near[n], starts.get(n, 0.0), -n))
    middle = _median_near(starts, best)
    # One lesson more or less behind a student can move the start by ten; what lies between reaches both.
    likely = [n for n in near if near[n] >= near[best] - GIVEN_UP]
    start = min(likely, key=lambda n: (abs(n - middle), n))
    return start, near[start]


def _near(starts: dict[int, float], n: int, width: int) -> float:
    return sum(chance for start, chance in starts.items() if abs(start - n) <= width)


def _median_near(starts: dict[int, float], n: int) -> int:
    """The middle of the chance that lies within reach of `n`."""
    around = sorted((start, chance) for start, chance in starts.items() if abs(start - n) <= NEAR)
    half = sum(chance for _, chance in around) / 2
    for start, chance in around:
        half -= chance
        if half <= 0:
            return start
    return n


Shape = tuple[tuple[int, ...], ...]
"""Prerequisites of each lesson, in the order of the course: all that a start depends on."""


def _shape(syllabus: Syllabus) -> Shape:
    return tuple(lesson.prerequisites for lesson in syllabus.lessons)


@lru_cache(maxsize=64)
def _starts(shape: Shape, level: float) -> tuple[int, ...]:
    """For each number of lessons taught: the first lesson whose three successors lack their prerequisites."""
    return tuple(_first_lack(shape, k, level) for k in range(len(shape) + 1))


def _first_lack(shape: Shape, taught: int, level: float) -> int:
    for n in range(1, len(shape) + 1):
        needed = [m for row in shape[n : n + SUCCESSORS] for m in row]
        # At the level itself a student who knows 70 % would be held back everywhere; what is shaky gets
        # patched.
        if needed and sum(m <= taught for m in needed) * max(level, READY + 0.01) < READY * len(needed):
            return n
    return len(shape) + 1


def _most_telling(
    syllabus: Syllabus, answers: Sequence[Answer], odds: Odds, spent: set[LessonId]
) -> Lesson | None:
    """The lesson whose answer is expected to settle most about the start (mutual information, in nats)."""
    shape, asked = _shape(syllabus), _by_lesson(syllabus, answers)
    starts = [_starts(shape, level) for level in LEVELS]
    likely = [
        (row, k, starts[row][k], chance)
        for row, line in enumerate(odds)
        for k, chance in enumerate(line)
        if chance > 0.0005
    ]
    weight: dict[int, float] = {}
    for _, _, start, chance in likely:
        weight[start] = weight.get(start, 0.0) + chance
    best: Lesson | None = None
    most = -1.0
    for lesson in syllabus.lessons:
        if lesson.id in spent or lesson.id not in syllabus.templates_of:
            continue
        rights = asked.get(lesson.n, ())
        hit: dict[int, float] = {}
        memo: dict[tuple[int, int], float] = {}
        for row, k, start, chance in likely:
            gone = max(-1, min(FRESH, k - lesson.n))
            if (row, gone) not in memo:
                known = LEVELS[row] * _settled(gone) if gone >= 0 else BEYOND
                after = _after(known, rights)
                memo[row, gone] = after * (1 - SLIP) + (1 - after) * GUESS
            hit[start] = hit.get(start, 0.0) + chance * memo[row, gone]
        total, all_hit = sum(weight.values()), sum(hit.values())
        settles = _entropy(all_hit / total) * total - sum(
            _entropy(hit[start] / share) * share for start, share in weight.items()
        )
        if settles > most:
            best, most = lesson, settles
    return best


def _entropy(p: float) -> float:
    return 0.0 if p <= 0 or p >= 1 else -(p * log(p) + (1 - p) * log(1 - p))


def _follow_down(
    syllabus: Syllabus, answers: Sequence[Answer], odds: Odds, asked: dict[int, list[bool]]
) -> Lesson | None:
    """After a miss where knowledge was expected: the latest of its prerequisites that wasn't asked yet."""
    if not answers or answers[-1].right or answers[-1].template not in syllabus.template:
        return None
    if sum(not answer.right for answer in answers) > DOWN:
        return None
    missed = syllabus.by_id[syllabus.template[answers[-1].template].lesson]
    expected = sum(sum(line[missed.n :]) for line in odds)
    below = [n for n in missed.prerequisites if n not in asked]
    return syllabus.by_number[max(below)] if expected > 0.6 and below else None


def _middle_template(syllabus: Syllabus, lesson: Lesson, used: set[TemplateId]) -> Template | None:
    fitting = [
        template
        for template in syllabus.templates_of.get(lesson.id, ())
        if template.test and template.id not in used
    ]
    return min(fitting, key=lambda template: (abs(template.level - 2), len(template.skills)), default=None)


def _ancestors(syllabus: Syllabus, first: int, last: int) -> set[int]:
    """Lessons that the lessons `first` to `last` are built on, directly or further down."""
    found: set[int] = set()
    waiting = [m for lesson in syllabus.lessons if first <= lesson.n <= last for m in lesson.prerequisites]
    while waiting:
        n = waiting.pop()
        if n not in found:
            found.add(n)
            waiting += syllabus.by_number[n].prerequisites
    return found
