"""Figures of drawn items made into pictures, to see that every one can be."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from functools import partial

from bot.course.draw import draw
from bot.course.faults import CourseErrors, Fault
from bot.course.lesson import Template
from bot.course.prove import Report
from bot.course.year import Course
from bot.pictures import CannotMake, Pictures


def pictured(report: Report) -> list[Template]:
    """The templates that have a figure, without those whose claims don't hold."""
    return [
        one.template for one in report.templates if one.template.recipe.figure is not None and not one.faults
    ]


def picture_faults(
    report: Report, draws: int, progress: Callable[[str], None], processes: int = 1
) -> list[Fault]:
    """Make pictures of some draws of each template that has a figure; what can't be made is a fault.

    A template is named once. Seeds count up from 0, as in the check of the claims. `processes` make pictures at once.
    """
    chosen = pictured(report)
    shares = [chosen[n::processes] for n in range(processes)]
    with ThreadPoolExecutor(processes) as threads:
        found = threads.map(partial(_of_share, report.course, draws, progress), shares)
        return [fault for faults in found for fault in faults]


def _of_share(
    course: Course, draws: int, progress: Callable[[str], None], templates: Sequence[Template]
) -> list[Fault]:
    found: list[Fault] = []
    pictures = Pictures()
    try:
        for template in templates:
            progress(f"Picture of {template.id}")
            try:
                for seed in range(draws):
                    pictures.make_now("figure", draw(course, template.id, seed).figure)
            except (CannotMake, CourseErrors) as trouble:
                found.append(
                    Fault(
                        "picture",
                        course.file_of(template),
                        template.recipe.figure_line,
                        f"No picture can be made of its figure: {trouble}",
                        "",
                        f"template {template.name}",
                    )
                )
    finally:
        pictures.close()
    return found
