"""The judgement as a whole: what is accepted, taught, not started, and never raised."""

from __future__ import annotations

import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

import bot.answers
import bot.maths
from bot.answers import FORMS, Key, Misstep, examples, is_help, judge, look_over, split_numbered, taught_form
from bot.answers.missteps import names
from bot.vocabulary import Verdict


def verdict(typed: str, answer: str, form: str, **more: object) -> str:
    return judge(typed, Key(answer, form, **more)).verdict.value  # type: ignore[arg-type]


def test_an_answer_typed_as_stored_is_right_in_every_form() -> None:
    stored = {
        "number": "3/4", "fraction-simplest": "3/4", "mixed": "2 1/2", "decimal": "0.333...",
        "decimal-rounded": "2.67",
        "percent": "45%", "whole": "12", "integer": "-5", "expression": "(4x-5)/20", "expression-any": "3(n + 4)",
        "factored": "2(x+3)", "equation-solution": "no solution", "solutions-set": "3, -3",
        "inequality": "-2 < x <= 5",
        "ratio": "-24/1", "point": "(2, -3)", "list": "1/4, 1/3", "money": "4.50", "time": "2 h 15 min",
        "scientific": "3.2 x 10^5", "remainder": "7 R 2", "prime-factors": "2^3*5", "choice": "B", "yes-no": "no",
        "words": "obtuse", "equation": "A = 1/2*b*h",
    }  # fmt: skip
    assert {form: verdict(answer, answer, form) for form, answer in stored.items()} == dict.fromkeys(
        stored, "right"
    )
    assert verdict("3 ft", "3", "quantity", unit="ft") == "right"
    assert verdict("3 ft", "3", "quantity-exact-unit", unit="ft") == "right"
    assert {*stored, "quantity", "quantity-exact-unit"} == FORMS


def test_many_right_answers_are_accepted_by_a_condition() -> None:
    between = {"accept": "1/3 < it < 1/2"}

    assert verdict("2/5", "5/12", "fraction-simplest", **between) == "right"
    assert verdict("0.45", "5/12", "number", **between) == "right"
    assert verdict("4/10", "5/12", "fraction-simplest", **between) == "form"
    assert verdict("1/2", "5/12", "fraction-simplest", **between) == "wrong"
    assert verdict("470", "480", "whole", accept="450 <= it <= 500") == "right"


def test_the_question_typed_back_is_not_started() -> None:
    key = Key("2x + 6", "expression", given="2(x + 3)", form_is_the_skill=True)

    assert judge("2(x+3)", key).not_started
    assert judge("2(3 + x)", key).not_started
    assert not judge("2x + 2*3", Key("2x + 6", "expression", given="2(x+3)")).not_started
    assert judge("6/8", Key("3/4", "fraction-simplest", given="6/8", form_is_the_skill=True)).not_started
    assert judge("12/16", Key("3/4", "fraction-simplest", given="6/8", form_is_the_skill=True)).not_started


def test_fewer_places_are_wrong_where_rounding_is_the_skill() -> None:
    assert verdict("2.7", "2.67", "decimal-rounded") == "form"
    assert verdict("2.7", "2.67", "decimal-rounded", form_is_the_skill=True) == "wrong"


def test_what_a_tutor_accepted_from_now_on_is_right() -> None:
    key = Key("3/4", "fraction-simplest")
    taught = {taught_form("three 4ths of it!!"): "3/4"}

    assert judge("Three 4ths of it!!", key, taught).verdict is Verdict.RIGHT
    assert judge("Three 4ths of it!!", Key("1/4", "fraction-simplest"), taught).verdict is not Verdict.RIGHT


def test_a_template_s_own_misstep_comes_first() -> None:
    own = Misstep("took-the-other", "4/3", "Which number is on top?")

    assert judge("4/3", Key("3/4", "number", missteps=(own,))).misstep == "took-the-other"
    assert judge("4/3", Key("3/4", "number")).misstep == "upside-down"


@pytest.mark.parametrize(
    ("typed", "answer", "form", "given", "misstep"),
    [
        ("2/5", "5/6", "fraction-simplest", "1/2 + 1/3", "added-across"),
        ("3/10", "15/8", "fraction-simplest", "3/4 ÷ 2/5", "reciprocal-not-taken"),
        ("8/15", "15/8", "fraction-simplest", "3/4 ÷ 2/5", "wrong-one-inverted"),
        ("14", "11", "whole", "3 + 4 * 2", "left-to-right"),
        ("2x + 3", "2x + 6", "expression", "2(x + 3)", "first-term-only"),
        ("5 - 2x", "3 - 2x", "expression", "4 - (2x + 1)", "minus-not-distributed"),
        ("x = 7", "x = 4", "equation-solution", "2x + 3 = 11", "wrong-inverse"),
        ("x^12", "x^7", "expression", "x^3 * x^4", "exponent-multiplied"),
        ("1200", "12", "number", "15% of 80", "percent-as-number"),
        ("68", "12", "number", "15% of 80", "part-for-rest"),
        ("-9", "9", "integer", "(-3)^2", "minus-squared"),
    ],
)
def test_a_misstep_is_worked_out_from_the_question(
    typed: str, answer: str, form: str, given: str, misstep: str
) -> None:
    assert judge(typed, Key(answer, form, given=given)).misstep == misstep


def test_names_given_to_wrong_answers_are_mostly_those_given_by_hand() -> None:
    path = Path(__file__).with_name("labelled_missteps.tsv")
    rows = [
        line.split("\t") for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")
    ]
    said = [
        (judge(typed, Key(answer, form, unit or None)).misstep, name)
        for answer, form, unit, typed, name in rows
    ]
    given = [(one, due) for one, due in said if one is not None]

    assert len(rows) == 150
    assert len(given) >= 90
    assert sum(one == due for one, due in given) / len(given) >= 0.9
    assert {one for one, _ in given} <= set(names())


