"""Trees are written as a teacher writes them."""

from fractions import Fraction
from pathlib import Path

import pytest

from bot.maths import number, plain, read, substitute, typst

ROWS = [
    line.split("\t")
    for line in Path(__file__).with_name("shown.tsv").read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]


@pytest.mark.parametrize(
    ("text", "drawn", "as_plain", "as_typst"), ROWS, ids=[f"{r[0]} [{r[1]}]" for r in ROWS]
)
def test_drawn_numbers_are_shown_tidily(text: str, drawn: str, as_plain: str, as_typst: str) -> None:
    letters = {name: number(Fraction(amount)) for name, amount in (pair.split("=") for pair in drawn.split())}
    tree = substitute(read(text), letters)

    assert (plain(tree), typst(tree)) == (as_plain, as_typst)
