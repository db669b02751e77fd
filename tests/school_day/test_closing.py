"""The end of the year: a list before each test, a week of review by strand, the final on two days, and then quiet."""

from __future__ import annotations

from datetime import date, timedelta

from support.group import Group, Somebody, only

from bot import demo
from bot.messages import CourseDone, DayReady, Digest, FoundationsPaper, NothingNow, OffSeason, StudyList
from bot.records import days, people
from bot.records.base import transaction

MONDAY = date(2026, 9, 14)


def at_the_end(wren: Somebody) -> None:
    """Every lesson was met and every test of the units handed in; the last day was a Friday."""
    group, student = wren.group, wren.id
    finals = {test.n for test in group.school.syllabus.tests if test.final}
    with transaction(group.engine) as s:
        at = group.clock.now()
        for test in group.school.syllabus.tests:
            if test.n in finals:
                continue
            notes: dict[str, object] = {"test": test.n, "handed_in": True}
            on = MONDAY - timedelta(days=3 + 7 * (len(group.school.syllabus.tests) - 2 - test.n))
            made = days.add_day(s, student, on, "test", None, at, notes=notes)
            assert made is not None
            days.change_day(s, made, started_at=at, ended_at=at, closed_at=at, stage="done")
        last = len(group.school.syllabus.lessons)
        people.change_student(s, student, lesson=last + 1, first_day=MONDAY - timedelta(days=280))


def whole_review(wren: Somebody) -> None:
    wren.starts()
    for _ in range(80):
        day = wren.day()
        if day.stage == "done":
            return
        shown = [each for each in wren.items() if each.state == "shown"]
        if day.stage == "warm-up":
            wren.presses("leave", shown[0].id) if shown else wren.presses("leave-facts", 0)
        else:
            wren.answers(shown[0]) if shown else wren.presses("go", day.id)
    raise AssertionError("the day never ended")


def sits_it(wren: Somebody) -> None:
    wren.group.who(demo.TOVE).presses("open-test", wren.day().id)
    wren.starts()
    wren.presses("hand-in", wren.day().id)


def morning(group: Group, day: int) -> list[DayReady]:
    group.at(8, day=day)
    return [m for m in group.tick() if isinstance(m, DayReady) and m.name == "Wren"]


def test_year_ends_with_a_week_of_review_a_final_on_two_days_and_quiet(wren: Somebody, group: Group) -> None:
    at_the_end(wren)
    strands, said, kinds = [], [], []
    evening: list = []
    for day in range(1, 15):
        ready = morning(group, day)
        if not ready:
            continue
        kinds.append(ready[0].day_kind)
        strands.append(ready[0].strand)
        whole_review(wren) if ready[0].day_kind != "test" else sits_it(wren)
        group.at(20, day=day)
        evening = group.tick()
        said += evening
        if any(isinstance(m, CourseDone) for m in evening):
            break

    count = len(group.school.course.strands)
    assert strands[:count] == [strand.title for strand in group.school.course.strands]
    assert kinds[count:] == ["test", "test"]
    titles = [m.study[0] for m in said if isinstance(m, Digest) and m.name == "Wren" and m.study]
    assert set(titles) == {"Final, part A", "Final, part B"}
    told = [m for m in evening if isinstance(m, CourseDone)]
    assert {m.side for m in told} == {"t", "f"}

    for later in range(day + 1, day + 8):  # nothing comes by itself any more
        assert morning(group, later) == []
    assert only(NothingNow, wren.types("/day")).why == "course-over"

    assert only(OffSeason, wren.types("/offseason on")).on
    coming = [ready for later in range(day + 8, day + 15) for ready in morning(group, later)]
    assert [ready.day_kind for ready in coming] == ["off-season"] * 3


def test_family_gets_a_page_of_what_algebra_rests_on(wren: Somebody, group: Group) -> None:
    for who in (demo.TOVE, demo.INES):
        page = only(FoundationsPaper, group.who(who).types("/standing wren"))
        assert len(page.rows) == 12
        assert {stands for _, stands in page.rows} <= {"steady", "shaky", "not-met"}
        assert all(names["en"] and names["es"] for names, _ in page.rows)


def test_list_comes_on_the_evening_before_a_test_and_on_no_other(wren: Somebody, group: Group) -> None:
    group.at(20)
    assert not [m for m in group.tick() if isinstance(m, StudyList)]
    with transaction(group.engine) as s:
        student = people.student(s, people_id(s))
        people.change_student(s, student.id, lesson=12)
    morning(group, 1)
    # the test waits for a grown-up all day, so it comes again tomorrow
    group.at(20, day=1)
    told = [m for m in group.tick() if isinstance(m, (StudyList, Digest))]
    digests = [m for m in told if isinstance(m, Digest) and m.name == "Wren"]
    assert {m.study[0] for m in digests if m.study} == {"Test 1"}


def people_id(s):
    person = people.who(s, demo.WREN.chat)
    assert person is not None
    return person.id
