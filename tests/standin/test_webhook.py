"""Delivery by webhook: with the secret, in order per chat, again until it is taken."""

from __future__ import annotations

import asyncio
from collections import defaultdict
from collections.abc import AsyncIterator
from typing import Any

import pytest
from aiohttp import web as server
from telegram import Bot, Update
from telegram.error import BadRequest, Conflict
from telegram.ext import Application, ContextTypes, MessageHandler, filters

from bot.standin import Served, StandIn

WREN, TOVE = 103, 102
SECRET = "Mill_7-gate"


class House:
    """The bot's side of a webhook: keeps what was brought, answers as told."""

    def __init__(self) -> None:
        self.brought: list[dict[str, Any]] = []
        self.secrets: set[str | None] = set()
        self.answers: list[int] = []
        self.hold: dict[int, asyncio.Event] = {}
        self.at_once: dict[int, int] = defaultdict(int)
        self.most_at_once = 0
        self.together = 0
        self.news = asyncio.Condition()

    async def take(self, request: server.Request) -> server.Response:
        self.secrets.add(request.headers.get("X-Telegram-Bot-Api-Secret-Token"))
        body = await request.json()
        chat = body["message"]["chat"]["id"]
        self.at_once[chat] += 1
        self.most_at_once = max(self.most_at_once, self.at_once[chat])
        self.together = max(self.together, sum(self.at_once.values()))
        if chat in self.hold:
            await self.hold[chat].wait()
        await asyncio.sleep(0.01)
        self.at_once[chat] -= 1
        async with self.news:
            self.brought.append(body)
            self.news.notify_all()
        return server.Response(status=self.answers.pop(0) if self.answers else 200)

    async def until(self, count: int) -> None:
        async with asyncio.timeout(60), self.news:
            await self.news.wait_for(lambda: len(self.brought) >= count)


@pytest.fixture
async def house() -> AsyncIterator[House]:
    one = House()
    app = server.Application()
    app.router.add_post("/hook", one.take)
    runner = server.AppRunner(app)
    await runner.setup()
    site = server.TCPSite(runner, "127.0.0.1", 0)
    await site.start()
    one.url = f"http://127.0.0.1:{runner.addresses[0][1]}/hook"  # type: ignore[attr-defined]
    yield one
    await runner.cleanup()


def texts(house: House, chat: int) -> list[str]:
    return [one["message"]["text"] for one in house.brought if one["message"]["chat"]["id"] == chat]


async def test_updates_are_brought_with_the_secret(bot: Bot, standin: StandIn, house: Any) -> None:
    standin.phones.say(WREN, "waiting")
    assert await bot.set_webhook(house.url, secret_token=SECRET)
    standin.phones.say(WREN, "fresh")
    await house.until(2)
    assert texts(house, WREN) == ["waiting", "fresh"]
    assert house.secrets == {SECRET}


async def test_one_chat_in_order_and_different_chats_side_by_side(
    bot: Bot, standin: StandIn, house: Any
) -> None:
    await bot.set_webhook(house.url)
    house.hold[WREN] = asyncio.Event()
    for n in range(5):
        standin.phones.say(WREN, str(n))
        standin.phones.say(TOVE, str(n))
    await house.until(5)
    assert texts(house, TOVE) == ["0", "1", "2", "3", "4"] and texts(house, WREN) == []
    house.hold[WREN].set()
    await house.until(10)
    assert texts(house, WREN) == ["0", "1", "2", "3", "4"]
    assert (house.most_at_once, house.together) == (1, 2)


async def test_max_connections_holds(bot: Bot, standin: StandIn, house: Any) -> None:
    await bot.set_webhook(house.url, max_connections=1)
    standin.phones.say(WREN, "x")
    standin.phones.say(TOVE, "y")
    await house.until(2)
    assert house.together == 1


async def test_an_update_is_brought_again_until_it_is_taken(bot: Bot, standin: StandIn, house: Any) -> None:
    house.answers = [500, 404]
    await bot.set_webhook(house.url)
    standin.phones.say(WREN, "one")
    standin.phones.say(WREN, "two")
    await house.until(4)
    assert texts(house, WREN) == ["one", "one", "one", "two"]
    info = await bot.get_webhook_info()
    assert info.last_error_message == "Wrong response from the webhook: 404 Not Found"


async def test_what_was_not_taken_waits_for_polling(bot: Bot, standin: StandIn) -> None:
    await bot.set_webhook("http://127.0.0.1:9/", allowed_updates=["message"])
    standin.phones.say(WREN, "one")
    with pytest.raises(Conflict, match="can't use getUpdates method while webhook is active"):
        await bot.get_updates()
    info = await bot.get_webhook_info()
    assert (info.url, info.pending_update_count, info.allowed_updates) == (
        "http://127.0.0.1:9/",
        1,
        ("message",),
    )
    assert await bot.delete_webhook()
    assert (await bot.get_webhook_info()).url == ""
    assert len(await bot.get_updates()) == 1


async def test_setting_a_webhook_ends_an_open_poll(bot: Bot) -> None:
    poll = asyncio.create_task(bot.get_updates(timeout=30))
    await asyncio.sleep(0.05)
    await bot.set_webhook("http://127.0.0.1:9/")
    with pytest.raises(Conflict, match="terminated by setWebhook request"):
        await poll


async def test_pending_updates_are_dropped_only_on_request(bot: Bot, standin: StandIn) -> None:
    standin.phones.say(WREN, "one")
    await bot.delete_webhook()
    assert (await bot.get_webhook_info()).pending_update_count == 1
    await bot.delete_webhook(drop_pending_updates=True)
    assert (await bot.get_webhook_info()).pending_update_count == 0


@pytest.mark.parametrize("url", ["http://example.org/hook", "ftp://127.0.0.1/"])
async def test_nothing_but_this_machine_is_called(bot: Bot, url: str) -> None:
    with pytest.raises(BadRequest, match="Bad webhook"):
        await bot.set_webhook(url)


async def test_a_doubled_update_is_brought_twice(bot: Bot, standin: StandIn, house: Any) -> None:
    standin.fault("twice", times=1)
    await bot.set_webhook(house.url)
    standin.phones.say(WREN, "one")
    standin.phones.say(WREN, "two")
    await house.until(3)
    assert texts(house, WREN) == ["one", "one", "two"]
    assert house.brought[0]["update_id"] == house.brought[1]["update_id"]


async def test_an_application_without_an_updater_lives_on_a_webhook(served: Served, standin: StandIn) -> None:
    async def echo(update: Update, context: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.effective_message is not None
        await update.effective_message.reply_text(f"You wrote {update.effective_message.text}")

    application = (
        Application.builder().token("900000001:loopback-only").base_url(served.base_url).updater(None).build()
    )
    application.add_handler(MessageHandler(filters.TEXT, echo))

    async def take(request: server.Request) -> server.Response:
        await application.update_queue.put(Update.de_json(await request.json(), application.bot))
        return server.Response()

    app = server.Application()
    app.router.add_post("/", take)
    runner = server.AppRunner(app)
    await runner.setup()
    await server.TCPSite(runner, "127.0.0.1", 0).start()
    async with application:
        await application.start()
        await application.bot.set_webhook(f"http://127.0.0.1:{runner.addresses[0][1]}/", secret_token=SECRET)
        typed = standin.phones.say(WREN, "3/4")
        assert (await standin.next_message(WREN, typed["message_id"]))["text"] == "You wrote 3/4"
        await application.stop()
    await runner.cleanup()
