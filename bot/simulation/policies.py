"""Ways to choose a day's review items: the planner, and four usual practices to compare it with.

All get the same timetable, the same templates and the same number of items a day.
"""

from __future__ import annotations

from datetime import date, timedelta
from math import prod
from random import Random
from typing import Protocol

from bot.planner.history import WINDOW, Done, History, PastDay, Wishes
from bot.planner.memory import Evidence, Memory, recall, remember_item
from bot.planner.plan_day import plan_day
from bot.planner.syllabus import Syllabus, Template
from bot.vocabulary import Outcome, SkillId

LAGS = (1, 2, 5, 10, 20, 40)
"""School days after its lesson on which fixed lags bring a lesson's items back."""
BOXES = (1, 2, 4, 8, 16, 32)
"""School days that a lesson waits in each box."""
FIRST_DAY = date(2026, 8, 31)


class Policy(Protocol):
    """Chooses a day's items one list at a time, and hears how they went."""

    def begin(self, day: int, lesson: int | None) -> list[Template]:
        """Items of school day `day`, at least one and at most the day's number, in order."""

    def hear(self, day: int, template: Template, right: bool) -> None:
        """How an item of today went at first try."""

    def expected(self, day: int, template: Template) -> float | None:
        """Chance that the item goes right at first try; None if the policy has no idea."""


class _Usual:
    def __init__(self, syllabus: Syllabus, items: int, seed: int) -> None:
        self.syllabus, self.items, self.rng = syllabus, items, Random(f"policy {seed}")
        self.taught: dict[int, int] = {}
        self.turn: dict[int, int] = {}

    def begin(self, day: int, lesson: int | None) -> list[Template]:
        if lesson is not None:
            self.taught[lesson] = day
        return [self._next(n) for n in self._lessons(day)]

    def hear(self, day: int, template: Template, right: bool) -> None:
        pass

    def expected(self, day: int, template: Template) -> float | None:
        return None

    def _lessons(self, day: int) -> list[int]:
        raise NotImplementedError

    def _next(self, n: int) -> Template:
        """A lesson's templates come by turns."""
        templates = self.syllabus.templates_of[self.syllabus.by_number[n].id]
        self.turn[n] = self.turn.get(n, -1) + 1
        return templates[self.turn[n] % len(templates)]


class Massed(_Usual):
    """All items on today's lesson; on a day without one, on the lesson before."""

    def _lessons(self, day: int) -> list[int]:
        return [max(self.taught)] * self.items


class FixedLags(_Usual):
    """Today's lesson and those taught 1, 2, 5, 10, 20 and 40 school days ago, by turns; on a day when none of
    them is due, the lessons that were due last.
    """

    def _lessons(self, day: int) -> list[int]:
        due = [n for n, met in self.taught.items() if day - met in (0, *LAGS)]
        back = 1
        while not due:
            due = [n for n, met in self.taught.items() if day - back - met in (0, *LAGS)]
            back += 1
        self.rng.shuffle(due)
        return [due[k % len(due)] for k in range(self.items)]


class AtRandom(_Usual):
    """Any lesson taught so far, each as likely as the other."""

    def _lessons(self, day: int) -> list[int]:
        taught = sorted(self.taught)
        return [self.rng.choice(taught) for _ in range(self.items)]


class Boxes(_Usual):
    """Right: next box, wrong: first box. A lesson is due when it has waited as long as its box says; the most
    overdue come first, and when fewer are due than the day holds, the next due.
    """

    def __init__(self, syllabus: Syllabus, items: int, seed: int) -> None:
        super().__init__(syllabus, items, seed)
        self.box: dict[int, int] = {}
        self.due: dict[int, int] = {}

    def _lessons(self, day: int) -> list[int]:
        for n, met in self.taught.items():
            if n not in self.box:
                self.box[n], self.due[n] = 0, met
        line = sorted(self.taught, key=lambda n: (self.due[n], self.rng.random()))
        return [line[k % len(line)] for k in range(self.items)]

    def hear(self, day: int, template: Template, right: bool) -> None:
        n = self.syllabus.by_id[template.lesson].n
        self.box[n] = min(self.box[n] + 1, len(BOXES) - 1) if right else 0
        self.due[n] = day + BOXES[self.box[n]]


class Planner:
    """The real planner, a plan a day."""

    def __init__(self, syllabus: Syllabus, items: int, seed: int) -> None:
        self.syllabus, self.items, self.seed = syllabus, items, seed
        self.memories: dict[SkillId, Memory] = {}
        self.days: list[PastDay] = []
        self.done: list[Done] = []
        self.taught: set[int] = set()
        self.lesson: int | None = None

    def begin(self, day: int, lesson: int | None) -> list[Template]:
        self._close(day - 1)
        when = _date_of(day)
        wishes = Wishes(
            review_items=self.items,
            minutes=24 * 60,
            lesson=self.syllabus.by_number[lesson].id if lesson is not None else None,
        )
        history = History(
            memories=self.memories,
            days=tuple(self.days[-WINDOW:]),
            taught=frozenset(self.taught),
            school_day=day,
            light_day=lesson is None,
        )
        plan = plan_day(when, self.syllabus, history, wishes, self.seed)
        self.lesson = lesson
        if lesson is not None:
            met = self.syllabus.by_number[lesson]
            told = Evidence(Outcome.FIRST_TRY, lesson=True)
            self.memories.update(
                remember_item(self.memories, met.skills, self.syllabus.contained_in, told, when)
            )
        picks = [self.syllabus.template[pick.template] for pick in plan.review]
        if not picks:
            picks = list(self.syllabus.templates_of[self.syllabus.by_number[lesson or max(self.taught)].id])
        # In the first days too little is taught for the day's number of items: what there is comes again.
        return [picks[k % len(picks)] for k in range(self.items)]

    def hear(self, day: int, template: Template, right: bool) -> None:
        outcome = Outcome.FIRST_TRY if right else Outcome.UNSOLVED
        self.done.append(Done(template.id, template.skills, outcome))
        told = Evidence(outcome)
        self.memories.update(
            remember_item(self.memories, template.skills, self.syllabus.contained_in, told, _date_of(day))
        )

    def expected(self, day: int, template: Template) -> float | None:
        """By memory alone; nothing is foretold of a skill met earlier the same day."""
        when = _date_of(day)
        held = [self.memories.get(skill) for skill in template.skills]
        if any(memory is None or memory.last == when for memory in held):
            return None
        return prod(recall(memory, when) for memory in held if memory is not None)

    def _close(self, day: int) -> None:
        if day < 1:
            return
        self.days.append(PastDay(_date_of(day), day, tuple(self.done), self.lesson, size=self.items))
        if self.lesson is not None:
            self.taught.add(self.lesson)
        self.done = []


POLICIES: dict[str, type[_Usual] | type[Planner]] = {
    "planner": Planner,
    "fixed-lags": FixedLags,
    "random": AtRandom,
    "massed": Massed,
    "boxes": Boxes,
}


def _date_of(day: int) -> date:
    """Five school days a week."""
    weeks, rest = divmod(day - 1, 5)
    return FIRST_DAY + timedelta(weeks=weeks, days=rest)
