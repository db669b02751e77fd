"""Commands for content: check what is written, look at it, begin a new lesson."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import partial
from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING, Annotated, Any, NoReturn

import typer
from rich.console import Console
from rich.progress import Progress, SpinnerColumn, TaskID, TextColumn, TimeElapsedColumn
from rich.table import Table

if TYPE_CHECKING:
    from bot.course.faults import Fault
    from bot.course.lesson import Lesson
    from bot.course.prove import Report
    from bot.course.year import Course

Content = Annotated[Path, typer.Option("--content", help="Folder that holds course.yaml.")]
FOLDER = Path("content")


def add_to(app: typer.Typer) -> None:
    """Add this area's commands."""
    app.command("check-content")(check_content)
    app.command("new-lesson")(new_lesson)
    app.command("preview")(preview)
    app.command("standards")(standards)


def check_content(
    only: Annotated[str, typer.Argument(help="Part of a file name: a unit's folder or a lesson.")] = "",
    draws: Annotated[int, typer.Option(min=1, help="Draws of each template.")] = 300,
    summary: Annotated[
        bool,
        typer.Option(
            "--summary", help="Print a line for each template, and counts; with --json the counts alone."
        ),
    ] = False,
    as_json: Annotated[bool, typer.Option("--json", help="Print one JSON object.")] = False,
    skills: Annotated[
        bool, typer.Option("--skills", help="List all skills and the lessons that teach them.")
    ] = False,
    pictures: Annotated[
        int, typer.Option(min=0, help="Draws of each figure that are made into a picture.")
    ] = 0,
    processes: Annotated[int, typer.Option(min=1, help="Processes that share the lessons.")] = 2,
    content: Content = FOLDER,
) -> None:
    """Prove every claim of the course; exit code 1 if there is a fault.

    evensum check-content

    evensum check-content order-of-operations --draws 1000 --summary
    """
    from bot.course.prove import check_folder

    if skills:
        _print_skills(content, as_json)
        return
    started = perf_counter()
    with Progress(
        SpinnerColumn(),
        TextColumn("{task.description}"),
        TimeElapsedColumn(),
        console=Console(stderr=True),
        transient=True,
    ) as bar:
        task = bar.add_task("Reading", total=None)
        show = partial(_show, bar, task)
        report = check_folder(content, draws, only, show, processes)
        if pictures:
            from bot.cli.figures import picture_faults, pictured

            report.faults += picture_faults(report, pictures, show, processes)
            pictures *= len(pictured(report))
    figures = _figures(report, pictures, perf_counter() - started)
    if as_json:
        _say(json.dumps(_as_data(report, figures, summary), ensure_ascii=False, indent=2))
    else:
        _print_report(report, figures, summary)
    if report.faults:
        raise typer.Exit(1)


def _show(bar: Progress, task: TaskID, title: str) -> None:
    bar.update(task, description=title)


def new_lesson(
    lesson: Annotated[str, typer.Argument(help="Its file name without ending: dividing-by-a-fraction.")],
    unit: Annotated[str, typer.Option(help="The folder of its unit; by default that of course.yaml.")] = "",
    content: Content = FOLDER,
) -> None:
    """Write a commented file to begin a lesson with.

    evensum new-lesson comparing-fractions
    """
    from bot.course.load import load_with_faults
    from bot.course.starting import starting_file

    course, _ = load_with_faults(content)
    place = next((one for one in course.units if lesson in one.lessons), None)
    folder = unit or (f"unit-{place.n:02}" if place else "")
    if not folder:
        _stop(
            f"course.yaml has no place for '{lesson}'.",
            "Add it to a unit there, or name a folder: --unit unit-03.",
        )
    path = content / folder / f"{lesson}.md"
    if path.exists():
        _stop(f"{path} is there already.", "Nothing was changed.")
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(starting_file(course, lesson), encoding="utf-8")
    _say(f"{path} is there. Write over its comments, then: evensum check-content {lesson}")


