"""Faults on request: what the library raises, and whether the message arrived all the same."""

from __future__ import annotations

import asyncio
from typing import Any

import aiohttp
import pytest
from telegram import Bot
from telegram.error import (
    Conflict,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)

from bot.standin import Served, StandIn

WREN, TOVE, GROUP = 103, 102, -1001
TOKEN = "900000001:loopback-only"

TABLE = [
    ("too_many", {"retry_after": 7}, RetryAfter, "Retry in (0:00:07|7 seconds)", False),
    ("error_before", {}, NetworkError, "Internal Server Error", False),
    ("error_after", {}, NetworkError, "Internal Server Error", True),
    ("bad_gateway", {}, NetworkError, "Bad Gateway", False),
    ("cut_before", {}, NetworkError, ".", False),
    ("cut_after", {}, NetworkError, ".", True),
    ("down", {"times": 1}, NetworkError, ".", False),
    ("slow", {"seconds": 0.8}, TimedOut, ".", True),
    ("slow_before", {"seconds": 0.8}, TimedOut, ".", False),
    ("blocked", {"chat": WREN, "times": 1}, Forbidden, "bot was blocked by the user", False),
    ("deactivated", {"chat": WREN, "times": 1}, Forbidden, "user is deactivated", False),
    ("unauthorized", {"times": 1}, InvalidToken, ".", False),
]


@pytest.mark.parametrize(("kind", "how", "error", "words", "arrives"), TABLE, ids=[row[0] for row in TABLE])
async def test_a_fault_raises_what_it_should_and_then_is_over(
    kind: str,
    how: dict[str, Any],
    error: type[TelegramError],
    words: str,
    arrives: bool,
    bot: Bot,
    standin: StandIn,
) -> None:
    standin.fault(kind, **how)
    with pytest.raises(error, match=words) as raised:
        await bot.send_message(WREN, "x", read_timeout=0.3)
    assert type(raised.value) is error
    assert [one["text"] for one in standin.messages(WREN)] == (["x"] if arrives else [])
    assert (await bot.send_message(WREN, "y")).text == "y"


async def test_429_tells_its_seconds_in_body_and_header(web: aiohttp.ClientSession, standin: StandIn) -> None:
    standin.fault("too_many", retry_after=5)
    async with web.post(f"/bot{TOKEN}/sendMessage", json={"chat_id": WREN, "text": "x"}) as answer:
        assert (answer.status, answer.headers["Retry-After"]) == (429, "5")
        assert await answer.json() == {
            "ok": False,
            "error_code": 429,
            "description": "Too Many Requests: retry after 5",
            "parameters": {"retry_after": 5},
        }


async def test_a_conflict_meets_get_updates_only(bot: Bot, standin: StandIn) -> None:
    standin.fault("conflict", times=1)
    await bot.send_message(WREN, "x")
    with pytest.raises(Conflict, match="terminated by other getUpdates request"):
        await bot.get_updates()
    assert await bot.get_updates() == ()


async def test_an_update_delivered_twice_has_the_same_id(bot: Bot, standin: StandIn) -> None:
    standin.fault("twice", times=1)
    standin.phones.say(WREN, "one")
    (first,) = await bot.get_updates()
    (again,) = await bot.get_updates(offset=first.update_id + 1)
    assert again == first
    assert await bot.get_updates(offset=first.update_id + 1) == ()


async def test_updates_whose_answer_was_cut_come_again(bot: Bot, standin: StandIn) -> None:
    standin.phones.say(WREN, "one")
    standin.fault("cut_after", method="getUpdates")
    with pytest.raises(NetworkError):
        await bot.get_updates()
    assert len(await bot.get_updates()) == 1


async def test_a_fault_may_be_meant_for_one_chat_one_method_or_a_later_call(
    bot: Bot, standin: StandIn
) -> None:
    standin.fault("error_before", chat=TOVE)
    standin.fault("error_before", method="deleteMessage")
    standin.fault("error_before", skip=2)
    sent = await bot.send_message(WREN, "one")
    with pytest.raises(NetworkError):
        await bot.send_message(TOVE, "x")
    with pytest.raises(NetworkError):
        await bot.delete_message(WREN, sent.message_id)
    await bot.send_message(WREN, "two")
    with pytest.raises(NetworkError):
        await bot.send_message(WREN, "three")
    await bot.send_message(WREN, "four")
    assert [one["text"] for one in standin.messages(WREN)] == ["one", "two", "four"]


async def test_a_fault_lasts_as_long_as_it_is_told(bot: Bot, standin: StandIn) -> None:
    standin.fault("down", for_seconds=0.2)
    with pytest.raises(NetworkError):
        await bot.send_message(WREN, "x")
    await asyncio.sleep(0.25)
    await bot.send_message(WREN, "y")
    assert standin.faults.on == []


async def test_nobody_listens_for_a_while_and_then_again(served: Served, bot: Bot, standin: StandIn) -> None:
    await bot.send_message(WREN, "one")
    await served.stop_listening()
    for _ in range(2):
        with pytest.raises(NetworkError):
            await bot.send_message(WREN, "lost")
    await served.listen_again()
    await bot.send_message(WREN, "two")
    assert [one["text"] for one in standin.messages(WREN)] == ["one", "two"]


async def test_faults_are_switched_over_http(web: aiohttp.ClientSession, bot: Bot, standin: StandIn) -> None:
    answer = await (
        await web.post("/phone/faults", json={"kind": "too_many", "times": 2, "retry_after": 3})
    ).json()
    assert [one["kind"] for one in answer["on"]] == ["too_many"]
    with pytest.raises(RetryAfter):
        await bot.send_message(WREN, "x")
    assert (await (await web.delete("/phone/faults")).json())["on"] == []
    await bot.send_message(WREN, "y")
    refused = await web.post("/phone/faults", json={"kind": "rain"})
    assert refused.status == 400 and "There is no fault 'rain'" in (await refused.json())["error"]
    refused = await web.post("/phone/faults", json={"kind": "slow", "minutes": 2})
    assert refused.status == 400 and "minutes" in (await refused.json())["error"]


async def test_the_published_pace_is_kept_where_it_is_switched_on(bot: Bot, standin: StandIn) -> None:
    standin.flood.on = True
    sent = 0
    with pytest.raises(RetryAfter) as raised:
        for _ in range(20):
            await bot.send_message(WREN, "x")
            sent += 1
    assert 5 <= sent < 10
    assert 1 <= int(raised.value._retry_after.total_seconds()) <= 2
    assert len(standin.flood.sent) == sent


async def test_without_the_switch_nothing_is_held_back(bot: Bot, standin: StandIn) -> None:
    for _ in range(40):
        await bot.send_message(WREN, "x")
    assert len(standin.messages(WREN)) == 40
