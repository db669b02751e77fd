"""Whatever the checker may say has a wording: reasons, kinds of unreadable text, missteps."""

from __future__ import annotations

import ast
import tomllib
from pathlib import Path

from bot.chat.words import words_for

BOT = Path(__file__).parents[2] / "bot"
EN = words_for("en")


def names(file: str) -> list[str]:
    return list(tomllib.loads((BOT / file).read_text("utf-8")))


def test_every_kind_of_unreadable_text_has_a_word() -> None:
    assert [name for name in names("maths/unreadable.toml") if not EN.has(f"unreadable-{name}")] == []


def test_every_misstep_of_the_checker_has_a_question_of_one_line() -> None:
    for name in names("answers/missteps.toml"):
        said = EN(f"misstep-{name}").words()
        assert said.count("?") <= 2 and len(said.split()) <= 25, said
        assert not any(letter.isdigit() for letter in said), said


def test_every_reason_that_the_checker_gives_has_a_word() -> None:
    """Reasons are the literals that the checker hands to `Finding(FORM, ...)` and `Finding(UNIT, ...)`."""
    found = set()
    for file in (BOT / "answers").glob("*.py"):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Finding":
                args = node.args[:2]
                if len(args) == 2 and isinstance(args[0], ast.Name) and args[0].id in ("FORM", "UNIT"):
                    found |= {
                        (args[0].id, leaf.value)
                        for leaf in ast.walk(args[1])
                        if isinstance(leaf, ast.Constant) and isinstance(leaf.value, str) and leaf.value
                    }
    assert len(found) > 10
    keys = {f"form-reason-{word}" if kind == "FORM" else f"say-unit-{word}" for kind, word in found}
    assert sorted(key for key in keys if not EN.has(key)) == []
