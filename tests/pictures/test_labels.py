"""How labels are set and how much room they take."""

from __future__ import annotations

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from bot.pictures.labels import FONTS, Run, room, runs, wrap


@pytest.mark.parametrize(
    ("label", "as_set"),
    [
        ("12 m", [Run("text", "12 m")]),
        ("2 1/4 m", [Run("text", "2 "), Run("fraction", "1", "4"), Run("text", " m")]),
        ("3x + 5", [Run("text", "3"), Run("letter", "x"), Run("text", " + 5")]),
        ("x/2", [Run("fraction", "x", "2")]),
        ("cm^2", [Run("text", "cm"), Run("power", "2")]),
        ("unknown", [Run("bold", "?")]),
        ("-3", [Run("text", "−"), Run("text", "3")]),
        ("t-shirt", [Run("text", "t-shirt")]),
        ("a sack", [Run("text", "a sack")]),
        ("km/h", [Run("text", "km/h")]),
        ("5 m/s", [Run("text", "5 m/s")]),
        ("m/s", [Run("fraction", "m", "s")]),
        ("12500 g", [Run("text", "12,500 g")]),
        ("3/1000", [Run("fraction", "3", "1,000")]),
        ("0.12345", [Run("text", "0.12345")]),
        ("12/09/2026", [Run("text", "12/09/2026")]),
        ("m", [Run("letter", "m")]),
        ("flour", [Run("text", "flour")]),
    ],
)
def test_maths_leans_and_stacks_and_words_do_not(label, as_set):
    assert list(runs(label)) == as_set


@pytest.mark.parametrize("text", ["Dividing fractions", "1,234.50", "≤ ≥ − × ÷ ° √ π", "áéíóú ñ ¿¡"])
def test_room_agrees_with_the_tables_of_the_font(text):
    # Outside source: advance widths as fontTools reads them from the same file.
    font = TTFont(FONTS / "PT_Sans-Web-Regular.ttf")
    names = font.getBestCmap()
    wide = sum(font["hmtx"][names[ord(sign)]][0] for sign in text) / font["head"].unitsPerEm * 16

    assert room(text, 16).width == pytest.approx(wide, rel=0.02)


def test_all_signs_of_the_course_are_in_the_font():
    names = TTFont(FONTS / "PT_Sans-Web-Regular.ttf").getBestCmap()

    assert [sign for sign in "≤≥≠°√π−×÷²³½·áéíóúñ¿¡ü“”’–…≈%€£$¢" if ord(sign) not in names] == []


def test_a_fraction_takes_more_height_than_a_number():
    assert room("3/4").height > 1.8 * room("3").height


@given(st.lists(st.text("abcdefghij", min_size=1, max_size=9), min_size=1, max_size=8))
def test_wrapping_loses_no_word_and_keeps_to_the_width(words):
    lines = wrap(" ".join(words), 80)

    assert " ".join(lines).split() == words
    assert all(room(line).width <= 80 for line in lines if " " in line)
