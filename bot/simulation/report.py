"""Runs many years side by side and says what came of them, with 95 % intervals."""

from __future__ import annotations

import importlib.util
import sys
from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import lru_cache
from math import sqrt
from pathlib import Path
from statistics import NormalDist, fmean, stdev

from bot.planner.syllabus import Syllabus
from bot.simulation import held_out, students
from bot.simulation.course import syllabus_at, timetable
from bot.simulation.students import Student
from bot.simulation.year import Year, live

OWN_STUDENTS: dict[str, type] = {
    "half-lives": students.HalfLives,
    "many-traces": students.ManyTraces,
    "two-speeds": held_out.TwoSpeeds,
    "all-or-nothing": held_out.AllOrNothing,
    "linked": held_out.Linked,
    "log-odds": held_out.LogOdds,
}
"""The last four judge only, but for the weights that even units out: for those all six were looked at."""
NEEDED = ("study", "attempt", "known_share")


class StudentClassError(ValueError):
    """A student class that can't be used; the text says what to change."""


@dataclass(frozen=True, slots=True)
class Interval:
    """A mean with its 95 % interval (Student's t); one value has no interval, low and high are the mean
    then.
    """

    mean: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Run:
    """Years of the same students under one policy, in the same order under every policy."""

    policy: str
    items: int
    seed: int
    years: tuple[Year, ...]

    def values(self, name: str) -> list[float]:
        """One figure of every student."""
        return [float(getattr(year, name)) for year in self.years]

    def worst_unit(self) -> float:
        """How far the weakest unit lies from the mean of all units on the last day, over all students (0 to
        -1).
        """
        units = [fmean(column) for column in zip(*(year.units for year in self.years), strict=True)]
        return min(units) - fmean(self.values("known_share"))

    def as_json(self, days: int) -> dict[str, object]:
        """One object: what was run, and a list a figure with one value a student."""
        names = ("known_share", "known_mean", "sample", "first_try", "below_half")
        return {
            "policy": self.policy,
            "students": len(self.years),
            "days": days,
            "items": self.items,
            "seed": self.seed,
            **{name: [round(value, 6) for value in self.values(name)] for name in names},
            "longest_gap": [year.longest_gap for year in self.years],
            "minutes": [round(value, 3) for value in self.values("minutes")],
            "most_items": [year.most_items for year in self.years],
            "units": [[round(value, 4) for value in year.units] for year in self.years],
        }


def run_years(
    student: str,
    policies: Sequence[str],
    count: int,
    days: int,
    items: int,
    seed: int,
    processes: int = 2,
    tick: Callable[[], object] = lambda: None,
    content: Path | None = None,
) -> list[Run]:
    """Let `count` students live the same year under each policy; `tick` is called after each year.

    `student` is one of `OWN_STUDENTS` or `FILE.py:CLASS`. `content` is the written course's folder; if it
    isn't whole yet, the sequence stands in for it. Raises StudentClassError.
    """
    student_class(student)
    course_at(content)  # once here, so that processes that are forked find it read
    jobs = [
        (student, content, policy, days, items, seed * 100_000 + k)
        for policy in policies
        for k in range(count)
    ]
    years: list[Year] = []
    for year in _years(jobs, processes):
        years.append(year)
        tick()
    return [
        Run(policy, items, seed, tuple(years[place * count : (place + 1) * count]))
        for place, policy in enumerate(policies)
    ]


def student_class(name: str) -> Callable[[int, Sequence[object]], Student]:
    """The student class of that name, or from a file: `FILE.py:CLASS`."""
    if name in OWN_STUDENTS:
        found: Callable[[int, Sequence[object]], Student] = OWN_STUDENTS[name]
        return found
    file, _, wanted = name.rpartition(":")
    path = Path(file)
    if not file or not wanted:
        known = ", ".join(OWN_STUDENTS)
        raise StudentClassError(
            f"{name!r} is none of {known}. A class of your own is given as FILE.py:CLASS."
        )
    if not path.is_file():
        raise StudentClassError(f"There is no file {file}.")
    return _load(path, wanted)


def interval(values: Iterable[float]) -> Interval:
    """Mean and 95 % interval of the mean."""
    found = list(values)
    mean = fmean(found)
    if len(found) < 2:
        return Interval(mean, mean, mean)
    half = _t(len(found) - 1) * stdev(found) / sqrt(len(found))
    return Interval(mean, mean - half, mean + half)


def paired(one: Run, other: Run, name: str) -> Interval:
    """Difference of a figure between two policies, student by student."""
    return interval(a - b for a, b in zip(one.values(name), other.values(name), strict=True))


def _t(freedom: int) -> float:
    """The 97.5 % point of Student's t, by its expansion around the normal one (within 1 % from three
    upwards).
    """
    z = NormalDist().inv_cdf(0.975)
    first = (z**3 + z) / 4
    second = (5 * z**5 + 16 * z**3 + 3 * z) / 96
    third = (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / 384
    return z + first / freedom + second / freedom**2 + third / freedom**3


Job = tuple[str, Path | None, str, int, int, int]


def _years(jobs: Sequence[Job], processes: int) -> Iterable[Year]:
    if processes <= 1:
        yield from map(_year, jobs)
        return
    with ProcessPoolExecutor(processes) as pool:
        yield from pool.map(_year, jobs)


def _year(job: Job) -> Year:
    student, content, policy, days, items, seed = job
    syllabus = course_at(content)
    return live(_class_once(student), syllabus, timetable(syllabus, days), policy, items, seed)


@lru_cache(maxsize=4)
def course_at(content: Path | None) -> Syllabus:
    """The syllabus that is simulated."""
    return syllabus_at(content)


@lru_cache(maxsize=8)
def _class_once(name: str) -> Callable[[int, Sequence[object]], Student]:
    return student_class(name)


def _load(path: Path, wanted: str) -> Callable[[int, Sequence[object]], Student]:
    module_name = f"student_of_{path.stem}"
    spec = importlib.util.spec_from_file_location(module_name, path)
    if spec is None or spec.loader is None:
        raise StudentClassError(f"{path} is no Python file.")
    module = importlib.util.module_from_spec(spec)
    sys.modules[module_name] = module  # so that its students can be copied by pickle
    try:
        spec.loader.exec_module(module)
    except Exception as error:  # the file is the user's; whatever it raises is said as it is
        raise StudentClassError(f"{path} can't be loaded: {error!r}") from error
    found = getattr(module, wanted, None)
    if found is None:
        raise StudentClassError(f"{path} has no class {wanted}.")
    missing = [name for name in NEEDED if not callable(getattr(found, name, None))]
    if missing:
        raise StudentClassError(f"{wanted} lacks {', '.join(missing)}.")
    made: Callable[[int, Sequence[object]], Student] = found
    return made
