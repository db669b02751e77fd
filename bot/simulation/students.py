"""Simulated students. Each forgets by a law of its own, and none by the planner's memory model.

A student class is made as `CLASS(seed, course)`, `course` being a list of `{"n", "skills",
"prerequisites"}`, and has the three methods of `Student`. A method `chance(skill, day)`, where there is one,
lets skills be looked at one by one; without it they are looked at through attempts of a copy, which teach
nobody.

Parameters are assumed, not measured: chosen so that fixed lags end the year near 85 % with 24 items a day.
"""

from __future__ import annotations

import math
from array import array
from collections.abc import Sequence
from random import Random
from typing import Protocol

from bot.simulation.course import CourseRow

SLIP = 0.04
"""Chance of a careless error of one who knows."""
GUESS = 0.05
"""Chance of hitting a typed answer without knowing."""
SAME_AGAIN = 0.5
"""What practice is worth that needs no choice of method, because the item before was of the same skills."""


class Student(Protocol):
    """What simulation asks of a student; days count school days from 1."""

    def study(self, lesson_n: int, day: int) -> None:
        """Meet a lesson: card, worked example, guided practice."""

    def attempt(self, skills: Sequence[str], day: int, rng: Random) -> tuple[bool, float]:
        """Try an item that needs all the skills, and learn from it: right at first try?, seconds taken."""

    def known_share(self, day: int) -> float:
        """Mean chance over all skills taught so far; looking teaches nothing."""


class Person:
    """What the students here share: abilities, and answering by the chance of the skills; forgetting is
    their own.
    """

    SPREAD = 0.55

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        rng = Random(f"student {seed}")
        self.skills_of = {row["n"]: tuple(row["skills"]) for row in course}
        self.built_on = {
            skill: tuple(earlier for n in row["prerequisites"] for earlier in self.skills_of[n])
            for row in course
            for skill in row["skills"]
        }
        self.able = math.exp(rng.gauss(0.0, 0.3))
        self.ease = {skill: self.able * math.exp(rng.gauss(0.0, self.SPREAD)) for skill in self.built_on}
        self.quick = math.exp(rng.gauss(0.0, 0.25))
        self.before: tuple[str, ...] = ()
        self.taught: list[str] = []

    def study(self, lesson_n: int, day: int) -> None:
        for skill in self.skills_of[lesson_n]:
            ground = [self.chance(earlier, day) for earlier in self.built_on[skill]]
            self._meet(skill, day, sum(ground) / len(ground) if ground else 1.0)
            self.taught.append(skill)

    def attempt(self, skills: Sequence[str], day: int, rng: Random) -> tuple[bool, float]:
        known = math.prod(self.chance(skill, day) for skill in skills)
        right = rng.random() < known * (1 - SLIP) + (1 - known) * GUESS
        worth = SAME_AGAIN if tuple(skills) == self.before else 1.0
        for skill in skills:
            self._practise(skill, day, right, worth)
        self.before = tuple(skills)
        return right, 55.0 * self.quick * (1.0 if right else 1.6) * (0.7 + 0.6 * rng.random())

    def known_share(self, day: int) -> float:
        return (
            sum(self.chance(skill, day) for skill in self.taught) / len(self.taught) if self.taught else 0.0
        )

    def chance(self, skill: str, day: int) -> float:
        raise NotImplementedError

    def _meet(self, skill: str, day: int, ground: float) -> None:
        raise NotImplementedError

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        raise NotImplementedError


class HalfLives(Person):
    """Exponential forgetting with a half-life that grows with each practice, most when the skill was nearly
    lost."""

    SPREAD = 0.9

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        super().__init__(seed, course)
        self.half_life: dict[str, float] = {}
        self.last: dict[str, int] = {}

    def chance(self, skill: str, day: int) -> float:
        if skill not in self.last:
            return 0.0
        return float(2 ** -((day - self.last[skill] + 0.3) / self.half_life[skill]))

    def _meet(self, skill: str, day: int, ground: float) -> None:
        self.half_life[skill] = 1.6 * self.ease[skill] * (0.4 + 0.6 * ground)
        self.last[skill] = day

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        if skill not in self.last:
            return
        chance = self.chance(skill, day)
        growth = 2.2 * (1 - chance) ** 0.6 * (1.0 if right else 0.4) * self.ease[skill] ** 0.3
        self.half_life[skill] = min(400.0, self.half_life[skill] * (1 + growth * worth))
        self.last[skill] = day


class ManyTraces(Person):
    """Every practice leaves a trace that fades by a power of time; one left while much is still known fades
    faster.
    """

    NOISE = 0.6
    FADE, FADE_MORE = 0.2, 0.2
    NEED = 0.15
    SPREAD = 1.1

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        super().__init__(seed, course)
        self.traces: dict[str, array[float]] = {}  # day, weight and fading of each, in a row: quick to copy
        self.need = {skill: self.NEED - math.log(ease) for skill, ease in self.ease.items()}

    def chance(self, skill: str, day: int) -> float:
        if skill not in self.traces:
            return 0.0
        row = self.traces[skill]
        total = sum(
            weight * (day - met + 0.5) ** -fade
            for met, weight, fade in zip(row[0::3], row[1::3], row[2::3], strict=True)
        )
        return 1 / (1 + math.exp((self.need[skill] - math.log(total)) / self.NOISE))

    def _meet(self, skill: str, day: int, ground: float) -> None:
        self.traces[skill] = array("d", (day, 0.5 + 1.5 * ground, self.FADE + self.FADE_MORE))

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        if skill in self.traces:
            fade = self.FADE + self.FADE_MORE * self.chance(skill, day)
            self.traces[skill].extend((day, (1.0 if right else 0.6) * worth, fade))
