"""The checker against sources outside the project; each is named in the README beside this file."""

from __future__ import annotations

import json
import lzma
import sys
from fractions import Fraction
from pathlib import Path

import pint
import pytest

from bot.answers import Key, judge
from bot.answers.units import wanted
from bot.vocabulary import Verdict

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parent / "bench"))
try:
    from agreement import generator_variants, planted, textbook_variants
finally:
    sys.path.pop(0)


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry(non_int_type=Fraction)


def test_published_textbook_answers_are_read_and_graded_right() -> None:
    """Prealgebra 2e and Elementary Algebra 2e, OpenStax, CC BY 4.0."""
    rows = [
        json.loads(line)
        for line in (HERE / "answers_textbook.jsonl").read_text(encoding="utf-8").splitlines()
    ]
    missed = []
    for row in rows:
        unit = f" {row['unit']}" if row["unit"] and row["form"].startswith("quantity") else ""
        for typed in textbook_variants(row["answer"], unit):
            if judge(typed, Key(row["answer"], row["form"], row["unit"])).verdict is not Verdict.RIGHT:
                missed.append((row["id"], typed))

    assert len(rows) == 1007
    assert missed == []


def test_answers_of_an_open_generator_are_right_and_changed_ones_never() -> None:
    """mathematics_dataset 1.0.1 (Saxton and others, 2019), Apache License 2.0; every fifth of 31,000 pairs."""
    with lzma.open(HERE / "answers_pairs.jsonl.xz", "rt", encoding="utf-8") as lines:
        rows = [json.loads(line) for line in lines]
    missed, fooled = [], []
    for row in rows[::5]:
        answer, form = row["answer"], row["form"]
        key = Key(answer.replace("**", "^"), form)
        missed += [
            one for one in generator_variants(answer, form) if judge(one, key).verdict is not Verdict.RIGHT
        ]
        wrong = planted(answer, form)
        if wrong is not None and judge(wrong, key).verdict is Verdict.RIGHT:
            fooled.append((wrong, answer))

    assert len(rows) >= 20_000
    assert (missed, fooled) == ([], [])


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("mm", "mm"), ("cm", "cm"), ("km", "km"), ("in", "inch"), ("ft", "foot"), ("yd", "yard"), ("mi", "mile"),
        ("mg", "mg"), ("kg", "kg"), ("oz", "ounce"), ("lb", "pound"), ("ton", "short_ton"), ("tonne", "metric_ton"),
        ("min", "minute"), ("h", "hour"), ("day", "day"), ("week", "week"), ("mL", "mL"), ("L", "liter"),
        ("gal", "gallon"), ("qt", "quart"), ("pt", "pint"), ("cup", "cup"), ("fl oz", "fluid_ounce"),
        ("tbsp", "tablespoon"), ("tsp", "teaspoon"), ("acre", "international_acre"), ("ha", "hectare"),
        ("mph", "mph"), ("kph", "kph"),
        ("cm^2", "cm**2"), ("in^3", "inch**3"), ("mi/h", "mile/hour"),
    ],
)  # fmt: skip
def test_sizes_of_units_are_those_of_pint(ours: str, theirs: str, registry: pint.UnitRegistry) -> None:
    """Pint's unit registry, from the definitions of NIST and the BIPM."""
    unit = wanted(ours).unit
    if theirs == "international_acre":
        size = 43560 * registry.Quantity(Fraction(1), "foot**2").to_base_units().magnitude
    else:
        size = registry.Quantity(Fraction(1), theirs).to_base_units().magnitude
    grams = dict(unit.kinds).get("mass", 0)
    assert unit.size == size * 1000**grams


@pytest.mark.parametrize(
    ("typed", "expected", "unit"),
    [
        ("5280 ft", "1", "mi"), ("1760 yd", "1", "mi"), ("16 oz", "1", "lb"), ("2000 lb", "1", "ton"),
        ("8 fl oz", "1", "cup"),
        ("2 cups", "1", "pint"), ("2 pt", "1", "quart"), ("4 qt", "1", "gal"), ("3 tsp", "1", "tbsp"),
        ("60 s", "1", "min"),
        ("24 h", "1", "day"), ("7 days", "1", "week"), ("1000 m", "1", "km"), ("1000 mL", "1", "L"),
        ("1 cm^3", "1", "mL"),
        ("2.54 cm", "1", "in"), ("144 in^2", "1", "ft^2"), ("27 ft^3", "1", "yd^3"),
    ],
)  # fmt: skip
def test_equal_quantities_of_published_tables_are_right(typed: str, expected: str, unit: str) -> None:
    """Unit tables of Prealgebra 2e, section 7.5 (OpenStax, CC BY 4.0); metric ones by definition (SI Brochure)."""
    assert judge(typed, Key(expected, "quantity", unit)).verdict is Verdict.RIGHT
    wrong = typed.replace("0 ", "1 ", 1) if "0 " in typed else f"9{typed}"
    assert judge(wrong, Key(expected, "quantity", unit)).verdict is Verdict.WRONG
