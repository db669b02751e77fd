"""A household's school calendar: which days are school days, which is the light one, and when the course may
be done.

Dates are the household's own; only `local_date` and `moment` know time zones.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from math import ceil, sqrt
from zoneinfo import ZoneInfo

import holidays

MONDAY_TO_FRIDAY = 0b0011111
"""School days as a mask: bit 0 is Monday, bit 6 is Sunday."""
LOOK_AHEAD = timedelta(days=400)
"""No school day within that time: there is none."""


class CalendarError(ValueError):
    """A calendar that can't be used; the text says what to change."""


@dataclass(frozen=True, slots=True)
class SchoolCalendar:
    """Which days a household learns.

    `weekdays` is a mask (bit 0 Monday). `light` is the weekday of the light day (0 Monday to 6 Sunday), None
    for none. `country` and `region` are the codes of the `holidays` library ("US", "CA"), None to keep no
    public holidays. `days_off` are free; `works_on` are school days in spite of a public holiday. `sick`
    days are free for one student.
    """

    weekdays: int = MONDAY_TO_FRIDAY
    light: int | None = 4
    country: str | None = None
    region: str | None = None
    days_off: frozenset[date] = field(default_factory=frozenset)
    sick: frozenset[date] = field(default_factory=frozenset)
    works_on: frozenset[date] = field(default_factory=frozenset)


@dataclass(frozen=True, slots=True)
class Finish:
    """When the course is likely done: `early` if every planned lesson day takes place, `late` at the pace so
    far.
    """

    early: date
    late: date


def check(calendar: SchoolCalendar) -> None:
    """Raise `CalendarError` for a mask without days, a light day that is none of them, or an unknown
    country.
    """
    if not 0 < calendar.weekdays < 128:
        raise CalendarError("A school week needs at least one day.")
    if calendar.light is not None and not calendar.weekdays >> calendar.light & 1:
        raise CalendarError("The light day must be one of the school days.")
    if calendar.country is not None:
        regions = holidays.list_supported_countries().get(calendar.country)
        if regions is None:
            raise CalendarError(
                f"There is no holiday calendar for {calendar.country!r}; leave the country out."
            )
        if calendar.region is not None and calendar.region not in regions:
            raise CalendarError(
                f"There is no region {calendar.region!r} in {calendar.country}; leave it out."
            )


def holiday_name(calendar: SchoolCalendar, day: date) -> str | None:
    """Name of the public holiday that the household keeps on that day, if any."""
    if calendar.country is None or day in calendar.works_on:
        return None
    return _holidays(calendar.country, calendar.region, day.year).get(day)


def is_school_day(calendar: SchoolCalendar, day: date) -> bool:
    """Whether the household learns on that day."""
    if not calendar.weekdays >> day.weekday() & 1:
        return False
    if day in calendar.days_off or day in calendar.sick:
        return False
    return holiday_name(calendar, day) is None


def is_light_day(calendar: SchoolCalendar, day: date) -> bool:
    """Whether that school day is the light one of its week. A week of fewer than three school days has
    none.
    """
    if calendar.light != day.weekday() or not is_school_day(calendar, day):
        return False
    monday = day - timedelta(days=day.weekday())
    return sum(is_school_day(calendar, monday + timedelta(days=n)) for n in range(7)) >= 3


def next_school_day(calendar: SchoolCalendar, after: date) -> date | None:
    """The first school day later than `after`, None if there is none within 400 days."""
    for day in _days(after + timedelta(days=1), after + LOOK_AHEAD):
        if is_school_day(calendar, day):
            return day
    return None


def school_days(calendar: SchoolCalendar, first: date, last: date) -> tuple[date, ...]:
    """All school days from `first` to `last`, both included."""
    return tuple(day for day in _days(first, last) if is_school_day(calendar, day))


def days_away(calendar: SchoolCalendar, last_opened: date, today: date) -> int:
    """School days between the last day that was opened and today that weren't opened; free and sick days
    count as away as well, since forgetting doesn't ask why, but week-ends don't.
    """
    between = _days(last_opened + timedelta(days=1), today - timedelta(days=1))
    return sum(calendar.weekdays >> day.weekday() & 1 for day in between)


def finish(
    calendar: SchoolCalendar, today: date, days_needed: int, lesson_days_planned: int, lesson_days_taken: int
) -> Finish | None:
    """A range for the last lesson's day.

    `days_needed`: lesson days still to come (a lesson of two sittings counts twice, a test once).
    `lesson_days_planned` and `lesson_days_taken`: of the last weeks, how many lesson days there should have
    been and how many took place. The late end uses the lower end of an 80 % Wilson interval of that share
    (with the weight of twenty planned days of which eighteen took place, so that a bad first week doesn't
    shock anybody). None if the calendar has no lesson days or the end lies more than six years away.
    """
    planned, taken = lesson_days_planned + 20, min(lesson_days_taken, lesson_days_planned) + 18
    share = max(0.2, _wilson_low(taken, planned, z=1.28))
    early = _nth_lesson_day(calendar, today, days_needed)
    late = _nth_lesson_day(calendar, today, ceil(days_needed / share))
    return None if early is None or late is None else Finish(early, late)


def local_date(at: datetime, zone: str) -> date:
    """The household's date at a moment (aware)."""
    return at.astimezone(ZoneInfo(zone)).date()


def moment(day: date, at: time, zone: str) -> datetime:
    """The moment, in UTC, at which the household's clocks show `at` on `day`.

    A time that spring leaves out becomes the one an hour later, one that autumn has twice is the first.
    """
    return datetime.combine(day, at, tzinfo=ZoneInfo(zone)).astimezone(UTC)


def _nth_lesson_day(calendar: SchoolCalendar, after: date, count: int) -> date | None:
    if count <= 0:
        return after
    for day in _days(after + timedelta(days=1), after + timedelta(days=6 * 366)):
        if is_school_day(calendar, day) and not is_light_day(calendar, day):
            count -= 1
            if count == 0:
                return day
    return None


def _wilson_low(hits: int, tries: int, z: float) -> float:
    share = hits / tries
    middle = share + z * z / (2 * tries)
    spread = z * sqrt(share * (1 - share) / tries + z * z / (4 * tries * tries))
    return (middle - spread) / (1 + z * z / tries)


def _days(first: date, last: date) -> Iterator[date]:
    day = first
    while day <= last:
        yield day
        day += timedelta(days=1)


@lru_cache(maxsize=256)
def _holidays(country: str, region: str | None, year: int) -> dict[date, str]:
    return dict(holidays.country_holidays(country, subdiv=region, years=year))
