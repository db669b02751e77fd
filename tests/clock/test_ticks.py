"""Ticks may be late, early, doubled or at once; each student's work is one transaction, and done once."""

from __future__ import annotations

import asyncio
import threading
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import text

from bot.clock.ticks import Ticks
from bot.messages import Reminder
from bot.now import DemoClock
from bot.records import outbox
from bot.records.base import transaction
from bot.records.outbox import State
from bot.vocabulary import DayId

MORNING = time(8, 30)
NOON = datetime(2026, 9, 14, 12, tzinfo=UTC)


@pytest.fixture
def household(engine):
    """A day opens at 8:30 in the household's zone: the same shape as the real use case, told in five lines."""
    with engine.begin() as connection:
        connection.execute(text("create table opened (student int, day text, primary key (student, day))"))
    return engine


def opening(zone, students=1):
    def due(s, now):
        return list(range(students))

    def look(s, student, now):
        local = now.astimezone(ZoneInfo(zone))
        day = local.date().isoformat()
        had = s.execute(
            text("select 1 from opened where student = :s and day = :d"), {"s": student, "d": day}
        )
        if local.time() < MORNING or had.first():
            return []
        s.execute(text("insert into opened values (:s, :d)"), {"s": student, "d": day})
        return [Reminder(to=1000 + student, key=f"day/{student}/{day}", day=DayId(1), name=day)]

    return due, look


def ticks(engine, clock, due, look):
    return Ticks(engine, ThreadPoolExecutor(1), clock, due, look)


def opened(engine):
    with transaction(engine) as s:
        return [row[0] for row in s.execute(text("select day from opened order by day, student"))]


async def run_through(engine, zone, start, hours, step=timedelta(minutes=20)):
    clock = DemoClock(start)
    one = ticks(engine, clock, *opening(zone))
    woken = []
    for _ in range(int(timedelta(hours=hours) / step)):
        await one.tick(lambda: woken.append(1))
        clock.go_on(step)
    return woken


@pytest.mark.parametrize(
    ("zone", "change"),
    [
        ("Europe/London", date(2026, 10, 25)),
        ("Europe/London", date(2026, 3, 29)),
        ("America/New_York", date(2026, 11, 1)),
        ("America/New_York", date(2026, 3, 8)),
        ("Australia/Lord_Howe", date(2026, 4, 5)),  # half an hour
        ("Europe/London", date(2026, 6, 1)),
    ],
)
async def test_each_day_opens_once_on_the_days_when_clocks_change(household, zone, change):
    start = datetime.combine(change - timedelta(days=1), time(0), ZoneInfo(zone)).astimezone(UTC)
    woken = await run_through(household, zone, start, hours=71)
    days = [(change + timedelta(days=n)).isoformat() for n in (-1, 0, 1)]
    assert opened(household) == days
    assert len(woken) == 3


async def test_a_day_opens_at_its_hour_whatever_utc_says(household):
    clock = DemoClock(datetime(2026, 10, 24, 7, 31, tzinfo=UTC))  # summer time: 8:31
    one = ticks(household, clock, *opening("Europe/London"))
    await one.tick(lambda: None)
    clock.go_to(datetime(2026, 10, 25, 7, 31, tzinfo=UTC))  # winter time: 7:31
    await one.tick(lambda: None)
    assert opened(household) == ["2026-10-24"]


async def test_a_clock_that_jumps_ahead_or_back_opens_no_day_twice(household):
    clock = DemoClock(NOON)
    one = ticks(household, clock, *opening("UTC"))
    for hours in (0, 3, -5, 2, 48, -48, -20, 1):
        clock.go_on(timedelta(hours=hours))
        await one.tick(lambda: None)
    assert opened(household) == sorted(set(opened(household)))


async def test_after_a_long_absence_only_today_opens(household):
    clock = DemoClock(NOON)
    one = ticks(household, clock, *opening("UTC"))
    await one.tick(lambda: None)
    clock.go_on(timedelta(days=9))
    await one.tick(lambda: None)
    assert opened(household) == ["2026-09-14", "2026-09-23"]


def test_two_ticks_at_once_open_each_day_once(household):
    clock = DemoClock(NOON)
    together = threading.Barrier(2)

    def one_tick():
        together.wait()
        asyncio.run(ticks(household, clock, *opening("UTC", students=20)).tick(lambda: None))

    threads = [threading.Thread(target=one_tick) for _ in range(2)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert opened(household) == ["2026-09-14"] * 20
    with transaction(household) as s:
        assert outbox.count(s) == {State.WAITING: 20}


async def test_what_fails_for_one_student_is_done_for_the_others(household):
    due, look = opening("UTC", students=3)

    def failing(s, student, now):
        said = look(s, student, now)
        if student == 1:
            raise ZeroDivisionError
        return said

    await ticks(household, DemoClock(NOON), due, failing).tick(lambda: None)
    with transaction(household) as s:
        assert [row[0] for row in s.execute(text("select student from opened order by student"))] == [0, 2]
        assert outbox.count(s) == {State.WAITING: 2}


async def test_the_first_tick_comes_at_once_and_another_when_the_clock_was_moved(household):
    clock = DemoClock(NOON)
    woken = asyncio.Queue()
    one = ticks(household, clock, *opening("UTC"))
    running = asyncio.create_task(one.run(lambda: woken.put_nowait(1)))
    async with asyncio.timeout(60):
        await woken.get()
        clock.go_on(timedelta(days=1))
        one.soon()
        await woken.get()
    running.cancel()
    await asyncio.wait([running])
    assert opened(household) == ["2026-09-14", "2026-09-15"]


async def test_a_clock_moved_in_the_middle_of_a_tick_is_looked_at_again(household):
    clock = DemoClock(NOON)
    due, look = opening("UTC")

    def moving(s, student, now):
        said = look(s, student, now)
        if clock.now() < NOON + timedelta(hours=20):
            clock.go_on(timedelta(days=1))
            one.soon()
        return said

    one = ticks(household, clock, due, moving)
    await one.tick(lambda: None)
    assert opened(household) == ["2026-09-14", "2026-09-15"]
