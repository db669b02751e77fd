"""The planner's memory against the test values that the library `fsrs` publishes.

Source: py-fsrs (MIT licence), tests of version 6.3, cases "review card" and "memo state": two sequences of answers
with the days until the next one, stability and difficulty after the second, and those after a first answer. Only
these numbers are carried. The library counts in minutes at first, the planner in days; within one day both take
its rule for the same day, so the values agree.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from bot.planner.memory import Evidence, remember
from bot.vocabulary import Outcome, SkillId

SKILL = SkillId("any")
GOOD, AGAIN = Evidence(Outcome.FIRST_TRY), Evidence(Outcome.UNSOLVED)
DAY = date(2022, 11, 29)

DAYS_TO_NEXT = [
    (GOOD, 0), (GOOD, 2), (GOOD, 11), (GOOD, 46), (GOOD, 163), (GOOD, 498), (AGAIN, 0),
    (AGAIN, 0), (GOOD, 2), (GOOD, 4), (GOOD, 7), (GOOD, 12), (GOOD, 21),
]  # fmt: skip


def test_days_until_ninety_percent_are_the_published_ones():
    held, at = None, DAY
    for told, days in DAYS_TO_NEXT:
        held = remember(held, SKILL, told, at)
        if days:  # 0 is a step of minutes, not of memory
            assert round(held.stability) == days
        at += timedelta(days=days)


def test_stability_and_difficulty_are_the_published_ones():
    held, at = None, DAY
    for told, days in [(AGAIN, 0), (GOOD, 0), (GOOD, 1), (GOOD, 3), (GOOD, 8), (GOOD, 21)]:
        at += timedelta(days=days)
        held = remember(held, SKILL, told, at)
    assert held.stability == pytest.approx(53.62691, abs=1e-4)
    assert held.difficulty == pytest.approx(6.3574867, abs=1e-4)


@pytest.mark.parametrize(
    ("told", "stability", "difficulty"),
    [
        (AGAIN, 0.212, 6.4133),
        (Evidence(Outcome.FIRST_TRY, hints=1), 1.2931, 5.11217071),
        (GOOD, 2.3065, 2.11810397),
    ],
)
def test_a_first_meeting_leaves_the_published_stability_and_difficulty(told, stability, difficulty):
    held = remember(None, SKILL, told, DAY)
    assert (held.stability, held.difficulty) == (pytest.approx(stability), pytest.approx(difficulty))
