"""The loopback Bot API: reads a call, does what the faults that are on allow, answers as the service would."""

from __future__ import annotations

import asyncio
import inspect
import mimetypes
import time
from collections import deque
from collections.abc import Callable
from typing import Any

import msgspec
from starlette.types import Receive, Scope, Send

from bot.standin import editing, limits, media, profile, sending, webhook
from bot.standin.faults import AFTER, BEFORE, Fault, Faults, Flood, refusal_of
from bot.standin.parameters import Parameters, read_parameters
from bot.standin.refusal import NO_METHOD, UNAUTHORIZED, Refusal
from bot.standin.webhook import Webhook
from bot.standin.world import World

Method = Callable[[World, Parameters], Any]
_encode = msgspec.json.Encoder().encode
_MESSAGES = frozenset({"sendmessage", "sendphoto", "senddocument", "sendmediagroup"})

METHODS: dict[str, Method] = {
    "getMe": profile.get_me,
    "getUpdates": webhook.get_updates,
    "sendMessage": sending.send_message,
    "sendPhoto": sending.send_photo,
    "sendDocument": sending.send_document,
    "sendMediaGroup": sending.send_media_group,
    "sendChatAction": sending.send_chat_action,
    "editMessageText": editing.edit_message_text,
    "editMessageCaption": editing.edit_message_caption,
    "editMessageReplyMarkup": editing.edit_message_reply_markup,
    "editMessageMedia": editing.edit_message_media,
    "deleteMessage": editing.delete_message,
    "deleteMessages": editing.delete_messages,
    "answerCallbackQuery": editing.answer_callback_query,
    "getFile": media.get_file,
    "getChat": profile.get_chat,
    "getChatMember": profile.get_chat_member,
    "getChatMemberCount": profile.get_chat_member_count,
    "leaveChat": profile.leave_chat,
    "setMyCommands": profile.set_my_commands,
    "getMyCommands": profile.get_my_commands,
    "deleteMyCommands": profile.delete_my_commands,
    "setMyName": profile.text_setter("name", "name", limits.NAME_CHARACTERS),
    "getMyName": profile.text_getter("name", "name"),
    "setMyDescription": profile.text_setter("description", "description", limits.DESCRIPTION_CHARACTERS),
    "getMyDescription": profile.text_getter("description", "description"),
    "setMyShortDescription": profile.text_setter(
        "short_description", "short_description", limits.SHORT_DESCRIPTION_CHARACTERS
    ),
    "getMyShortDescription": profile.text_getter("short_description", "short_description"),
}


