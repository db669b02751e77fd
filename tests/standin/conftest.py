"""A stand-in on a free port, and the real client library talking to it."""

from __future__ import annotations

import io
from collections.abc import AsyncIterator
from datetime import UTC, datetime

import aiohttp
import pytest
from PIL import Image
from telegram import Bot

from bot.now import DemoClock
from bot.standin import Group, Person, Served, StandIn, Upload, serve

TOKEN = "900000001:loopback-only"
WREN, TOVE, STRANGER, GROUP = 103, 102, 109, -1001


@pytest.fixture
def clock() -> DemoClock:
    return DemoClock(datetime(2026, 9, 15, 7, 0, tzinfo=UTC))


@pytest.fixture
def standin(clock: DemoClock) -> StandIn:
    people = [
        Person(WREN, "Wren", "Bramble", started=True, about="student, 12"),
        Person(TOVE, "Tove", "Bramble", username="tove_b", started=True, about="parent"),
        Person(STRANGER, "Anselm"),
    ]
    return StandIn(
        clock, TOKEN, people, groups=[Group(GROUP, "Mill Lane", (WREN, TOVE), bot_in=True)], webhook_pace=0.01
    )


@pytest.fixture
async def served(standin: StandIn) -> AsyncIterator[Served]:
    async with serve(standin) as one:
        yield one


@pytest.fixture
async def bot(served: Served) -> AsyncIterator[Bot]:
    async with Bot(TOKEN, base_url=served.base_url, base_file_url=served.base_file_url) as one:
        yield one


@pytest.fixture
async def web(served: Served) -> AsyncIterator[aiohttp.ClientSession]:
    async with aiohttp.ClientSession(served.address) as one:
        yield one


@pytest.fixture
def png() -> bytes:
    made = io.BytesIO()
    Image.new("RGB", (640, 320), "white").save(made, "PNG")
    return made.getvalue()


@pytest.fixture
def picture(png: bytes) -> Upload:
    return Upload("work.png", "image/png", png)
