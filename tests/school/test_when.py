from __future__ import annotations

import csv
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.school.when import Span, take_dates, take_hour, take_week

WEDNESDAY = date(2026, 9, 16)


def table(name: str) -> list[dict[str, str]]:
    with (Path(__file__).parent / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, delimiter="\t"))


@pytest.mark.parametrize("row", table("dates.tsv"), ids=lambda row: row["why"])
def test_dates_as_people_type_them(row: dict[str, str]) -> None:
    span, left = take_dates(row["typed"], WEDNESDAY)
    wanted = Span(date.fromisoformat(row["first"]), date.fromisoformat(row["last"])) if row["first"] else None
    assert span == wanted
    assert left == (row["left"] or "")


@pytest.mark.parametrize("row", table("hours.tsv"), ids=lambda row: row["why"])
def test_hours_as_people_type_them(row: dict[str, str]) -> None:
    assert take_hour(row["typed"]) == (int(row["minutes"]) if row["minutes"] else None, row["left"] or "")


@pytest.mark.parametrize("row", table("weeks.tsv"), ids=lambda row: row["why"])
def test_weeks_as_people_type_them(row: dict[str, str]) -> None:
    assert take_week(row["typed"] or "") == ((row["week"] or "").strip() or None)


@given(st.dates(date(2025, 1, 1), date(2030, 12, 31)), st.dates(date(2020, 1, 1), date(2035, 1, 1)))
def test_an_iso_date_is_that_date_whenever_it_is_typed(day: date, today: date) -> None:
    assert take_dates(day.isoformat(), today) == (Span(day, day), "")


@given(st.dates(date(2025, 1, 1), date(2030, 12, 31)), st.integers(0, 300))
def test_day_and_month_is_the_next_such_day(today: date, ahead: int) -> None:
    day = today + timedelta(days=ahead)
    span, left = take_dates(f"{day.day} {day:%b}", today)
    assert (span, left) == (Span(day, day), "")


@given(st.text(max_size=60))
def test_no_text_breaks_the_reading_of_dates_hours_and_weeks(text: str) -> None:
    take_dates(text, WEDNESDAY)
    take_hour(text)
    take_week(text)


def test_a_past_weekday_is_the_last_one() -> None:
    assert take_dates("mon", WEDNESDAY, past=True)[0] == Span(date(2026, 9, 14), date(2026, 9, 14))
    assert take_dates("14 sep", WEDNESDAY, past=True)[0] == Span(date(2026, 9, 14), date(2026, 9, 14))
