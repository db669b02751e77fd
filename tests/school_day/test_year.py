"""The year as a whole: half-year, unfinished days, the off-season, catching up, when it may be done."""

from __future__ import annotations

from datetime import date, timedelta

from support.group import Group, Somebody, only

from bot import demo
from bot.messages import (
    Changed,
    DayDone,
    DayReady,
    DaysUnfinished,
    Digest,
    FinishShown,
    HalfYearLook,
    NothingNow,
    OffSeason,
    Preview,
    WeekAhead,
)
from bot.records import days, people
from bot.records.base import transaction
from bot.records.wishes import wishes_for
from bot.school import pacing
from bot.school.planning import what_lies_behind

MONDAY = date(2026, 9, 14)


def had_days(wren: Somebody, count: int) -> None:
    """So many school days on which nothing is known but that they were started."""
    group, student = wren.group, wren.id
    with transaction(group.engine) as s:
        at = group.clock.now()
        for n in range(1, count + 1):
            made = days.add_day(
                s, student, MONDAY - timedelta(days=n), "lesson", None, at, notes={"lesson_met": True}
            )
            assert made is not None
            days.change_day(s, made, started_at=at, ended_at=at, closed_at=at, stage="done")
        people.change_student(s, student, first_day=MONDAY - timedelta(days=count))


def on_evening(group: Group, kind: type, day: int = 0) -> list:
    group.at(20, day=day)
    return [each for each in group.tick() if isinstance(each, kind)]


def begins_each(wren: Somebody, *, until: int, start: bool) -> list:
    """Days pass without anybody finishing them; what is said in the mornings."""
    said: list = []
    for n in range(until):
        wren.group.at(8, day=n)
        said += wren.group.tick()
        if start:
            wren.starts()
        wren.group.at(20, day=n)
        wren.group.tick()
    return said


def test_half_year_comes_once_on_the_evening_of_the_ninetieth_day(wren: Somebody, group: Group) -> None:
    had_days(wren, 89)
    wren.gets_to_review()

    found = only(HalfYearLook, on_evening(group, HalfYearLook))

    assert found.name == "Wren"
    assert found.advice in ("go-on", "leave-out-extras", "slow-down")
    assert found.early < found.late
    group.at(8, day=1)
    group.tick()
    assert on_evening(group, HalfYearLook, day=1) == []


def test_parent_reads_the_range_on_that_evening_and_on_no_other(wren: Somebody, group: Group) -> None:
    had_days(wren, 88)
    wren.gets_to_review()
    first = [each for each in on_evening(group, Digest) if each.name == "Wren"]
    assert {each.half_year for each in first} == {("", "")}

    group.at(8, day=1)
    group.tick()
    wren.gets_to_review()
    second = [each for each in on_evening(group, Digest, day=1) if each.name == "Wren"]
    assert all(each.half_year[0] and each.half_year[0] <= each.half_year[1] for each in second)


def test_extras_are_left_out_when_the_tutor_says_so(wren: Somebody, group: Group) -> None:
    """The day to aim for is one that the core just meets."""
    had_days(wren, 89)
    ines, student_id = group.who(demo.INES), wren.id
    with transaction(group.engine) as s:
        found = pacing.half_year(s, group.school, people.student(s, student_id), MONDAY + timedelta(days=1))
    assert found is not None
    whole, core = found[0].finish, found[0].without_extras
    assert whole is not None and core is not None
    between = core.early + (core.late - core.early) / 2 + (whole.early - core.early) / 2
    ines.presses("t-do", only(Preview, ines.types(f"/finish wren {between}")).change)
    wren.gets_to_review()

    look = only(HalfYearLook, on_evening(group, HalfYearLook))
    assert look.advice == "leave-out-extras" and look.extras and look.change
    ines.presses("t-do", look.change)

    with transaction(group.engine) as s:
        student = people.student(s, student_id)
        on = MONDAY + timedelta(days=1)
        wishes = wishes_for(s, student.id, student.household, student.tutor, on, on)
    left_out = [wish.what["lessons"] for wish in wishes if wish.kind == "leave-out"]
    assert [len(each) for each in left_out] == [len(look.extras)]  # type: ignore[arg-type]


def test_tutor_hears_of_three_unfinished_days_once(group: Group) -> None:
    wren = group.who(demo.WREN)
    told = [
        m
        for m in begins_each(wren, until=8, start=True)
        if isinstance(m, DaysUnfinished) and m.name == "Wren"
    ]

    assert [each.days for each in told] == [3]


def test_days_that_nobody_opened_count_as_well(group: Group) -> None:
    wren = group.who(demo.WREN)
    told = [m for m in begins_each(wren, until=5, start=False) if isinstance(m, DaysUnfinished)]

    assert "Wren" in {each.name for each in told}


