"""Spelling: misspelt words are told with their line, wherever people read them; maths, slots and known words aren't."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.course.load import load_with_faults
from bot.course.spelling import misspelt, words_of
from bot.course.year import Course

LESSON = Path("unit-01/two-step-equations.md")


def test_the_course_is_spelt_as_the_dictionary_has_it(course: Course) -> None:
    assert [str(fault) for fault in misspelt(course)] == []


@pytest.mark.parametrize(
    ("before", "after", "word"),
    [
        ("Two-step equations", "Two-step equasions", "equasions"),
        ("Think of how the left side", "Think of how the lefft side", "lefft"),
        ("The last thing done was taking away `9`.", "The last thing done was takking away `9`.", "takking"),
        ("Look at how the single number moved", "Look at how the singel number moved", "singel"),
        ("A tram pass costs", "A tramm pass costs", "tramm"),
        ("**Hint 1.** Take away what was paid", "**Hint 1.** Take away what was payd", "payd"),
        ("Divide by the price of one ride.", "Devide by the price of one ride.", "devide"),
        ('  - "divide by `a`"', '  - "dividde by `a`"', "dividde"),
    ],
)
def test_a_misspelt_word_is_told(small: Path, before: str, after: str, word: str) -> None:
    text = (small / LESSON).read_text(encoding="utf-8")
    assert text.count(before) == 1
    (small / LESSON).write_text(text.replace(before, after), encoding="utf-8")
    assert [fault.mark for fault in misspelt(load_with_faults(small)[0])] == [word]


def test_a_known_word_and_its_plural_pass(small: Path) -> None:
    text = (small / LESSON).read_text(encoding="utf-8")
    (small / LESSON).write_text(text.replace("A tram pass", "Our blorp of blorps"), encoding="utf-8")
    assert [fault.mark for fault in misspelt(load_with_faults(small)[0])] == ["blorp", "blorps"]
    (small / "known-words.txt").write_text("# ours\nBlorp\n", encoding="utf-8")
    assert list(misspelt(load_with_faults(small)[0])) == []


def test_maths_slots_and_short_words_are_no_words() -> None:
    assert list(words_of("{whose} Wren's 5 cm² of `abz + xq`, don’t")) == ["wren", "don't"]
