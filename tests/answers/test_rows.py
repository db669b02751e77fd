"""Every clause of the decisions, as rows: what was typed for which key, and the verdict due."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bot.answers import Key, judge, look_over
from bot.answers.batch import key_from

HERE = Path(__file__).parent


def own_rows() -> list[tuple[str, Key, str, str]]:
    found = []
    for path in sorted((HERE / "rows").glob("*.tsv")):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.strip() and not line.startswith("#"):
                typed, expected, form, unit, verdict, why = line.split("\t")
                key = Key(expected, form, unit or None)
                found.append(
                    (typed.replace("\\n", "\n"), key, verdict, f"{form}: {typed} for {expected}, {why}")
                )
    return found


def typed_rows() -> list[dict[str, str]]:
    lines = (HERE / "data" / "typed_answers.jsonl").read_text(encoding="utf-8").splitlines()
    return [json.loads(line) for line in lines]


def chains() -> list[dict[str, object]]:
    paths = (HERE / "data" / "working_chains.jsonl", HERE / "rows" / "chains.jsonl")
    return [json.loads(line) for path in paths for line in path.read_text(encoding="utf-8").splitlines()]


@pytest.mark.parametrize(
    ("typed", "key", "verdict"), [row[:3] for row in own_rows()], ids=[row[3] for row in own_rows()]
)
def test_each_clause_has_its_verdict(typed: str, key: Key, verdict: str) -> None:
    assert judge(typed, key).verdict.value == verdict


@pytest.mark.parametrize("row", typed_rows(), ids=[row["id"] for row in typed_rows()])
def test_typed_answers_get_the_verdict_of_a_fair_teacher(row: dict[str, str]) -> None:
    assert judge(row["typed"], key_from(row)).verdict.value in row["verdict"].split("|")


@pytest.mark.parametrize("row", chains(), ids=[f"{row['given']} {row['lines']}"[:80] for row in chains()])
def test_the_first_line_that_does_not_follow_is_found(row: dict[str, object]) -> None:
    looked = look_over(row["lines"], row["given"])  # type: ignore[arg-type]

    assert (looked.first_wrong, looked.unsure) == (row["first_bad"], False)
    if row["misstep"] is not None:
        assert looked.misstep == row["misstep"]


AROUND = (
    "the answer is {}", "{}!", "i got {}", "  {}  ", '"{}"', "= {}", "{} because i checked it", "creo que es {}", "{}?",
    "{} i think",
    "My answer is {}", "so {}", "ans: {}", "it's {}", "{}\n", "la respuesta es {}", "{} :)", "no wait {}", "{} 🙂",
)  # fmt: skip


@pytest.mark.parametrize("around", AROUND)
def test_what_stands_around_an_answer_changes_no_verdict(around: str) -> None:
    gradable = ("right", "form", "unit", "wrong")
    rows = [row for row in typed_rows() if row["verdict"] in gradable and "\n" not in row["typed"]]
    changed = [
        (row["id"], row["typed"])
        for row in rows
        if not row.get("hostile")
        and judge(around.format(row["typed"]), key_from(row)).verdict.value != row["verdict"]
    ]

    assert changed == []


SIGNS: tuple[tuple[str, str], ...] = (
    ("-", "−"), ("-", "–"), ("*", "×"), ("*", "·"), (" ", "\u00a0"), (" ", "  "),
    ("<=", "≤"), (">=", "≥"), ("", "\u200b"),
    *zip("0123456789", "０１２３４５６７８９", strict=True),
)  # fmt: skip


@pytest.mark.parametrize(("plain", "phone"), SIGNS)
def test_the_signs_of_a_phone_change_no_verdict(plain: str, phone: str) -> None:
    rows = [
        row
        for row in typed_rows()
        if row["verdict"] in ("right", "form", "unit", "wrong") and not row.get("hostile")
    ]
    changed = [
        (row["id"], row["typed"])
        for row in rows
        if "**" not in row["typed"]
        and judge(row["typed"].replace(plain, phone), key_from(row)).verdict.value != row["verdict"]
    ]

    assert changed == []
