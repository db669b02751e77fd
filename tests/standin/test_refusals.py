"""What the service refuses, in its own words; the table is refusals.jsonl."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import aiohttp
import pytest
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup
from telegram.error import BadRequest, ChatMigrated, Forbidden, InvalidToken

from bot.standin import Served, StandIn

ROWS = [json.loads(line) for line in (Path(__file__).parent / "refusals.jsonl").read_text().splitlines()]
WREN, GROUP = 103, -1001
TOKEN = "900000001:loopback-only"


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["why"])
async def test_refused_in_the_services_words(row: dict[str, Any], web: aiohttp.ClientSession) -> None:
    async with web.post(f"/bot{TOKEN}/{row['method']}", json=row["send"]) as answer:
        body = await answer.json()
        assert answer.status == row["code"]
    assert body == {"ok": False, "error_code": row["code"], "description": row["description"]}


@pytest.mark.parametrize(("token", "code"), [("900000001:another", 401), ("nonsense", 404)])
async def test_a_wrong_token_is_refused(token: str, code: int, web: aiohttp.ClientSession) -> None:
    async with web.get(f"/bot{token}/getMe") as answer:
        assert answer.status == code


async def test_the_library_takes_a_wrong_token_for_one(served: Served) -> None:
    with pytest.raises(InvalidToken):
        await Bot("900000001:another", base_url=served.base_url).initialize()


async def test_a_text_of_4096_units_passes_and_one_more_does_not(bot: Bot) -> None:
    assert len((await bot.send_message(WREN, "x" * 4096)).text or "") == 4096
    assert (await bot.send_message(WREN, "😀" * 2048)).text == "😀" * 2048
    for text in ("x" * 4097, "😀" * 2048 + "x"):
        with pytest.raises(BadRequest, match="Message is too long"):
            await bot.send_message(WREN, text)


async def test_a_caption_of_1024_units_passes_and_one_more_does_not(bot: Bot, png: bytes) -> None:
    assert (await bot.send_photo(WREN, png, caption="x" * 1024)).caption == "x" * 1024
    with pytest.raises(BadRequest, match="Message caption is too long"):
        await bot.send_photo(WREN, png, caption="x" * 1025)


async def test_64_bytes_of_button_data_pass(bot: Bot) -> None:
    keyboard = InlineKeyboardMarkup([[InlineKeyboardButton("b", callback_data="é" * 32)]])
    assert (await bot.send_message(WREN, "x", reply_markup=keyboard)).reply_markup == keyboard


@pytest.mark.parametrize("rows", [[["b"] * 9], [["b"] * 8] * 13], ids=["nine in a row", "over a hundred"])
async def test_too_many_buttons_are_refused(rows: list[list[str]], bot: Bot) -> None:
    buttons = [[InlineKeyboardButton(text, callback_data="x") for text in row] for row in rows]
    with pytest.raises(BadRequest):
        await bot.send_message(WREN, "x", reply_markup=InlineKeyboardMarkup(buttons))


async def test_a_blocked_bot_is_forbidden_to_write(bot: Bot, standin: StandIn) -> None:
    standin.phones.block(WREN)
    for call in (bot.send_message(WREN, "x"), bot.send_chat_action(WREN, "typing")):
        with pytest.raises(Forbidden, match="bot was blocked by the user"):
            await call


async def test_someone_met_only_in_a_group_cannot_be_written_to_first(bot: Bot, standin: StandIn) -> None:
    standin.world.chats[WREN].started = False
    with pytest.raises(Forbidden, match="bot can't initiate conversation with a user"):
        await bot.send_message(WREN, "x")


async def test_a_group_that_moved_tells_its_new_id(bot: Bot, standin: StandIn) -> None:
    standin.world.chats[GROUP].moved_to = -100777
    with pytest.raises(ChatMigrated) as raised:
        await bot.send_message(GROUP, "x")
    assert raised.value.new_chat_id == -100777


async def test_a_picture_that_is_none_is_refused(bot: Bot) -> None:
    with pytest.raises(BadRequest, match="Image_process_failed"):
        await bot.send_photo(WREN, b"no picture")


async def test_an_answer_to_a_press_longer_than_200_is_refused(bot: Bot, standin: StandIn) -> None:
    keyboard = InlineKeyboardMarkup([[InlineKeyboardButton("b", callback_data="x")]])
    sent = await bot.send_message(WREN, "x", reply_markup=keyboard)
    query = standin.phones.press(WREN, sent.message_id, "x")
    with pytest.raises(BadRequest, match="Message_too_long"):
        await bot.answer_callback_query(query, "x" * 201)
    assert await bot.answer_callback_query(query, "x" * 200)
    with pytest.raises(BadRequest, match="Query is too old"):
        await bot.answer_callback_query(query)
