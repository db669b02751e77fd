"""All that the stand-in knows: one bot, its chats, what was said, and who has yet to hear of it."""

from __future__ import annotations

import base64
from collections.abc import Iterable
from typing import Any

from bot.now import Clock
from bot.standin.changes import Changes
from bot.standin.journal import Journal
from bot.standin.model import Chat, Group, Json, Kept, Person, Press, StoredFile
from bot.standin.updates import Updates


class World:
    """The state. Everything that changes it also goes into the journal and the log of changes."""

    def __init__(
        self,
        clock: Clock,
        token: str,
        people: Iterable[Person],
        groups: Iterable[Group] = (),
        *,
        username: str = "evensum_bot",
        name: str = "Evensum",
        journal: Journal | None = None,
    ) -> None:
        self.clock = clock
        self.token = token
        self.journal = journal or Journal(None)
        self.changes = Changes()
        self.updates = Updates(self.now, self.journal)
        number = token.partition(":")[0]
        self.bot: Json = {
            "id": int(number) if number.isdecimal() else 1,
            "is_bot": True,
            "first_name": name,
            "username": username,
        }
        self.people: dict[int, Person] = {}
        self.chats: dict[int, Chat] = {}
        self.files: dict[str, StoredFile] = {}
        self.files_by_path: dict[str, StoredFile] = {}
        self.presses: dict[str, Press] = {}
        self.commands: dict[tuple[str, int, int, str], list[Json]] = {}
        """By scope, chat, user and language."""
        self.texts: dict[str, dict[str, str]] = {
            "name": {"": name},
            "description": {},
            "short_description": {},
        }
        """Name and descriptions of the bot, each by language."""
        self._last_press = 0
        self._last_album = 0
        for person in people:
            self.add_person(person)
        for group in groups:
            self.add_group(group)

    def now(self) -> float:
        """Return the present in seconds since 1970."""
        return self.clock.now().timestamp()

    def add_person(self, person: Person) -> Chat:
        """Add somebody with a phone; their chat with the bot is empty."""
        head: Json = {"id": person.id, "first_name": person.first_name, "type": "private"}
        if person.last_name:
            head["last_name"] = person.last_name
        if person.username:
            head["username"] = person.username
        chat = Chat(person.id, person.name, (person,), head, started=person.started)
        self.people[person.id] = person
        self.chats[person.id] = chat
        self.changes.note("chat", chat.id)
        if self.journal.on:
            self.journal.note("person", {name: getattr(person, name) for name in Person.__slots__})
        return chat

    def add_group(self, group: Group) -> Chat:
        """Add a group of people who are there already."""
        people = tuple(self.people[member] for member in group.members)
        kind = "supergroup" if group.id <= -1_000_000_000_000 else "group"
        head: Json = {"id": group.id, "title": group.title, "type": kind}
        chat = Chat(group.id, group.title, people, head, is_group=True, started=True, bot_in=group.bot_in)
        self.chats[group.id] = chat
        self.changes.note("chat", chat.id)
        return chat

    def post(
        self,
        chat: Chat,
        sender: Json,
        content: Json,
        *,
        from_bot: bool,
        alt: str = "",
    ) -> Kept:
        """Put a new message into a chat and return it."""
        chat.last_id += 1
        body: Json = {
            "message_id": chat.last_id,
            "from": sender,
            "chat": chat.head,
            "date": int(self.now()),
            **content,
        }
        kept = Kept(body, from_bot, alt)
        chat.messages[chat.last_id] = kept
        if from_bot:
            chat.unread += 1
        self.touch(chat, kept)
        return kept

    def touch(self, chat: Chat, kept: Kept) -> None:
        """Note that a message is new or was changed."""
        message = kept.body["message_id"]
        kept.revision = self.changes.note("message", chat.id, message)
        if self.journal.on:
            self.journal.note("message", [chat.id, kept.body, kept.from_bot, kept.alt])

    def remove(self, chat: Chat, message: int) -> None:
        """Delete a message for everybody."""
        del chat.messages[message]
        self.changes.note("gone", chat.id, message)
        self.journal.note("gone", [chat.id, message])

    def touch_chat(self, chat: Chat) -> None:
        """Note that a chat's own state was changed: started, blocked, read, cleared, keys."""
        self.changes.note("chat", chat.id)
        if self.journal.on:
            state = {name: getattr(chat, name) for name in CHAT_STATE}
            self.journal.note("chat", [chat.id, state])

    def keep_file(self, file: StoredFile) -> StoredFile:
        """Keep a file; it can be fetched by its id and by its path."""
        self.files[file.id] = file
        self.files_by_path[file.path] = file
        if self.journal.on:
            self.journal.note("file", {name: getattr(file, name) for name in StoredFile.__slots__})
        return file

    def keep_texts(self) -> None:
        """Note the bot's commands, name and descriptions as they are now."""
        self.changes.note("chat")
        if self.journal.on:
            self.journal.note("commands", [[list(key), listed] for key, listed in self.commands.items()])
            self.journal.note("texts", self.texts)

    def new_press(self, chat: Chat, message: int) -> str:
        """Note a button press and return the id of its query."""
        self._last_press += 1
        number = f"{self.bot['id']}{self._last_press:08d}"
        self.presses[number] = Press(chat.id, message, self.now())
        self.journal.note("press", [number, chat.id, message, self.now()])
        return number

    def new_album(self) -> str:
        """Return the id that the pictures of one album share."""
        self._last_album += 1
        return f"{13_000_000_000 + self._last_album}"

    def has_met(self, person: int) -> bool:
        """Say whether the bot shares a group with somebody: it then knows them but can't write first."""
        return any(
            chat.is_group and chat.bot_in and any(one.id == person for one in chat.people)
            for chat in self.chats.values()
        )

    def come_back(self) -> None:
        """Take up what the journal holds, and go on from there."""
        journal, self.journal = self.journal, Journal(None)
        for kind, data in journal.lines():
            self._take_up(kind, data)
        self.journal = journal

    def _take_up(self, kind: str, data: Any) -> None:
        match kind:
            case "message":
                number, body, from_bot, alt = data
                self._take_up_message(self.chats.get(number), Kept(body, from_bot, alt))
            case "gone" if data[0] in self.chats:
                self.chats[data[0]].messages.pop(data[1], None)
            case "chat" if data[0] in self.chats:
                for name, value in data[1].items():
                    setattr(self.chats[data[0]], name, value)
            case "file":
                self.keep_file(_file_from(data))
            case "press":
                self.presses[data[0]] = Press(*data[1:])
                self._last_press += 1
            case "person" if data["id"] not in self.people:
                self.add_person(Person(**data))
            case "commands":
                self.commands = {(s, c, u, l): listed for (s, c, u, l), listed in data}
            case "texts":
                self.texts = data
            case _:
                self.updates.take_up(kind, data)

    def _take_up_message(self, chat: Chat | None, kept: Kept) -> None:
        if chat is None:
            return
        number = kept.body["message_id"]
        is_new = number > chat.last_id
        chat.last_id = max(chat.last_id, number)
        chat.messages[number] = kept
        chat.unread += int(is_new and kept.from_bot)
        album = kept.body.get("media_group_id")
        if album:
            self._last_album = max(self._last_album, int(album) - 13_000_000_000)
        kept.revision = self.changes.note("message", chat.id, number)


CHAT_STATE = (
    "started", "blocked", "deactivated", "bot_in", "moved_to", "read_up_to", "cleared_up_to", "unread", "keyboard",
)  # fmt: skip


def _file_from(data: Json) -> StoredFile:
    return StoredFile(**{**data, "data": base64.b64decode(data["data"])})
