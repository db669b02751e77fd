"""Messages are rows before they leave: once per key, in order per chat, answers before pushes."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from bot.messages import Help, HowToType, Reminder
from bot.records import outbox
from bot.records.outbox import Settled, State
from bot.vocabulary import DayId, ItemId

NOON = datetime(2026, 9, 14, 12, tzinfo=UTC)
SECOND = timedelta(seconds=1)


def claim(s, now=NOON, limit=10, not_to=()):
    return [word_of(one.message) for one in outbox.claim(s, now, limit, not_to)]


def word_of(message):
    return message.topic if isinstance(message, Help) else message.name


def put(s, *messages, update=None, now=NOON):
    outbox.put(s, messages, now, update)


def say(word, to=1, key=None):
    return Help(to=to, key=word if key is None else key, role="student", topic=word)


def push(word, to=1):
    return Reminder(to=to, key=word, day=DayId(1), name=word)


def about(item, key="k", to=1):
    return HowToType(to=to, key=key, item=ItemId(item), form="number", examples=("½ × “3”",))


def test_a_message_comes_back_as_it_was_stored(session):
    put(session, about(12))
    [one] = outbox.claim(session, NOON, 10)
    assert (one.message, one.tries) == (about(12), 0)


def test_storing_the_same_key_again_says_it_once(session):
    put(session, push("day/7/2026-09-14"))
    put(session, push("day/7/2026-09-14"), push("day/8/2026-09-14", to=2))
    assert claim(session) == ["day/7/2026-09-14", "day/8/2026-09-14"]


def test_an_answer_is_keyed_by_its_update_and_place(session):
    put(session, say("a", key=""), say("b", key=""), update=90210)
    put(session, say("again", key=""), update=90210)
    assert claim(session) == ["a", "b"]


def test_a_message_without_key_that_answers_nothing_is_refused(session):
    with pytest.raises(ValueError, match="no key"):
        put(session, say("a", key=""))


def test_messages_of_one_chat_leave_in_order_and_answers_before_pushes(session):
    put(session, push("p1", to=1), push("p2", to=2), say("a3", to=3), say("b3", to=3), push("p3", to=3))
    assert claim(session, limit=3) == ["a3", "b3", "p1"]


def test_while_one_is_being_sent_its_chat_waits(session):
    put(session, say("a1", to=1), say("b1", to=1), say("a2", to=2))
    assert claim(session, limit=1) == ["a1"]
    assert claim(session) == ["a2"]
    outbox.settle(session, [Settled(1, State.SENT, message_id=100, sent_at=NOON)])
    assert claim(session) == ["b1"]


def test_a_message_held_back_holds_back_the_later_ones_of_its_chat(session):
    put(session, say("a", to=1), say("b", to=1), say("c", to=2))
    claim(session, limit=1)
    outbox.settle(session, [Settled(1, State.WAITING, not_before=NOON + 5 * SECOND)])
    assert claim(session) == ["c"]
    assert claim(session, now=NOON + 5 * SECOND) == ["a", "b"]


@pytest.mark.parametrize("state", [State.SENT, State.UNSURE, State.GIVEN_UP])
def test_what_is_over_never_holds_up_its_chat(session, state):
    put(session, say("a"), say("b"))
    claim(session, limit=1)
    outbox.settle(session, [Settled(1, state)])
    assert claim(session) == ["b"]


def test_a_clock_that_is_set_back_holds_nothing_for_long(session):
    put(session, say("a"))
    claim(session)
    outbox.settle(session, [Settled(1, State.WAITING, not_before=NOON + 5 * SECOND)])
    assert claim(session, now=NOON - timedelta(days=200)) == ["a"]


def test_a_chat_that_just_got_one_is_left_out(session):
    put(session, say("a", to=1), say("b", to=2))
    assert claim(session, not_to=[1]) == ["b"]


def test_tries_count_up(session):
    put(session, say("a"))
    for tries in range(3):
        [one] = outbox.claim(session, NOON, 1)
        assert one.tries == tries
        outbox.settle(session, [Settled(one.row, State.WAITING)])


def test_after_a_crash_answers_go_again_and_pushes_are_held(session):
    put(session, say("answer", to=1), push("morning", to=2))
    assert claim(session) == ["answer", "morning"]
    assert outbox.recover(session) == 2
    assert claim(session) == ["answer"]
    assert outbox.count(session) == {State.SENDING: 1, State.UNSURE: 1}


def test_a_press_proves_that_an_unsure_message_arrived(session):
    put(session, about(3))
    outbox.claim(session, NOON, 1)
    outbox.settle(session, [Settled(1, State.UNSURE)])
    outbox.arrived(session, 1, "item/3", 55)
    assert outbox.shown(session, 1, 55) == "item/3"
    assert outbox.count(session) == {State.SENT: 1}


def test_a_message_id_tells_what_it_shows_in_its_own_chat_only(session):
    put(session, about(3), say("plain", to=2))
    outbox.claim(session, NOON, 10)
    outbox.settle(session, [Settled(1, State.SENT, 55, NOON), Settled(2, State.SENT, 56, NOON)])
    assert [outbox.shown(session, 1, 55), outbox.shown(session, 2, 55), outbox.shown(session, 2, 56)] == [
        "item/3",
        None,
        None,
    ]
    assert outbox.message_ids(session, 1, "item/3") == [55]


def test_an_answer_is_meant_for_what_had_been_sent_when_it_was_written(session):
    put(session, *(about(n, key=str(n)) for n in (1, 2)))
    outbox.claim(session, NOON, 10)
    outbox.settle(session, [Settled(n, State.SENT, 50 + n, NOON + n * 10 * SECOND) for n in (1, 2)])
    at = [outbox.newest_shown(session, 1, NOON + n * SECOND) for n in (9, 10, 19, 20)]
    assert at == [None, "item/1", "item/1", "item/2"]


def test_what_is_withdrawn_never_leaves(session):
    put(session, say("answer", to=1), push("morning", to=1), push("other", to=2))
    assert outbox.withdraw(session, 1, pushes_only=True) == 1
    assert claim(session) == ["answer", "other"]


def test_settling_late_changes_nothing_that_was_settled(session):
    put(session, say("a"))
    claim(session)
    outbox.settle(session, [Settled(1, State.SENT, 9, NOON)])
    outbox.settle(session, [Settled(1, State.WAITING)])
    assert claim(session) == []
