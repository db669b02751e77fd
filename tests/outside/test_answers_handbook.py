"""Published check values as witnesses of the checker: units, powers, roots, triples, percents, π, formulas.

The values are published, each row names its source; the ways to type them are ours.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.answers import Key, judge

ROWS = [
    line.split("\t")
    for line in Path(__file__).with_name("answers_handbook.tsv").read_text(encoding="utf-8").splitlines()
    if not line.startswith("#")
]


@pytest.mark.parametrize(
    "row", ROWS, ids=[f"{form}: {typed} for {expected} {unit}" for typed, expected, form, unit, *_ in ROWS]
)
def test_a_published_value_is_known(row: list[str]) -> None:
    typed, expected, form, unit, due, _source = row

    assert judge(typed, Key(expected, form, unit or None)).verdict.value == due
