"""A tutor's file is fetched from the service, proved beside the rest, and answered once; one that can't be had too."""

from __future__ import annotations

import asyncio
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime

import pytest

from bot.chat import lesson_files
from bot.chat.client import Client
from bot.chat.lesson_files import LessonFiles
from bot.chat.transport import AiohttpRequest
from bot.messages import OwnFaults
from bot.now import RealClock
from bot.records import outbox, own, people
from bot.records.base import transaction
from bot.standin import Person, StandIn, Upload, serve
from bot.vocabulary import ChatId

TOKEN = "900000001:loopback-only"
NOON = datetime(2026, 9, 14, 12, tzinfo=UTC)
CHAT = ChatId(1001)


@pytest.fixture
async def reading(engine, monkeypatch):
    """A stand-in, a reader at work that answers with how many bytes came, and the tutor's number."""
    monkeypatch.setattr(lesson_files, "EVERY", 0.05)
    with transaction(engine) as s:
        tutor = people.add_person(s, "Ines", NOON, tutor=True)
        people.link(s, CHAT, tutor, NOON)

    def answer(s, row, proof, now):
        return [OwnFaults(to=row.chat, title=proof, rows=())] if own.was_read(s, row.id, now) else []

    async with serve(StandIn(RealClock(), TOKEN, [Person(CHAT, "Ines", started=True)])) as served:
        bot = Client(
            TOKEN,
            base_url=served.base_url,
            base_file_url=served.base_file_url,
            request=AiohttpRequest(4),
            get_updates_request=AiohttpRequest(1),
        )
        async with bot:
            reader = LessonFiles(
                bot,
                engine,
                ThreadPoolExecutor(1),
                RealClock(),
                lambda name, content: "gone" if content is None else f"{name} {len(content)}",
                answer,
                lambda: None,
            )
            working = asyncio.create_task(reader.run())
            yield served.standin, tutor
            working.cancel()


def note(engine, tutor, file_id):
    with transaction(engine) as s:
        return own.add_file(s, tutor, CHAT, file_id, "flour.md", "wren", NOON)


def sent(standin):
    message = standin.phones.send_document(CHAT, Upload("flour.md", "text/markdown", b"# Card\n"), "wren")
    return message["document"]["file_id"]


async def answered(engine, count):
    async with asyncio.timeout(60):
        while True:
            with transaction(engine) as s:
                if not own.coming(s):
                    waiting = [each.message.title for each in outbox.claim(s, datetime.now(UTC), 10)]
                    assert len(waiting) == count
                    return waiting
            await asyncio.sleep(0.02)


async def test_a_file_is_read_and_answered_once(engine, reading):
    standin, tutor = reading
    note(engine, tutor, sent(standin))
    assert await answered(engine, 1) == ["flour.md 7"]


async def test_while_the_service_is_away_files_wait(engine, reading):
    standin, tutor = reading
    standin.fault("error_before", method="getFile", times=2)
    note(engine, tutor, sent(standin))
    assert await answered(engine, 1) == ["flour.md 7"]


async def test_a_file_that_the_service_no_longer_has_is_told_and_holds_up_none(engine, reading):
    standin, tutor = reading
    note(engine, tutor, "gone")
    note(engine, tutor, sent(standin))
    assert await answered(engine, 2) == ["gone", "flour.md 7"]
