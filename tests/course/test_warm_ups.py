"""Number facts: twelve to a sheet, the student's own slow ones among them, each fact worked out a second way."""

from __future__ import annotations

import math
import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pint import UnitRegistry
from support.courses import whole_course

from bot.answers import Key, judge
from bot.course.draw import draw
from bot.course.facts import STAGES, Stage, form_of
from bot.course.warm_ups import fact_sheet, open_stages, passed
from bot.course.year import Course
from bot.vocabulary import LessonId, Verdict

Quantity = UnitRegistry().Quantity


@given(st.sampled_from(sorted(STAGES)), st.integers(0, 10**9))
def test_sheet_has_twelve_different_facts_and_is_the_same_each_time(stage: str, seed: int) -> None:
    sheet = fact_sheet(stage, seed)
    assert len({fact.id for fact in sheet.facts}) == 12
    assert sheet == fact_sheet(stage, seed)


def test_slow_facts_make_up_to_half_the_sheet() -> None:
    slow = ["7 × 8", "8 × 6", "6 × 7"]
    assert set(slow) <= {fact.id for fact in fact_sheet("mul-7-8", 5, slow).facts}
    many = [fact.id for fact in STAGES["mul-7-8"].facts][:20]
    assert sum(fact.id in many for fact in fact_sheet("mul-7-8", 5, many).facts) >= 6


def value_of(text: str) -> Fraction:
    """What an answer on a sheet is worth."""
    return Fraction(text.rstrip("%")) / (100 if text.endswith("%") else 1)


RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
UNITS = {"L": "litre", "mL": "millilitre", "h": "hour"}


def worth(ask: str) -> Fraction:
    """A second road: the fact read as words and signs, units by pint, instead of the formula that made it."""
    plain = ask.replace("−", "-")
    if found := re.fullmatch(r"(\S+) (\w+) in (\w+)", plain):
        amount, large, small = found.groups()
        if small != "percent":
            made = Quantity(float(amount), UNITS.get(large, large)).to(UNITS.get(small, small))
            return Fraction(made.magnitude).limit_denominator(1000)
    if found := re.fullmatch(r"(\S+) (?:in percent|as a fraction|as a decimal)", plain):
        return value_of(found[1])
    if found := re.fullmatch(r"(\S+)% of (\S+)", plain):
        return Fraction(found[1]) * Fraction(found[2]) / 100
    if found := re.fullmatch(r"double (\d+)", plain):
        return Fraction(found[1]) * 2
    if found := re.fullmatch(r"half of (\d+)", plain):
        return Fraction(found[1]) / 2
    if found := re.fullmatch(r"√(\d+)", plain):
        return Fraction(math.isqrt(int(found[1])))
    if found := re.fullmatch(r"(\d+)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)", plain):
        return Fraction(int(found[1]) ** int(found[2].translate(RAISED)))
    one, sign, other = plain.split(" ")
    a, b = Fraction(one), Fraction(other.strip("()"))
    return {"+": a + b, "-": a - b, "×": a * b, "÷": a / b if b else Fraction(0)}[sign]


@pytest.mark.parametrize("stage", STAGES.values(), ids=lambda stage: stage.id)
def test_every_fact_is_true_and_its_answer_counts(stage: Stage) -> None:
    for fact in stage.facts:
        assert value_of(fact.answer) == worth(fact.ask), fact
        key = Key(answer=fact.answer, form=form_of(fact.answer))
        assert judge(fact.answer, key).verdict is Verdict.RIGHT, fact


def test_customary_units_agree_with_the_handbook() -> None:
    """NIST SP 811: 12 inches to the foot, 3 feet to the yard, 16 ounces to the pound, 4 quarts to the gallon."""
    known = {fact.id: fact.answer for fact in STAGES["measure-customary"].facts}
    assert known["1 foot in inches"] == "12"
    assert known["1 yard in feet"] == "3"
    assert known["1 pound in ounces"] == "16"
    assert known["1 gallon in quarts"] == "4"


def test_all_facts_of_the_four_operations_to_twelve_are_there() -> None:
    ids = {fact.id for stage in STAGES.values() for fact in stage.facts}
    for a in range(2, 13):
        for b in range(2, 13):
            assert {f"{a} + {b}", f"{a + b} − {a}", f"{a} × {b}", f"{a * b} ÷ {a}"} <= ids


def test_stage_is_passed_by_three_good_sheets_of_the_last_five() -> None:
    assert passed([4, 0, 1, 3, 1])
    assert not passed([0, 0, 0, 2, 3, 4, 0, 2])


def test_next_stage_opens_when_what_it_needs_is_passed() -> None:
    assert [stage.id for stage in open_stages([], [])] == ["add-12", "mul-2-5-10"]
    assert "mul-3-4" in {stage.id for stage in open_stages(["mul-2-5-10"])}


def test_stage_of_a_lesson_waits_for_the_lesson() -> None:
    done = ["add-12", "sub-12"]
    assert "int-add" not in {stage.id for stage in open_stages(done, [])}
    assert "int-add" in {stage.id for stage in open_stages(done, [LessonId("adding-integers")])}


def test_every_stage_is_reached_and_needs_only_earlier_ones() -> None:
    earlier: set[str] = set()
    for stage in STAGES.values():
        assert set(stage.needs) <= earlier, stage.id
        earlier.add(stage.id)


def test_lessons_that_open_a_stage_are_in_the_course(course: Course) -> None:
    known = {lesson for unit in course.units for lesson in unit.lessons}
    assert {stage.opens_after for stage in STAGES.values() if stage.opens_after} <= known


def test_forty_strategies_of_five_strings_that_vary(course: Course) -> None:
    assert len(course.mental_math) >= 30
    for strategy in course.mental_math:
        assert len(strategy.templates) >= 5, strategy.title
        different = {draw(course, name, seed).ask for name in strategy.templates for seed in range(25)}
        assert len(different) >= 40, strategy.title


def test_lessons_that_open_a_strategy_or_a_template_are_in_the_course() -> None:
    course = whole_course()
    known = {lesson for unit in course.units for lesson in unit.lessons}
    strategies = (*course.mental_math, *course.puzzles)
    opens = {each.opens_after for each in strategies}
    opens |= {course.template(name).opens_after for each in strategies for name in each.templates}
    assert len(opens) > 10
    assert opens - {None} <= known


def test_strings_have_their_strategy_as_a_hint() -> None:
    course = whole_course()
    item = draw(course, "mental-math/make-the-next-ten", 1)
    assert item.hints == ("Fill up to the ten first, then add what is left.",)
