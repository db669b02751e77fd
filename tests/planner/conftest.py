"""A course to plan with, and a student who lives school days by the planner's own proposals."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from random import Random

import pytest
from hypothesis import settings

from bot.planner.history import Done, History, PastDay, Wishes
from bot.planner.memory import Evidence, Memory, remember_item
from bot.planner.plan import DayPlan
from bot.planner.plan_day import plan_day
from bot.planner.syllabus import Syllabus
from bot.simulation.course import read_sequence
from bot.vocabulary import Outcome, Part, SkillId

FIRST_DAY = date(2026, 8, 31)

settings.register_profile("no-clock", deadline=None)
settings.load_profile("no-clock")


@dataclass
class Child:
    """Lives one school day after another; answers by chance, the same for the same seed."""

    syllabus: Syllabus
    seed: int = 1
    knows: float = 0.8
    wishes: Wishes = field(default_factory=Wishes)
    memories: dict[SkillId, Memory] = field(default_factory=dict)
    days: list[PastDay] = field(default_factory=list)
    taught: set[int] = field(default_factory=set)
    sitting: int = 1
    day: date = FIRST_DAY
    days_away: int = 0
    finished: bool = True

    def history(self) -> History:
        return History(
            memories=dict(self.memories),
            days=tuple(self.days[-60:]),
            taught=frozenset(self.taught),
            sitting=self.sitting,
            school_day=len(self.days) + 1,
            days_away=self.days_away,
            light_day=self.day.weekday() == 4,
        )

    def plan(self, wishes: Wishes | None = None) -> DayPlan:
        return plan_day(self.day, self.syllabus, self.history(), wishes or self.wishes, self.seed)

    def live(self, wishes: Wishes | None = None) -> DayPlan:
        plan = self.plan(wishes)
        rng = Random(f"{self.seed} {self.day}")
        done = []
        for part, picks in ((Part.GUIDED, plan.guided), (Part.REVIEW, plan.review)):
            for pick in picks:
                skills = self.syllabus.template[pick.template].skills
                outcome = Outcome.FIRST_TRY if rng.random() < self.knows else Outcome.UNSOLVED
                done.append(Done(pick.template, skills, outcome, part=part))
                told = Evidence(outcome)
                self.memories |= remember_item(
                    self.memories, skills, self.syllabus.contained_in, told, self.day
                )
        lesson = self.syllabus.by_id[plan.lesson] if plan.lesson else None
        if lesson is not None and plan.sitting == lesson.sittings:
            self.taught.add(lesson.n)
            self.sitting = 1
        elif lesson is not None:
            self.sitting = 2
        self.days.append(
            PastDay(
                self.day,
                len(self.days) + 1,
                tuple(done),
                lesson.n if lesson else None,
                plan.size,
                plan.minutes,
                self.finished,
                self.days_away,
            )
        )
        self.days_away = 0
        self.next_day()
        return plan

    def next_day(self) -> None:
        self.day += timedelta(days=3 if self.day.weekday() == 4 else 1)

    def is_away(self, days: int) -> None:
        for _ in range(days):
            self.next_day()
        self.days_away = days


@pytest.fixture(scope="session")
def course() -> Syllabus:
    return read_sequence()


@pytest.fixture
def child(course: Syllabus) -> Child:
    return Child(course)


@pytest.fixture
def with_tests(course: Syllabus) -> Callable[..., Syllabus]:
    def made(*tests: object) -> Syllabus:
        return replace(course, tests=tests)

    return made


@pytest.fixture(scope="session")
def make_child(course: Syllabus) -> Callable[..., Child]:
    def made(**with_what: object) -> Child:
        return Child(course, **with_what)

    return made
