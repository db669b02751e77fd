"""A photo that a student sent is kept as a file, later if the service is away; one that can't be had holds up none."""

from __future__ import annotations

import asyncio
import io
import stat
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime

import pytest
from PIL import Image

from bot.chat import fetcher
from bot.chat.client import Client
from bot.chat.fetcher import Fetcher
from bot.chat.transport import AiohttpRequest
from bot.now import RealClock
from bot.records import files, people
from bot.records.base import transaction
from bot.standin import Person, StandIn, Upload, serve
from bot.vocabulary import Role

TOKEN = "900000001:loopback-only"
NOON = datetime(2026, 9, 14, 12, tzinfo=UTC)


def jpeg():
    buffer = io.BytesIO()
    Image.new("RGB", (20, 20)).save(buffer, "JPEG")
    return buffer.getvalue()


@pytest.fixture
def wren(engine):
    with transaction(engine) as s:
        tutor = people.add_person(s, "Ines", NOON, tutor=True)
        home = people.add_household(s, "Bramble", tutor, "Europe/London", NOON)
        student = people.add_person(s, "Wren", NOON)
        people.add_member(s, student, home, Role.STUDENT, NOON)
    return student


def note(engine, student, file_id):
    with transaction(engine) as s:
        return files.add_file(s, student, None, date(2026, 9, 14), file_id, NOON)


@pytest.fixture
async def photos(engine, tmp_path, monkeypatch):
    """A stand-in, a fetcher at work, and a way to send a photo from somebody's phone."""
    monkeypatch.setattr(fetcher, "EVERY", 0.05)
    async with serve(StandIn(RealClock(), TOKEN, [Person(1001, "Wren", started=True)])) as served:
        bot = Client(
            TOKEN,
            base_url=served.base_url,
            base_file_url=served.base_file_url,
            request=AiohttpRequest(4),
            get_updates_request=AiohttpRequest(1),
        )
        async with bot:
            folder = tmp_path / "files"
            working = asyncio.create_task(Fetcher(bot, engine, ThreadPoolExecutor(1), folder).run())
            yield served.standin, folder
            working.cancel()


def sent(standin):
    [message] = standin.phones.send_photos(1001, [Upload("work.jpg", "image/jpeg", jpeg())])
    return message["photo"][-1]["file_id"]


async def arrived(engine, folder, count):
    async with asyncio.timeout(60):
        while True:
            with transaction(engine) as s:
                if not files.unfetched(s):
                    break
            await asyncio.sleep(0.02)
    found = sorted(path for path in folder.rglob("*") if path.is_file())
    assert len(found) == count
    return found


async def test_a_photo_is_kept_for_its_owner_only(engine, wren, photos):
    standin, folder = photos
    row = note(engine, wren, sent(standin))
    [file] = await arrived(engine, folder, 1)
    assert file.stem == str(row) and Image.open(file).size == (20, 20)
    assert stat.S_IMODE(file.stat().st_mode) == 0o600


async def test_while_the_service_is_away_photos_wait(engine, wren, photos):
    standin, folder = photos
    standin.fault("error_before", method="getFile", times=2)
    note(engine, wren, sent(standin))
    await arrived(engine, folder, 1)


async def test_a_photo_that_the_service_no_longer_has_holds_up_none(engine, wren, photos):
    standin, folder = photos
    note(engine, wren, "gone")
    note(engine, wren, sent(standin))
    await arrived(engine, folder, 1)
