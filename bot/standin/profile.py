"""The methods about the bot itself and about chats: who it is, its commands and descriptions."""

from __future__ import annotations

import re
from typing import Any

from bot.standin import limits
from bot.standin.model import Chat, Json
from bot.standin.parameters import Parameters
from bot.standin.refusal import bad, forbidden
from bot.standin.sending import chat_meant
from bot.standin.world import World

_COMMAND = re.compile(r"[a-z0-9_]+")
_SCOPES = frozenset(
    {
        "default", "all_private_chats", "all_group_chats", "all_chat_administrators", "chat",
        "chat_administrators", "chat_member",
    }
)  # fmt: skip
Key = tuple[str, int, int, str]


def get_me(world: World, p: Parameters) -> Json:
    """getMe."""
    return {
        **world.bot,
        "first_name": world.texts["name"].get("", world.bot["first_name"]),
        "can_join_groups": True,
        "can_read_all_group_messages": False,
        "supports_inline_queries": False,
        "can_connect_to_business": False,
        "has_main_web_app": False,
    }


def set_my_commands(world: World, p: Parameters) -> bool:
    """setMyCommands for one scope and language."""
    listed = p.data("commands")
    if not isinstance(listed, list):
        raise bad("can't parse commands: expected an Array of BotCommand")
    if len(listed) > limits.COMMANDS:
        raise bad("BOT_COMMANDS_TOO_MUCH")
    key = _scope(world, p)
    checked = [_command(one) for one in listed]
    if checked:
        world.commands[key] = checked
    else:
        world.commands.pop(key, None)
    world.keep_texts()
    return True


def get_my_commands(world: World, p: Parameters) -> list[Json]:
    """getMyCommands of exactly one scope and language."""
    return world.commands.get(_scope(world, p), [])


def delete_my_commands(world: World, p: Parameters) -> bool:
    """deleteMyCommands of one scope and language; the next wider scope shows then."""
    world.commands.pop(_scope(world, p), None)
    world.keep_texts()
    return True


def _command(one: Any) -> Json:
    if not isinstance(one, dict) or not isinstance(one.get("command"), str):
        raise bad("can't parse BotCommand: Can't find field \"command\"")
    name = one["command"].removeprefix("/").lower()
    description = str(one.get("description") or "").strip()
    if not 1 <= len(name) <= limits.COMMAND_CHARACTERS or not _COMMAND.fullmatch(name):
        raise bad("BOT_COMMAND_INVALID")
    if not 1 <= len(description) <= limits.COMMAND_DESCRIPTION_CHARACTERS:
        raise bad("BOT_COMMAND_DESCRIPTION_INVALID")
    return {"command": name, "description": description}


def _scope(world: World, p: Parameters) -> Key:
    scope = p.data("scope") or {"type": "default"}
    kind = scope.get("type") if isinstance(scope, dict) else None
    if kind not in _SCOPES:
        raise bad("can't parse BotCommandScope: Unsupported type specified")
    chat = user = 0
    if kind in ("chat", "chat_administrators", "chat_member"):
        chat = chat_meant(world, Parameters({"chat_id": scope.get("chat_id")})).id
    if kind == "chat_member":
        user = int(scope.get("user_id") or 0)
    return kind, chat, user, _language(p)


def _language(p: Parameters) -> str:
    language = p.text("language_code")
    if language and not re.fullmatch("[a-z]{2}", language):
        raise bad("LANG_CODE_INVALID")
    return language


def commands_shown(world: World, chat: Chat, language: str) -> list[Json]:
    """Return the commands a chat shows: those of the narrowest scope that has any."""
    wide = "all_group_chats" if chat.is_group else "all_private_chats"
    for kind, number in (("chat", chat.id), (wide, 0), ("default", 0)):
        for spoken in (language, ""):
            listed = world.commands.get((kind, number, 0, spoken))
            if listed:
                return listed
    return []


def text_setter(field: str, parameter: str, longest: int) -> Any:
    """Return the method that sets one of the bot's own texts for a language."""

    def method(world: World, p: Parameters) -> bool:
        text = p.text(parameter)
        if len(text) > longest:
            raise bad(f"{parameter.upper()}_TOO_LONG")
        if text:
            world.texts[field][_language(p)] = text
        else:
            world.texts[field].pop(_language(p), None)
        world.keep_texts()
        return True

    return method


def text_getter(field: str, parameter: str) -> Any:
    """Return the method that gives one of the bot's own texts for a language."""

    def method(world: World, p: Parameters) -> Json:
        texts = world.texts[field]
        return {parameter: texts.get(_language(p), texts.get("", ""))}

    return method


def get_chat(world: World, p: Parameters) -> Json:
    """getChat: the chat in full, as far as the stand-in has anything to tell."""
    chat = chat_meant(world, p)
    if not chat.started:
        raise bad("chat not found")
    if not chat.bot_in:
        raise forbidden("bot is not a member of the group chat")
    full = {**chat.head, "accent_color_id": chat.id % 7, "max_reaction_count": 11}
    full["accepted_gift_types"] = dict.fromkeys(
        ("unlimited_gifts", "limited_gifts", "unique_gifts", "premium_subscription", "gifts_from_channels"),
        False,
    )
    if chat.is_group:
        full["permissions"] = {"can_send_messages": True}
    return full


def get_chat_member(world: World, p: Parameters) -> Json:
    """getChatMember."""
    chat = chat_meant(world, p)
    user = p.whole("user_id")
    if user == world.bot["id"]:
        return {"user": world.bot, "status": "member" if chat.bot_in else "left"}
    for person in chat.people:
        if person.id == user:
            return {"user": person.as_user(), "status": "member"}
    raise bad("member not found")


def get_chat_member_count(world: World, p: Parameters) -> int:
    """getChatMemberCount."""
    chat = chat_meant(world, p)
    return len(chat.people) + int(chat.bot_in)


def leave_chat(world: World, p: Parameters) -> bool:
    """leaveChat: the bot goes out of a group."""
    chat = chat_meant(world, p)
    if not chat.is_group:
        raise bad("chat member status can't be changed in private chats")
    if not chat.bot_in:
        raise forbidden("bot is not a member of the group chat")
    world.post(chat, world.bot, {"left_chat_member": world.bot}, from_bot=True)
    chat.bot_in = False
    world.touch_chat(chat)
    member_changed(world, chat, world.bot, "member", "left")
    return True


def member_changed(world: World, chat: Chat, by: Json, before: str, after: str) -> None:
    """Queue the update that tells the bot of its own standing in a chat: blocked, added, left."""

    def standing(status: str) -> Json:
        return {"user": world.bot, "status": status, **({"until_date": 0} if status == "kicked" else {})}

    world.updates.add(
        "my_chat_member",
        {
            "chat": chat.head,
            "from": by,
            "date": int(world.now()),
            "old_chat_member": standing(before),
            "new_chat_member": standing(after),
        },
        chat.id,
    )
