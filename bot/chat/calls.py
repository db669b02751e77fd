"""A rendered message as calls of the library."""

from __future__ import annotations

import logging
from collections import OrderedDict
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any

from telegram import (
    BotCommand,
    BotCommandScopeChat,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InputMediaDocument,
    InputMediaPhoto,
    LinkPreviewOptions,
    Message,
    MessageEntity,
    ReplyParameters,
)
from telegram.error import BadRequest
from telegram.ext import ExtBot

from bot.chat.client import Client
from bot.chat.rendered import CAPTION, TEXT, Button, Document, Drawing, Entity, Kept, Picture, Rendered, units
from bot.vocabulary import ChatId

log = logging.getLogger(__name__)

Draw = Callable[[Drawing], Awaitable[bytes]]
"""Makes the bytes of a drawing, in a process of its own."""
Permit = Callable[[], Awaitable[object]]
"""Waits until one more message may leave."""

UPLOADS = 2000
"""So many names of uploaded files are kept in memory."""
ALT = "evensum_alt"
"""What somebody hears who can't see a picture. The service knows no such field; the stand-in's page shows it."""


@dataclass(frozen=True, slots=True)
class Shown:
    """The message that a chat now has, with the service's date."""

    message_id: int
    at: datetime | None
    """None: it was there already, unchanged."""


@dataclass(slots=True)
class Service:
    """The service as the sender sees it. `alt`: it understands `ALT`, as the stand-in does."""

    bot: Client
    draw: Draw
    alt: bool = False
    uploaded: OrderedDict[str, str] = field(default_factory=OrderedDict)
    """Drawings that the service has already, by their key, with its name for them."""

    async def content(self, content: Drawing | Kept | bytes) -> bytes | str:
        """Return the bytes of a file, or the service's name for it if it was uploaded before."""
        if isinstance(content, bytes):
            return content
        if isinstance(content, Kept):
            return content.file_id
        return self.uploaded.get(content.key) or await self.draw(content)

    def note(self, content: Drawing | Kept | bytes, file_id: str) -> None:
        """Note the service's name for a file."""
        if isinstance(content, Drawing):
            self.uploaded[content.key] = file_id
            while len(self.uploaded) > UPLOADS:
                self.uploaded.popitem(last=False)


async def carry_out(service: Service, chat: ChatId, what: Rendered, permit: Permit) -> Shown | None:
    """Do all that a rendered message asks for; return what is shown of it, None if nothing is.

    `permit` is asked before every message after the first. Raises what the library raises.
    """
    bot = service.bot
    for message_id in what.delete:
        await _gently(bot.delete_message(chat, message_id))
    for message_id in what.strip:
        await _gently(bot.edit_message_reply_markup(chat, message_id, reply_markup=None))
    if what.commands is not None:
        await _offer(bot, chat, what.commands)
    shown = await _show(_Call(service, chat, what, permit))
    if what.leave:
        await _gently(bot.leave_chat(chat))
    return shown


async def _gently(call: Awaitable[object]) -> None:
    """Pass over what can't be done any more: gone, too old, done before."""
    try:
        await call
    except BadRequest:
        return


async def _offer(bot: ExtBot[None], chat: ChatId, commands: Sequence[tuple[str, str]]) -> None:
    scope = BotCommandScopeChat(chat)
    if commands:
        await bot.set_my_commands([BotCommand(name, what) for name, what in commands], scope=scope)
    else:
        await bot.delete_my_commands(scope=scope)


@dataclass(frozen=True, slots=True)
class _Made:
    file: Picture | Document
    content: bytes | str
    """The bytes, or the service's name of them."""


@dataclass(slots=True)
class _Call:
    service: Service
    chat: ChatId
    what: Rendered
    permit: Permit
    sent: int = 0

    async def next_one(self) -> None:
        """Wait for leave to send one more message; the first has it."""
        if self.sent:
            await self.permit()
        self.sent += 1

    @property
    def common(self) -> dict[str, Any]:
        given: dict[str, Any] = {"disable_notification": self.what.quiet or None}
        if self.what.reply_to is not None:
            given["reply_parameters"] = ReplyParameters(self.what.reply_to, allow_sending_without_reply=True)
        return given


