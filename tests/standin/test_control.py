"""What the phone page and other tests do over HTTP."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import UTC, datetime, time, timedelta
from typing import Any

import aiohttp
import pytest
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup

from bot.now import DemoClock
from bot.standin import Person, StandIn, build_standin, moment, serve

WREN, TOVE, STRANGER, GROUP = 103, 102, 109, -1001
GO = InlineKeyboardMarkup([[InlineKeyboardButton("Go", callback_data="go")]])


async def post(web: aiohttp.ClientSession, path: str, **what: Any) -> Any:
    async with web.post(f"/phone/{path}", json=what) as answer:
        return await answer.json()


async def get(web: aiohttp.ClientSession, path: str) -> Any:
    async with web.get(f"/phone/{path}") as answer:
        return await answer.json()


async def test_the_desk_tells_people_and_messages(web: aiohttp.ClientSession, bot: Bot) -> None:
    await bot.send_message(WREN, "Good morning")
    desk = await get(web, "desk")
    assert [(one["title"], one["unread"], one["started"]) for one in desk["chats"]] == [
        ("Wren Bramble", 1, True),
        ("Tove Bramble", 0, True),
        ("Anselm", 0, False),
        ("Mill Lane", 0, True),
    ]
    assert [(one["chat"], one["message"]["text"]) for one in desk["messages"]] == [(WREN, "Good morning")]
    assert desk["bot"] == {"name": "Evensum", "username": "evensum_bot"}


async def test_what_people_do_reaches_the_bot(web: aiohttp.ClientSession, bot: Bot) -> None:
    asked = await bot.send_message(WREN, "3. What is 1/2 + 1/4?", reply_markup=GO)
    said = await post(web, f"chats/{WREN}/say", text="3/4", reply_to=asked.message_id)
    await post(web, f"chats/{WREN}/edit", message_id=said["message_id"], text="2/4")
    query = await post(web, f"chats/{WREN}/press", message_id=asked.message_id, row=0, column=0)
    await post(web, f"chats/{STRANGER}/open", link="https://t.me/evensum_bot?start=Ab3_x-9")
    await post(web, f"chats/{WREN}/sticker")
    await post(web, f"chats/{WREN}/voice")
    updates = await bot.get_updates()
    assert [one.effective_message.text for one in updates if one.effective_message][:2] == ["3/4", "2/4"]
    assert updates[2].callback_query is not None
    assert (updates[2].callback_query.id, updates[2].callback_query.data) == (query["query"], "go")
    assert updates[3].message is not None and updates[3].message.text == "/start Ab3_x-9"
    assert (await bot.send_message(STRANGER, "Welcome")).text == "Welcome"


@pytest.mark.parametrize(
    "link", ["https://t.me/other_bot?start=x", "https://example.org", "t.me/evensum_bot?start=a.b"]
)
async def test_a_link_that_leads_elsewhere_is_refused(link: str, web: aiohttp.ClientSession) -> None:
    assert "error" in await post(web, f"chats/{WREN}/open", link=link)


async def test_files_come_from_the_page_and_go_to_it(
    web: aiohttp.ClientSession, bot: Bot, png: bytes
) -> None:
    form = aiohttp.FormData()
    form.add_field("caption", "my work")
    for n in range(2):
        form.add_field("file", png, filename=f"{n}.png", content_type="image/png")
    sent = await (await web.post(f"/phone/chats/{WREN}/photo", data=form)).json()
    assert [one.get("caption") for one in sent] == ["my work", None]
    async with web.get(f"/phone/files/{sent[0]['photo'][-1]['file_id']}") as picture:
        assert (picture.content_type, await picture.read()) == ("image/png", png)
    page = await bot.send_document(WREN, b"<script>alert(1)</script>", filename="a.html")
    assert page.document is not None
    async with web.get(f"/phone/files/{page.document.file_id}") as document:
        assert document.content_type == "application/octet-stream"
        assert document.headers["Content-Disposition"] == "attachment"


async def test_changes_come_once_and_none_is_missed(web: aiohttp.ClientSession, bot: Bot) -> None:
    start = (await get(web, "desk"))["revision"]
    waiting = asyncio.create_task(get(web, f"changes?since={start}&wait=20"))
    await asyncio.sleep(0.05)
    one = await bot.send_message(WREN, "one")
    first = await waiting
    assert [item["message"]["text"] for item in first["messages"]] == ["one"]
    await bot.edit_message_text("two", WREN, one.message_id)
    gone = await bot.send_message(WREN, "three")
    await bot.delete_message(WREN, gone.message_id)
    both = await get(web, f"changes?since={start}")
    assert [item["message"]["text"] for item in both["messages"]] == ["two"]
    assert both["gone"] == [{"chat": WREN, "message_id": gone.message_id}] * len(both["gone"]) != []
    assert (await get(web, f"changes?since={both['revision']}"))["messages"] == []


async def test_a_page_from_before_a_restart_reads_everything_afresh(web: aiohttp.ClientSession) -> None:
    assert (await get(web, "changes?since=9999"))["afresh"] is True


async def test_an_answer_to_a_press_reaches_the_page(
    web: aiohttp.ClientSession, bot: Bot, standin: StandIn
) -> None:
    asked = await bot.send_message(WREN, "x", reply_markup=GO)
    query = standin.phones.press(WREN, asked.message_id, "go")
    before = standin.world.changes.revision
    await bot.answer_callback_query(query, "Later it is", show_alert=True)
    (answer,) = (await get(web, f"changes?since={before}"))["answers"]
    assert answer == {"chat": WREN, "query": query, "message": 1, "text": "Later it is", "alert": True}


async def test_waiting_for_the_bots_next_message(web: aiohttp.ClientSession, bot: Bot) -> None:
    waiting = asyncio.create_task(get(web, f"chats/{WREN}/messages?after=0&wait=20"))
    await asyncio.sleep(0.05)
    await bot.send_message(WREN, "here")
    found = await waiting
    assert ([one["message"]["text"] for one in found["messages"]], found["last_id"]) == (["here"], 1)


async def test_reading_and_clearing_are_the_phones_own_business(web: aiohttp.ClientSession, bot: Bot) -> None:
    sent = await bot.send_message(WREN, "x")
    await post(web, f"chats/{WREN}/read")
    assert (await get(web, "desk"))["chats"][0]["unread"] == 0
    await post(web, f"chats/{WREN}/clear")
    assert (await get(web, "desk"))["messages"] == []
    edited = await bot.edit_message_text("y", WREN, sent.message_id)
    assert not isinstance(edited, bool) and edited.text == "y"


async def test_a_blocked_bot_is_written_to_only_after_unblocking(web: aiohttp.ClientSession) -> None:
    await post(web, f"chats/{WREN}/block")
    assert "unblock it first" in (await post(web, f"chats/{WREN}/say", text="x"))["error"]
    await post(web, f"chats/{WREN}/start")
    assert (await post(web, f"chats/{WREN}/say", text="x"))["text"] == "x"


@pytest.mark.parametrize(
    ("path", "what"),
    [
        (f"chats/{WREN}/say", {"text": " "}),
        (f"chats/{WREN}/dance", {}),
        (f"chats/{WREN}/press", {"message_id": 5, "data": "go"}),
        (f"chats/{WREN}/edit", {"message_id": 5, "text": "x"}),
        (f"chats/{WREN}/photo", {}),
        (f"chats/{GROUP}/say", {"text": "x", "person": STRANGER}),
        ("chats/5/say", {"text": "x"}),
        ("people", {"id": WREN, "first_name": "Twice"}),
        ("clock", {"to": "morning"}),
    ],
)
async def test_what_cannot_be_done_is_said(
    path: str, what: dict[str, Any], web: aiohttp.ClientSession
) -> None:
    async with web.post(f"/phone/{path}", json=what) as answer:
        assert answer.status == 400
        assert (await answer.json())["error"]


async def test_people_may_be_added_while_it_runs(web: aiohttp.ClientSession, bot: Bot) -> None:
    added = await post(web, "people", id=2001, first_name="Sol", started=True, about="student, 13")
    assert (added["title"], added["about"]) == ("Sol", "student, 13")
    assert (await bot.send_message(2001, "x")).chat.id == 2001


@pytest.mark.parametrize("headers", [{"Host": "evil.example"}, {"Origin": "https://evil.example"}])
async def test_other_web_pages_may_not_use_the_phones(
    headers: dict[str, str], web: aiohttp.ClientSession
) -> None:
    async with web.post(f"/phone/chats/{WREN}/say", json={"text": "x"}, headers=headers) as answer:
        assert answer.status == 403


async def test_the_page_may_load_nothing_from_elsewhere(web: aiohttp.ClientSession) -> None:
    async with web.get("/") as answer:
        assert answer.status == 200
        assert answer.headers["Content-Security-Policy"].startswith("default-src 'none'")
        assert "http://" not in (await answer.text()) and "https://" not in (await answer.text())


@pytest.fixture
async def moving() -> AsyncIterator[aiohttp.ClientSession]:
    clock = DemoClock(datetime(2026, 9, 15, 9, 30, tzinfo=UTC))

    async def move(to: str) -> None:
        clock.go_to(moment(clock.now(), to, "Europe/London", morning=time(7)))

    standin = StandIn(clock, "900000001:x", [Person(1, "Wren")], on_clock=move, zone="Europe/London")
    async with serve(standin) as served, aiohttp.ClientSession(served.address) as web:
        yield web


async def test_the_clock_is_moved_by_a_word(moving: aiohttp.ClientSession) -> None:
    assert (await get(moving, "clock"))["movable"] is True
    told = await post(moving, "clock", to="evening")
    assert datetime.fromtimestamp(told["now"], UTC).isoformat(timespec="minutes") == "2026-09-15T18:00+00:00"
    assert (told["zone"], told["offset"]) == ("Europe/London", 3600)
    assert "goes on to" in (await post(moving, "clock", to="yesterday"))["error"]


@pytest.mark.parametrize(
    ("to", "expected"),
    [
        ("morning", "2026-09-16T07:00"),
        ("evening", "2026-09-15T18:00"),
        ("next day", "2026-09-16T07:00"),
        ("Monday", "2026-09-21T07:00"),
        ("tuesday", "2026-09-22T07:00"),
        ("+90", "2026-09-15T11:00"),
    ],
)
def test_words_lead_to_moments_in_the_households_zone(to: str, expected: str) -> None:
    now = datetime(2026, 9, 15, 9, 30, tzinfo=UTC)  # a Tuesday, 10:30 in London
    assert moment(now, to, "Europe/London").isoformat(timespec="minutes") == f"{expected}+00:00"


def test_the_next_morning_after_the_clocks_changed_is_at_the_same_hour() -> None:
    now = datetime(2026, 10, 24, 20, 0, tzinfo=UTC)  # summer time ends on the 25th
    assert moment(now, "morning", "Europe/London") - now == timedelta(hours=12)


def test_the_app_can_be_built_alone() -> None:
    app = build_standin(DemoClock(datetime(2026, 9, 15, tzinfo=UTC)), "900000001:x", [Person(1, "Wren")])
    assert isinstance(app.state.standin, StandIn)
