"""Figures of drawn items made into pictures, to see that every one can be."""

from __future__ import annotations

from collections.abc import Callable

from bot.course.draw import draw
from bot.course.faults import CourseErrors, Fault
from bot.course.prove import Report
from bot.pictures import CannotMake, Pictures


def picture_faults(report: Report, draws: int, progress: Callable[[str], None]) -> list[Fault]:
    """Make pictures of some draws of each template that has a figure; what can't be made is a fault.

    A template is named once. Seeds count up from 0, as in the check of the claims.
    """
    found: list[Fault] = []
    pictures = Pictures()
    try:
        for one in report.templates:
            template = one.template
            if template.recipe.figure is None or one.faults:
                continue
            progress(f"Picture of {template.id}")
            try:
                for seed in range(draws):
                    pictures.make_now("figure", draw(report.course, template.id, seed).figure)
            except (CannotMake, CourseErrors) as trouble:
                found.append(
                    Fault(
                        "picture",
                        report.course.file_of(template),
                        template.recipe.figure_line,
                        f"No picture can be made of its figure: {trouble}",
                        "",
                        f"template {template.name}",
                    )
                )
    finally:
        pictures.close()
    return found