async def _show(call: _Call) -> Shown | None:
    what = call.what
    if what.replace is not None:
        changed = await _change(call, what.replace)
        if changed is not None:
            return changed
    pictures, documents = await _made(call, what.pictures), await _made(call, what.documents)
    files = (*pictures, *documents)
    there = {id(each.file) for each in files}
    wanted: tuple[Picture | Document, ...] = (*what.pictures, *what.documents)
    lost = [file for file in wanted if id(file) not in there]
    if lost:
        what = _without(what, lost)
        call = replace(call, what=what)
    if len(files) == 1 and units(what.text) <= CAPTION and not isinstance(files[0].file.content, Kept):
        await call.next_one()
        return _shown(await _file(call, files[0], with_text=True))
    shown: Shown | None = None
    for group in (pictures, documents):
        if any(isinstance(made.file.content, Kept) for made in group):
            for made in group:
                await call.next_one()
                shown = _shown(await _kept(call, made)) or shown
        elif len(group) > 1:
            for _ in group:
                await call.next_one()
            shown = _shown((await _album(call, group))[-1])
        elif group:
            await call.next_one()
            shown = _shown(await _file(call, group[0], with_text=False))
    if what.text:
        await call.next_one()
        shown = Shown(*await call.service.bot.send_text(call.chat, what))
    return shown


async def _made(call: _Call, files: Sequence[Picture | Document]) -> list[_Made]:
    """Make what has to be made. A picture that can't be made is left out: the words still arrive."""
    made = []
    for file in files:
        try:
            made.append(_Made(file, await call.service.content(file.content)))
        except Exception as error:
            log.error("a file can't be made and is left out: %r", error)
    return made


def _without(what: Rendered, lost: Sequence[Picture | Document]) -> Rendered:
    """The message where files can't be made: it says so, and what a picture shows is told in words."""
    text = what.text
    told = [file.alt for file in lost if isinstance(file, Picture) and file.alt not in text]
    for line in (what.missing, *told):
        longer = f"{text}\n\n{line}".strip()
        if line and units(longer) <= TEXT:
            text = longer
    return replace(what, text=text)


async def _change(call: _Call, message_id: int) -> Shown | None:
    """Change a message that is there; None if it is gone and a new one has to be sent."""
    what = call.what
    try:
        changed = await call.service.bot.edit_message_text(
            what.text,
            call.chat,
            message_id,
            entities=_entities(what.entities),
            reply_markup=_buttons(what.buttons),
            link_preview_options=None if what.preview else LinkPreviewOptions(is_disabled=True),
        )
    except BadRequest as error:
        said = error.message.lower()
        if "not modified" in said:
            return Shown(message_id, None)
        if "to edit not found" in said or "can't be edited" in said or "no text in the message" in said:
            return None
        raise
    return _shown(changed) if isinstance(changed, Message) else None


async def _file(call: _Call, made: _Made, *, with_text: bool) -> Message:
    service, file = call.service, made.file
    words: dict[str, Any] = dict(call.common)
    if with_text:
        words["caption"] = call.what.text or None
        words["caption_entities"] = _entities(call.what.entities) if call.what.text else None
        words["reply_markup"] = _buttons(call.what.buttons)
    if isinstance(file, Document):
        sent = await service.bot.send_document(call.chat, made.content, filename=file.filename, **words)
        service.note(file.content, sent.document.file_id if sent.document else "")
        return sent
    if service.alt:
        words["api_kwargs"] = {ALT: file.alt}
    sent = await service.bot.send_photo(call.chat, made.content, **words)
    service.note(file.content, sent.photo[-1].file_id if sent.photo else "")
    return sent


async def _kept(call: _Call, made: _Made) -> Message:
    """Show what somebody sent before; a picture that came as a file goes out as a file."""
    try:
        return await call.service.bot.send_photo(call.chat, made.content, **call.common)
    except BadRequest:
        return await call.service.bot.send_document(call.chat, made.content, **call.common)


async def _album(call: _Call, files: Sequence[_Made]) -> Sequence[Message]:
    media: list[Any] = []
    for made in files:
        if isinstance(made.file, Document):
            media.append(InputMediaDocument(made.content, filename=made.file.filename))
        else:
            alt = {ALT: made.file.alt} if call.service.alt else None
            media.append(InputMediaPhoto(made.content, api_kwargs=alt))
    return await call.service.bot.send_media_group(call.chat, media, **call.common)


def _shown(message: Message) -> Shown:
    return Shown(message.message_id, message.edit_date or message.date)


def _entities(entities: Sequence[Entity]) -> list[MessageEntity] | None:
    return [MessageEntity(one.kind, one.offset, one.length, url=one.url) for one in entities] or None


def _buttons(rows: Sequence[Sequence[Button]]) -> InlineKeyboardMarkup | None:
    if not rows:
        return None
    return InlineKeyboardMarkup(
        [
            [
                InlineKeyboardButton(one.label, callback_data=one.data or None, url=one.url or None)
                for one in row
            ]
            for row in rows
        ]
    )
