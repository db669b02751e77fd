"""How near placement comes to the truth, for simulated students who come with part of the course behind
them.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from random import Random

from bot.planner.placement import READY, SUCCESSORS, Answer, next_item, placed
from bot.planner.syllabus import Syllabus
from bot.simulation.course import course_rows
from bot.simulation.policies import FIRST_DAY, Boxes
from bot.simulation.report import StudentClassError, course_at, student_class
from bot.simulation.students import Student

REVIEW = 24
"""Review items a day, by boxes, that such a student had before."""


@dataclass(frozen=True, slots=True)
class Placing:
    """One student's placement: lesson numbers (one past the last: the whole course), items asked, how
    sure."""

    truth: int
    start: int
    asked: int
    sure: float


def place_many(
    student: str, count: int, seed: int, processes: int = 2, content: Path | None = None
) -> list[Placing]:
    """Place `count` students of one of `OWN_STUDENTS`, or of a class from a file that has `chance`.

    `content` is the written course's folder; without it, or if it isn't whole, the sequence stands in.
    """
    if not hasattr(student_class(student), "chance"):
        raise StudentClassError(
            f"{student} has no chance(skill, day), from which the true place could be read."
        )
    course_at(content)  # once here, so that processes that are forked find it read
    jobs = [(student, content, seed * 100_000 + k) for k in range(count)]
    if processes <= 1:
        return list(map(_place, jobs))
    with ProcessPoolExecutor(processes) as pool:
        return list(pool.map(_place, jobs, chunksize=4))


def _place(job: tuple[str, Path | None, int]) -> Placing:
    student, content, seed = job
    return place(student_class(student), course_at(content), seed)


def place(make: Callable[[int, Sequence[object]], Student], syllabus: Syllabus, seed: int) -> Placing:
    """Teach a student a part of the course (how much, by chance), then place them.

    The student class has to have `chance(skill, day)`: the truth is read from it.
    """
    rng = Random(f"placing {seed}")
    student = make(seed, course_rows(syllabus))
    reach = rng.randint(0, len(syllabus.lessons))
    before = Boxes(syllabus, REVIEW, seed)
    for n in range(1, reach + 1):
        student.study(n, n)
        for template in before.begin(n, n):
            right, _ = student.attempt(list(template.skills), n, rng)
            before.hear(n, template, bool(right))
    day = reach + 1
    truth = true_start(student, syllabus, day)
    answers: list[Answer] = []
    while (pick := next_item(syllabus, answers, FIRST_DAY, seed)) is not None:
        skills = syllabus.template[pick.template].skills
        right, _ = student.attempt(list(skills), day, rng)
        answers.append(Answer(pick.template, bool(right)))
    found = placed(syllabus, answers)
    start = syllabus.by_id[found.start].n if found.start is not None else len(syllabus.lessons) + 1
    return Placing(truth, start, found.asked, found.sure)


def true_start(student: Student, syllabus: Syllabus, day: int) -> int:
    """The first lesson for whose three successors the student knows less than 70 % of the prerequisites.

    Known is what has a chance of one half or more.
    """
    chance = student.chance  # type: ignore[attr-defined]
    count = len(syllabus.lessons)
    for n in range(1, count + 1):
        skills = [
            skill
            for later in syllabus.lessons[n : n + SUCCESSORS]
            for m in later.prerequisites
            for skill in syllabus.by_number[m].skills
        ]
        if skills and sum(chance(skill, day) >= 0.5 for skill in skills) < READY * len(skills):
            return n
    return count + 1
