"""Lines of maths become a picture; what can't be read is shown as it stands."""

from __future__ import annotations

from io import BytesIO
from xml.etree import ElementTree

import pytest
from PIL import Image

from bot.pictures.formulas import Formulas
from bot.pictures.maths import lines

STEPS = [("4x - 9 = 23", "The last thing done was taking away `9`."), ("x = 8", "")]


def test_lines_are_a_picture_of_phone_width():
    image = Image.open(BytesIO(lines(STEPS)))

    assert image.width == 1080 and image.height > 200


def test_more_lines_are_higher():
    assert Image.open(BytesIO(lines(STEPS * 3))).height > 2 * Image.open(BytesIO(lines(STEPS))).height


def test_lines_can_be_svg():
    assert ElementTree.fromstring(lines(STEPS, "svg")).tag.endswith("svg")


def test_equal_lines_give_equal_bytes():
    assert lines(STEPS) == lines(list(STEPS))


@pytest.mark.parametrize(
    "hostile", ["#panic()", "$ x $", "x)] #f(", '"', "\\", "7 R 2", "$4.50", "", "`", "x" * 300]
)
def test_what_is_no_maths_is_shown_as_it_stands(hostile):
    formulas = Formulas()

    assert all(kind in ("shown", "maths") for kind, _ in formulas.bare(hostile))
    assert "panic" not in formulas.source() and "#f" not in formulas.source()
    assert lines([(hostile, hostile)])[:4] == b"\x89PNG"


def test_a_formula_that_comes_twice_is_kept_once():
    formulas = Formulas()

    assert formulas.text("Work out `3/4`, then `3/4` again.") == [
        ["words", "Work out "],
        ["maths", "0"],
        ["words", ", then "],
        ["maths", "0"],
        ["words", " again."],
    ]


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("10,000", '"10,000"'),
        ("4,000 + 5,000", '"4,000" + "5,000"'),
        ("(1,000 + 2) * 3", '("1,000" + 2) times 3'),
        ("1,234,567.5", '"1,234,567".5'),
        ("(2, 300)", "(2, 300)"),
        ("(10,100)", "(10, 100)"),
        ("1, 234", "1, 234"),
    ],
)
def test_a_number_of_thousands_is_one_number_and_a_list_stays_a_list(written, code):
    formulas = Formulas()
    assert formulas.text(f"`{written}`") == [["maths", "0"]]
    assert formulas.source() == f"#let formulas = ($ {code} $, )\n"