def preview(
    lesson: Annotated[
        str, typer.Argument(help="A lesson, or one template: order-of-operations/plus-and-times.")
    ],
    draws: Annotated[int, typer.Option(min=1, help="Draws of each template.")] = 10,
    seed: Annotated[int, typer.Option(help="First seed; the next draws count up from it.")] = 1,
    as_json: Annotated[bool, typer.Option("--json", help="One JSON object a draw, a line each.")] = False,
    content: Content = FOLDER,
) -> None:
    """Show a lesson's card and draws of its templates, as the phone would show them.

    evensum preview order-of-operations --draws 3

    evensum preview order-of-operations --json --seed 7
    """
    from bot.course.draw import draw
    from bot.course.faults import CourseErrors
    from bot.course.showing import item_as_data, item_as_text, lesson_as_text

    name, _, template = lesson.partition("/")
    course = _load(content, name)
    holder = next((one for one in course.holders if one.id == name), None)
    chosen = [one for one in holder.templates if template in ("", one.name)] if holder else []
    if holder is None or not chosen:
        from bot.course.faults import nearest

        known = [one.id for one in course.holders] if holder is None else [one.id for one in holder.templates]
        _stop(
            f"There is no '{lesson}'.",
            nearest(lesson, known) or "evensum check-content --summary lists them all.",
        )
    if not as_json and not template:
        _say(lesson_as_text(holder))
    try:
        for one in chosen:
            for number in range(seed, seed + draws):
                item = draw(course, one.id, number)
                _say(json.dumps(item_as_data(item), ensure_ascii=False) if as_json else item_as_text(item))
    except CourseErrors as errors:
        _stop(str(errors), "evensum check-content says more.")


def standards(
    as_json: Annotated[bool, typer.Option("--json", help="One JSON object.")] = False,
    pdf: Annotated[Path | None, typer.Option(help="Write the table as a PDF for a family's records.")] = None,
    content: Content = FOLDER,
) -> None:
    """Show which standards the written lessons, items and tests meet, and which not yet.

    evensum standards

    evensum standards --pdf standards.pdf
    """
    from bot.cli.standards import as_data, as_text
    from bot.course.load import load_with_faults
    from bot.course.standards import coverage

    course, _ = load_with_faults(content)
    found = coverage(course)
    if pdf is not None:
        from bot.cli.printing import printed

        pdf.write_bytes(printed(course, "standards"))
        _say(f"{pdf} is written.")
    elif as_json:
        _say(json.dumps(as_data(found), ensure_ascii=False, indent=2))
    else:
        _say(as_text(found))


def _load(folder: Path, lesson: str) -> Course:
    """The course, if this lesson's own file is in order; faults of others are only counted."""
    from bot.course.load import load_with_faults

    course, faults = load_with_faults(folder)
    own = [fault for fault in faults if Path(fault.file).stem == lesson or Path(fault.file).suffix != ".md"]
    if own:
        _stop("\n\n".join(str(fault) for fault in own), f"{len(own)} fault(s). Nothing was drawn.")
    if faults:
        typer.echo(f"{len(faults)} fault(s) in other lessons: evensum check-content names them.", err=True)
    return course


def _print_skills(content: Path, as_json: bool) -> None:
    from bot.course.load import load_with_faults

    course, _ = load_with_faults(content)
    rows: list[tuple[str, str, str]] = [
        (skill, lesson.id, "") for lesson in (*course.before, *course.lessons) for skill in lesson.skills
    ]
    rows += [(skill, lesson, "not written yet") for skill, lesson in course.planned.items()]
    if as_json:
        _say(json.dumps([{"skill": s, "lesson": lesson, "written": not note} for s, lesson, note in rows]))
        return
    for skill, lesson, note in rows:
        _say(f"{skill:32} {lesson}{f'  ({note})' if note else ''}")


def _print_report(report: Report, figures: Mapping[str, int | float], summary: bool) -> None:
    for fault in report.faults:
        _say(f"{fault}\n")
    for fault in report.warnings:
        _say(f"Worth a look: {fault}\n")
    if summary:
        table = Table(
            "template", "level", "answer", "draws", "different", "kept", "clashed", "named", box=None
        )
        for one in report.templates:
            table.add_row(
                one.template.id,
                one.template.level.name.lower(),
                one.template.recipe.form,
                str(one.draws),
                str(one.different),
                f"{one.kept:.0%}",
                f"{one.clashed:.0%}",
                f"{one.named / one.typed:.0%}" if one.typed else "",
            )
        Console(width=160).print(table)
        counted = Table("figure", "value", box=None)
        for name, value in figures.items():
            counted.add_row(name.replace("_", " "), f"{value:,}")
        Console(width=160).print(counted)
    counts = _counts(report)
    _say(", ".join(f"{count} {name.replace('_', ' ')}" for name, count in counts.items()) + ".")


