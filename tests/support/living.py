"""Whole days as scripts that a tutor can read, lived through real HTTP against the stand-in.

A script's lines:

    clock: morning                     the demo's clock goes on to the next morning
    Wren sees: Number facts            something in Wren's chat since Wren's last act holds these words
    Wren doesn't see: 42               nothing there does
    Wren presses: Start                the newest button of that label
    Wren types: 3/4                    {right}, {wrong}, {choice} are made for the item that Wren's chat is at
    Wren goes on until: words          answers right, or presses on, until the words come
"""

from __future__ import annotations

import asyncio
from typing import Any

from aiohttp import ClientSession
from support.answering import right_choice, right_text, wrong_text
from support.reading import as_typed

from bot import demo
from bot.app import Demo
from bot.course.item import plain_text
from bot.maths.normal import normal
from bot.records import days, focus, inbox, outbox, people
from bot.records.base import create_engine, transaction
from bot.records.days import Sent
from bot.records.outbox import State
from bot.records.sheets import find_sheet
from bot.vocabulary import ChatId

PATIENCE = 60.0
"""Seconds. A wait ends when what it waits for is there; only a busy machine needs so many."""
WHO = {phone.first_name: phone for phone in demo.PHONES}


class Life:
    """The demo, running, and everybody's hands and eyes."""

    def __init__(self, living: Demo) -> None:
        self.demo = living
        self.standin = living.served.standin
        self.seen: dict[int, int] = {}
        self.stop = asyncio.Event()
        self.running = asyncio.create_task(living.app.run(self.stop))
        self.engine = create_engine(living.app.settings.database)

    async def close(self) -> None:
        self.stop.set()
        await self.running
        self.engine.dispose()

    async def clock(self, to: str) -> None:
        """Move the demo's clock as the phone page does."""
        async with ClientSession() as page:
            answer = await page.post(f"{self.demo.served.address}/phone/clock", json={"to": to})
            assert answer.status == 200, await answer.text()

    def from_bot(self, chat: int, since: int = 0) -> list[dict[str, Any]]:
        """What the bot sent to a chat after a message, oldest first."""
        return [
            message
            for message in self.standin.messages(chat)
            if message["from"]["is_bot"] and message["message_id"] > since
        ]

    async def sees(self, chat: int, words: str) -> None:
        def is_there() -> bool:
            return any(words in text_of(m) for m in self.from_bot(chat, self.seen.get(chat, 0)))

        try:
            await self.standin.until(is_there, PATIENCE)
        except TimeoutError:
            came = "\n".join(text_of(m) for m in self.from_bot(chat, self.seen.get(chat, 0)))
            raise AssertionError(f"{words!r} never came; what came:\n{came}") from None

    def sees_not(self, chat: int, words: str) -> None:
        came = [text_of(m) for m in self.from_bot(chat, self.seen.get(chat, 0))]
        assert not any(words in text for text in came), came

    def act(self, chat: int) -> None:
        self.seen[chat] = max((m["message_id"] for m in self.standin.messages(chat)), default=0)

    def newest_button(self, chat: int, label: str) -> tuple[int, str] | None:
        for message in reversed(self.from_bot(chat)):
            for row in message.get("reply_markup", {}).get("inline_keyboard", []):
                for one in row:
                    if normal(one["text"]) == normal(label) and "callback_data" in one:
                        return message["message_id"], one["callback_data"]
        return None

    async def presses(self, chat: int, label: str) -> None:
        try:
            await self.standin.until(lambda: self.newest_button(chat, label) is not None, PATIENCE)
        except TimeoutError:
            raise AssertionError(f"there is no button {label!r}") from None
        found = self.newest_button(chat, label)
        assert found is not None
        self.act(chat)
        self.standin.phones.press(chat, found[0], found[1])

    def types(self, chat: int, text: str) -> None:
        self.act(chat)
        self.standin.phones.say(chat, text)

    async def quiet(self, chat: int) -> None:
        """Wait until the bot has said what it has to say just now."""
        await self.standin.until(lambda: bool(self.from_bot(chat, self.seen.get(chat, 0))), PATIENCE)
        async with asyncio.timeout(PATIENCE):
            while not self.has_said_all():  # noqa: ASYNC110  # the database has no event
                await asyncio.sleep(0.02)

    def has_said_all(self) -> bool:
        """Whether all that came in is handled and all that was to be said is said."""
        with transaction(self.engine) as s:
            unsaid = outbox.count(s).keys() & {State.WAITING, State.SENDING}
            return not unsaid and not inbox.count_unfinished(s)

    def middle(self, chat: int) -> tuple[str, Sent | None, str]:
        """What a chat is in the middle of: what it waits for, the item, the answers of a sheet."""
        with transaction(self.engine) as s:
            person = people.who(s, ChatId(chat))
            assert person is not None and person.speaking is not None, "nobody is speaking there"
            found = focus.focus(s, person.chat, person.speaking)
            if found is None:
                return "", None, ""
            sheet = find_sheet(s, found.ref) if found.waits_for == "sheet" else None
            keys = " ".join(key for _, key in sheet.facts) if sheet else ""
            return found.waits_for, days.item(s, found.item) if found.item else None, keys

    async def types_words(self, chat: int, words: str) -> None:
        """Type a script's words, with what stands in braces made for the item at hand."""
        if "{" in words:
            await self.quiet(chat)
            _, sent, keys = self.middle(chat)
            made = {"{facts}": keys}
            if sent is not None:
                made |= {"{right}": right_text(sent), "{wrong}": wrong_text(sent)}
            for hole, text in made.items():
                words = words.replace(hole, text)
        self.types(chat, words)

    async def goes_on(self, chat: int, until: str) -> None:
        """Answer right, or press on, until some words come."""
        for _ in range(80):
            await self.quiet(chat)
            if any(until in text_of(m) for m in self.from_bot(chat, self.seen.get(chat, 0))):
                return
            waits_for, sent, keys = self.middle(chat)
            if waits_for == "sheet":
                self.types(chat, keys)
            elif sent is not None and sent.item.choices:
                label = plain_text(sent.item.choices[right_choice(sent)])
                await self.presses(chat, label)
            elif sent is not None:
                self.types(chat, right_text(sent))
            else:
                go = next(label for label in GO if self.newest_button(chat, label))
                await self.presses(chat, go)
        raise AssertionError(f"{until!r} never came")


GO = ("Go on", "Let’s try some", "Start")


def text_of(message: dict[str, Any]) -> str:
    return as_typed(str(message.get("text") or message.get("caption") or ""))


async def live(life: Life, script: str) -> None:
    """Live through a script, line by line; a failure names its line."""
    for number, line in enumerate(script.splitlines(), start=1):
        said = line.strip()
        if not said or said.startswith("#"):
            continue
        try:
            await _one(life, said)
        except AssertionError as error:
            raise AssertionError(f"line {number}: {said}\n{error}") from None


async def _one(life: Life, line: str) -> None:
    act, _, words = line.partition(": ")
    if act == "clock":
        await life.clock(words)
        return
    name, _, verb = act.partition(" ")
    chat = int(WHO[name].chat)
    match verb:
        case "sees":
            await life.sees(chat, words)
        case "doesn't see":
            life.sees_not(chat, words)
        case "presses":
            await life.presses(chat, words)
        case "types":
            await life.types_words(chat, words)
        case "goes on until":
            await life.goes_on(chat, words)
        case _:
            raise AssertionError(f"nobody knows how to {verb!r}")
