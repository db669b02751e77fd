"""An update is stored once, done once, in its chat's order, and forgotten only when it is done."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from bot.records import inbox
from bot.records.base import lock_chat, transaction
from bot.records.inbox import Received, Turn, Unfinished

NOON = datetime(2026, 9, 14, 12, tzinfo=UTC)
BOT = 7


def update(number: int, chat: int = 90210, dated: int = 1_789_000_000, raw: bytes = b"{}") -> Received:
    return Received(number, dated, chat, raw)


def test_an_update_delivered_again_is_not_new(session):
    first = inbox.receive(session, BOT, [update(1, raw=b"1"), update(2, raw=b"2")], NOON)
    again = inbox.receive(session, BOT, [update(2, raw=b"2"), update(3, raw=b"3")], NOON)
    assert [one.raw for one in first + again] == [b"1", b"2", b"3"]


def test_the_same_number_after_a_quiet_week_is_another_update(session):
    inbox.receive(session, BOT, [update(1)], NOON)
    assert len(inbox.receive(session, BOT, [update(1, dated=1_790_000_000)], NOON)) == 1


def test_the_same_number_of_another_bot_is_another_update(session):
    inbox.receive(session, BOT, [update(1)], NOON)
    assert len(inbox.receive(session, BOT + 1, [update(1)], NOON)) == 1
    assert inbox.bots(session) == {BOT, BOT + 1}


def test_new_updates_come_back_in_the_order_given(session):
    numbers = list(range(100, 0, -1))
    new = inbox.receive(session, BOT, [update(n, raw=str(n).encode()) for n in numbers], NOON)
    assert [int(one.raw) for one in new] == numbers


def test_an_update_is_done_once(session):
    [one] = inbox.receive(session, BOT, [update(1)], NOON)
    assert inbox.finish(session, one.update, 90210, NOON) is Turn.OURS
    assert inbox.finish(session, one.update, 90210, NOON) is Turn.DONE_BEFORE


def test_an_update_waits_for_earlier_ones_of_its_chat_only(session):
    inbox.receive(session, BOT, [update(1, chat=1), update(2, chat=2), update(3, chat=1)], NOON)
    assert inbox.finish(session, 3, 1, NOON) is Turn.NOT_YET
    assert inbox.finish(session, 2, 2, NOON) is Turn.OURS
    assert inbox.finish(session, 1, 1, NOON) is Turn.OURS
    assert inbox.finish(session, 3, 1, NOON) is Turn.OURS


def test_what_was_typed_is_forgotten_once_it_is_done(session):
    inbox.receive(session, BOT, [update(1, raw=b"3/4"), update(2, raw=b"x=4")], NOON)
    inbox.finish(session, 1, 90210, NOON)
    assert inbox.unfinished(session, BOT) == [Unfinished(2, b"x=4")]
    assert session.get(inbox.InboxRow, 1).raw == b""


def test_only_updates_that_have_waited_are_taken_up_by_another_process(session):
    inbox.receive(session, BOT, [update(1)], NOON)
    inbox.receive(session, BOT, [update(2)], NOON + timedelta(minutes=2))
    later = inbox.unfinished(session, BOT, before=NOON + timedelta(minutes=1))
    assert [one.update for one in later] == [1]


def test_an_update_set_aside_lets_the_chat_go_on_and_is_not_lost(session):
    inbox.receive(session, BOT, [update(1, raw=b"3/4"), update(2)], NOON)
    assert [inbox.note_fault(session, 1, "ZeroDivisionError") for _ in range(3)] == [1, 2, 3]
    inbox.set_aside(session, 1, NOON)
    assert inbox.finish(session, 2, 90210, NOON) is Turn.OURS
    assert inbox.aside(session) == [(1, "ZeroDivisionError")]
    inbox.take_up_again(session, [1])
    assert inbox.unfinished(session, BOT) == [Unfinished(1, b"3/4")]


def test_what_fails_leaves_the_update_undone(engine):
    with transaction(engine) as s:
        inbox.receive(s, BOT, [update(1)], NOON)
    with pytest.raises(ZeroDivisionError), transaction(engine) as s:
        lock_chat(s, 90210)
        inbox.finish(s, 1, 90210, NOON)
        raise ZeroDivisionError
    with transaction(engine) as s:
        assert inbox.count_unfinished(s) == 1
