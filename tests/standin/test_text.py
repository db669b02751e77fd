"""Lengths, entities and limits, checked against the client library's own."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from telegram import MessageEntity, constants

from bot.standin import limits
from bot.standin.refusal import Refusal
from bot.standin.text import clean, found, units

# The constants of python-telegram-bot 22.8 restate the Bot API 10.0, https://core.telegram.org/bots/api
PUBLISHED = [
    (limits.TEXT, constants.MessageLimit.MAX_TEXT_LENGTH),
    (limits.CAPTION, constants.MessageLimit.CAPTION_LENGTH),
    (limits.ENTITIES, constants.MessageLimit.MESSAGE_ENTITIES),
    (limits.CALLBACK_DATA_BYTES, constants.InlineKeyboardButtonLimit.MAX_CALLBACK_DATA),
    (limits.COPY_TEXT_CHARACTERS, constants.InlineKeyboardButtonLimit.MAX_COPY_TEXT),
    (limits.CALLBACK_ANSWER_CHARACTERS, constants.CallbackQueryLimit.ANSWER_CALLBACK_QUERY_TEXT_LENGTH),
    (limits.BUTTONS, constants.InlineKeyboardMarkupLimit.TOTAL_BUTTON_NUMBER),
    (limits.BUTTONS_A_ROW, constants.InlineKeyboardMarkupLimit.BUTTONS_PER_ROW),
    (limits.PLACEHOLDER_CHARACTERS, constants.ReplyLimit.MAX_INPUT_FIELD_PLACEHOLDER),
    (limits.PAYLOAD_CHARACTERS, constants.MessageLimit.DEEP_LINK_LENGTH),
    (limits.ALBUM[0], constants.MediaGroupLimit.MIN_MEDIA_LENGTH),
    (limits.ALBUM[1], constants.MediaGroupLimit.MAX_MEDIA_LENGTH),
    (limits.UPLOAD_BYTES, constants.FileSizeLimit.FILESIZE_UPLOAD),
    (limits.PHOTO_BYTES, constants.FileSizeLimit.PHOTOSIZE_UPLOAD),
    (limits.COMMANDS, constants.BotCommandLimit.MAX_COMMAND_NUMBER),
    (limits.COMMAND_CHARACTERS, constants.BotCommandLimit.MAX_COMMAND),
    (limits.COMMAND_DESCRIPTION_CHARACTERS, constants.BotCommandLimit.MAX_DESCRIPTION),
    (limits.NAME_CHARACTERS, constants.BotNameLimit.MAX_NAME_LENGTH),
    (limits.DESCRIPTION_CHARACTERS, constants.BotDescriptionLimit.MAX_DESCRIPTION_LENGTH),
    (limits.SHORT_DESCRIPTION_CHARACTERS, constants.BotDescriptionLimit.MAX_SHORT_DESCRIPTION_LENGTH),
    (limits.UPDATES_AT_ONCE, constants.PollingLimit.MAX_LIMIT),
    (limits.SECRET_CHARACTERS, constants.WebhookLimit.MAX_SECRET_TOKEN_LENGTH),
    (limits.CONNECTIONS[1], constants.WebhookLimit.MAX_CONNECTIONS_LIMIT),
    (limits.MESSAGES_A_SECOND, constants.FloodLimit.MESSAGES_PER_SECOND),
    (limits.GROUP_MESSAGES_A_MINUTE, constants.FloodLimit.MESSAGES_PER_MINUTE_PER_GROUP),
]
TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)


@pytest.mark.parametrize(("ours", "published"), PUBLISHED, ids=lambda value: str(value))
def test_limits_are_the_published_ones(ours: int, published: int) -> None:
    assert ours == int(published)


def test_kinds_are_the_published_ones() -> None:
    assert {kind.value for kind in constants.UpdateType} <= limits.UPDATE_KINDS | {
        "guest_message",
        "managed_bot",
    }
    assert {kind.value for kind in constants.ChatAction} == limits.CHAT_ACTIONS
    assert {kind.value for kind in constants.MessageEntityType} == limits.ENTITY_KINDS


@given(TEXTS)
def test_length_is_counted_as_the_library_counts(text: str) -> None:
    entity = MessageEntity("bold", 0, len(text))
    (adjusted,) = MessageEntity.adjust_message_entities_to_utf_16(text, [entity])
    assert units(text) == adjusted.length


@given(TEXTS, TEXTS, TEXTS)
def test_an_entity_keeps_its_words_whatever_is_trimmed(before: str, inside: str, after: str) -> None:
    text = before + inside + after
    entity = {"type": "bold", "offset": units(before), "length": units(inside)}
    kept, entities = clean(text, [entity], longest=4096, empty=None, too_long="")
    bold = [one for one in entities if one["type"] == "bold"]
    raw = kept.encode("utf-16-le")
    words = [raw[2 * one["offset"] : 2 * (one["offset"] + one["length"])].decode("utf-16-le") for one in bold]
    assert kept == text.strip()
    assert "".join(words).strip() == inside.strip() or not words


@given(TEXTS)
def test_what_is_found_is_found_again_in_the_cleaned_text(text: str) -> None:
    kept, entities = clean(text, None, longest=4096, empty=None, too_long="")
    assert entities == found(kept)
    assert clean(kept, None, longest=4096, empty=None, too_long="") == (kept, entities)


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("3/4 of 2/5", []),
        ("/start Ab3", ["bot_command"]),
        ("use /today, then /help@evensum_bot", ["bot_command", "bot_command"]),
        ("ask @tove_b or #ratio", ["mention", "hashtag"]),
        ("https://t.me/evensum_bot?start=x t.me/evensum_bot", ["url", "url"]),
        ("tove@example.org", ["email"]),
        ("a/b /c/d", []),
    ],
)
def test_only_what_the_service_would_find_is_found(text: str, kinds: list[str]) -> None:
    assert [one["type"] for one in found(text)] == kinds


def test_nothing_is_found_inside_code() -> None:
    code = {"type": "code", "offset": 0, "length": 6}
    assert clean("/today", [code], longest=99, empty=None, too_long="") == ("/today", [code])


def test_entities_beyond_a_hundred_are_left_out() -> None:
    many = [{"type": "bold", "offset": n, "length": 1} for n in range(150)]
    assert len(clean("x" * 150, many, longest=4096, empty=None, too_long="")[1]) == 100


@pytest.mark.parametrize(
    "entities", ["bold", [7], [{"type": "bold", "offset": "0", "length": 1}], [{"type": "bold"}]]
)
def test_entities_of_another_shape_are_refused(entities: object) -> None:
    with pytest.raises(Refusal, match="can't parse"):
        clean("x", entities, longest=4096, empty=None, too_long="")
