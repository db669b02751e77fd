"""`evensum say-all`: every message, to be read aloud."""

from __future__ import annotations

from typing import Annotated

import typer


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("say-all")(say_all)


def say_all(
    language: Annotated[str, typer.Option(help="Which catalogue: en or es.")] = "en",
    only: Annotated[str, typer.Option(help="Only messages whose name holds this.")] = "",
) -> None:
    """Print every message with sample data, to be read aloud.

    Examples:

      evensum say-all
      evensum say-all --language es --only Digest
    """
    from bot.chat.render import render
    from bot.chat.rendered import faults
    from bot.chat.samples import SAMPLES
    from bot.chat.words import languages

    if language not in languages():
        typer.echo(f"There is no catalogue '{language}'. There are: {', '.join(languages())}.", err=True)
        raise typer.Exit(2)
    for message in SAMPLES:
        name = type(message).__name__
        if only.lower() not in name.lower():
            continue
        said = render(message, language)
        typer.echo(f"── {name}")
        typer.echo(said.text)
        for row in said.buttons:
            typer.echo("   " + "  ".join(f"[{button.label}]" for button in row))
        for fault in faults(said):
            typer.echo(f"   !! {fault}", err=True)
        typer.echo()
