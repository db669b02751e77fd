"""What a recipe of a figure gives, what its author is told, and what a student hears who can't see it."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from statistics import quantiles

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from bot.course.figures import KINDS, Drawn, Holds, alt, check, check_recipe, fill
from bot.course.figures.curves import Solutions, curve, solutions
from bot.course.figures.reading import leading_number, number, pair, rows, several, span, split
from bot.course.figures.scales import nice_step, outward, ticks
from bot.course.figures.spoken_graphs import five_numbers
from bot.course.figures.telling import plain

FAULTS = yaml.load((Path(__file__).parent / "figure_faults.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)


@pytest.mark.parametrize("case", FAULTS, ids=lambda case: case["why"])
def test_an_author_hears_what_is_wrong_and_what_would_be_right(case):
    assert any(case["says"] in fault for fault in check(case["given"])), check(case["given"])


def test_every_rule_of_every_kind_is_met_by_its_example():
    assert {name: check(kind.example) for name, kind in KINDS.items() if check(kind.example)} == {}


def test_a_recipe_is_in_order_before_its_numbers_are_drawn():
    assert check_recipe({"figure": "bar", "length": "n", "pieces": "a/b"}) == []
    assert check({"figure": "bar", "length": "n", "pieces": "a/b"}) != []


def put(holds, text):
    """Stands for the drawing of numbers: n is 12, D is a list, words stay."""
    return {"n": "12", "D": "2, 5, 7", "a/b": "3/4", "mixed(n) m": "12 m", "a x + b": "3x + 5"}.get(
        text, text
    )


@pytest.mark.parametrize(
    ("recipe", "drawn"),
    [
        ({"length": "n", "pieces": "a/b"}, {"figure": "bar", "length": "12", "pieces": "3/4"}),
        ({"data": "D"}, {"figure": "dot-plot", "data": "2, 5, 7"}),
        ({"data": ["n", "3"]}, {"figure": "dot-plot", "data": "12, 3"}),
        ({"left": "a x + b", "right": "n"}, {"figure": "balance", "left": "3x + 5", "right": "12"}),
        (
            # YAML cuts a list of pairs at every comma.
            {"x": "-n..n step 2", "y": "0..n", "points": ["(n", "2)", "(a/b", "0)"]},
            {"figure": "grid", "x": "-n..12 step 2", "y": "0..12", "points": "(12, 2), (3/4, 0)"},
        ),
        (
            {"rows": [["hours", "1", "n"], ["loaves", "n", "unknown"]]},
            {"figure": "table", "rows": [["hours", "1", "12"], ["loaves", "12", "unknown"]]},
        ),
        (
            {"x": "0..5", "y": "0..5", "polygons": [["(0", "0)", "(n", "0)", "(n", "2)"]]},
            {"figure": "grid", "x": "0..5", "y": "0..5", "polygons": [["(0, 0)", "(12, 0)", "(12, 2)"]]},
        ),
    ],
)
def test_numbers_are_put_into_every_piece_of_a_recipe(recipe, drawn):
    assert fill(KINDS[drawn["figure"]], recipe, put) == drawn


def test_a_piece_is_put_in_as_what_its_field_holds():
    asked = []
    fill(
        KINDS["triangle"],
        {"base": "a cm", "angles": "x, 40°, none", "right-angle": "left"},
        lambda holds, text: asked.append((holds, text)) or text,
    )

    assert asked == [(Holds.LABEL, "a cm"), (Holds.LABEL, "x"), (Holds.LABEL, "40°"), (Holds.LABEL, "none")]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("3", 3),
        ("-3", -3),
        ("−3", -3),
        ("2.50", Fraction(5, 2)),
        ("3/4", Fraction(3, 4)),
        ("1 1/2", Fraction(3, 2)),
        ("−1 1/2", Fraction(-3, 2)),
        (".5", Fraction(1, 2)),
        ("3/0", None),
        ("x", None),
        ("", None),
        ("3 m", None),
    ],
)
def test_a_number_is_read_as_people_write_it(text, value):
    assert number(text) == value


@given(st.fractions(max_denominator=50))
def test_a_number_that_is_said_is_read_back(value):
    assert number(plain(value)) == value


@pytest.mark.parametrize(
    ("label", "value"),
    [
        ("7.5 cm", Fraction(15, 2)),
        ("2 1/4 m", Fraction(9, 4)),
        ("1,250 mm", 1250),
        ("x", None),
        ("2x", None),
        ("48°", 48),
    ],
)
def test_a_label_begins_with_its_number(label, value):
    assert leading_number(label) == value


def test_a_comma_inside_a_number_or_brackets_divides_nothing():
    assert split("1,200 m, x, 3") == ["1,200 m", "x", "3"]
    assert split("(1, 2), (3, 4)") == ["(1, 2)", "(3, 4)"]
    assert split("1,2,3") == ["1", "2", "3"]
    assert several([["1", "2"], ["3", "4"]]) == ["(1, 2)", "(3, 4)"]
    assert rows([["(0", "0)", "(4", "0)"]]) == [["(0, 0)", "(4, 0)"]]
    assert rows(["hours, 1, 2", "loaves, 3, 4"]) == [["hours", "1", "2"], ["loaves", "3", "4"]]


def test_pairs_and_spans():
    assert pair("(1, -2)") == ("1", "-2") and pair("1, 2") is None
    assert span("0..20 step 5") == ("0", "20", "5") and span("0-20") is None


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("x > 3", Solutions(Fraction(3), False, None, False)),
        ("n ≤ -1/2", Solutions(None, False, Fraction(-1, 2), True)),
        ("5 ≥ x", Solutions(None, False, Fraction(5), True)),
        ("-2 ≤ x < 5", Solutions(Fraction(-2), True, Fraction(5), False)),
        ("5 > x ≥ -2", Solutions(Fraction(-2), True, Fraction(5), False)),
        ("x = 3", None),
        ("x > y", None),
        ("5 < x < 2", None),
    ],
)
def test_solutions_of_an_inequality(text, found):
    assert solutions(text) == found


def test_a_curve_has_a_height_for_each_x():
    line, parabola, broken, upright = (curve(t) for t in ("y = -1/2x + 5", "y = x^2", "y = 6/x", "x = 3"))

    assert [line.at(Fraction(x)) for x in (0, 2, 10)] == [5, 4, 0]
    assert parabola.at(Fraction(-3)) == 9
    assert broken.at(Fraction(0)) is None and broken.at(Fraction(2)) == 3
    assert upright.upright == 3
    assert curve("y > 3") is None and curve("hello") is None


@given(st.lists(st.integers(-100, 100), min_size=11, max_size=11))
def test_quartiles_agree_with_the_standard_library_where_both_rules_do(data):
    # With 4n + 3 numbers the medians of the halves are the library's exclusive quartiles.
    found = five_numbers(Drawn({"figure": "box-plot", "data": [str(value) for value in data]}))

    assert found[1:4] == quantiles(data, n=4, method="exclusive")


def test_quartiles_of_an_even_count_are_medians_of_the_halves():
    assert five_numbers(Drawn({"figure": "box-plot", "data": "1, 2, 3, 4, 5, 6"})) == [
        1,
        2,
        Fraction(7, 2),
        5,
        6,
    ]


@given(st.fractions(Fraction(1, 100), 1000), st.integers(2, 30))
def test_a_scale_has_at_most_so_many_parts_and_none_too_few(length, most):
    step = nice_step(length, most)

    assert length / step <= most
    assert length / step > most / 2.5 - 1


@given(st.lists(st.fractions(-1000, 1000, max_denominator=20), min_size=1, max_size=8))
def test_a_scale_drawn_outward_holds_all_values(values):
    low, high, step = outward(values)

    assert low <= min(values) and max(values) <= high
    assert (low / step).denominator == 1


def test_ticks_go_through_nought():
    assert ticks(Fraction(-3), Fraction(4), Fraction(2)) == [-2, 0, 2, 4]
    assert ticks(Fraction(3, 10), Fraction(1), Fraction(1, 2)) == [Fraction(3, 10), Fraction(4, 5)]


HEARD = [
    (
        {"figure": "clock", "hour": "14", "minute": "40"},
        "the short hand is between 2 and 3, the long hand is at 8",
    ),
    ({"figure": "clock", "hour": "9", "minute": "0"}, "the short hand is at 9, the long hand is at 12"),
    ({"figure": "clock", "hour": "9", "minute": "7"}, "2 minute marks after 1"),
    ({"figure": "place-value", "number": "506.07"}, "hundreds 5, tens 0, ones 6, tenths 0, hundredths 7"),
    ({"figure": "hundred-grid", "shaded": "37"}, "3 full columns and 7 more squares shaded"),
    (
        {"figure": "number-line", "from": "-6", "to": "6", "points": "-4", "names": "A"},
        "A is 4 ticks left of 0.",
    ),
    (
        {"figure": "number-line", "from": "0", "to": "8", "inequality": "x ≥ 3"},
        "from a filled circle at 3",
    ),
    (
        {"figure": "angle", "degrees": "125", "label": "none", "protractor": "yes"},
        "the other 5 small marks past 120",
    ),
    (
        {"figure": "grid", "x": "-5..5", "y": "-5..5", "points": "(-4, 1)", "names": "B"},
        "B is 4 left and 1 up from the origin.",
    ),
    ({"figure": "grid", "x": "-5..5", "y": "-5..5", "line": "y = 2x - 1"}, "A straight line through"),
    ({"figure": "rectangle", "width": "4 m", "height": "unknown"}, "width 4 m, height not given"),
    ({"figure": "balance", "left": "3x + 5", "right": "26"}, "On the left: 3x + 5. On the right: 26."),
    ({"figure": "dot-plot", "data": "7, 7, 8"}, "2 dots at 7, 1 dot at 8"),
    (
        {"figure": "table", "rows": [[" ", "tram"], ["children", " "]]},
        "Row 1: empty, tram. Row 2: children, empty.",
    ),
]


@pytest.mark.parametrize(("figure", "part"), HEARD)
def test_a_picture_in_words_can_be_worked(figure, part):
    assert part in alt(figure)


def test_what_is_to_be_read_off_is_not_said_outright():
    assert "125" not in alt({"figure": "angle", "degrees": "125", "label": "none", "protractor": "yes"})
    assert "2x" not in alt({"figure": "grid", "x": "-5..5", "y": "-5..5", "line": "y = 2x - 1"})
    assert "14" not in alt({"figure": "clock", "hour": "14", "minute": "40"})


def test_a_point_on_a_side_is_no_corner():
    cut_triangle = {
        "figure": "composite",
        "corners": [["0", "0"], ["10", "0"], ["4", "7"], ["4/3", "7/3"]],
        "sides": ["unknown", "none", "10 ft", "5 ft"],
    }
    assert alt(cut_triangle) == (
        "A figure with 3 corners. Its sides in order: to the right not given, slanting no label, "
        "slanting 10 ft, straight on 5 ft."
    )