def _counts(report: Report) -> dict[str, int]:
    course = report.course
    lessons: tuple[Lesson, ...] = course.lessons
    return {
        "units": len({lesson.unit for lesson in lessons}),
        "lessons": len(lessons),
        "lessons_before": len(course.before),
        "hands_on": len(course.hands_on),
        "tests": len(course.tests),
        "templates": len(report.templates),
        "missteps": len(course.missteps),
        "mental_math": len(course.mental_math),
        "puzzles": sum(len(strategy.templates) for strategy in course.puzzles),
        "draws": sum(one.draws for one in report.templates),
        "typed_missteps": sum(one.typed for one in report.templates),
        "typed_missteps_named_as_written": sum(one.named for one in report.templates),
        "faults": len(report.faults),
        "worth_a_look": len(report.warnings),
    }


def _figures(report: Report, pictures: int, seconds: float) -> dict[str, int | float]:
    """What a closing note wants to say of the course; shares are 0 to 1."""
    from bot.course.facts import STAGES

    course = report.course
    of_lessons = [template for lesson in course.lessons for template in lesson.templates]
    templates = [one.template for one in report.templates]
    return {
        "units": len({lesson.unit for lesson in course.lessons}),
        "lessons": len(course.lessons),
        "core_lessons": sum(lesson.core for lesson in course.lessons),
        "cards": sum(len(lesson.cards) for lesson in course.lessons),
        "hands_on_lessons": len(course.hands_on),
        "tests": sum(not test.final for test in course.tests),
        "parts_of_the_final": sum(test.final for test in course.tests),
        "templates": len(templates),
        "draws": sum(one.draws for one in report.templates),
        "different_items": sum(one.different for one in report.templates),
        "thrown_away_by_wish": sum(one.by_wish for one in report.templates),
        "thrown_away_by_clash": sum(one.by_clash for one in report.templates),
        "hints": sum(len(template.hints) for template in templates),
        "steps": sum(len(template.steps) for template in templates),
        "missteps_named": len(course.missteps),
        "missteps_used": sum(len(template.recipe.missteps) for template in templates),
        "typed_missteps_judged": sum(one.typed for one in report.templates),
        "typed_missteps_named_as_written": sum(one.named for one in report.templates),
        "share_by_button": round(sum(t.by_button for t in of_lessons) / max(1, len(of_lessons)), 3),
        "templates_with_a_picture": sum(template.recipe.figure is not None for template in templates),
        "pictures_made": pictures,
        "mental_math_strategies": len(course.mental_math),
        "mental_math_strings": sum(len(strategy.templates) for strategy in course.mental_math),
        "ways_to_attack_puzzles": len(course.puzzles),
        "puzzles": sum(len(strategy.templates) for strategy in course.puzzles),
        "number_fact_stages": len(STAGES),
        "glossary_words": len(course.glossary),
        "formulas": sum(len(part.rows) for part in course.formulas),
        "faults": len(report.faults),
        "worth_a_look": len(report.warnings),
        "seconds": round(seconds, 1),
    }


def _as_data(report: Report, figures: Mapping[str, int | float], alone: bool) -> dict[str, Any]:
    """The whole report; with `alone` the figures and the faults, without a line for each template."""
    if alone:
        return {"figures": dict(figures), "faults": [_fault_as_data(fault) for fault in report.faults]}
    return {
        "counts": _counts(report),
        "figures": dict(figures),
        "faults": [_fault_as_data(fault) for fault in report.faults],
        "worth_a_look": [_fault_as_data(fault) for fault in report.warnings],
        "templates": [
            {
                "template": one.template.id,
                "level": one.template.level.name.lower(),
                "form": one.template.recipe.form,
                "skills": list(one.template.skills),
                "draws": one.draws,
                "different": one.different,
                "kept": round(one.kept, 4),
                "clashed": round(one.clashed, 4),
                "work": round(one.work, 2),
                "missteps_typed": one.typed,
                "missteps_named": one.named,
                "missteps_named_otherwise": dict(one.unnamed),
            }
            for one in report.templates
        ],
    }


def _fault_as_data(fault: Fault) -> dict[str, Any]:
    return {
        "kind": fault.kind,
        "file": fault.file,
        "line": fault.line,
        "where": fault.where,
        "what": fault.what,
        "fix": fault.fix,
    }


def _say(text: str) -> None:
    typer.echo(text)


def _stop(what: str, fix: str) -> NoReturn:
    typer.echo(f"{what}\n  {fix}", err=True)
    raise typer.Exit(2)
