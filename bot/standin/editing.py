"""The methods that change or delete what stands in a chat, and the one that answers a press."""

from __future__ import annotations

from typing import Any

from bot.standin import limits
from bot.standin.keyboards import read_markup
from bot.standin.model import Chat, Json, Kept
from bot.standin.parameters import Parameters
from bot.standin.refusal import bad
from bot.standin.sending import ALT, caption, chat_to_write, media_of, message_text, no_markup
from bot.standin.world import World

_SAME = (
    "message is not modified: specified new message content and reply markup are exactly the same as a "
    "current content and reply markup of the message"
)
_TOO_OLD = "query is too old and response timeout expired or query ID is invalid"


def edit_message_text(world: World, p: Parameters) -> Json:
    """editMessageText."""
    chat, kept = _meant(world, p)
    text, entities = message_text(p)
    if "text" not in kept.body:
        raise bad("there is no text in the message to edit")
    return _change(world, chat, kept, p, {"text": text, "entities": entities or None})


def edit_message_caption(world: World, p: Parameters) -> Json:
    """editMessageCaption; without a caption the old one goes."""
    chat, kept = _meant(world, p)
    no_markup(p)
    words = caption(p.text("caption"), p.data("caption_entities"))
    if "photo" not in kept.body and "document" not in kept.body:
        raise bad("there is no caption in the message to edit")
    fields = {"caption": words.get("caption"), "caption_entities": words.get("caption_entities")}
    return _change(world, chat, kept, p, fields)


def edit_message_reply_markup(world: World, p: Parameters) -> Json:
    """editMessageReplyMarkup; without buttons the old ones go."""
    chat, kept = _meant(world, p)
    return _change(world, chat, kept, p, {})


def edit_message_media(world: World, p: Parameters) -> Json:
    """editMessageMedia: another picture or document, with its caption."""
    chat, kept = _meant(world, p)
    item = p.data("media")
    if not isinstance(item, dict):
        raise bad("can't parse InputMedia: expected an Object")
    fields: Json = {"text": None, "entities": None, "photo": None, "document": None}
    fields |= {"caption": None, "caption_entities": None} | media_of(world, p, item)
    kept.alt = p.text(ALT) or str(item.get(ALT, ""))
    return _change(world, chat, kept, p, fields)


def _meant(world: World, p: Parameters) -> tuple[Chat, Kept]:
    """Return the bot's own message that is to be edited."""
    if p.text("inline_message_id"):
        raise bad("MESSAGE_ID_INVALID")
    chat = chat_to_write(world, p)
    kept = chat.messages.get(p.whole("message_id", 0) or 0)
    if kept is None:
        raise bad("message to edit not found")
    if not kept.from_bot:
        raise bad("message can't be edited")
    return chat, kept


def _change(world: World, chat: Chat, kept: Kept, p: Parameters, fields: Json) -> Json:
    """Lay fields over a message (None takes one away) or refuse what changes nothing.

    The body is made anew: updates and replies that hold the old one keep it.
    """
    markup = read_markup(p.data("reply_markup"))
    if markup is not None and "inline_keyboard" not in markup:
        raise bad("inline keyboard expected")
    fields = {**fields, "reply_markup": markup}
    body = {name: value for name, value in (kept.body | fields).items() if value is not None}
    if body == kept.body:
        raise bad(_SAME)
    body["edit_date"] = int(world.now())
    kept.body = body
    world.touch(chat, kept)
    return body


def delete_message(world: World, p: Parameters) -> bool:
    """deleteMessage: the bot's or, in a private chat, the person's, for 48 hours."""
    chat = chat_to_write(world, p)
    kept = chat.messages.get(p.whole("message_id", 0) or 0)
    if kept is None:
        raise bad("message to delete not found")
    if not _can_delete(world, chat, kept):
        raise bad("message can't be deleted for everyone")
    world.remove(chat, kept.body["message_id"])
    return True


def delete_messages(world: World, p: Parameters) -> bool:
    """deleteMessages: up to a hundred; those that are gone or too old are passed over."""
    chat = chat_to_write(world, p)
    numbers: Any = p.data("message_ids")
    if not isinstance(numbers, list) or not numbers:
        raise bad("message identifiers are not specified")
    if len(numbers) > limits.DELETE_AT_ONCE:
        raise bad("too many message identifiers specified")
    for number in numbers:
        kept = chat.messages.get(number)
        if kept is not None and _can_delete(world, chat, kept):
            world.remove(chat, number)
    return True


def _can_delete(world: World, chat: Chat, kept: Kept) -> bool:
    if chat.is_group and not kept.from_bot:
        return False  # the bot is no administrator here
    return world.now() - float(kept.body["date"]) < limits.DELETE_HOURS * 3600


def answer_callback_query(world: World, p: Parameters) -> bool:
    """answerCallbackQuery: ends the button's waiting, with a word or without."""
    number = p.text("callback_query_id")
    press = world.presses.get(number)
    if press is None or not 0 <= world.now() - press.at <= limits.CALLBACK_SECONDS:
        raise bad(_TOO_OLD)
    text = p.text("text")
    if len(text) > limits.CALLBACK_ANSWER_CHARACTERS:
        raise bad("MESSAGE_TOO_LONG")
    world.presses.pop(number)
    answer = {"query": number, "message": press.message, "text": text, "alert": p.truth("show_alert")}
    world.changes.note("answer", press.chat, press.message, answer)
    return True
