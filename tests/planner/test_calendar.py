"""School days of a household, and when the course may be done."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.planner.calendar import (
    CalendarError,
    SchoolCalendar,
    check,
    days_away,
    finish,
    holiday_name,
    is_light_day,
    is_school_day,
    local_date,
    moment,
    next_school_day,
    school_days,
)

MONDAY = date(2026, 9, 7)
days = st.dates(date(2024, 1, 1), date(2032, 12, 31))
calendars = st.builds(
    SchoolCalendar,
    weekdays=st.integers(1, 127),
    light=st.none(),
    country=st.sampled_from([None, "US", "DE"]),
    days_off=st.frozensets(days, max_size=5),
)


@given(calendars, days)
def test_the_next_school_day_is_one_and_none_lies_between(calendar, day):
    following = next_school_day(calendar, day)
    assert following > day and is_school_day(calendar, following)
    assert school_days(calendar, day + timedelta(days=1), following) == (following,)


@given(calendars, days)
def test_days_off_and_kept_holidays_are_no_school_days(calendar, day):
    if day in calendar.days_off or holiday_name(calendar, day):
        assert not is_school_day(calendar, day)


def test_sick_days_are_free():
    assert not is_school_day(SchoolCalendar(sick=frozenset({MONDAY})), MONDAY)


def test_a_household_may_work_on_a_public_holiday():
    labor_day = date(2026, 9, 7)
    assert not is_school_day(SchoolCalendar(country="US"), labor_day)
    assert is_school_day(SchoolCalendar(country="US", works_on=frozenset({labor_day})), labor_day)


def test_a_short_week_has_no_light_day():
    friday = MONDAY + timedelta(days=4)
    free = frozenset(MONDAY + timedelta(days=n) for n in (0, 1, 2))
    assert is_light_day(SchoolCalendar(), friday)
    assert not is_light_day(SchoolCalendar(days_off=free), friday)


def test_week_ends_do_not_count_as_days_away():
    assert days_away(SchoolCalendar(), MONDAY + timedelta(days=4), MONDAY + timedelta(days=7)) == 0
    assert days_away(SchoolCalendar(), MONDAY, MONDAY + timedelta(days=4)) == 3


@pytest.mark.parametrize(
    ("calendar", "says"),
    [
        (SchoolCalendar(weekdays=0), "at least one day"),
        (SchoolCalendar(weekdays=0b11, light=4), "light day"),
        (SchoolCalendar(country="XX"), "no holiday calendar"),
        (SchoolCalendar(country="US", region="Harrow"), "no region"),
    ],
)
def test_a_calendar_that_cannot_be_says_what_to_change(calendar, says):
    with pytest.raises(CalendarError, match=says):
        check(calendar)


def test_the_early_finish_takes_every_lesson_day():
    # Four lesson days a week: eight of them end on the Thursday of the next week.
    found = finish(SchoolCalendar(), MONDAY - timedelta(days=1), 8, 0, 0)
    assert found.early == MONDAY + timedelta(days=10)


@given(st.integers(0, 160), st.integers(0, 60), st.integers(0, 60))
def test_the_finish_is_a_range_and_missed_days_never_bring_it_forward(needed, planned, taken):
    found = finish(SchoolCalendar(), MONDAY, needed, planned, min(taken, planned))
    better = finish(SchoolCalendar(), MONDAY, needed, planned, planned)
    assert found.early == better.early <= better.late <= found.late


def test_nothing_left_is_done_today():
    assert finish(SchoolCalendar(), MONDAY, 0, 20, 20).late == MONDAY


@given(
    days, st.times(), st.sampled_from(["Europe/Berlin", "America/Los_Angeles", "Australia/Lord_Howe", "UTC"])
)
def test_a_moment_falls_on_its_own_day(day, at, zone):
    if at.hour >= 4:  # changes of the clock lie before
        assert local_date(moment(day, at, zone), zone) == day


def test_a_time_that_spring_leaves_out_comes_an_hour_later():
    # Europe/Berlin, 28 March 2027: 02:00 becomes 03:00.
    assert moment(date(2027, 3, 28), time(2, 30), "Europe/Berlin") == datetime(2027, 3, 28, 1, 30, tzinfo=UTC)


def test_a_time_that_autumn_has_twice_is_the_first():
    # Europe/Berlin, 31 October 2027: 03:00 becomes 02:00.
    assert moment(date(2027, 10, 31), time(2, 30), "Europe/Berlin") == datetime(
        2027, 10, 31, 0, 30, tzinfo=UTC
    )
