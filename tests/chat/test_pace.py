"""One message a second to each chat, after a short burst."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.chat.pace import ChatPace


def test_a_short_burst_may_follow_quickly_then_the_chat_rests():
    pace = ChatPace(burst=3)
    for _ in range(3):
        assert pace.resting(0.0) == {}
        pace.sent(1, 0.0)
    assert pace.resting(0.0) == {1: 1.0}
    assert pace.resting(0.99) == {1: 1.0}
    assert pace.resting(1.0) == {}


def test_chats_rest_apart():
    pace = ChatPace(burst=1)
    pace.sent(1, 0.0)
    assert list(pace.resting(0.5)) == [1]


def test_a_chat_that_was_quiet_has_its_whole_burst_again():
    pace = ChatPace(burst=2)
    for at in (0.0, 0.0, 10.0, 10.0):
        assert pace.resting(at) == {}
        pace.sent(1, at)
    assert 1 in pace.resting(10.0)


@given(st.lists(st.floats(0, 3), min_size=1, max_size=60), st.integers(1, 5))
def test_in_any_stretch_there_is_at_most_one_a_second_and_the_burst(waits, burst):
    pace, now, sent = ChatPace(burst), 0.0, []
    for wait in waits:
        now += wait
        if 7 not in pace.resting(now):
            pace.sent(7, now)
            sent.append(now)
    for n, start in enumerate(sent):
        for k, end in enumerate(sent[n:]):
            assert k + 1 <= burst + (end - start) + 1e-6
