"""A killed stand-in comes back as it was."""

from __future__ import annotations

import asyncio
import os
import signal
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import aiohttp
from telegram import Bot, BotCommand, InlineKeyboardButton, InlineKeyboardMarkup

from bot.standin.journal import Journal

TOKEN = "900000001:loopback-only"
GO = InlineKeyboardMarkup([[InlineKeyboardButton("Go", callback_data="go")]])


@asynccontextmanager
async def process(state: Path) -> AsyncIterator[tuple[str, asyncio.subprocess.Process]]:
    """Start `python -m bot.standin` and give its address; kill it at the end."""
    one = await asyncio.create_subprocess_exec(
        sys.executable, "-m", "bot.standin", "--token", TOKEN, "--state", str(state), "--people", "3", "--started",
        stdout=asyncio.subprocess.PIPE,
    )  # fmt: skip
    assert one.stdout is not None
    address = (await one.stdout.readline()).decode().strip()
    try:
        yield address, one
    finally:
        if one.returncode is None:
            os.kill(one.pid, signal.SIGKILL)
            await one.wait()


async def test_a_killed_stand_in_comes_back_as_it_was(tmp_path: Path, png: bytes) -> None:
    state = tmp_path / "state.jsonl"
    async with process(state) as (address, _), Bot(TOKEN, base_url=f"{address}/bot") as bot:
        asked = await bot.send_message(1001, "Ready?", reply_markup=GO)
        gone = await bot.send_message(1001, "gone")
        await bot.delete_message(1001, gone.message_id)
        photo = await bot.send_photo(1002, png, api_kwargs={"evensum_alt": "a row"})
        await bot.set_my_commands([BotCommand("today", "where today stands")])
        async with aiohttp.ClientSession(address) as web:
            for text in ("one", "two"):
                await web.post("/phone/chats/1001/say", json={"text": text})
            await web.post("/phone/chats/1003/block")
        first = (await bot.get_updates())[0]
        await bot.get_updates(offset=first.update_id + 1)

    async with process(state) as (address, _):
        base, files = f"{address}/bot", f"{address}/file/bot"
        async with (
            Bot(TOKEN, base_url=base, base_file_url=files) as bot,
            aiohttp.ClientSession(address) as web,
        ):
            left = await bot.get_updates(timeout=0)
            assert [one.message.text for one in left if one.message] == ["two"]
            assert left[0].update_id == first.update_id + 1
            desk = await (await web.get("/phone/desk")).json()
            texts = [one["message"].get("text") for one in desk["messages"] if one["chat"] == 1001]
            assert texts == ["Ready?", "one", "two"]
            assert [one["alt"] for one in desk["messages"] if one["chat"] == 1002] == ["a row"]
            assert [chat["blocked"] for chat in desk["chats"]] == [False, False, True]
            assert desk["chats"][0]["commands"][0]["command"] == "today"
            edited = await bot.edit_message_text("Still?", 1001, asked.message_id)
            assert not isinstance(edited, bool) and edited.text == "Still?"
            assert (await bot.send_message(1001, "next")).message_id == 5
            file = await bot.get_file(photo.photo[-1].file_id)
            assert bytes(await file.download_as_bytearray()) == png


def test_a_line_that_a_kill_cut_short_is_left_out(tmp_path: Path) -> None:
    path = tmp_path / "state.jsonl"
    journal = Journal(path)
    journal.note("one", 1)
    journal.close()
    with path.open("ab") as file:
        file.write(b'["two",{"ha')
    again = Journal(path)
    again.note("three", 3)
    assert list(again.lines()) == [("one", 1), ("three", 3)]
    again.close()
