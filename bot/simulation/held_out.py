"""Students that nothing was tuned on: they only judge. Each forgets by yet another law."""

from __future__ import annotations

import math
from collections.abc import Sequence
from random import Random

from bot.simulation.course import CourseRow
from bot.simulation.students import Person


class TwoSpeeds(Person):
    """A quick strength that fades within days and a slow one that fades within a year; practice feeds the
    quick one, and the slow one learns from it, most when the quick one had faded.
    """

    SPREAD = 0.8
    RATE = 0.16
    QUICK_DAYS, SLOW_DAYS = 6.0, 250.0

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        super().__init__(seed, course)
        self.strength: dict[str, tuple[float, float, int]] = {}

    def chance(self, skill: str, day: int) -> float:
        if skill not in self.strength:
            return 0.0
        quick, slow = self._now(skill, day)
        return 1 / (1 + math.exp(-(3.2 * (slow + 0.6 * quick * (1 - slow)) - 0.9) * 2.2))

    def _now(self, skill: str, day: int) -> tuple[float, float]:
        quick, slow, met = self.strength[skill]
        gone = day - met
        return quick * math.exp(-gone / self.QUICK_DAYS), slow * math.exp(-gone / self.SLOW_DAYS)

    def _meet(self, skill: str, day: int, ground: float) -> None:
        self.strength[skill] = (0.6 + 0.3 * ground, min(0.5, 0.12 * self.ease[skill] * ground), day)

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        if skill not in self.strength:
            return
        quick, slow = self._now(skill, day)
        rate = min(0.5, self.RATE * self.ease[skill]) * worth * (1.0 if right else 0.6)
        slow += rate * (1 - slow) * (1 - 0.75 * quick)
        self.strength[skill] = (quick + 0.5 * worth * (1 - quick), slow, day)


class AllOrNothing(Person):
    """Knows a skill or doesn't. What is known may be lost on any day, less likely after each success on
    another day; a miss teaches it again with some luck.
    """

    SPREAD = 0.9
    RISK = 0.08
    LEAST = 0.004

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        super().__init__(seed, course)
        self.known: dict[str, float] = {}
        self.risk: dict[str, float] = {}
        self.last: dict[str, int] = {}
        self.luck = Random(f"luck {seed}")

    def chance(self, skill: str, day: int) -> float:
        if skill not in self.known:
            return 0.0
        return self.known[skill] * math.exp(-self.risk[skill] * (day - self.last[skill]))

    def attempt(self, skills: Sequence[str], day: int, rng: Random) -> tuple[bool, float]:
        for skill in skills:  # settle what chance left open since the last look
            if skill in self.known:
                self.known[skill] = float(rng.random() < self.chance(skill, day))
                self._touch(skill, day)
        return super().attempt(skills, day, rng)

    def _meet(self, skill: str, day: int, ground: float) -> None:
        self.known[skill] = 0.55 + 0.35 * ground
        self.risk[skill] = self.RISK / self.ease[skill]
        self.last[skill] = day

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        if skill not in self.known:
            return
        if self.known[skill] < 0.5:
            self.known[skill] = min(0.85, 0.45 * self.ease[skill] ** 0.5) * worth
        elif right:
            self.risk[skill] = max(self.LEAST, self.risk[skill] * (1 - 0.22 * worth))

    def _touch(self, skill: str, day: int) -> None:
        if day > self.last[skill]:
            self.risk[skill] *= 0.9
        self.last[skill] = day


class Linked(Person):
    """Forgets by a power of time; practice of a skill refreshes what it is built on, and takes only as well
    as that is known.
    """

    SPREAD = 1.0
    RATE = 0.45

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        super().__init__(seed, course)
        self.span: dict[str, float] = {}
        self.last: dict[str, int] = {}

    def chance(self, skill: str, day: int) -> float:
        if skill not in self.span:
            return 0.0
        return float((1 + (day - self.last[skill] + 0.5) / self.span[skill]) ** -0.7)

    def _meet(self, skill: str, day: int, ground: float) -> None:
        self.span[skill] = 2.5 * self.ease[skill] * (0.3 + 0.7 * ground)
        self.last[skill] = day

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        if skill not in self.span:
            return
        below = self.built_on[skill]
        ground = sum(self.chance(earlier, day) for earlier in below) / len(below) if below else 1.0
        self._strengthen(skill, day, self.RATE * (1.0 if right else 0.5) * worth * (0.5 + 0.5 * ground))
        if right:
            for earlier in below:
                if earlier in self.span:
                    self._strengthen(earlier, day, 0.15 * worth)

    def _strengthen(self, skill: str, day: int, by: float) -> None:
        chance = self.chance(skill, day)
        self.span[skill] = min(900.0, self.span[skill] * (1 + by * (0.25 + (1 - chance))) + 0.6 * by)
        if by > 0.3:
            self.last[skill] = day


class LogOdds(Person):
    """The odds of knowing grow by a power of the practices counted and fall by a power of the days since the
    last; a practice counts less the surer the skill was, and the more there are, the slower it fades.

    Of all the students here this one comes nearest to what a student fitted to a published trial of mixed
    practice showed: fixed lags end the year near 85 % with 24 items and near 80 % with 16, and a choice that
    reads the student's head gains between three and six points over usual practice, most with few items.
    """

    SPREAD = 1.3
    BASE, GROWTH = -0.55, 1.16
    FADING, SLOWER = 0.46, 0.37
    SURE = 0.6

    def __init__(self, seed: int, course: Sequence[CourseRow]) -> None:
        super().__init__(seed, course)
        self.count: dict[str, float] = {}
        self.last: dict[str, int] = {}

    def chance(self, skill: str, day: int) -> float:
        if skill not in self.count:
            return 0.0
        count = 1 + self.count[skill]
        faded = self.FADING * math.log(1 + day - self.last[skill]) / count**self.SLOWER
        odds = self.BASE + math.log(self.ease[skill]) + self.GROWTH * math.log(count) - faded
        return 1 / (1 + math.exp(-odds))

    def _meet(self, skill: str, day: int, ground: float) -> None:
        self.count[skill], self.last[skill] = 0.3 + ground, day

    def _practise(self, skill: str, day: int, right: bool, worth: float) -> None:
        if skill not in self.count:
            return
        known = self.chance(skill, day)
        self.count[skill] += worth * (1.0 if right else 0.6) * (1 - self.SURE * known)
        self.last[skill] = day
