"""The command `evensum`: one module an area; what is slow to import is imported inside the commands."""

from __future__ import annotations

import importlib

import typer

AREAS = ("running", "checking", "content", "printing", "simulating", "saying")

app = typer.Typer(
    name="evensum",
    help="A year of pre-algebra over a chat channel.",
    epilog="Examples:  evensum demo  ·  evensum doctor  ·  EVENSUM_TOKEN=… evensum run  ·  "
    'evensum tutor "Ines"  ·  evensum check-content --summary',
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def main() -> None:
    """Entry point: every area adds its commands to `app`."""
    for area in AREAS:
        importlib.import_module(f"bot.cli.{area}").add_to(app)
    app()
