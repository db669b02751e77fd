"""Measure the planner: a day in the middle of the year, the growth with skills, a simulated year of fifty students.

    python tests/bench/planner.py

Wanted: a day under 8 ms; twice the skills at most about twice the time; fifty years under 60 s on two cores, under
500 MiB for all processes together.
"""

from __future__ import annotations

import sys
import threading
import time
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from random import Random
from statistics import median

import psutil

from bot.planner import (
    Done,
    Evidence,
    History,
    Lesson,
    PastDay,
    Syllabus,
    Wishes,
    plan_day,
    remember_item,
)
from bot.planner.syllabus import Template
from bot.simulation.course import read_sequence
from bot.simulation.report import run_years
from bot.vocabulary import LessonId, Outcome, SkillId, TemplateId


def twice(course: Syllabus) -> Syllabus:
    """The course and a second one behind it."""
    count = len(course.lessons)

    def again(lesson: Lesson) -> Lesson:
        return replace(
            lesson,
            n=lesson.n + count,
            id=LessonId(f"again-{lesson.id}"),
            skills=tuple(SkillId(f"again-{skill}") for skill in lesson.skills),
            prerequisites=tuple(n + count for n in lesson.prerequisites),
        )

    def copy(template: Template) -> Template:
        return replace(
            template,
            id=TemplateId(f"again-{template.id}"),
            lesson=LessonId(f"again-{template.lesson}"),
            skills=tuple(SkillId(f"again-{skill}") for skill in template.skills),
        )

    return Syllabus(
        (*course.lessons, *map(again, course.lessons)), (*course.templates, *map(copy, course.templates))
    )


def after(course: Syllabus, taught: int, items: int = 24) -> tuple[date, History]:
    """A student who met `taught` lessons in as many days, with `items` items a day of any of them."""
    rng, day = Random(1), date(2026, 8, 31)
    memories, days = {}, []
    for n in range(1, taught + 1):
        done = []
        for _ in range(items):
            lesson = course.by_number[rng.randint(1, n)]
            template = rng.choice(course.templates_of[lesson.id])
            outcome = Outcome.FIRST_TRY if rng.random() < 0.8 else Outcome.UNSOLVED
            done.append(Done(template.id, template.skills, outcome))
            told = Evidence(outcome)
            memories |= remember_item(memories, template.skills, course.contained_in, told, day)
        days.append(PastDay(day, n, tuple(done), n, items))
        day += timedelta(days=3 if day.weekday() == 4 else 1)
    return day, History(memories, tuple(days[-60:]), frozenset(range(1, taught + 1)), school_day=taught + 1)


def milliseconds(courses: Sequence[tuple[Syllabus, int]], repeats: int = 60) -> list[list[float]]:
    """Processor time of a day's plan in each course, taken by turns: on a shared machine a slow spell hits all."""
    lived = [(course, *after(course, taught)) for course, taught in courses]
    times: list[list[float]] = [[] for _ in courses]
    for repeat in range(repeats):
        for place, (course, day, history) in enumerate(lived):
            start = time.process_time()
            plan_day(day, course, history, Wishes(review_items=24), repeat)
            times[place].append(1000 * (time.process_time() - start))
    return [sorted(found[5:]) for found in times]


def peak_of(children: list[psutil.Process]) -> int:
    total = 0
    for process in children:
        try:
            total += process.memory_info().rss
        except psutil.NoSuchProcess:
            continue
    return total


def main() -> None:
    course = read_sequence()
    whole = ((course, 64), (course, 127), (twice(course), 255))
    for name, times in zip(("mid-year", "whole course", "twice"), milliseconds(whole), strict=True):
        print(f"a day, {name:12s} {median(times):6.2f} ms median, {times[-1]:6.2f} ms worst")
    if "--short" in sys.argv:
        return
    this, peak, ended = psutil.Process(), 0, threading.Event()

    def watch() -> None:
        nonlocal peak
        while not ended.wait(0.2):
            peak = max(peak, peak_of([this, *this.children(recursive=True)]))

    watcher = threading.Thread(target=watch)
    watcher.start()
    for student in ("half-lives", "many-traces"):
        start = time.perf_counter()
        run_years(student, ["planner"], 50, 180, 24, 1, processes=2)
        spent = time.perf_counter() - start
        run_years(student, ["random"], 50, 180, 24, 1, processes=2)
        student_alone = time.perf_counter() - start - spent
        print(
            f"50 years of {student}: {spent:.0f} s, of which the student and the looks at it "
            f"{100 * student_alone / spent:.0f} %; peak so far {peak / 2**20:.0f} MiB"
        )
    ended.set()
    watcher.join()


if __name__ == "__main__":
    main()
