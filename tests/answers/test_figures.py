"""Which measure was worked out instead: named only from the question's own numbers, and only if nothing else fits."""

from __future__ import annotations

import pytest

from bot.answers import Key, judge
from bot.answers.key import Misstep

CASES = [
    # typed, expected, unit, given, misstep
    ("20 cm^2", "24", "cm^2", "6 * 4", "perimeter-for-area"),
    ("20 cm", "24", "cm^2", "6 * 4", "perimeter-for-area"),
    ("20 m²", "25", "m^2", "5^2", "perimeter-for-area"),
    ("24 cm", "20", "cm", "2(6 + 4)", "area-for-perimeter"),
    ("24 cm", "20", "cm", "6 + 4 + 6 + 4", "area-for-perimeter"),
    ("24 cm", "20", "cm", "2*6 + 2*4", "area-for-perimeter"),
    ("25 m", "20", "m", "4 * 5", "area-for-perimeter"),
    ("100π cm²", "25*pi", "cm^2", "pi * 5^2", "radius-for-diameter"),
    ("314 cm²", "25*pi", "cm^2", "pi * 5^2", "radius-for-diameter"),
    ("20π cm", "10*pi", "cm", "pi * 10", "radius-for-diameter"),
    ("5π cm", "10*pi", "cm", "2 * pi * 5", "radius-for-diameter"),
    ("78.5 cm", "10*pi", "cm", "2 * pi * 5", "area-for-perimeter"),
    ("10π cm²", "25*pi", "cm^2", "pi * 5^2", None),  # the way around, or 5² taken as 10
    ("23 cm²", "24", "cm^2", "6 * 4", None),
    ("31.4", "78.5", "cm^2", None, None),  # no expression to work it out from
]


@pytest.mark.parametrize(("typed", "expected", "unit", "given", "misstep"), CASES)
def test_the_other_measure_is_named_where_the_numbers_show_it(
    typed: str, expected: str, unit: str, given: str | None, misstep: str | None
) -> None:
    form = "decimal-rounded" if "." in expected else "quantity"

    assert judge(typed, Key(expected, form, unit, given=given)).misstep == misstep


def test_a_misstep_is_named_though_its_unit_is_missing() -> None:
    around = Misstep("two-sides-only", "30", "How many sides do you walk along?")
    key = Key("60", "quantity", "m", missteps=(around,))

    assert [judge(typed, key).misstep for typed in ("30 m", "30", "30 cm")] == ["two-sides-only"] * 3
