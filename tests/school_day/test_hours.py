"""What the clock does for a student: late, early or twice alike."""

from __future__ import annotations

from datetime import date

from support.group import Group, Somebody, only

from bot import demo
from bot.messages import DayReady, Digest, DigestLine, PhoneForStudent, Reminder, WhoReads
from bot.records import days, people
from bot.records.base import transaction


def to(said, phone: demo.Phone):
    return [message for message in said if message.to == phone.chat]


def test_nothing_before_the_hour(group: Group) -> None:
    group.at(7, 59)

    assert group.tick() == []


def test_day_opens_at_its_hour_in_one_message_after_the_first_word(group: Group) -> None:
    group.at(8)

    said = to(group.tick(), demo.WREN)

    assert [type(m) for m in said] == [WhoReads, DayReady]
    assert said[1].key == f"day/{group.who(demo.WREN).id}/2026-09-14"


def test_student_on_a_shared_phone_is_called_to_it(group: Group) -> None:
    group.at(8)

    said = only(PhoneForStudent, to(group.tick(), demo.ANSELM))

    assert said.name == "Juniper"


def test_second_tick_changes_nothing(group: Group) -> None:
    group.at(8)
    group.tick()
    with transaction(group.engine) as s:
        for student in (group.who(demo.WREN).id, group.who(demo.SOL).id):
            people.change_student(s, student, next_look=people.EARLY)

    assert group.tick() == []


def test_clock_set_back_opens_no_second_day(group: Group) -> None:
    group.at(8)
    group.tick()
    group.at(19)
    group.tick()
    group.at(8)

    assert group.tick() == []


def test_hour_missed_opens_at_once_until_six_hours_before_the_digest(group: Group) -> None:
    group.at(12, 59)

    assert len(to(group.tick(), demo.WREN)) == 2


def test_hour_missed_for_longer_waits_and_the_digest_says_that_it_was_our_fault(group: Group) -> None:
    group.at(8)
    group.tick()
    group.at(15, day=1)

    assert to(group.tick(), demo.WREN) == []
    group.at(19, day=1)
    told = [m for m in to(group.tick(), demo.TOVE) if isinstance(m, Digest) and m.date == "2026-09-15"]
    assert {m.variant for m in told} == {"our-fault"}


def test_no_day_on_a_free_day(group: Group) -> None:
    group.at(8, day=5)

    assert group.tick() == []


def test_day_not_started_is_brought_up_once_an_hour_before_the_digest(group: Group) -> None:
    group.at(8)
    group.tick()
    group.at(18)

    said = to(group.tick(), demo.WREN)
    group.at(18, 30)

    assert [type(m) for m in said] == [Reminder]
    assert to(group.tick(), demo.WREN) == []


def test_digest_comes_once_at_its_hour(group: Group) -> None:
    group.at(8)
    group.tick()
    group.at(19)

    first = group.tick()
    group.at(19, 30)

    assert {m.name for m in to(first, demo.TOVE)} == {"Wren", "Sol"}
    assert [type(m) for m in to(first, demo.ANSELM)] == [DigestLine]
    assert group.tick() == []


def test_nothing_is_pushed_at_night(group: Group) -> None:
    with transaction(group.engine) as s:
        people.change_student(s, group.who(demo.WREN).id, push_at=22 * 60)
    group.at(22, 5)

    assert to(group.tick(), demo.WREN) == []


def test_withdrawn_consent_stops_the_push(group: Group) -> None:
    with transaction(group.engine) as s:
        home = people.student(s, group.who(demo.WREN).id).household
        people.change_household(s, home, consented=False)
    group.at(8)

    said = group.tick()

    assert to(said, demo.WREN) == []
    assert to(said, demo.ANSELM) != []


def test_both_daylight_saving_days_have_one_day_and_one_digest(group: Group) -> None:
    # New York: clocks go back on Sunday 1 November 2026, forward on Sunday 14 March 2027 (tz database).
    for first in (date(2026, 11, 1), date(2027, 3, 14)):
        offset = (first - date(2026, 9, 14)).days
        wren = group.who(demo.WREN).id
        with transaction(group.engine) as s:
            people.change_student(s, wren, week="1111111", push_at=8 * 60)
        group.at(0, 30, day=offset)
        said = []
        for _ in range(50):  # every half hour of the day, also the hour that comes twice
            said += group.tick()
            group.later(1800)
        pushed = [m for m in to(said, demo.WREN) if isinstance(m, DayReady)]
        told = [m for m in to(said, demo.TOVE) if isinstance(m, Digest) and m.student == wren]
        assert [m.key for m in pushed][:1] == [f"day/{wren}/{first}"]
        assert [m.date for m in told if m.date == str(first)] == [str(first)]


def test_day_is_unique_for_student_and_date(wren: Somebody) -> None:
    day = wren.day()
    with transaction(wren.group.engine) as s:
        assert days.add_day(s, wren.id, day.date, "lesson", None, wren.group.clock.now()) is None
