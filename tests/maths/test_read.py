"""One grammar for students and lessons: what is read, and where and why something can't be."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path

import pytest

import bot.maths
from bot.maths import Undefined, Unreadable, holds, normal, read, value
from bot.maths.algebra import equivalent
from bot.maths.tree import Conditions, IsWhole, Listing, Many, OneOf, Span


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("3/4 ÷ 2/5", "15/8"),
        ("2 1/2", "5/2"),
        ("-2 1/2", "-5/2"),
        ("-3^2", "-9"),
        ("(-3)²", "9"),
        ("2^3^2", "512"),
        ("0.1(6)", "1/6"),
        ("33 1/3%", "1/3"),
        ("9/20%", "9/2000"),
        ("2(3 + 4)", "14"),
        ("½ + ⅓", "5/6"),
        ("|3 − 8|", "5"),
        ("√49", "7"),
        ("∛27", "3"),
        ("12 ÷ 3 × 2", "8"),
        ("6/-2", "-3"),
        ("2⁻³", "1/8"),
        ("gcd(12, 18) + lcm(4, 6)", "18"),
        ("median(3, 9, 4)", "4"),
        ("mean(3, 4)", "7/2"),
    ],
)
def test_numbers_are_worked_out_exactly(text: str, number: str) -> None:
    assert value(read(text)) == Fraction(number)


@pytest.mark.parametrize(
    ("text", "kind", "place"),
    [
        ("", "empty", 0),
        ("2x +", "unfinished", 4),
        ("3 4", "side-by-side", 2),
        ("bananas + 1", "unknown-word", 0),
        ("2 + * 3", "sign-misplaced", 4),
        ("x + 2)", "close-bracket", 5),
        ("2 ≤ # 3", "unknown-sign", 4),
        ("1 <= # 3", "unknown-sign", 5),
    ],
)
def test_what_cannot_be_read_is_told_with_its_place(text: str, kind: str, place: int) -> None:
    with pytest.raises(Unreadable) as trouble:
        read(text)

    assert (trouble.value.kind, trouble.value.place) == (kind, place)


def test_lessons_say_what_varies_and_which_draws_to_keep() -> None:
    assert isinstance(read("-9..9 except 0, 1", "varies"), Span)
    assert isinstance(read("6 of 2..15", "varies"), Many)
    assert isinstance(read("1/2, 2/3", "varies"), OneOf)
    conditions = read("gcd(a, b) = 1, r is not whole, a ≠ b", "conditions")
    assert isinstance(conditions, Conditions)
    assert isinstance(conditions.parts[1], IsWhole)
    assert holds(conditions, {"a": Fraction(2), "b": Fraction(3), "r": Fraction(1, 2)})
    assert not holds(conditions, {"a": Fraction(2), "b": Fraction(4), "r": Fraction(1, 2)})


def test_students_may_run_letters_together_but_not_use_words_of_lessons() -> None:
    assert equivalent(read("bh/2", "reply"), read("b × h ÷ 2"))
    assert equivalent(read("x2 - 4x", "reply"), read("x^2 - 4 x"))
    assert isinstance(read("1; 2", "reply"), Listing)
    assert equivalent(read("gcd(4 + 6)", "reply"), read("g c d (4 + 6)"))
    with pytest.raises(Unreadable):
        read("bh/2")


@pytest.mark.parametrize("text", ["10^99999999", "0.5^99999999", "1/0", "√2", "x + 1", "(1, 2)", "x = 4"])
def test_what_is_no_fraction_is_undefined(text: str) -> None:
    with pytest.raises(Undefined):
        value(read(text))


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("2(x + 3)", "2x + 6", True),
        ("(x + 1)/(x^2 + x)", "1/x", True),
        ("√12", "2√3", True),
        ("1/(1 + √2)", "√2 - 1", True),
        ("2^(n + 1)", "2 × 2^n", True),
        ("6^n", "2^n × 3^n", True),
        ("(a - 3)/4", "a/4 - 3/4", True),
        ("√(x^2)", "|x|", True),
        ("√(x^2)", "x", False),
        ("x^2 - 4x", "x^2 - 4", False),
        ("π", "22/7", False),
        ("2√3", "√11", False),
    ],
)
def test_equality_is_proven_not_sampled(one: str, other: str, same: bool) -> None:
    assert equivalent(read(one), read(other)) is same


def test_every_kind_of_unreadable_text_has_an_example() -> None:
    kinds = tomllib.loads(Path(bot.maths.__file__).with_name("unreadable.toml").read_text(encoding="utf-8"))

    assert all(set(row) == {"example", "instead"} for row in kinds.values())
    grammar = (
        "empty",
        "too-long",
        "too-deep",
        "unfinished",
        "close-bracket",
        "unknown-word",
        "unknown-sign",
        "side-by-side",
    )
    for kind in grammar:
        with pytest.raises(Unreadable) as trouble:
            read(kinds[kind]["example"])
        assert trouble.value.kind == kind


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("２＋３", "2+3"),
        ("x²y⁻¹", "x^2y^-1"),
        ("2½", "2 1/2"),
        ("3×4÷5−6", "3*4÷5-6"),
        ("x => 3", "x ≥ 3"),
        ("x =< 3", "x ≤ 3"),
        ("2**3", "2^3"),
        ("&lt;3", "<3"),
        ("7\u200b\u202e\x00", "7"),
        ("45º", "45°"),
        ("3\\4", "3/4"),
        ("0.3̅", "0.(3)"),
        ("🙃 7", "7"),
    ],
)
def test_signs_are_written_in_one_way(typed: str, plain: str) -> None:
    assert normal(typed) == plain