@pytest.mark.parametrize("form", sorted(FORMS))
def test_each_example_of_how_to_type_can_be_read(form: str) -> None:
    key = {
        "words": Key("acute", form), "choice": Key("D", form), "time": Key("1 h", form),
        "remainder": Key("1 R 1", form),
        "quantity": Key("1", form, "ft"), "quantity-exact-unit": Key("1", form, "ft"), "ratio": Key("1:9", form),
        "point": Key("(9, 9)", form), "list": Key("9, 8", form), "solutions-set": Key("9, 8", form),
        "inequality": Key("x > 99", form), "equation": Key("y = x", form), "equation-solution": Key("x = 99", form),
        "prime-factors": Key("2*2", form), "yes-no": Key("yes", form),
    }.get(form, Key("99", form))  # fmt: skip

    assert len(examples(form)) == 3
    for example in examples(form):
        assert judge(example, key).verdict not in (Verdict.UNREADABLE, Verdict.HELP), example


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("3) 1/2  4) -7", {3: "1/2", 4: "-7"}),
        ("1. 12\n2. 15\n3. x = 4", {1: "12", 2: "15", 3: "x = 4"}),
        ("#3: 1/2, #4: -7", {3: "1/2", 4: "-7"}),
        ("3: 2 1/2\n4: idk", {3: "2 1/2", 4: "idk"}),
        ("(3) 5 (4) 6", {3: "5", 4: "6"}),
        ("3) 5\n3) 6", {3: "6"}),
        ("3.) 5  4.) 6", {3: "5", 4: "6"}),
        ("1/2", {}),
        ("2:15", {}),
        ("3.5", {}),
        ("x = 4", {}),
        ("", {}),
    ],
)
def test_several_answers_in_one_message_are_told_apart(typed: str, found: dict[int, str]) -> None:
    assert split_numbered(typed) == found


def test_a_call_for_help_is_told_from_an_answer() -> None:
    assert is_help("i don't get it")
    assert is_help("?")
    assert not is_help("idk maybe 7")
    assert not is_help("7")


def test_a_key_that_cannot_be_read_raises_nothing() -> None:
    assert verdict("7", "((", "number") == "unreadable"
    assert verdict("7", "", "point") in ("unreadable", "wrong")


def test_nothing_slow_is_loaded_for_ordinary_answers() -> None:
    program = (
        "import sys; from bot.answers import Key, judge\n"
        "judge('2(x+3)', Key('2x + 6', 'expression')); judge('36 in', Key('3', 'quantity', 'ft'))\n"
        "print([name for name in ('sympy', 'pint') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)

    assert done.stdout.strip() == "[]"


def test_not_even_odd_texts_raise_or_take_long() -> None:
    sys.path.insert(0, str(Path(__file__).parent.parent / "bench"))
    try:
        from checker_soak import soak
    finally:
        sys.path.pop(0)

    raised, _, slowest = soak(20_000, seed=20260914)

    assert raised == 0, slowest


def test_a_row_of_bars_in_the_working_is_looked_over_without_going_back() -> None:
    assert look_over(["3/4/" * 90 + "r"], "2x + 3 = 11").first_wrong is None


def test_every_reason_that_is_given_stands_in_the_table() -> None:
    table = tomllib.loads((Path(bot.answers.__file__).parent / "reasons.toml").read_text(encoding="utf-8"))
    said: dict[str, set[str]] = {"form": set(), "unit": set()}
    for path in (Path(__file__).parent / "rows").glob("*.tsv"):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.strip() and not line.startswith("#"):
                typed, expected, form, unit, due, _ = line.split("\t")
                if due in said:
                    said[due].add(judge(typed.replace("\\n", "\n"), Key(expected, form, unit or None)).reason)

    assert said["form"] <= set(table["form"])
    assert said["unit"] <= set(table["unit"])


def test_every_kind_of_trouble_stands_in_the_table() -> None:
    table = tomllib.loads((Path(bot.maths.__file__).parent / "unreadable.toml").read_text(encoding="utf-8"))
    said = set()
    for path in (Path(__file__).parent / "rows").glob("*.tsv"):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.strip() and not line.startswith("#"):
                typed, expected, form, unit, due, _ = line.split("\t")
                if due == "unreadable":
                    said.add(judge(typed.replace("\\n", "\n"), Key(expected, form, unit or None)).trouble)

    assert said <= set(table)


@pytest.mark.parametrize(
    ("typed", "answer", "choices", "verdict"),
    [
        ("9-4", "9 − 4", ("9 − 4", "4 − 9"), Verdict.RIGHT),
        ("4 -9", "9 − 4", ("9 − 4", "4 − 9"), Verdict.WRONG),
        ("2x+3", "2x + 3", ("2x + 3", "3x + 2"), Verdict.RIGHT),
        ("1800", "1,800", ("1,800", "180", "18,000"), Verdict.RIGHT),
        ("18000", "1,800", ("1,800", "180", "18,000"), Verdict.WRONG),
        ("12", "1, 2", ("1, 2", "12", "2, 1"), Verdict.WRONG),
    ],
)
def test_a_choice_may_be_typed_with_other_spaces_or_without_its_comma(
    typed: str, answer: str, choices: tuple[str, ...], verdict: Verdict
) -> None:
    assert judge(typed, Key(answer, "choice", choices=choices)).verdict is verdict


def test_two_digits_apart_are_not_the_choice_that_has_them_together() -> None:
    key = Key("12", "choice", choices=("12", "1 and 2"))
    assert judge("1 2", key).verdict is not Verdict.RIGHT
