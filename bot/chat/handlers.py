"""An update becomes what happened, and what happened goes to the desk; nothing is decided here."""

from __future__ import annotations

import logging
from typing import Any

from telegram import CallbackQuery, Message, Update
from telegram.constants import ChatType
from telegram.error import TelegramError
from telegram.ext import (
    Application,
    CallbackContext,
    CallbackQueryHandler,
    ChatMemberHandler,
    ExtBot,
    MessageHandler,
    TypeHandler,
    filters,
)

from bot.chat.desk import Desk, Ignored
from bot.happened import Command, Edited, InGroup, Left, Pressed, SentFile, Typed
from bot.now import Clock
from bot.vocabulary import ChatId

log = logging.getLogger(__name__)


class Parts:
    """What handlers may use; the application's `bot_data`. No state of a conversation is kept here."""

    desk: Desk
    clock: Clock


class Context(CallbackContext[ExtBot[None], dict[Any, Any], dict[Any, Any], Parts]):
    """The context of our handlers."""

    @property
    def desk(self) -> Desk:
        """Where what happened is taken."""
        return self.bot_data.desk

    @property
    def clock(self) -> Clock:
        """What time it is; a press has no date of the service's."""
        return self.bot_data.clock


Chat = Application[Any, Context, dict[Any, Any], dict[Any, Any], Parts, Any]


def add_handlers(application: Chat) -> None:
    """Register one handler for each kind of thing that can happen, and one for all else."""
    alone = filters.ChatType.PRIVATE
    new = filters.UpdateType.MESSAGE
    for handler in (
        CallbackQueryHandler(pressed),
        MessageHandler(~alone, in_group),
        MessageHandler(filters.UpdateType.EDITED_MESSAGE, edited),
        MessageHandler(new & filters.COMMAND, command),
        MessageHandler(new & filters.TEXT, typed),
        MessageHandler(new & ~filters.StatusUpdate.ALL, sent_file),
        ChatMemberHandler(left, ChatMemberHandler.MY_CHAT_MEMBER),
        TypeHandler(Update, ignored),
    ):
        application.add_handler(handler)
    application.add_error_handler(failed)


async def typed(update: Update, context: Context) -> None:
    """Pass on what somebody typed; reading and grading it is the use case's business."""
    message = _message(update)
    what = Typed(
        update.update_id,
        ChatId(message.chat_id),
        message.text or "",
        message.date,
        message.message_id,
        _replying_to(message),
    )
    await context.desk.handle(what)


async def command(update: Update, context: Context) -> None:
    """Pass on a command: `/name rest`, or `/name@bot rest`."""
    message = _message(update)
    word, _, rest = (message.text or "").partition(" ")
    name = word.removeprefix("/").partition("@")[0].lower()
    what = Command(
        update.update_id, ChatId(message.chat_id), name, rest.strip(), message.date, message.message_id
    )
    await context.desk.handle(what)


async def pressed(update: Update, context: Context) -> None:
    """Stop the button's progress bar, then pass on what was pressed."""
    query = update.callback_query
    assert query is not None
    context.application.create_task(_answer(query), update=update)
    if query.message is None:  # from a message sent through another bot's inline mode; never ours
        await ignored(update, context)
        return
    verb, _, ref = (query.data or "").partition(":")
    chat = ChatId(query.message.chat.id)
    what = Pressed(update.update_id, chat, verb, ref, context.clock.now(), query.message.message_id)
    await context.desk.handle(what)


async def _answer(query: CallbackQuery) -> None:
    try:
        await query.answer()
    except TelegramError as error:  # too old, or the service is away: the press counts all the same
        log.info("a press could not be answered: %s", type(error).__name__)


async def edited(update: Update, context: Context) -> None:
    """Pass on that a text was changed."""
    message = _message(update)
    at = message.edit_date or message.date
    what = Edited(update.update_id, ChatId(message.chat_id), message.text or "", at, message.message_id)
    await context.desk.handle(what)


async def sent_file(update: Update, context: Context) -> None:
    """Pass on a photo, a document, a voice message, a sticker or whatever else isn't text."""
    message = _message(update)
    kind, file = _file_of(message)
    what = SentFile(
        update.update_id,
        ChatId(message.chat_id),
        kind,
        message.date,
        message.message_id,
        _replying_to(message),
        getattr(file, "file_id", ""),
        getattr(file, "file_size", None) or 0,
        getattr(file, "file_name", None) or "",
        message.media_group_id or "",
        message.caption or "",
    )
    await context.desk.handle(what)


def _file_of(message: Message) -> tuple[str, object]:
    if message.photo:
        return "photo", message.photo[-1]  # the last is the largest
    for kind in ("document", "voice", "sticker"):
        file = getattr(message, kind)
        if file:
            return kind, file
    return "other", None


async def left(update: Update, context: Context) -> None:
    """Pass on that somebody blocked the bot or took the block away, or that a group took the bot in."""
    change = update.my_chat_member
    assert change is not None
    status = change.new_chat_member.status
    gone = status in ("kicked", "left")
    if change.chat.type != ChatType.PRIVATE:
        if gone:
            await ignored(update, context)
            return
        await context.desk.handle(InGroup(update.update_id, ChatId(change.chat.id), change.date))
        return
    await context.desk.handle(Left(update.update_id, ChatId(change.chat.id), change.date, back=not gone))


async def in_group(update: Update, context: Context) -> None:
    """Pass on that somebody wrote in a group, where the bot has no business."""
    message = _message(update)
    if message.left_chat_member or message.edit_date:
        await ignored(update, context)
        return
    await context.desk.handle(InGroup(update.update_id, ChatId(message.chat_id), message.date))


async def ignored(update: Update, context: Context) -> None:
    """Mark an update done that means nothing to us, so that its chat doesn't wait for it."""
    chat = update.effective_chat.id if update.effective_chat else 0
    await context.desk.handle(Ignored(update.update_id, ChatId(chat)))


async def failed(update: object, context: Context) -> None:
    """A handler itself failed: set the update aside, so that its chat goes on."""
    assert context.error is not None
    if isinstance(update, Update):
        await context.desk.set_aside(update.update_id, context.error)


def _message(update: Update) -> Message:
    message = update.effective_message
    assert message is not None
    return message


def _replying_to(message: Message) -> int | None:
    return message.reply_to_message.message_id if message.reply_to_message else None
