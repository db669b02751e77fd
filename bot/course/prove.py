"""Every claim of the course checked: hundreds of draws of every template, and rules for what stands around them."""

from __future__ import annotations

import gc
import multiprocessing
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from bot.course.faults import Fault
from bot.course.lesson import HandsOn, Lesson
from bot.course.load import load_with_faults
from bot.course.prove_template import TemplateReport, check_template
from bot.course.rules import lesson_faults, skill_faults
from bot.course.spelling import misspelt
from bot.course.word_rules import glossary_faults
from bot.course.year import Course

DRAWS = 300


@dataclass
class Report:
    """What a check of the whole course found. `warnings` are worth a look and no faults."""

    course: Course
    faults: list[Fault]
    templates: list[TemplateReport]
    warnings: list[Fault]


@dataclass
class LessonReport:
    """What the check of one lesson found."""

    faults: list[Fault]
    templates: list[TemplateReport]


Progress = Callable[[str], None]


def check_folder(
    folder: Path,
    draws: int = DRAWS,
    only: str = "",
    progress: Progress | None = None,
    processes: int = 1,
) -> Report:
    """Check the course in a folder; `only` limits it to lessons whose id or unit folder holds the text.

    Lessons don't depend on each other's draws, so several `processes` share them. A file that can't be read takes
    nothing away from the others.
    """
    course, faults = load_with_faults(folder)
    faults = [*faults, *glossary_faults(course), *misspelt(course)]
    reports: list[TemplateReport] = []
    chosen = [holder for holder in course.holders if only in holder.file]
    for holder, found in zip(chosen, _each(course, chosen, draws, min(processes, len(chosen))), strict=True):
        if progress:
            progress(holder.title)
        faults += found.faults
        reports += found.templates
    warnings = [fault for report in reports for fault in report.warnings]
    return Report(course, _in_order(faults, only), reports, _in_order(warnings, only))


def check_lesson(course: Course, holder: Lesson | HandsOn, draws: int) -> LessonReport:
    """Check one lesson: the rules for what stands around the numbers, then draws of each template."""
    faults = [*skill_faults(course, holder), *lesson_faults(course, holder)]
    reports = [check_template(course, holder, template, draws) for template in holder.templates]
    faults += [fault for report in reports for fault in report.faults]
    if isinstance(holder, Lesson):
        faults += _rising(holder, reports)
    return LessonReport(faults, reports)


def _in_order(faults: Iterable[Fault], only: str) -> list[Fault]:
    kept = [fault for fault in faults if only in fault.file]
    return sorted(kept, key=lambda fault: (fault.file, fault.line))


def _each(
    course: Course, holders: Sequence[Lesson | HandsOn], draws: int, processes: int
) -> Iterator[LessonReport]:
    if processes < 2:
        yield from (check_lesson(course, holder, draws) for holder in holders)
        return
    # A spawned process inherits no threads (a progress bar has one) and no half-filled caches.
    with ProcessPoolExecutor(processes, multiprocessing.get_context("spawn"), _take, (course, draws)) as pool:
        # The longest begin first, or the last one would keep a single process busy at the end.
        longest = sorted(holders, key=lambda holder: -len(holder.templates))
        begun = {holder.id: pool.submit(_check_named, holder.id) for holder in longest}
        yield from (begun[holder.id].result() for holder in holders)


_at_work: dict[str, tuple[Course, int]] = {}
"""In a process that shares the work: the course, and how many draws are wanted."""


def _take(course: Course, draws: int) -> None:
    _at_work["here"] = course, draws
    # What a draw makes holds no circles: looking for some after every 700 new things was a tenth of the time.
    gc.freeze()
    gc.set_threshold(100_000)


def _check_named(name: str) -> LessonReport:
    course, draws = _at_work["here"]
    return check_lesson(course, next(one for one in course.holders if one.id == name), draws)


def _rising(lesson: Lesson, reports: list[TemplateReport]) -> Iterator[Fault]:
    """Levels may not fall within a lesson, and the hard templates are more work than the easy ones."""
    before = 0
    for template in lesson.templates:
        if template.level < before and lesson.unit:
            yield Fault(
                "level-falls",
                lesson.file,
                template.line,
                "This template is easier than the one before it.",
                "Templates stand from easy to hard.",
                f"template {template.name}",
            )
        before = max(before, template.level)
    by_level: dict[int, list[float]] = {}
    for report in reports:
        if report.draws:
            by_level.setdefault(report.template.level, []).append(report.work)
    means = {level: sum(works) / len(works) for level, works in by_level.items()}
    if lesson.unit and len(means) > 1 and means[max(means)] < means[min(means)]:
        yield Fault(
            "not-rising",
            lesson.file,
            lesson.templates[-1].line,
            f"The hardest level is {means[max(means)]:.1f} lines and operations of work, "
            f"the easiest {means[min(means)]:.1f}.",
            "Difficulty rises within a lesson.",
        )
    if lesson.unit and len({template.level for template in lesson.templates}) < 2:
        yield Fault(
            "one-level",
            lesson.file,
            1,
            "All templates of this lesson are of one level.",
            "Write `level: easy` or `level: hard` where it is so.",
        )
