"""Commands for simulating: a whole year through the real planner, without chat."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from collections.abc import Sequence

    from bot.simulation.report import Run

CONTENT = Path(__file__).parents[2] / "content"
POLICIES = ("planner", "fixed-lags", "random", "massed", "boxes")


def add_to(app: typer.Typer) -> None:
    """Add this area's commands."""
    app.command("simulate")(simulate)


def simulate(
    students: Annotated[int, typer.Option(min=1, help="How many simulated students.")] = 50,
    days: Annotated[int, typer.Option(min=1, max=400, help="School days of the year.")] = 180,
    items: Annotated[int, typer.Option(min=1, max=100, help="Review items a day, the same for all.")] = 12,
    seed: Annotated[int, typer.Option(help="Same seed, same students, same year.")] = 1,
    policy: Annotated[
        list[str] | None, typer.Option(help="planner, fixed-lags, random, massed or boxes; may be repeated.")
    ] = None,
    student: Annotated[
        str,
        typer.Option(
            help="half-lives, many-traces, two-speeds, all-or-nothing, linked, log-odds, or a FILE.py:CLASS."
        ),
    ] = "many-traces",
    as_json: Annotated[bool, typer.Option("--json", help="One JSON object, one value a student.")] = False,
    content: Annotated[
        Path | None,
        typer.Option(
            help="Folder of the written course, by default the one beside the program: its templates with the "
            "skills that each really needs."
        ),
    ] = None,
    sequence: Annotated[
        bool,
        typer.Option(
            "--sequence", help="Six made-up templates a lesson, each of exactly the lesson's skills, instead."
        ),
    ] = False,
    plots: Annotated[Path | None, typer.Option(help="Folder for plots.")] = None,
    placement: Annotated[
        bool, typer.Option("--placement", help="Place the students instead of living a year.")
    ] = False,
    processes: Annotated[int, typer.Option(min=1, help="Processes to spread over.")] = 2,
) -> None:
    """Let simulated students live a year under one or more ways of choosing review, and compare.

    Examples:

      evensum simulate --students 50 --days 180 --items 24 --seed 1 --policy planner --policy fixed-lags

      evensum simulate --policy planner --student my_student.py:Forgetful --json
    """
    from rich.console import Console
    from rich.progress import Progress

    from bot.simulation.report import StudentClassError, run_years

    folder = None if sequence else content or CONTENT
    if placement:
        _place(student, students, seed, processes, folder)
        return
    chosen = list(dict.fromkeys(policy or ["planner", "fixed-lags", "random", "massed", "boxes"]))
    unknown = [name for name in chosen if name not in POLICIES]
    if unknown:
        _stop(f"There is no policy {unknown[0]!r}. Choose from {', '.join(POLICIES)}.")
    console = Console(stderr=True)
    try:
        with Progress(console=console, transient=True, disable=as_json) as progress:
            task = progress.add_task("Living the year", total=students * len(chosen))
            runs = run_years(
                student,
                chosen,
                students,
                days,
                items,
                seed,
                processes,
                tick=lambda: progress.advance(task),
                content=folder,
            )
    except StudentClassError as error:
        _stop(str(error))
    if as_json:
        objects = [run.as_json(days) for run in runs]
        typer.echo(json.dumps(objects[0] if len(objects) == 1 else {"runs": objects}))
    else:
        _print_table(runs, students, days, student, _name_of(folder))
    if plots is not None:
        _draw(runs, plots, console)


def _name_of(folder: Path | None) -> str:
    from bot.simulation.course import read_sequence
    from bot.simulation.report import course_at

    return "made-up templates" if course_at(folder) == read_sequence() else "templates of the written course"


def _place(student: str, students: int, seed: int, processes: int, folder: Path | None) -> None:
    from statistics import fmean

    from bot.planner.blueprint import read_result
    from bot.planner.placement import NEAR
    from bot.simulation.placing import place_many
    from bot.simulation.report import StudentClassError

    try:
        found = place_many(student, students, seed, processes, folder)
    except StudentClassError as error:
        _stop(str(error))
    near = read_result(sum(abs(one.start - one.truth) <= NEAR for one in found), len(found))
    typer.echo(
        f"{near.right} of {near.items} within {NEAR} lessons of the true place "
        f"({100 * near.low:.0f} to {100 * near.high:.0f} %), after {fmean(one.asked for one in found):.1f} items; "
        f"placement itself was {100 * fmean(one.sure for one in found):.0f} % sure."
    )


def _print_table(runs: Sequence[Run], students: int, days: int, student: str, course: str) -> None:
    from rich.console import Console
    from rich.table import Table

    from bot.simulation.report import Interval, interval, paired

    def points(found: Interval) -> str:
        return f"{100 * found.mean:.1f} ({100 * found.low:.1f} to {100 * found.high:.1f})"

    first = runs[0]
    console = Console()
    title = (
        f"{students} students ({student}), {days} school days, {first.items} items a day, seed {first.seed}; "
        f"{course}"
    )
    table = Table(
        title=title, caption="Percent, mean and 95 % interval; gap in school days; minutes of review a day"
    )
    for heading in (
        "policy",
        "last day",
        "mean from day 30",
        "sample",
        "below half",
        "worst unit",
        "gap",
        "minutes",
    ):
        table.add_column(heading, justify="left" if heading == "policy" else "right")
    for run in runs:
        table.add_row(
            run.policy,
            *(points(interval(run.values(name))) for name in ("known_share", "known_mean", "sample")),
            f"{100 * interval(run.values('below_half')).mean:.1f}",
            f"{100 * run.worst_unit():+.1f}",
            f"{max(year.longest_gap for year in run.years)}",
            f"{interval(run.values('minutes')).mean:.0f}",
        )
    console.print(table)
    if len(runs) > 1:
        gaps = Table(title=f"{first.policy} minus the other, student by student, in points")
        for heading in ("against", "last day", "mean from day 30", "sample"):
            gaps.add_column(heading, justify="left" if heading == "against" else "right")
        for run in runs[1:]:
            figures = ("known_share", "known_mean", "sample")
            gaps.add_row(run.policy, *(points(paired(first, run, name)) for name in figures))
        console.print(gaps)


def _draw(runs: Sequence[Run], folder: Path, console: object) -> None:
    try:
        from bot.simulation.plots import draw

        files = draw(runs, folder)
    except ImportError:
        _stop("Plots need matplotlib: pip install 'evensum[dev]'. The figures above are complete without.")
    for file in files:
        typer.echo(f"Written: {file}", err=True)


def _stop(text: str) -> None:
    typer.echo(text, err=True)
    raise typer.Exit(2)
