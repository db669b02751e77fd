"""Number facts: twelve to a sheet, the student's own slow ones among them, answers read in any order."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.course.warm_ups import STAGES, fact_sheet, open_stages, passed, read_sheet, typing_sheet


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


def test_every_fact_is_true() -> None:
    for stage in STAGES.values():
        for fact in stage.facts:
            one, sign, other = fact.id.split()
            a, b = int(one), int(other)
            found = {"+": a + b, "−": a - b, "×": a * b, "÷": a / b}[sign]
            assert fact.answer == found, fact


def test_all_facts_of_the_four_operations_to_twelve_are_there() -> None:
    ids = {fact.id for stage in STAGES.values() for fact in stage.facts}
    for a in range(2, 13):
        for b in range(2, 13):
            assert {f"{a} + {b}", f"{a + b} − {a}", f"{a} × {b}", f"{a * b} ÷ {a}"} <= ids


def test_answers_are_read_by_number_or_in_order() -> None:
    sheet = fact_sheet("add-12", 1)
    by_number = read_sheet("2) 15  1) 12, 12. 9", sheet)
    assert [line.typed for line in by_number] == [12, 15, *[None] * 9, 9]
    in_order = read_sheet("12 - 14\n? 7", sheet)
    assert [line.typed for line in in_order] == [12, None, 14, None, 7, *[None] * 7]


@given(st.text(max_size=200))
def test_any_text_is_read_without_trouble(typed: str) -> None:
    assert len(read_sheet(typed, fact_sheet("sub-12", 2))) == 12


def test_stage_is_passed_by_three_good_sheets_of_the_last_five() -> None:
    assert passed([4, 0, 1, 3, 1])
    assert not passed([0, 0, 0, 2, 3, 4, 0, 2])


def test_next_stage_opens_when_what_it_needs_is_passed() -> None:
    assert [stage.id for stage in open_stages([])] == ["add-12", "mul-2-5-10"]
    assert "mul-3-4" in {stage.id for stage in open_stages(["mul-2-5-10"])}


def test_typing_sheet_has_ten_numbers() -> None:
    assert len(typing_sheet(3)) == 10
    assert typing_sheet(3) == typing_sheet(3)
