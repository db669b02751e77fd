"""Documents that can go stale: every setting, command and folder that they name is there, and none is missing."""

from __future__ import annotations

import importlib
import re
from pathlib import Path

import typer
from typer.main import get_command

from bot.cli import AREAS
from bot.settings import SETTINGS

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def commands() -> dict[str, typer.core.TyperCommand]:
    every = typer.Typer()  # one of its own: other tests may have put a few commands into the program's
    for area in AREAS:
        importlib.import_module(f"bot.cli.{area}").add_to(every)
    return dict(get_command(every).commands)  # type: ignore[attr-defined]


def test_every_setting_stands_in_the_readme_with_its_meaning() -> None:
    rows = {row[0]: row for row in re.findall(r"\| `(EVENSUM_\w+)` \| (.*?) \| (.*?) \|", README)}

    assert set(rows) == {setting.name for setting in SETTINGS}
    for setting in SETTINGS:
        assert rows[setting.name][2] == setting.meaning


def test_every_command_has_help_with_an_example() -> None:
    lacking = [
        name
        for name, command in commands().items()
        if f"evensum {name}" not in f"{command.help} {command.epilog}"
    ]

    assert lacking == []


def test_commands_named_in_documents_exist() -> None:
    named = set(re.findall(r"(?:^|[`/ ])evensum ([a-z][a-z-]+)", README + DEVELOPERS, re.MULTILINE))

    assert named <= set(commands()), named - set(commands())


def test_files_and_folders_named_in_documents_exist() -> None:
    for text in (README, DEVELOPERS):
        for path in re.findall(r"\]\((?!http)([^)#]+)\)", text):
            assert (ROOT / path).exists(), path
    for path in re.findall(r"`((?:bot|tests|content|chat|school_day|answers|records)/[\w./]*)`", DEVELOPERS):
        assert (ROOT / path).exists() or (ROOT / "bot" / path).exists(), path


def test_top_level_holds_what_it_may() -> None:
    import subprocess

    tracked = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    top = {line.partition("/")[0] for line in tracked.splitlines()}
    allowed = {
        "README.md",
        "DEVELOPERS.md",
        "Makefile",
        "pyproject.toml",
        "requirements.lock",
        "bot",
        "content",
        "migrations",
        "tests",
    }

    assert {name for name in top if not name.startswith(".")} <= allowed
