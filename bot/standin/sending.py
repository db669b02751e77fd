"""The methods that put something into a chat."""

from __future__ import annotations

from typing import Any

from bot.standin import limits, media
from bot.standin.keyboards import read_markup
from bot.standin.model import Chat, Json, Kept
from bot.standin.parameters import Parameters
from bot.standin.refusal import Refusal, bad, forbidden
from bot.standin.text import clean, units
from bot.standin.world import World

ALT = "evensum_alt"
"""A parameter of our own: what a picture shows, in words. The real service takes no notice of it."""


def chat_to_write(world: World, p: Parameters) -> Chat:
    """Return the chat that a request means, or refuse: unknown, blocked, never started, left."""
    chat = chat_meant(world, p)
    if chat.moved_to:
        raise Refusal(
            400,
            "Bad Request: group chat was upgraded to a supergroup chat",
            {"migrate_to_chat_id": chat.moved_to},
        )
    if chat.deactivated:
        raise forbidden("user is deactivated")
    if chat.blocked:
        raise forbidden("bot was blocked by the user")
    if not chat.started:
        if world.has_met(chat.id):
            raise forbidden("bot can't initiate conversation with a user")
        raise bad("chat not found")
    if not chat.bot_in:
        raise forbidden("bot is not a member of the group chat")
    return chat


def chat_meant(world: World, p: Parameters) -> Chat:
    """Return the chat of `chat_id`."""
    given = p.values.get("chat_id")
    if given is None or given == "":
        raise bad("chat_id is empty")
    try:
        chat = world.chats.get(int(given))
    except (TypeError, ValueError):
        chat = None
    if chat is None:
        raise bad("chat not found")
    return chat


def send_message(world: World, p: Parameters) -> Json:
    """sendMessage."""
    chat = chat_to_write(world, p)
    text, entities = message_text(p)
    content: Json = {**reply(chat, p), "text": text}
    if entities:
        content["entities"] = entities
    return _send(world, chat, p, content)


def message_text(p: Parameters) -> tuple[str, list[Json]]:
    """Return a message's text and entities, or refuse them."""
    no_markup(p)
    return clean(
        p.text("text"),
        p.data("entities"),
        longest=limits.TEXT,
        empty="message text is empty",
        too_long="message is too long",
    )


def caption(given: Any, entities: Any) -> Json:
    """Return caption and entities as a message carries them, nothing if there is no caption."""
    text, kept = clean(
        given or "", entities, longest=limits.CAPTION, empty=None, too_long="message caption is too long"
    )
    if not text:
        return {}
    return {"caption": text, "caption_entities": kept} if kept else {"caption": text}


def no_markup(p: Parameters) -> None:
    """Refuse a parse mode: texts here are sent with entities, and the stand-in reads no markup."""
    mode = p.text("parse_mode")
    if mode:
        raise bad("unsupported parse_mode")


def reply(chat: Chat, p: Parameters) -> Json:
    """Return the fields that tell to what a message replies."""
    wish = p.data("reply_parameters")
    if wish is None and p.whole("reply_to_message_id"):
        wish = {
            "message_id": p.whole("reply_to_message_id"),
            "allow_sending_without_reply": p.truth("allow_sending_without_reply"),
        }
    if wish is None:
        return {}
    if not isinstance(wish, dict) or type(wish.get("message_id")) is not int:
        raise bad("can't parse reply parameters: Can't find field \"message_id\"")
    meant = chat.messages.get(wish["message_id"])
    if meant is None:
        if wish.get("allow_sending_without_reply"):
            return {}
        raise bad("message to be replied not found")
    fields: Json = {"reply_to_message": without_reply(meant)}
    quote = wish.get("quote")
    if quote:
        fields["quote"] = quote_of(meant, quote)
    return fields