class Api:
    """The ASGI app at /bot<token>/<method>; method names may be written in any case."""

    def __init__(self, world: World, faults: Faults, flood: Flood, hook: Webhook) -> None:
        self.calls: deque[tuple[float, str, dict[str, Any], int]] = deque(maxlen=5_000)
        """The newest calls: when (steady clock), method, parameters, HTTP status (0: the line was cut)."""
        self._world = world
        self._faults = faults
        self._flood = flood
        self._methods: dict[str, Method] = {name.lower(): method for name, method in METHODS.items()}
        self._methods["setwebhook"] = lambda _, p: hook.set(p)
        self._methods["deletewebhook"] = lambda _, p: hook.delete(p)
        self._methods["getwebhookinfo"] = lambda _, p: hook.info()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one call."""
        where = scope["path_params"]
        name: str = where["method"].lower()
        try:
            self._check_token(where["token"])
            p = await read_parameters(scope, receive)
        except Refusal as refusal:
            await _answer(send, refusal.status, refusal.body(), refusal)
            return
        chat = p.whole("chat_id")
        fault = self._faults.meant(BEFORE, name, chat) if self._faults.on else None
        if fault is not None and await self._stopped(fault, name, p, receive, send):
            return
        status, body, refusal_made = await self._done(name, p)
        fault = self._faults.meant(AFTER, name, chat) if self._faults.on and status == 200 else None
        if fault is not None:
            if fault.kind == "slow":
                await asyncio.sleep(fault.seconds)
            elif fault.kind == "cut_after":
                self._note(name, p, 0)
                await cut(receive, send)
                return
            else:
                refusal_made = refusal_of(fault)
                assert refusal_made is not None
                status, body = refusal_made.status, refusal_made.body()
        self._note(name, p, status)
        await _answer(send, status, body, refusal_made)

    def _check_token(self, token: str) -> None:
        if token != self._world.token:
            number, colon, secret = token.partition(":")
            raise UNAUTHORIZED if number.isdecimal() and colon and secret else Refusal(404, "Not Found")

    async def _done(self, name: str, p: Parameters) -> tuple[int, dict[str, Any], Refusal | None]:
        """Do what a call asks and return status and body."""
        try:
            method = self._methods.get(name)
            if method is None:
                raise NO_METHOD
            chat = self._world.chats.get(p.whole("chat_id") or 0) if name in _MESSAGES else None
            if chat is not None:
                self._flood.check(chat)
            result = method(self._world, p)
            if inspect.isawaitable(result):
                result = await result
        except Refusal as refusal:
            return refusal.status, refusal.body(), refusal
        if chat is not None:
            self._flood.went(chat.id, len(result) if isinstance(result, list) else 1)
        return 200, {"ok": True, "result": result}, None

    async def _stopped(self, fault: Fault, name: str, p: Parameters, receive: Receive, send: Send) -> bool:
        """Let a fault act before anything is done; True if that was the whole answer."""
        if fault.kind == "slow_before":
            await asyncio.sleep(fault.seconds)
            return False
        if fault.kind in ("cut_before", "down"):
            self._note(name, p, 0)
            await cut(receive, send)
            return True
        if fault.kind == "bad_gateway":
            self._note(name, p, 502)
            await _send(send, 502, b"text/html", b"<html><body><h1>502 Bad Gateway</h1></body></html>")
            return True
        refusal = refusal_of(fault)
        assert refusal is not None
        self._note(name, p, refusal.status)
        await _answer(send, refusal.status, refusal.body(), refusal)
        return True

    def _note(self, name: str, p: Parameters, status: int) -> None:
        self.calls.append((time.monotonic(), name, p.values, status))

    async def download(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer /file/bot<token>/<path>."""
        where = scope["path_params"]
        try:
            self._check_token(where["token"])
        except Refusal as refusal:
            await _answer(send, refusal.status, refusal.body(), refusal)
            return
        fault = self._faults.meant(BEFORE, "file", None) if self._faults.on else None
        if fault is not None and await self._stopped(fault, "file", Parameters({}), receive, send):
            return
        data = media.at_path(self._world, where["path"])
        if data is None:
            missing = Refusal(404, "Not Found")
            await _answer(send, 404, missing.body(), missing)
            return
        kind = mimetypes.guess_type(where["path"])[0] or "application/octet-stream"
        await _send(send, 200, kind.encode(), data)


async def _answer(send: Send, status: int, body: dict[str, Any], refusal: Refusal | None) -> None:
    retry = (refusal.parameters or {}).get("retry_after") if refusal is not None else None
    more = [(b"retry-after", str(retry).encode())] if retry is not None else []
    await _send(send, status, b"application/json", _encode(body), more)


async def _send(
    send: Send, status: int, kind: bytes, data: bytes, more: list[tuple[bytes, bytes]] | None = None
) -> None:
    headers = [(b"content-type", kind), (b"content-length", str(len(data)).encode()), *(more or ())]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": data})


async def cut(receive: Receive, send: Send) -> None:
    """Cut the line without a byte of an answer.

    ASGI has no word for this, so the server's own transport is asked; under another server the answer
    breaks off after its head.
    """
    transport = getattr(getattr(receive, "__self__", None), "transport", None)
    if transport is not None:
        transport.abort()
        return
    await send({"type": "http.response.start", "status": 200, "headers": [(b"content-length", b"9")]})
    await send({"type": "http.response.body", "body": b"{", "more_body": True})
