"""At most 30 messages in any second in all; one a second to each chat, after a short burst."""

from __future__ import annotations

import asyncio
import random
import selectors

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.chat.pace import ChatPace, overall


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


class Warped(asyncio.SelectorEventLoop):
    """An event loop that never waits: its clock goes on to the next timer at once."""

    def __init__(self):
        super().__init__(selectors.SelectSelector())
        self.now = 0.0
        wait = self._selector.select

        def select(timeout=None):
            self.now += max(timeout or 0.0, 1e-6)
            return wait(0)

        self._selector.select = select

    def time(self):
        return self.now


@pytest.mark.parametrize("late", [0.0, 0.002, 0.02])
def test_in_any_second_at_most_thirty_leave_and_the_pace_is_used(late):
    """Limits: flood control of the Bot API, about 30 messages a second to different chats."""
    chance = random.Random(7)
    left: list[float] = []

    async def send_all():
        limiter = overall()
        for _ in range(600):
            await limiter.acquire()
            left.append(loop.time())
            await asyncio.sleep(chance.uniform(0, late))

    loop = Warped()
    loop.run_until_complete(send_all())
    loop.close()
    fullest = max(sum(start <= at < start + 1 for at in left) for start in left)
    assert fullest <= 30
    assert 599 / (left[-1] - left[0]) >= 0.95 * 30
