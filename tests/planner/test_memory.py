"""What we believe of a skill, and what changes it."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from fsrs import Card, State
from hypothesis import given
from hypothesis import strategies as st

from bot.planner.memory import (
    SCHEDULER,
    Evidence,
    Memory,
    gain,
    recall,
    recall_after,
    remember,
    remember_item,
    replay,
)
from bot.vocabulary import Outcome, SkillId

SKILL, OTHER, EARLIER = SkillId("ratio-table"), SkillId("unit-rate"), SkillId("multiply-fractions")
MONDAY = date(2026, 9, 7)
telling = st.sampled_from([Outcome.FIRST_TRY, Outcome.LATER_TRY, Outcome.UNSOLVED])
evidence = st.builds(Evidence, telling, st.integers(0, 2), st.none() | st.just("stops-early"))
memory = st.builds(
    Memory,
    st.just(SKILL),
    stability=st.floats(0.01, 400),
    difficulty=st.floats(1, 10),
    last=st.dates(date(2026, 1, 1), date(2026, 9, 7)),
)


def after(*outcomes, before=None, every=1):
    held, day = before, MONDAY
    for outcome in outcomes:
        held = remember(held, SKILL, outcome if isinstance(outcome, Evidence) else Evidence(outcome), day)
        day += timedelta(days=every)
    return held


@pytest.mark.parametrize("outcome", [Outcome.UNTOUCHED, Outcome.EXCUSED])
def test_untouched_and_excused_items_tell_nothing(outcome):
    assert after(outcome) is None
    held = after(Outcome.FIRST_TRY)
    assert after(outcome, before=held) is held


def test_first_try_beats_later_try_beats_unsolved():
    order = [
        after(Outcome.FIRST_TRY, o, every=5) for o in (Outcome.FIRST_TRY, Outcome.LATER_TRY, Outcome.UNSOLVED)
    ]
    assert order[0].stability > order[1].stability > order[2].stability


def test_a_hint_or_a_known_misstep_weighs_against_a_right_answer():
    plain = after(Outcome.FIRST_TRY, Outcome.FIRST_TRY, every=5)
    hinted = after(Outcome.FIRST_TRY, Evidence(Outcome.FIRST_TRY, hints=1), every=5)
    careless = after(Outcome.FIRST_TRY, Outcome.LATER_TRY, every=5)
    misstep = after(Outcome.FIRST_TRY, Evidence(Outcome.LATER_TRY, misstep="stops-early"), every=5)
    assert plain.stability > hinted.stability
    assert careless.stability > misstep.stability


@given(memory, st.integers(0, 300))
def test_recall_falls_with_time_and_stays_a_chance(held, days):
    now, later = (recall(held, held.last + timedelta(days=n)) for n in (days, days + 1))
    assert 0 < later < now <= 1


@given(memory)
def test_stability_is_the_days_to_ninety_percent(held):
    assert recall_after(held.stability, held.stability) == pytest.approx(0.9)


@given(memory, st.integers(1, 200), st.integers(1, 120))
def test_the_gain_agrees_with_what_the_library_would_make_of_both_answers(held, gone, ahead):
    at = held.last + timedelta(days=gone)
    now = recall(held, at)
    right = remember(held, SKILL, Evidence(Outcome.FIRST_TRY), at)
    wrong = remember(held, SKILL, Evidence(Outcome.UNSOLVED), at)
    expected = now * recall_after(right.stability, ahead) + (1 - now) * recall_after(wrong.stability, ahead)
    assert gain(held, at, ahead) == pytest.approx(
        expected - recall_after(held.stability, gone + ahead), abs=1e-9
    )


@given(memory, st.integers(0, 300))
def test_recall_is_the_librarys_own(held, days):
    from datetime import UTC, datetime, time

    card = Card(card_id=1, state=State.Review, stability=held.stability, difficulty=held.difficulty)
    card.last_review = datetime.combine(held.last, time(), UTC)
    at = held.last + timedelta(days=days)
    theirs = SCHEDULER.get_card_retrievability(card, datetime.combine(at, time(), UTC))
    assert recall(held, at) == pytest.approx(theirs)


def test_an_item_informs_all_its_skills():
    assert set(remember_item({}, (SKILL, OTHER), {}, Evidence(Outcome.FIRST_TRY), MONDAY)) == {SKILL, OTHER}


def test_a_miss_is_laid_on_the_shakiest_skill():
    firm = Memory(SKILL, 100, 5, MONDAY - timedelta(days=5))
    shaky = Memory(OTHER, 3, 5, MONDAY - timedelta(days=20))
    changed = remember_item(
        {SKILL: firm, OTHER: shaky}, (SKILL, OTHER), {}, Evidence(Outcome.UNSOLVED), MONDAY
    )
    assert changed[OTHER].stability < shaky.stability
    assert changed[SKILL].stability >= firm.stability


def test_a_later_skill_refreshes_the_earlier_one_inside_it_a_little():
    held = Memory(EARLIER, 10, 5, MONDAY - timedelta(days=20))
    inside = {SKILL: (EARLIER,)}
    right = remember_item({EARLIER: held}, (SKILL,), inside, Evidence(Outcome.FIRST_TRY), MONDAY)[EARLIER]
    full = remember(held, EARLIER, Evidence(Outcome.FIRST_TRY), MONDAY)
    assert held.stability < right.stability < full.stability
    assert recall(held, MONDAY) < recall(right, MONDAY) < 1
    assert EARLIER not in remember_item({EARLIER: held}, (SKILL,), inside, Evidence(Outcome.UNSOLVED), MONDAY)


@given(memory, st.integers(0, 300))
def test_a_refreshed_skill_gets_a_tenth_of_what_the_library_gives_for_a_practice(held, gone):
    at = held.last + timedelta(days=gone)
    refreshed = remember_item({SKILL: held}, (OTHER,), {OTHER: (SKILL,)}, Evidence(Outcome.FIRST_TRY), at)[
        SKILL
    ]
    whole = remember(held, SKILL, Evidence(Outcome.FIRST_TRY), at)
    tenth = held.stability + 0.1 * (whole.stability - held.stability)
    assert refreshed.stability == pytest.approx(tenth)
    assert refreshed.last == held.last + 0.1 * timedelta(days=gone)


events = st.lists(
    st.tuples(
        st.integers(0, 60).map(lambda n: MONDAY + timedelta(days=n)),
        st.sampled_from([(SKILL,), (OTHER,), (SKILL, OTHER), (EARLIER,)]),
        evidence,
    ),
    max_size=30,
).map(lambda rows: sorted(rows, key=lambda row: row[0]))


@given(events)
def test_memories_are_rebuilt_from_what_happened_with_the_same_result(rows):
    inside = {SKILL: (EARLIER,)}
    step_by_step: dict[SkillId, Memory] = {}
    for at, skills, told in rows:
        step_by_step |= remember_item(step_by_step, skills, inside, told, at)
    assert replay(rows, inside) == step_by_step == replay(list(rows), inside)


@given(events)
def test_every_memory_stays_within_its_range(rows):
    for held in replay(rows, {SKILL: (EARLIER,)}).values():
        assert held.stability > 0 and 1 <= held.difficulty <= 10 and held.missed <= held.met
