"""How much a day holds."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from bot.planner.history import History, Paces, PastDay, Wishes
from bot.planner.load import day_size, review_size


def lived(*minutes, size, first=11, finished=True):
    start = date(2026, 9, 14)
    return tuple(
        PastDay(start + timedelta(days=n), first + n, size=size, minutes=m, finished=finished)
        for n, m in enumerate(minutes)
    )


def size_after(days, school_day=None):
    number = school_day or (days[-1].number + 1 if days else 1)
    return review_size(History(days=days, school_day=number), 45)


def test_review_starts_with_eight_and_with_twelve_after_two_weeks():
    assert size_after((), 1) == 8
    assert size_after(lived(40, size=8, first=9), 10) == 8
    assert size_after(lived(40, size=8, first=10), 11) == 12


def test_ten_days_inside_the_minutes_bring_two_more():
    assert size_after(lived(*[40] * 9, size=12)) == 12
    assert size_after(lived(*[40] * 10, size=12)) == 14


def test_one_day_over_the_minutes_takes_two_away_at_once():
    assert size_after(lived(*[40] * 9, 50, size=12)) == 10
    assert size_after(lived(40, size=12, finished=False)) == 10


def test_a_day_of_unknown_length_counts_by_whether_it_was_finished():
    assert size_after(lived(*[None] * 10, size=12)) == 14


@given(st.lists(st.tuples(st.integers(20, 70), st.booleans()), max_size=80))
def test_the_size_stays_between_6_and_24_and_moves_by_two(day_reports):
    days: tuple[PastDay, ...] = ()
    for number, (minutes, finished) in enumerate(day_reports, start=1):
        size = size_after(days, number)
        assert 6 <= size <= 24
        if days:
            assert size - days[-1].size in (-2, 0, 2) or (number == 11 and size - days[-1].size == 4)
        days += (
            PastDay(
                date(2026, 9, 1) + timedelta(days=number),
                number,
                size=size,
                minutes=minutes,
                finished=finished,
            ),
        )


def test_slow_items_mean_fewer_of_them():
    slow, quick = History(school_day=30, paces=Paces(review_item=3.0)), History(school_day=30)
    assert day_size(slow, Wishes(), True, 4) < day_size(quick, Wishes(), True, 4) == 12


def test_a_wished_number_stands_above_all():
    assert day_size(History(), Wishes(review_items=30, minutes=30), True, 4) == 30
