"""The command that prints papers about the course."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from bot.cli.content import FOLDER, Content

if TYPE_CHECKING:
    from bot.course.year import Course


class Size(StrEnum):
    """Sizes of paper."""

    A4 = "a4"
    LETTER = "letter"


class Paper(StrEnum):
    """Papers made from the course."""

    SCOPE = "scope"
    STANDARDS = "standards"
    GLOSSARY = "glossary"
    FORMULAS = "formulas"
    MATERIALS = "materials"
    SCHEDULE = "schedule"


def add_to(app: typer.Typer) -> None:
    """Add this area's commands."""
    app.command("print-course")(print_course)


def print_course(
    paper: Annotated[Paper, typer.Argument(help="Which paper.")],
    out: Annotated[Path | None, typer.Option("--out", help="Where to; PAPER.pdf by default.")] = None,
    size: Annotated[Size, typer.Option(help="Size of the paper.")] = Size.A4,
    language: Annotated[str, typer.Option(help="en or es; lessons themselves are in English.")] = "en",
    big: Annotated[bool, typer.Option("--big", help="Larger type.")] = False,
    content: Content = FOLDER,
) -> None:
    """Print a paper about the course as PDF: scope, standards, glossary, formulas, materials or
    the schedule of tests.

    evensum print-course glossary --language es --out glosario.pdf

    evensum print-course formulas --size letter
    """
    from bot.course.load import load_with_faults
    from bot.pictures.papers import Look

    course, faults = load_with_faults(content)
    if faults:
        typer.echo(f"{len(faults)} fault(s) in the content: evensum check-content names them.", err=True)
    made = printed(course, paper, Look(size=size, big=big, language=language))
    path = out or Path(f"{paper}.pdf")
    path.write_bytes(made)
    typer.echo(f"{path} is written.")


def printed(course: Course, paper: str, look: object = None) -> bytes:
    """The paper as PDF, in the look's language. Raises CannotMake."""
    from bot.chat.words import words_for
    from bot.pictures import Pictures
    from bot.pictures.papers import Look
    from bot.school.course_papers import NEEDED, PAPERS

    look = look if isinstance(look, Look) else Look()
    catalogue = words_for(look.language)
    words = {name: catalogue(f"course-{name}").words() for name in NEEDED} | {"picture": ""}
    recipe, data = PAPERS[paper](course, words, look)
    pictures = Pictures()
    try:
        return pictures.make_now(recipe, data)
    finally:
        pictures.close()