def quote_of(meant: Kept, quote: str) -> Json:
    """Return a quote of a message; it must be an exact piece of it."""
    whole = meant.body.get("text") or meant.body.get("caption") or ""
    place = whole.find(quote)
    if place < 0 or units(quote) > limits.QUOTE:
        raise bad("QUOTE_TEXT_INVALID")  # from memory
    return {"text": quote, "position": units(whole[:place]), "is_manual": True}


def without_reply(meant: Kept) -> Json:
    """Return a message as it stands inside a reply: without its own reply."""
    body = meant.body
    if "reply_to_message" not in body:
        return body
    return {name: value for name, value in body.items() if name != "reply_to_message"}


def _send(world: World, chat: Chat, p: Parameters, content: Json, alt: str = "") -> Json:
    """Add the buttons and post."""
    markup = read_markup(p.data("reply_markup"))
    if markup is not None:
        if "inline_keyboard" in markup:
            content["reply_markup"] = markup
        else:
            chat.keyboard = None if markup.get("remove_keyboard") else markup
            world.touch_chat(chat)
    if p.truth("protect_content"):
        content["has_protected_content"] = True
    return world.post(chat, world.bot, content, from_bot=True, alt=alt).body


def send_photo(world: World, p: Parameters) -> Json:
    """sendPhoto."""
    return _send_file(world, p, "photo")


def send_document(world: World, p: Parameters) -> Json:
    """sendDocument."""
    return _send_file(world, p, "document")


def _send_file(world: World, p: Parameters, kind: str) -> Json:
    chat = chat_to_write(world, p)
    no_markup(p)
    content = {**reply(chat, p), **caption(p.text("caption"), p.data("caption_entities"))}
    read_markup(p.data("reply_markup"))
    file = media.given_file(world, p, kind, p.values.get(kind), kind)
    content[kind] = media.photo_sizes(file) if kind == "photo" else media.document(file)
    return _send(world, chat, p, content, alt=p.text(ALT))


def send_media_group(world: World, p: Parameters) -> list[Json]:
    """sendMediaGroup: two to ten pictures, or documents, as messages with one media_group_id."""
    chat = chat_to_write(world, p)
    items = p.data("media")
    if not isinstance(items, list):
        raise bad("can't parse media: expected an Array of InputMedia")
    fewest, most = limits.ALBUM
    if len(items) < fewest or len(items) > most:
        raise bad("wrong number of messages specified" if items else "media must be non-empty")
    kinds = {item.get("type") if isinstance(item, dict) else None for item in items}
    if not kinds <= {"photo", "document"}:
        raise bad("can't parse InputMedia: type must be photo or document here")
    if len(kinds) > 1:
        raise bad("document can't be mixed with other media types")
    answering = reply(chat, p)
    made = [_album_item(world, p, item) for item in items]
    album = world.new_album()
    return [
        world.post(
            chat, world.bot, {"media_group_id": album, **answering, **content}, from_bot=True, alt=alt
        ).body
        for content, alt in made
    ]


def _album_item(world: World, p: Parameters, item: Json) -> tuple[Json, str]:
    if item.get("parse_mode"):
        raise bad("unsupported parse_mode")
    return media_of(world, p, item), str(item.get(ALT, ""))


def media_of(world: World, p: Parameters, item: Json) -> Json:
    """Return what an InputMedia puts into a message: the file and its caption."""
    kind = item.get("type")
    if kind not in ("photo", "document"):
        raise bad("can't parse InputMedia: type must be photo or document here")
    words = caption(item.get("caption"), item.get("caption_entities"))
    file = media.given_file(world, p, "", item.get("media"), kind)
    return {**words, kind: media.photo_sizes(file) if kind == "photo" else media.document(file)}


def send_chat_action(world: World, p: Parameters) -> bool:
    """sendChatAction: "writing ..." for five seconds or until the next message."""
    chat = chat_to_write(world, p)
    action = p.text("action").lower()
    if action not in limits.CHAT_ACTIONS:
        raise bad("wrong parameter action in request")
    world.changes.note("action", chat.id, data={"action": action, "seconds": limits.ACTION_SECONDS})
    return True
