"""What the phone page and tests may do over HTTP, at /phone/...: people act, faults, the clock.

Every answer is JSON. A refusal is {"error": "..."} with status 400.
"""

from __future__ import annotations

import inspect
from collections.abc import Awaitable, Callable
from typing import Any
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo

import msgspec
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from bot.standin import media
from bot.standin.faults import KINDS, Faults, Flood
from bot.standin.model import Chat, Json, Person
from bot.standin.parameters import Parameters, read_parameters
from bot.standin.phones import Phones
from bot.standin.refusal import Refusal, bad
from bot.standin.shown import next_message, shown_chat, shown_message
from bot.standin.world import World

OnClock = Callable[[str], Awaitable[None] | None]
SHOWN = 300
"""Messages of a chat that the page gets at once."""
WAIT_SECONDS = 25.0


class Control:
    """The control API. `on_clock` moves the demo's clock; without it the page shows no controls."""

    def __init__(
        self, world: World, phones: Phones, faults: Faults, flood: Flood, zone: str, on_clock: OnClock | None
    ) -> None:
        self._world = world
        self._phones = phones
        self._faults = faults
        self._flood = flood
        self._zone = ZoneInfo(zone)
        self._on_clock = on_clock
        self.refuse: Callable[[float], None] | None = None
        """Lets nobody in at the port for so many seconds; set by whoever serves."""

    def routes(self) -> list[Route]:
        """Return the paths."""
        chat = "/phone/chats/{chat:str}"  # a group's id is negative
        return [
            self._route("/phone/desk", self.desk, "GET"),
            self._route("/phone/changes", self.changes, "GET"),
            self._route("/phone/people", self.add_person),
            self._route(f"{chat}/messages", self.messages, "GET"),
            self._route(f"{chat}/" + "{act:str}", self.act),
            self._route("/phone/clock", self.clock, "GET", "POST"),
            self._route("/phone/faults", self.faults, "GET", "POST", "DELETE"),
            self._route("/phone/pace", self.pace, "GET", "POST"),
            Route("/phone/files/{number:str}", self.file, methods=["GET"]),
        ]

    def _route(
        self, path: str, answer: Callable[[Request, Parameters], Awaitable[Any]], *methods: str
    ) -> Route:
        async def endpoint(request: Request) -> Response:
            _check_origin(request)
            try:
                p = await read_parameters(request.scope, request.receive)
                return _json(await answer(request, p))
            except Refusal as refusal:
                return _json({"error": refusal.description.removeprefix("Bad Request: ")}, refusal.status)
            except (ValueError, TypeError) as trouble:
                return _json({"error": str(trouble)}, 400)

        return Route(path, endpoint, methods=list(methods) or ["POST"])

    async def desk(self, request: Request, p: Parameters) -> Json:
        """GET /phone/desk: everything the page needs to begin with."""
        return {
            "revision": self._world.changes.revision,
            "bot": {"name": self._world.texts["name"].get(""), "username": self._world.bot["username"]},
            "clock": self._time(),
            "chats": [shown_chat(self._world, chat) for chat in self._world.chats.values()],
            "messages": [
                shown_message(chat, kept)
                for chat in self._world.chats.values()
                for number, kept in list(chat.messages.items())[-SHOWN:]
                if number > chat.cleared_up_to
            ],
        }

    async def changes(self, request: Request, p: Parameters) -> Json:
        """GET /phone/changes?since=N&wait=25: what is newer than revision N, as soon as there is any."""
        since = p.whole("since", 0) or 0
        await self._world.changes.wait(since, min(float(p.text("wait", "0") or 0), WAIT_SECONDS))
        changed = self._world.changes.since(since)
        answer: Json = {"revision": self._world.changes.revision, "clock": self._time()}
        if changed is None:
            return {**answer, "afresh": True}
        chats: dict[int, Json] = {}
        kinds: dict[str, list[Json]] = {"messages": [], "gone": [], "answers": [], "actions": []}
        for one in changed:
            chat = self._world.chats.get(one.chat)
            if chat is None:  # the bot's own texts: every chat may show other commands now
                if one.what == "chat":
                    chats.update(
                        (each.id, shown_chat(self._world, each)) for each in self._world.chats.values()
                    )
                continue
            chats[chat.id] = shown_chat(self._world, chat)
            if one.what == "message" and one.message in chat.messages:
                if one.message > chat.cleared_up_to:
                    kinds["messages"].append(shown_message(chat, chat.messages[one.message]))
            elif one.what in ("gone", "message"):
                kinds["gone"].append({"chat": chat.id, "message_id": one.message})
            elif one.what in ("answer", "action"):
                kinds[f"{one.what}s"].append({"chat": chat.id, **(one.data or {})})
        return {**answer, "chats": list(chats.values()), **kinds}

    async def messages(self, request: Request, p: Parameters) -> Json:
        """GET /phone/chats/{chat}/messages?after=ID&wait=S: messages above an id, waiting for the bot's."""
        chat = self._meant(request)
        after = p.whole("after", 0) or 0
        seconds = min(float(p.text("wait", "0") or 0), WAIT_SECONDS)
        if seconds:
            await next_message(self._world, chat.id, after, seconds)
        found = [shown_message(chat, kept) for number, kept in chat.messages.items() if number > after]
        return {"messages": found, "last_id": chat.last_id}

    async def act(self, request: Request, p: Parameters) -> Any:
        """POST /phone/chats/{chat}/{act}: what a person does with their phone."""
        chat = self._meant(request).id
        phones = self._phones
        who = p.whole("person")
        reply_to = p.whole("reply_to")
        files = list(p.files.values())
        match request.path_params["act"]:
            case "say":
                return phones.say(chat, p.text("text"), person=who, reply_to=reply_to, quote=p.text("quote"))
            case "start":
                return phones.start(chat, p.text("payload"))
            case "open":
                return phones.open_link(chat, p.text("link"))
            case "press":
                data = p.text("data") or None
                row, column = p.whole("row"), p.whole("column")
                place = (row, column) if data is None and row is not None and column is not None else None
                message = p.whole("message_id", 0) or 0
                return {"query": phones.press(chat, message, data, place=place, person=who)}
            case "edit":
                return phones.edit(chat, p.whole("message_id", 0) or 0, p.text("text"))
            case "photo":
                return phones.send_photos(chat, files, p.text("caption"), person=who, reply_to=reply_to)
            case "document" if files:
                return phones.send_document(chat, files[0], p.text("caption"), person=who, reply_to=reply_to)
            case "sticker":
                return phones.send_sticker(chat, person=who, reply_to=reply_to)
            case "voice":
                return phones.send_voice(chat, person=who, reply_to=reply_to)
            case "block":
                phones.block(chat)
            case "unblock":
                phones.unblock(chat)
            case "read":
                phones.read(chat, p.whole("up_to"))
            case "clear":
                phones.clear(chat)
            case "add_bot":
                phones.add_bot(chat, who)
            case "take_out_bot":
                phones.take_out_bot(chat, who)
            case _:
                raise bad("a phone can't do this")
        return {"done": True}

    async def add_person(self, request: Request, p: Parameters) -> Json:
        """POST /phone/people: somebody more with a phone."""
        number = p.whole("id")
        name = p.text("first_name")
        if number is None or number <= 0 or not name or number in self._world.chats:
            raise bad("a person needs an id of their own above 0 and a first_name")
        texts = {one: p.text(one) for one in ("last_name", "username", "about") if p.text(one)}
        person = Person(number, name, language=p.text("language", "en"), started=p.truth("started"), **texts)
        return shown_chat(self._world, self._world.add_person(person))

    async def clock(self, request: Request, p: Parameters) -> Json:
        """GET /phone/clock tells the time; POST {"to": "morning"} moves it."""
        if request.method == "POST":
            if self._on_clock is None:
                raise bad("this clock can't be moved")
            moved = self._on_clock(p.text("to"))
            if inspect.isawaitable(moved):
                await moved
            self._world.changes.note("clock")
        return self._time()

    async def faults(self, request: Request, p: Parameters) -> Json:
        """GET lists faults; POST {"kind": ..., ...} switches one on; DELETE switches off one (?id=) or all."""
        if request.method == "POST":
            how = {
                name: p.data(name) if name != "method" else p.text(name)
                for name in p.values
                if name != "kind"
            }
            fault = self._faults.switch_on(p.text("kind"), **how)
            if fault.kind == "refused":
                if self.refuse is None:
                    raise bad("the stand-in does not serve itself here")
                self._faults.switch_off(fault.id)
                self.refuse(fault.for_seconds or 5.0)
        elif request.method == "DELETE":
            self._faults.switch_off(p.whole("id"))
        return {"on": self._faults.shown(), "kinds": KINDS}

    async def pace(self, request: Request, p: Parameters) -> Json:
        """GET tells of the published pace; POST {"on": true} enforces it with 429."""
        if request.method == "POST":
            self._flood.on = p.truth("on")
        return {"on": self._flood.on, "sent": len(self._flood.sent), "busiest": self._flood.busiest_second()}

    async def file(self, request: Request) -> Response:
        """GET /phone/files/{file_id}: a picture or document for the page, without the bot's token."""
        _check_origin(request)
        meant = media.find(self._world, request.path_params["number"])
        if meant is None:
            raise HTTPException(404)
        file, side = meant
        # A document could be a web page: as a download it can't run beside the phone page.
        headers = {"X-Content-Type-Options": "nosniff", "Cache-Control": "private, max-age=3600"}
        if file.kind not in ("photo", "sticker"):
            headers["Content-Disposition"] = "attachment"
            return Response(file.data, media_type="application/octet-stream", headers=headers)
        kind = file.mime if file.mime.startswith("image/") and "svg" not in file.mime else "image/jpeg"
        return Response(
            media.bytes_of(file, side), media_type=kind if not side else "image/jpeg", headers=headers
        )

    def _meant(self, request: Request) -> Chat:
        number: str = request.path_params["chat"]
        chat = self._world.chats.get(int(number)) if number.removeprefix("-").isdecimal() else None
        if chat is None:
            raise bad("there is no such chat")
        return chat

    def _time(self) -> Json:
        now = self._world.clock.now()
        local = now.astimezone(self._zone)
        return {
            "now": now.timestamp(),
            "zone": self._zone.key,
            "offset": int((local.utcoffset() or now - now).total_seconds()),
            "movable": self._on_clock is not None,
        }


def _check_origin(request: Request) -> None:
    """Let only this machine's own page act: not another web page, nor a name that was pointed here."""
    host = request.headers.get("host", "")
    if urlsplit(f"//{host}").hostname not in ("127.0.0.1", "localhost", "::1"):
        raise HTTPException(403, "The phone page answers at 127.0.0.1 only.")
    origin = request.headers.get("origin")
    if origin is not None and urlsplit(origin).netloc != host:
        raise HTTPException(403, "The phone page answers to itself only.")


def _json(body: Any, status: int = 200) -> Response:
    return Response(msgspec.json.encode(body), status, media_type="application/json")
