"""What people do with their phones: write, press, answer, send pictures, open links, block."""

from __future__ import annotations

import re
from collections.abc import Sequence
from urllib.parse import parse_qs, urlsplit

from bot.standin import limits, media
from bot.standin.keyboards import button_at
from bot.standin.model import Chat, Json, Person, Upload
from bot.standin.profile import member_changed
from bot.standin.refusal import bad
from bot.standin.samples import STICKER, VOICE
from bot.standin.sending import caption, quote_of, without_reply
from bot.standin.text import clean
from bot.standin.world import World

_PAYLOAD = re.compile(r"[A-Za-z0-9_-]+")


class Phones:
    """Acts of people. Each returns the message that came of it, as the service would give it.

    In a group `person` says who acts; in a private chat there is only one.
    """

    def __init__(self, world: World) -> None:
        self._world = world

    def say(
        self,
        chat: int,
        text: str,
        *,
        person: int | None = None,
        reply_to: int | None = None,
        quote: str | None = None,
    ) -> Json:
        """Write a message, perhaps as a reply to another or to a piece of it."""
        kept, entities = clean(
            text, None, longest=limits.TEXT, empty="message text is empty", too_long="message is too long"
        )
        content: Json = {"text": kept}
        if entities:
            content["entities"] = entities
        return self._write(chat, content, person, reply_to, quote)

    def start(self, chat: int, payload: str = "") -> Json:
        """Press Start, perhaps by a deep link with a payload; unblocks the bot as a phone does."""
        if payload and (len(payload) > limits.PAYLOAD_CHARACTERS or not _PAYLOAD.fullmatch(payload)):
            raise bad("a link's payload has 1 to 64 of A-Z a-z 0-9 _ -")
        if self._chat(chat).blocked:
            self.unblock(chat)
        return self.say(chat, f"/start {payload}".strip())

    def open_link(self, chat: int, link: str) -> Json:
        """Open a link of the form https://t.me/<bot>?start=<payload> on somebody's phone."""
        parts = urlsplit(link if "://" in link else f"https://{link}")
        if parts.hostname != "t.me" or parts.path.strip("/").lower() != self._world.bot["username"].lower():
            raise bad("this link does not lead to the bot")
        return self.start(chat, parse_qs(parts.query).get("start", [""])[0])

    def press(
        self,
        chat: int,
        message: int,
        data: str | None = None,
        *,
        place: tuple[int, int] | None = None,
        person: int | None = None,
        forgotten: bool = False,
    ) -> str:
        """Press the button with this callback data, or at this row and column; return the query's id.

        `forgotten` sends the message as the service does when it is too old to be looked up.
        """
        where = self._chat(chat)
        kept = where.messages.get(message)
        button = button_at(kept.body.get("reply_markup"), data=data, place=place) if kept else None
        if kept is None or button is None or "callback_data" not in button:
            raise bad("there is no such button")
        who = self._person(where, person)
        number = self._world.new_press(where, message)
        body = {"chat": where.head, "message_id": message, "date": 0} if forgotten else kept.body
        query = {
            "id": number,
            "from": who.as_user(),
            "message": body,
            "chat_instance": f"{where.id}",
            "data": button["callback_data"],
        }
        self._world.updates.add("callback_query", query, where.id)
        return number

    def edit(self, chat: int, message: int, text: str) -> Json:
        """Change a message that a person wrote; the bot hears of it as an edited_message."""
        where = self._chat(chat)
        kept = where.messages.get(message)
        if kept is None or kept.from_bot or not ({"text", "caption"} & kept.body.keys()):
            raise bad("only one's own words can be changed")
        if "text" in kept.body:
            words, entities = clean(
                text, None, longest=limits.TEXT, empty="message text is empty", too_long="message is too long"
            )
            fields: Json = {"text": words, "entities": entities or None}
        else:
            fields = {"caption": None, "caption_entities": None, **caption(text, None)}
        body = {name: value for name, value in (kept.body | fields).items() if value is not None}
        if body == kept.body:
            return body
        body["edit_date"] = int(self._world.now())
        kept.body = body
        self._world.touch(where, kept)
        self._tell(where, "edited_message", body)
        return body

    def send_photos(
        self,
        chat: int,
        pictures: Sequence[Upload],
        words: str = "",
        *,
        person: int | None = None,
        reply_to: int | None = None,
    ) -> list[Json]:
        """Send one picture, or several as an album; the words stand under the first."""
        if not pictures:
            raise bad("there is no picture")
        files = [media.take_upload(self._world, one, "photo") for one in pictures]
        album = {"media_group_id": self._world.new_album()} if len(files) > 1 else {}
        first = caption(words, None)
        return [
            self._write(
                chat, {**album, "photo": media.photo_sizes(file), **({} if n else first)}, person, reply_to
            )
            for n, file in enumerate(files)
        ]

    def send_document(
        self,
        chat: int,
        upload: Upload,
        words: str = "",
        *,
        person: int | None = None,
        reply_to: int | None = None,
    ) -> Json:
        """Send a file."""
        file = media.take_upload(self._world, upload, "document")
        content = {"document": media.document(file), **caption(words, None)}
        return self._write(chat, content, person, reply_to)

    def send_sticker(self, chat: int, *, person: int | None = None, reply_to: int | None = None) -> Json:
        """Send a sticker: a small drawn leaf."""
        file = media.take_upload(self._world, STICKER, "sticker")
        sticker = {
            "width": 512, "height": 512, "emoji": "🍃", "is_animated": False, "is_video": False,
            "type": "regular", "file_id": file.id, "file_unique_id": file.unique_id, "file_size": len(file.data),
        }  # fmt: skip
        return self._write(chat, {"sticker": sticker}, person, reply_to)

    def send_voice(self, chat: int, *, person: int | None = None, reply_to: int | None = None) -> Json:
        """Send a voice message: three seconds of nothing."""
        file = media.take_upload(self._world, VOICE, "voice")
        voice = {
            "duration": 3, "mime_type": file.mime, "file_id": file.id,
            "file_unique_id": file.unique_id, "file_size": len(file.data),
        }  # fmt: skip
        return self._write(chat, {"voice": voice}, person, reply_to)

    def block(self, chat: int) -> None:
        """Block the bot; it hears of it."""
        self._set_blocked(chat, True)

    def unblock(self, chat: int) -> None:
        """Let the bot write again; it hears of it."""
        self._set_blocked(chat, False)

    def _set_blocked(self, number: int, blocked: bool) -> None:
        chat = self._chat(number)
        if chat.is_group:
            raise bad("a group can't block the bot; take it out")
        if chat.blocked == blocked:
            return
        chat.blocked = blocked
        self._world.touch_chat(chat)
        before, after = ("member", "kicked") if blocked else ("kicked", "member")
        member_changed(self._world, chat, chat.people[0].as_user(), before, after)

    def add_bot(self, group: int, person: int | None = None) -> None:
        """Add the bot to a group; it hears of it twice, as the service tells it."""
        chat = self._chat(group)
        if not chat.is_group or chat.bot_in:
            raise bad("the bot is here already")
        who = self._person(chat, person).as_user()
        chat.bot_in = True
        self._world.touch_chat(chat)
        member_changed(self._world, chat, who, "left", "member")
        kept = self._world.post(chat, who, {"new_chat_members": [self._world.bot]}, from_bot=False)
        self._world.updates.add("message", kept.body, chat.id)

    def take_out_bot(self, group: int, person: int | None = None) -> None:
        """Take the bot out of a group."""
        chat = self._chat(group)
        if not chat.is_group or not chat.bot_in:
            raise bad("the bot is not here")
        who = self._person(chat, person).as_user()
        chat.bot_in = False
        self._world.post(chat, who, {"left_chat_member": self._world.bot}, from_bot=False)
        self._world.touch_chat(chat)
        member_changed(self._world, chat, who, "member", "left")

    def read(self, chat: int, up_to: int | None = None) -> None:
        """Look at a chat: everything up to a message counts as read."""
        where = self._chat(chat)
        seen = where.last_id if up_to is None else min(up_to, where.last_id)
        if seen <= where.read_up_to:
            return
        where.read_up_to = seen
        where.unread = sum(1 for n, one in where.messages.items() if n > seen and one.from_bot)
        self._world.touch_chat(where)

    def clear(self, chat: int) -> None:
        """Empty the page of a phone; the bot is not told, and its messages stay its own."""
        where = self._chat(chat)
        where.cleared_up_to = where.read_up_to = where.last_id
        where.unread = 0
        self._world.touch_chat(where)

    def _chat(self, number: int) -> Chat:
        chat = self._world.chats.get(number)
        if chat is None:
            raise bad("there is no such chat")
        return chat

    def _person(self, chat: Chat, person: int | None) -> Person:
        for one in chat.people:
            if person is None or one.id == person:
                return one
        raise bad("this person is not in the chat")

    def _write(
        self,
        number: int,
        content: Json,
        person: int | None,
        reply_to: int | None,
        quote: str | None = None,
    ) -> Json:
        chat = self._chat(number)
        if chat.blocked:
            raise bad("the bot is blocked here; unblock it first")
        if reply_to is not None:
            meant = chat.messages.get(reply_to)
            if meant is not None:  # a message that is gone leaves the reply without it
                content = {"reply_to_message": without_reply(meant), **content}
                if quote:
                    content["quote"] = quote_of(meant, quote)
        if not chat.started:
            chat.started = True
            self._world.touch_chat(chat)
        kept = self._world.post(chat, self._person(chat, person).as_user(), content, from_bot=False)
        self._tell(chat, "message", kept.body)
        return kept.body

    def _tell(self, chat: Chat, kind: str, body: Json) -> None:
        """Queue the update; in a group the bot hears commands, replies to it and its own name only."""
        if chat.is_group and not (chat.bot_in and self._concerns_bot(body)):
            return
        self._world.updates.add(kind, body, chat.id)

    def _concerns_bot(self, body: Json) -> bool:
        if body.get("reply_to_message", {}).get("from", {}).get("id") == self._world.bot["id"]:
            return True
        if f"@{self._world.bot['username']}" in str(body.get("text", body.get("caption", ""))):
            return True
        return any(one["type"] == "bot_command" for one in body.get("entities", ()))
