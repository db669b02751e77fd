"""Does simulation show the effect that the published trials of mixed practice found? Direction only, not size.

Sources (from memory): D. Rohrer, R. F. Dedrick, S. Stershic, "Interleaved practice improves mathematics learning",
Journal of Educational Psychology 107 (2015) 900-908: seventh grade, mixed above blocked practice after one day and
further above after thirty; D. Rohrer, R. F. Dedrick, M. K. Hartwig, C.-N. Cheung, "A randomized controlled trial of
interleaved mathematics practice", Journal of Educational Psychology 112 (2020) 40-52: 54 classes, mixed above blocked
after a month. The simulated students were built with this in mind, so a wrong direction would show a fault, and the
right one proves nothing about children.
"""

from __future__ import annotations

from random import Random

import pytest

from bot.simulation.course import course_rows, read_sequence
from bot.simulation.report import OWN_STUDENTS, interval

LESSONS, ITEMS = (1, 2, 3, 4), 12


def after_practice(name: str, seed: int, mixed: bool, wait: int) -> float:
    """Four lessons in eight days, twelve items a day, all the same items: of one lesson at a time, or of all."""
    course = read_sequence()
    student = OWN_STUDENTS[name](seed, course_rows(course))
    rng = Random(f"trial {seed}")
    for n in LESSONS:
        student.study(n, 1)
    for day in range(1, 9):
        for place in range(ITEMS):
            n = LESSONS[place % 4] if mixed else LESSONS[(day - 1) // 2]
            student.attempt(list(course.by_number[n].skills), day, rng)
    return student.known_share(8 + wait)


@pytest.mark.parametrize("name", sorted(OWN_STUDENTS))
@pytest.mark.parametrize("wait", [1, 30])
def test_mixed_practice_beats_blocked_practice(name, wait):
    gap = interval(
        after_practice(name, seed, True, wait) - after_practice(name, seed, False, wait) for seed in range(30)
    )
    assert gap.low > 0
