"""Every line that a command can say has its wording, in every language, and with the holes that it is given."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from bot.chat.words import languages, words_for
from bot.school.commands import GROUPS, SPECS
from bot.school.wishes import WishKind

BOT = Path(__file__).parents[2] / "bot"
KEY = re.compile(r"(line|why|ask|note|need|wish|kept|holds)-[a-z-]*[a-z]")
BY_DAYS = ("line-off", "line-sick", "line-small")
"""Lines of which there is one for a stretch of days and one for a single day."""


def keys_in_code() -> set[str]:
    found = set()
    for folder in ("school", "tutoring", "family"):
        for file in (BOT / folder).glob("*.py"):
            for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
                if (
                    isinstance(node, ast.Constant)
                    and isinstance(node.value, str)
                    and KEY.fullmatch(node.value)
                ):
                    found.add(node.value)
    return found


@pytest.mark.parametrize("language", languages())
def test_every_line_has_its_wording(language: str) -> None:
    words = words_for(language)
    keys = keys_in_code() | {f"{key}-day" for key in BY_DAYS}
    assert len(keys) > 150
    assert [key for key in sorted(keys) if not words.has(key)] == []


@pytest.mark.parametrize("language", languages())
def test_every_command_and_group_has_its_wording(language: str) -> None:
    words = words_for(language)
    assert [spec.name for spec in SPECS if not words.has(f"command-{spec.name}")] == []
    assert [group for group in GROUPS if not words.has(f"group-{group}")] == []


def test_every_kind_of_wish_that_a_tutor_sees_has_its_line() -> None:
    hidden = {WishKind.REVIEW_ITEMS, WishKind.ERASE}
    words = words_for("en")
    assert [kind for kind in WishKind if kind not in hidden and not words.has(f"holds-{kind}")] == []