def test_off_season_is_off_until_somebody_wants_it(wren: Somebody, group: Group) -> None:
    tove = group.who(demo.TOVE)
    tove.presses("f-do", only(Preview, tove.types("/off wren 15 sep - 30 oct")).change)
    group.at(8, day=2)
    assert not [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]
    assert only(NothingNow, wren.types("/day")).why == "day-off"

    assert only(OffSeason, wren.types("/offseason on")).on
    group.at(8, day=4)  # Friday
    ready = [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]
    assert [m.day_kind for m in ready] == ["off-season"]
    assert wren.day().lesson is None
    assert 4 <= ready[0].review <= 8

    group.at(8, day=8)  # Tuesday: not one of its days
    assert not [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]

    assert not only(OffSeason, wren.types("/offseason off")).on
    group.at(8, day=9)  # Wednesday
    assert not [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]


def test_parent_turns_it_on_with_an_undo(wren: Somebody, group: Group) -> None:
    tove = group.who(demo.TOVE)
    done = only(Changed, tove.presses("f-do", only(Preview, tove.types("/offseason wren on")).change))
    assert only(OffSeason, wren.types("/offseason")).on
    tove.presses("f-undo", done.change)
    assert not only(OffSeason, wren.types("/offseason")).on


def test_long_break_is_named_in_the_last_digest_before_it(wren: Somebody, group: Group) -> None:
    tove = group.who(demo.TOVE)
    tove.presses("f-do", only(Preview, tove.types("/off wren 15 sep - 30 oct")).change)
    wren.gets_to_review()

    told = [each for each in on_evening(group, Digest) if each.name == "Wren"]
    assert {each.long_break for each in told} == {True}


def test_light_day_offers_the_lesson_that_waited_and_only_then(group: Group) -> None:
    wren = group.who(demo.WREN)
    for n in range(5):
        group.at(8, day=n)
        group.tick()
        if n == 1:
            continue  # Tuesday is missed
        said = whole_day(wren)
        light = wren.day().kind == "light"
        assert bool(said.second and said.catch_up) is light
    assert light

    lesson = wren.presses("second", wren.day().id)
    assert [type(each).__name__ for each in lesson][:2] == ["CardShown", "WorkedShown"]


def test_light_day_of_a_whole_week_offers_none(group: Group) -> None:
    wren = group.who(demo.WREN)
    for n in range(5):
        group.at(8, day=n)
        group.tick()
        said = whole_day(wren)
    assert wren.day().kind == "light"
    assert said.second == ""


def whole_day(wren: Somebody) -> DayDone:
    """Everything right, to the end of the day."""
    wren.gets_to_review()
    said: list = []
    for _ in range(60):
        if wren.day().stage == "done":
            return only(DayDone, said)
        shown = [each for each in wren.items("review") if each.state == "shown"]
        said = wren.answers(shown[0]) if shown else wren.presses("go", wren.day().id)
    raise AssertionError("the day never ended")


def test_finish_is_a_range_and_the_day_to_aim_for_is_kept(wren: Somebody, group: Group) -> None:
    tove = group.who(demo.TOVE)
    before = only(FinishShown, tove.types("/finish wren"))
    assert before.early < before.late and not before.own

    tove.presses("f-do", only(Preview, tove.types("/finish wren 1 aug 2027")).change)
    after = only(FinishShown, tove.types("/finish wren"))
    assert after.own and after.wanted == "2027-08-01"


def test_week_ahead_says_what_comes_and_why(wren: Somebody, group: Group) -> None:
    shown = only(WeekAhead, group.who(demo.INES).types("/plan wren week"))
    assert all(sum(count for _, count in row[7]) == row[6] for row in shown.rows)

    assert [row[0] for row in shown.rows] == [
        "2026-09-15",
        "2026-09-16",
        "2026-09-17",
        "2026-09-18",
        "2026-09-21",
    ]
    assert sum(row[1] == "light" for row in shown.rows) == 1
    for row in shown.rows:
        assert sum(count for _, count in row[7]) <= row[6]


def test_a_test_that_was_handed_in_months_ago_does_not_come_back(wren: Somebody, group: Group) -> None:
    student = wren.id
    with transaction(group.engine) as s:
        at = group.clock.now()
        made = days.add_day(
            s, student, MONDAY - timedelta(days=200), "test", None, at, notes={"test": 1, "handed_in": True}
        )
        assert made is not None
        days.change_day(s, made, started_at=at, ended_at=at, closed_at=at, stage="done")
        people.change_student(s, student, lesson=12)
        history, _ = what_lies_behind(s, group.school, people.student(s, student), MONDAY + timedelta(days=1))
    assert 1 in history.tests_done


def test_whoever_begins_further_on_is_not_asked_for_the_tests_before(wren: Somebody, group: Group) -> None:
    student = wren.id
    with transaction(group.engine) as s:
        people.change_student(s, student, lesson=60)
    group.at(8, day=1)
    ready = [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]
    assert [m.day_kind for m in ready] == ["lesson"]


def test_the_test_that_is_due_now_is_asked_for(wren: Somebody, group: Group) -> None:
    student = wren.id
    with transaction(group.engine) as s:
        people.change_student(s, student, lesson=12)
    group.at(8, day=1)
    ready = [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]
    assert [m.day_kind for m in ready] == ["test"]
