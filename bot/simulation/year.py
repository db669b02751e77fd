"""One simulated student's year under one policy, and what is seen of it. Looking never teaches."""

from __future__ import annotations

import copy
import pickle
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from random import Random

from bot.planner.syllabus import Syllabus
from bot.simulation.course import Timetable, course_rows
from bot.simulation.policies import POLICIES
from bot.simulation.students import Student

SAMPLE_DAYS = 30
"""The last days on which a fixed mixed sample is looked at."""
LOOK_EVERY = 2
"""Days from one such look to the next."""
SAMPLE_ITEMS = 40
LOOKS = 25
"""Attempts of copies by which a skill's chance is judged where the student class can't be asked for it."""


@dataclass(frozen=True, slots=True)
class Year:
    """What was seen of one student. Shares are 0 to 1.

    `known_share`: on the last day; `known_mean`: over school days 30 to the last; `sample`: right at first
    try on a fixed mixed sample in the last 30 days; `first_try`: of all review items; `below_half`: share of
    the skills taught whose chance is below one half on the last day; `longest_gap`: school days that any
    skill was out of sight; `minutes`: of review, a day; `units`: known share by unit on the last day, in the
    order of the course; `curve`: known share day by day; `most_items`: of any day;
    `forecasts`: by tenth of the chance that the policy expected: items, sum of chances, right at first try.
    """

    known_share: float
    known_mean: float
    sample: float
    first_try: float
    below_half: float
    longest_gap: int
    minutes: float
    units: tuple[float, ...]
    curve: tuple[float, ...]
    most_items: int
    forecasts: tuple[tuple[int, float, int], ...] = ()


def live(
    make: Callable[[int, Sequence[object]], Student],
    syllabus: Syllabus,
    plan: Timetable,
    policy_name: str,
    items: int,
    seed: int,
) -> Year:
    """Live a whole year. `seed` makes the student and all chance; it is the same under every policy."""
    student = make(seed, course_rows(syllabus))
    policy = POLICIES[policy_name](syllabus, items, seed)
    days = len(plan.lessons)
    sample = _sample(syllabus, plan, seed)
    seen: dict[str, int] = {}
    longest = 0
    right_count = asked = most = 0
    seconds = 0.0
    curve: list[float] = []
    hits: list[bool] = []
    forecasts = [(0, 0.0, 0)] * 10
    for day, lesson in enumerate(plan.lessons, start=1):
        rng = Random(f"{seed} {day}")
        if lesson is not None:
            student.study(lesson, day)
            seen.update(dict.fromkeys(syllabus.by_number[lesson].skills, day))
        chosen = policy.begin(day, lesson)
        most = max(most, len(chosen))
        for template in chosen:
            right, took = student.attempt(list(template.skills), day, rng)
            _note(forecasts, policy.expected(day, template), bool(right))
            policy.hear(day, template, bool(right))
            right_count, asked, seconds = right_count + bool(right), asked + 1, seconds + took
            for skill in template.skills:
                longest = max(longest, day - seen.get(skill, day))
                seen[skill] = day
        curve.append(float(student.known_share(day)))
        if day > days - SAMPLE_DAYS and (days - day) % LOOK_EVERY == 0:
            hits += _look(student, sample, day, seed)
    longest = max([longest, *(days - last for last in seen.values())])
    chances = _chances(student, sorted(seen), days, seed)
    return Year(
        known_share=curve[-1],
        known_mean=sum(curve[29:]) / max(1, len(curve[29:])),
        sample=sum(hits) / len(hits),
        first_try=right_count / asked,
        below_half=sum(chance < 0.5 for chance in chances.values()) / len(chances),
        longest_gap=longest,
        minutes=seconds / 60 / days,
        units=_by_unit(syllabus, chances),
        curve=tuple(curve),
        most_items=most,
        forecasts=tuple(forecasts) if any(count for count, _, _ in forecasts) else (),
    )


def _note(forecasts: list[tuple[int, float, int]], expected: float | None, right: bool) -> None:
    if expected is not None:
        tenth = min(9, int(10 * expected))
        count, said, came = forecasts[tenth]
        forecasts[tenth] = (count + 1, said + expected, came + right)


def _sample(syllabus: Syllabus, plan: Timetable, seed: int) -> list[list[str]]:
    """Skills of a fixed mixed sample: evenly from the lessons that were taught before the last days."""
    taught = [n for n in plan.lessons[:-SAMPLE_DAYS] if n is not None] or [n for n in plan.lessons if n]
    rng = Random(f"sample {seed}")
    step = max(1.0, len(taught) / SAMPLE_ITEMS)
    start = rng.random() * step
    places = [int(start + k * step) for k in range(SAMPLE_ITEMS)]
    return [list(syllabus.by_number[taught[place]].skills) for place in places if place < len(taught)]


def _look(student: Student, sample: Sequence[list[str]], day: int, seed: int) -> list[bool]:
    again = _copier(student)
    return [
        bool(again().attempt(skills, day, Random(f"look {seed} {day} {k}"))[0])
        for k, skills in enumerate(sample)
    ]


def _chances(student: Student, skills: Sequence[str], day: int, seed: int) -> dict[str, float]:
    chance = getattr(student, "chance", None)
    if chance is not None:
        return {skill: float(chance(skill, day)) for skill in skills}
    again = _copier(student)
    return {
        skill: sum(
            bool(again().attempt([skill], day, Random(f"{seed} {skill} {k}"))[0]) for k in range(LOOKS)
        )
        / LOOKS
        for skill in skills
    }


def _copier(student: Student) -> Callable[[], Student]:
    """Makes copies of the student as it is now; by pickle, which is several times faster, where it can be."""
    try:
        frozen = pickle.dumps(student, protocol=pickle.HIGHEST_PROTOCOL)
        pickle.loads(frozen)
    except Exception:  # whatever a foreign class raises: it can still be copied the slow way
        return lambda: copy.deepcopy(student)
    return lambda: pickle.loads(frozen)


def _by_unit(syllabus: Syllabus, chances: dict[str, float]) -> tuple[float, ...]:
    units: dict[int, list[float]] = {}
    for lesson in syllabus.lessons:
        for skill in lesson.skills:
            if skill in chances:
                units.setdefault(lesson.unit, []).append(chances[skill])
    return tuple(sum(found) / len(found) for _, found in sorted(units.items()))
