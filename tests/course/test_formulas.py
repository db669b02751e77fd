"""The formula sheet against published values and against integrals worked out by a library."""

from __future__ import annotations

from fractions import Fraction
from math import isclose, pi, sqrt

import pytest
from scipy.integrate import quad

from bot.course.load import load_with_faults
from bot.course.prepare import read_once
from bot.course.year import Course
from bot.maths.tree import Equation, Pi, letters_in, rebuilt
from bot.maths.tree import number as as_number
from bot.maths.value import value

PI = Fraction(pi)


def side(course: Course, what: str) -> tuple[str, object]:
    row = next(row for part in course.formulas for row in part.rows if row.what["en"] == what)
    tree = read_once(row.formula["en"].split("`")[1])
    assert isinstance(tree, Equation)
    return row.formula["en"], tree.sides[1]


def worked(course: Course, what: str, **letters: float) -> float:
    written, tree = side(course, what)
    assert letters_in(tree) == set(letters), written
    bound = {name: Fraction(size) for name, size in letters.items()}
    return float(value(_without_pi(tree), bound))


def _without_pi(tree):
    return as_number(PI.limit_denominator(10**9)) if isinstance(tree, Pi) else rebuilt(tree, _without_pi)


@pytest.mark.parametrize(
    ("what", "letters", "integral"),
    [
        ("Circle", {"r": 3}, quad(lambda x: 2 * sqrt(9 - x * x), -3, 3)[0]),
        ("Cylinder", {"r": 3, "h": 5}, quad(lambda _: pi * 9, 0, 5)[0]),
        ("Cone", {"r": 3, "h": 5}, quad(lambda x: pi * (3 * x / 5) ** 2, 0, 5)[0]),
        ("Sphere", {"r": 3}, quad(lambda x: pi * (9 - x * x), -3, 3)[0]),
        ("Triangle", {"b": 7, "h": 4}, quad(lambda x: 7 * x / 4, 0, 4)[0]),
        ("Trapezoid", {"a": 3, "b": 7, "h": 4}, quad(lambda x: 7 - x, 0, 4)[0]),
    ],
)
def test_sizes_are_those_of_an_integral(
    course: Course, what: str, letters: dict[str, int], integral: float
) -> None:
    assert isclose(worked(course, what, **letters), integral, rel_tol=1e-7)


def test_measures_are_those_of_the_published_definitions(course: Course) -> None:
    """NIST Handbook 44 (2024), Appendix C: 1 in = 2.54 cm exactly, 1 mi = 1.609344 km, 1 kg = 2.20462 lb."""
    rows = {row.what["en"]: row.formula["en"] for part in course.formulas for row in part.rows}
    assert "1 in = 2.54 cm" in rows["From one system to the other"]
    assert round(5280 * 12 * Fraction("2.54") / 100_000, 2) == Fraction("1.61")
    assert "1 mi is about 1.61 km, 1 kg is about 2.2 lb" in rows["From one system to the other"]
    assert "1 mi = 5,280 ft" in rows["Length, customary"]


def test_every_row_is_said_in_spanish_too(course: Course) -> None:
    rows = [row for part in course.formulas for row in part.rows]
    assert len(rows) >= 40
    assert [row.what["en"] for row in rows if "es" not in row.what] == []
    # A formula in words needs its Spanish words; one of letters and units doesn't.
    worded = [
        row for row in rows if any(len(word) > 3 and word.isalpha() for word in row.formula["en"].split())
    ]
    assert [row.what["en"] for row in worded if "es" not in row.formula] == []


def test_a_fault_of_the_sheet_is_told(small) -> None:
    (small / "formulas.yaml").write_text(
        "Lines:\n  es: Rectas\n  rows:\n"
        '    - what: Slope\n      lesson: slop\n      formula: "`m = `"\n      figur: none\n',
        encoding="utf-8",
    )
    told = {(fault.kind, fault.line) for fault in load_with_faults(small)[1]}
    assert told >= {("formulas", 7), ("formulas", 4), ("unfinished", 4)}
