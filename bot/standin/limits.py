"""The service's published numbers: what a message, a button, a file may be.

Source where nothing else is said: the constants of python-telegram-bot 22.8, which restate the Bot API 10.0
(https://core.telegram.org/bots/api). Lengths are UTF-16 code units unless a name says bytes or characters.
"""

from __future__ import annotations

TEXT = 4096
CAPTION = 1024
ENTITIES = 100
QUOTE = 1024

CALLBACK_DATA_BYTES = 64
CALLBACK_ANSWER_CHARACTERS = 200
CALLBACK_SECONDS = 900  # from memory: how long a press may wait for its answer is not published
BUTTONS = 100
BUTTONS_A_ROW = 8
COPY_TEXT_CHARACTERS = 256
PLACEHOLDER_CHARACTERS = 64

PAYLOAD_CHARACTERS = 64  # https://core.telegram.org/bots/features#deep-linking

ALBUM = (2, 10)
UPLOAD_BYTES = 50_000_000
PHOTO_BYTES = 10_000_000
PHOTO_SIDES = 10_000  # width and height together; from memory of the page's sendPhoto
PHOTO_RATIO = 20
DOWNLOAD_BYTES = 20_971_520  # MAX_DOWNLOAD_FILE_SIZE in the server's published source, Client.h

COMMANDS = 100
COMMAND_CHARACTERS = 32
COMMAND_DESCRIPTION_CHARACTERS = 256
NAME_CHARACTERS = 64
DESCRIPTION_CHARACTERS = 512
SHORT_DESCRIPTION_CHARACTERS = 120

DELETE_HOURS = 48
DELETE_AT_ONCE = 100
UPDATE_HOURS = 24
UPDATES_AT_ONCE = 100
POLL_SECONDS = 50
ACTION_SECONDS = 5
SECRET_CHARACTERS = 256
CONNECTIONS = (1, 100)
CONNECTIONS_DEFAULT = 40

MESSAGES_A_SECOND = 30
CHAT_BURST = 5  # common practice, no source: how many may come together in one chat is not published
GROUP_MESSAGES_A_MINUTE = 20

UPDATE_KINDS = frozenset(
    {
        "message", "edited_message", "channel_post", "edited_channel_post", "business_connection",
        "business_message", "edited_business_message", "deleted_business_messages", "message_reaction",
        "message_reaction_count", "inline_query", "chosen_inline_result", "callback_query",
        "shipping_query", "pre_checkout_query", "purchased_paid_media", "poll", "poll_answer",
        "my_chat_member", "chat_member", "chat_join_request", "chat_boost", "removed_chat_boost",
        "guest_message", "managed_bot",
    }
)  # fmt: skip
UPDATE_KINDS_ON_REQUEST = frozenset({"chat_member", "message_reaction", "message_reaction_count"})

CHAT_ACTIONS = frozenset(
    {
        "typing", "upload_photo", "record_video", "upload_video", "record_voice", "upload_voice",
        "upload_document", "choose_sticker", "find_location", "record_video_note", "upload_video_note",
    }
)  # fmt: skip

ENTITY_KINDS = frozenset(
    {
        "mention", "hashtag", "cashtag", "bot_command", "url", "email", "phone_number", "bold", "italic",
        "underline", "strikethrough", "spoiler", "blockquote", "expandable_blockquote", "code", "pre",
        "text_link", "text_mention", "custom_emoji", "date_time",
    }
)  # fmt: skip
