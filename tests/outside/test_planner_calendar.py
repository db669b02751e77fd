"""School calendars against published facts of the calendar.

Sources: 5 U.S.C. 6103 (dates of public holidays of the United States; the fourth Thursday of November, the first
Monday of September); the rule for Easter in the Gregorian calendar with its dates as printed in the tables of the
Prayer Book (from memory: 28 March 2027, 16 April 2028), Easter Monday and Ascension Day following from it; IANA time
zone data through `zoneinfo` for the changes of the clock (European Union: last Sundays of March and October at 01:00
UTC, Directive 2000/84/EC; United States: second Sunday of March and first Sunday of November, Energy Policy Act 2005).
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import holidays
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.planner.calendar import SchoolCalendar, holiday_name, is_school_day, moment, next_school_day


@pytest.mark.parametrize(
    ("country", "region", "day"),
    [
        ("US", None, date(2026, 11, 26)),
        ("US", None, date(2026, 9, 7)),
        ("US", None, date(2027, 7, 5)),  # the 4th is a Sunday: kept on the Monday
        ("DE", None, date(2027, 3, 29)),
        ("DE", None, date(2028, 4, 17)),
        ("DE", "BW", date(2027, 5, 6)),
        ("GB", "ENG", date(2026, 12, 28)),  # Boxing Day is a Saturday: kept on the Monday
    ],
)
def test_published_holidays_are_no_school_days(country, region, day):
    calendar = SchoolCalendar(country=country, region=region)
    assert holiday_name(calendar, day)
    assert not is_school_day(calendar, day)
    assert next_school_day(calendar, day - timedelta(days=1)) > day


@settings(deadline=None)
@given(st.dates(date(2025, 1, 1), date(2030, 12, 31)), st.sampled_from(["US", "DE", "GB", "FR", "CA"]))
def test_a_weekday_is_a_school_day_unless_the_library_names_a_holiday(day, country):
    listed = day in holidays.country_holidays(country)
    assert is_school_day(SchoolCalendar(country=country), day) == (day.weekday() < 5 and not listed)


@pytest.mark.parametrize(
    ("zone", "day", "before", "after"),
    [
        ("Europe/Berlin", date(2027, 3, 28), 1, 2),
        ("Europe/Berlin", date(2027, 10, 31), 2, 1),
        ("America/New_York", date(2027, 3, 14), -5, -4),
        ("America/New_York", date(2027, 11, 7), -4, -5),
    ],
)
def test_the_morning_hour_stays_through_both_changes_of_the_clock(zone, day, before, after):
    seven = time(7)
    eve, morning = moment(day - timedelta(days=1), seven, zone), moment(day, seven, zone)
    assert eve == datetime.combine(day - timedelta(days=1), time(), UTC) + timedelta(hours=7 - before)
    assert morning == datetime.combine(day, time(), UTC) + timedelta(hours=7 - after)
    assert morning.astimezone(ZoneInfo(zone)).time() == seven
