"""The glossary: every bold term has its meaning, in both languages, and is found however it is typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.course.glossary import look_up
from bot.course.load import load_with_faults
from bot.course.prove import check_folder
from bot.course.word_rules import glossary_faults, terms_of
from bot.course.year import Course

WORD = """\
addend:
  lesson: two-step-equations
  meaning: A number that is added.
  example: In `1,200 + b` the addends are `1,200` and `b`.
  es:
    term: sumando
    meaning: Un número que se suma.
    example: En `2 + 3` los sumandos son 2 y 3.
"""


def test_the_glossary_of_the_course_has_no_fault(course: Course) -> None:
    assert [str(fault) for fault in glossary_faults(course)] == []
    assert len(course.glossary) >= 200


def test_every_word_is_said_in_spanish_too(course: Course) -> None:
    assert [word.term for word in course.glossary if "es" not in word.said] == []
    same = [word.term for word in course.glossary if word.said["es"].meaning == word.said["en"].meaning]
    assert same == []


@pytest.mark.parametrize(
    ("asked", "language", "terms"),
    [
        ("numerator", "en", ["numerator"]),
        ("Numerators", "en", ["numerator"]),
        ("the  HYPOTENUSE?", "en", ["hypotenuse"]),
        ("numerador", "es", ["numerator"]),
        ("el máximo comun divisor", "es", ["greatest common factor"]),
        ("base", "en", ["base of a power", "base of a shape"]),
        ("identity", "en", ["identity", "identity property"]),
        ("", "en", []),
    ],
)
def test_a_word_is_found_by_any_of_its_names(
    course: Course, asked: str, language: str, terms: list[str]
) -> None:
    found = look_up(course.glossary, asked, language)
    assert ([word.term for word in found.words], found.near) == (terms, ())


@pytest.mark.parametrize(
    ("asked", "language", "near"),
    [("numrator", "en", "numerator"), ("numerdaor", "es", "numerador"), ("prime fact", "en", "prime factor")],
)
def test_a_mistyped_word_names_the_nearest(course: Course, asked: str, language: str, near: str) -> None:
    found = look_up(course.glossary, asked, language)
    assert found.words == () and found.near[0] == near and len(found.near) <= 3


def test_a_word_that_is_like_no_other_finds_nothing(course: Course) -> None:
    assert look_up(course.glossary, "xylophone").near == ()


def test_a_bold_sentence_is_no_term() -> None:
    card = "A **zero pair** is nothing. **Two minus signs make a plus.** Take the **`3` in front**."
    assert list(terms_of(card)) == ["zero pair"]


@pytest.mark.parametrize(
    ("before", "after", "kind", "says"),
    [
        ("two-step-equations", "two-step-equation", "glossary", "Did you mean two-step-equations?"),
        ("  meaning: A number that is added.\n", "", "glossary", "lacks in 'en': meaning"),
        ("    term: sumando\n", "", "glossary", "lacks in 'es': term"),
        ("  meaning: A", "  means: A", "glossary", "A word has no 'means'."),
        ("A number that is added.", "A number that is simply added.", "unkind-word", "simply"),
        ("A number that is added.", "A number " + "and so on " * 10, "word-long", "more than 30 words"),
    ],
)
def test_a_fault_of_the_glossary_is_told(small: Path, before: str, after: str, kind: str, says: str) -> None:
    assert WORD.count(before) == 1
    (small / "glossary" / "words.yaml").write_text(WORD.replace(before, after), encoding="utf-8")
    faults = [fault for fault in check_folder(small, draws=2).faults if fault.kind == kind]
    assert any(says in f"{fault.what} {fault.fix}" for fault in faults), [str(fault) for fault in faults]


def test_thousands_and_maths_of_an_example_are_spelt_as_people_read_them(small: Path) -> None:
    (small / "glossary" / "words.yaml").write_text(WORD, encoding="utf-8")
    course, faults = load_with_faults(small)
    assert faults == []
    assert course.glossary[0].in_language("en").example == "In `1,200 + b` the addends are `1,200` and `b`."
    assert course.glossary[0].in_language("fr").term == "addend"


def test_a_bold_term_without_a_meaning_is_a_fault(small: Path) -> None:
    (small / "glossary" / "stressed.txt").write_text("added\n", encoding="utf-8")
    told = [fault for fault in check_folder(small, draws=2).faults if fault.kind == "not-in-glossary"]
    assert [fault.mark for fault in told] == ["multiplied"]


def test_a_term_belongs_to_the_lesson_that_has_it_first(small: Path) -> None:
    word = WORD.replace("addend:", "multiplied:").replace("two-step-equations", "inequalities")
    (small / "glossary" / "words.yaml").write_text(word, encoding="utf-8")
    (small / "glossary" / "stressed.txt").write_text("added\n", encoding="utf-8")
    told = [fault for fault in check_folder(small, draws=2).faults if fault.kind == "glossary-lesson"]
    assert [fault.mark for fault in told] == ["multiplied"]
