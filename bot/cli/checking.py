"""Commands for the checker: grade one answer or many, look over working."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Iterator
from typing import Annotated

import typer

_CHECK_EXAMPLES = """Examples:

  evensum check --expected 3/4 --form fraction-simplest --typed "6/8"

  evensum check --expected 3 --form quantity --unit ft --typed "36 in" --json

  evensum check --batch < rows.jsonl > verdicts.jsonl
"""

_WORKING_EXAMPLES = """Examples:

  evensum working --given "2x + 3 = 11" "2x = 14" "x = 7"

  evensum working --batch < chains.jsonl > looked-over.jsonl
"""


def add_to(app: typer.Typer) -> None:
    """Add this area's commands."""
    app.command(epilog=_CHECK_EXAMPLES)(check)
    app.command(epilog=_WORKING_EXAMPLES)(working)


def check(
    expected: Annotated[str | None, typer.Option(help="The expected answer, without its unit.")] = None,
    form: Annotated[
        str | None, typer.Option(help="How it has to look: fraction-simplest, quantity, ...")
    ] = None,
    typed: Annotated[str | None, typer.Option(help="What the student typed.")] = None,
    unit: Annotated[str | None, typer.Option(help="The unit asked for.")] = None,
    given: Annotated[str | None, typer.Option(help="The question's own expression or equation.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="The judgement as one JSON object.")] = False,
    batch: Annotated[bool, typer.Option("--batch", help="Rows as JSON Lines on standard input.")] = False,
) -> None:
    """Grade a typed answer as the bot would, and say why.

    A row of --batch is {"id","expected","form","unit","typed"} and optionally "given"; what comes out is
    {"id","verdict","misstep","read_as"}. A broken row gives {"error","line"} and the run goes on.
    """
    from bot.answers.batch import BadRow, answers, key_from
    from bot.answers.judge import judge

    if batch:
        _stream(answers)
        return
    if expected is None or form is None or typed is None:
        typer.echo(
            "Say what to check: --expected, --form and --typed, or --batch with rows on standard input.",
            err=True,
        )
        raise typer.Exit(2)
    try:
        key = key_from({"expected": expected, "form": form, "unit": unit, "given": given})
    except BadRow as trouble:
        typer.echo(f"{trouble}.", err=True)
        raise typer.Exit(2) from None
    judgement = judge(typed, key)
    if as_json:
        found = {
            "verdict": judgement.verdict.value,
            "misstep": judgement.misstep,
            "read_as": judgement.read_as,
            "reason": judgement.reason,
            "trouble": judgement.trouble,
        }
        typer.echo(json.dumps(found, ensure_ascii=False))
        return
    typer.echo(f"verdict   {judgement.verdict.value}")
    for name in ("read_as", "reason", "misstep", "trouble"):
        if text := getattr(judgement, name):
            typer.echo(f"{name.replace('_', ' '):<9} {text}")


def working(
    lines: Annotated[list[str] | None, typer.Argument(help="The working, one line an argument.")] = None,
    given: Annotated[str | None, typer.Option(help="Where the working starts.")] = None,
    batch: Annotated[bool, typer.Option("--batch", help="Rows as JSON Lines on standard input.")] = False,
) -> None:
    """Find the first line of working that doesn't follow from the one before.

    A row of --batch is {"id","given","lines"}; what comes out is {"id","first_bad","misstep","unsure"},
    lines counted from 0. A broken row gives {"error","line"} and the run goes on.
    """
    from bot.answers.batch import workings
    from bot.answers.working import look_over

    if batch:
        _stream(workings)
        return
    if given is None or not lines:
        typer.echo(
            "Give the start with --given and the lines behind it, or --batch with rows on standard input.",
            err=True,
        )
        raise typer.Exit(2)
    looked = look_over(lines, given)
    for n, line in enumerate(lines):
        mark = "?" if n != looked.first_wrong and n not in looked.fine else " "
        if n == looked.first_wrong:
            mark = "x"
        elif n in looked.fine:
            mark = "+"
        typer.echo(f"{mark} {line}")
    if looked.first_wrong is None:
        typer.echo("Can't be sure of every line." if looked.unsure else "Every line follows.")
    else:
        why = f" ({looked.misstep})" if looked.misstep else ""
        typer.echo(f"Line {looked.first_wrong + 1} doesn't follow from what stands before it{why}.")


def _stream(handle: Callable[[Iterable[str]], Iterator[str]]) -> None:
    """Standard input through a handler to standard output, line by line, in UTF-8."""
    from bot.maths.read import the_machine

    the_machine()  # so that the first row is as quick as the others
    sys.stdin.reconfigure(encoding="utf-8", errors="replace")  # type: ignore[union-attr]
    sys.stdout.reconfigure(encoding="utf-8", errors="replace")  # type: ignore[union-attr]
    try:
        for line in handle(sys.stdin):
            sys.stdout.write(line + "\n")
            sys.stdout.flush()
    except BrokenPipeError:
        sys.stderr.close()
