"""Long polling: at least once, in order, confirmed by the next offset."""

from __future__ import annotations

import asyncio
from datetime import timedelta

import pytest
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup, Update
from telegram.error import Conflict
from telegram.ext import Application, CallbackQueryHandler, ContextTypes, MessageHandler, filters

from bot.now import DemoClock
from bot.standin import Served, StandIn, Upload

WREN, TOVE, GROUP = 103, 102, -1001


async def test_an_update_comes_again_until_it_is_confirmed(bot: Bot, standin: StandIn) -> None:
    for text in ("one", "two"):
        standin.phones.say(WREN, text)
    first = await bot.get_updates()
    assert await bot.get_updates() == first
    assert [one.update_id - first[0].update_id for one in first] == [0, 1]
    (left,) = await bot.get_updates(offset=first[0].update_id + 1)
    assert left.message is not None and left.message.text == "two"
    assert await bot.get_updates(offset=left.update_id + 1) == ()


async def test_a_negative_offset_keeps_the_last_and_forgets_those_before(bot: Bot, standin: StandIn) -> None:
    for text in ("one", "two", "three"):
        standin.phones.say(WREN, text)
    assert [one.message.text for one in await bot.get_updates(offset=-1) if one.message] == ["three"]
    assert len(await bot.get_updates()) == 1


async def test_a_long_poll_answers_as_soon_as_there_is_something(bot: Bot, standin: StandIn) -> None:
    waiting = asyncio.create_task(bot.get_updates(timeout=30))
    await asyncio.sleep(0.05)
    assert not waiting.done()
    standin.phones.say(WREN, "one")
    async with asyncio.timeout(60):
        assert len(await waiting) == 1


async def test_no_more_than_the_limit_comes_at_once(bot: Bot, standin: StandIn) -> None:
    for n in range(103):
        standin.phones.say(WREN, str(n))
    assert len(await bot.get_updates(limit=2)) == 2
    assert len(await bot.get_updates()) == 100


async def test_a_second_poll_ends_the_first_with_a_conflict(
    bot: Bot, served: Served, standin: StandIn
) -> None:
    first = asyncio.create_task(bot.get_updates(timeout=30))
    await asyncio.sleep(0.05)
    async with Bot(bot.token, base_url=served.base_url) as other:
        second = asyncio.create_task(other.get_updates(timeout=30))
        with pytest.raises(Conflict, match="terminated by other getUpdates request"):
            await first
        standin.phones.say(WREN, "one")
        assert len(await second) == 1


async def test_only_the_kinds_asked_for_are_queued_and_the_choice_is_remembered(
    bot: Bot, standin: StandIn
) -> None:
    standin.phones.say(WREN, "before")
    await bot.get_updates(allowed_updates=["callback_query"])
    standin.phones.say(WREN, "after")
    (left,) = await bot.get_updates()
    assert left.message is not None and left.message.text == "before"
    await bot.get_updates(allowed_updates=[])
    standin.phones.say(WREN, "again")
    assert len(await bot.get_updates()) == 2


async def test_what_waits_longer_than_a_day_is_dropped(bot: Bot, standin: StandIn, clock: DemoClock) -> None:
    standin.phones.say(WREN, "old")
    clock.go_on(timedelta(hours=24, seconds=2))
    standin.phones.say(WREN, "new")
    assert [one.message.text for one in await bot.get_updates() if one.message] == ["new"]


async def test_a_whole_application_hears_and_answers(served: Served, standin: StandIn) -> None:
    async def echo(update: Update, context: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.effective_message is not None
        await update.effective_message.reply_text(update.effective_message.text or "", do_quote=True)

    async def pressed(update: Update, context: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.callback_query is not None
        await update.callback_query.answer("Noted")
        await update.callback_query.edit_message_text(f"You chose {update.callback_query.data}")

    application = (
        Application.builder().token("900000001:loopback-only")
        .base_url(served.base_url).base_file_url(served.base_file_url).build()
    )  # fmt: skip
    application.add_handler(MessageHandler(filters.TEXT, echo))
    application.add_handler(CallbackQueryHandler(pressed))
    async with application:
        await application.start()
        assert application.updater is not None
        await application.updater.start_polling()
        typed = standin.phones.say(WREN, "3/4")
        answer = await standin.next_message(WREN, typed["message_id"])
        assert (answer["text"], answer["reply_to_message"]["text"]) == ("3/4", "3/4")

        keyboard = InlineKeyboardMarkup([[InlineKeyboardButton("Later", callback_data="later")]])
        asked = await application.bot.send_message(WREN, "Now?", reply_markup=keyboard)
        standin.phones.press(WREN, asked.message_id, "later")
        await standin.until(lambda: standin.messages(WREN)[-1]["text"] == "You chose later")
        await application.updater.stop()
        await application.stop()


async def test_a_persons_acts_arrive_as_the_library_knows_them(
    bot: Bot, standin: StandIn, picture: Upload
) -> None:
    phones = standin.phones
    typed = phones.start(WREN, "Ab3_x-9")
    phones.edit(WREN, typed["message_id"], "4")
    phones.send_photos(WREN, [picture], "my work")
    phones.send_photos(WREN, [picture, picture])
    phones.send_document(WREN, picture)
    phones.send_sticker(WREN)
    phones.send_voice(WREN)
    phones.block(WREN)
    phones.unblock(WREN)
    updates = await bot.get_updates()
    start, edited, photo, one, two, document, sticker, voice, blocked, unblocked = updates

    assert start.message is not None and start.message.text == "/start Ab3_x-9"
    assert [(e.type, e.length) for e in start.message.entities] == [("bot_command", 6)]
    assert edited.edited_message is not None and edited.edited_message.message_id == typed["message_id"]
    assert edited.edited_message.edit_date is not None
    assert photo.message is not None and photo.message.caption == "my work"
    assert bytes(await (await photo.message.photo[-1].get_file()).download_as_bytearray()) == picture.data
    assert one.message is not None and two.message is not None
    assert one.message.media_group_id == two.message.media_group_id is not None
    assert document.message is not None and document.message.document is not None
    assert sticker.message is not None and sticker.message.sticker is not None
    assert voice.message is not None and voice.message.voice is not None
    assert [
        update.my_chat_member.new_chat_member.status
        for update in (blocked, unblocked)
        if update.my_chat_member
    ] == ["kicked", "member"]


async def test_an_update_says_how_things_stood_when_it_happened(bot: Bot, standin: StandIn) -> None:
    typed = standin.phones.say(WREN, "22")
    standin.phones.edit(WREN, typed["message_id"], "23")
    first, second = await bot.get_updates()
    assert first.message is not None and first.message.text == "22"
    assert second.edited_message is not None and second.edited_message.text == "23"


async def test_a_reply_by_a_person_carries_the_message_without_its_own_reply(
    bot: Bot, standin: StandIn
) -> None:
    one = await bot.send_message(WREN, "one")
    two = standin.phones.say(WREN, "two", reply_to=one.message_id)
    standin.phones.say(WREN, "three", reply_to=two["message_id"], quote="tw")
    update = (await bot.get_updates())[-1]
    assert update.message is not None and update.message.reply_to_message is not None
    assert update.message.reply_to_message.text == "two"
    assert update.message.reply_to_message.reply_to_message is None
    assert update.message.quote is not None and update.message.quote.text == "tw"


async def test_a_press_on_a_message_too_old_to_look_up_names_only_chat_and_id(
    bot: Bot, standin: StandIn
) -> None:
    keyboard = InlineKeyboardMarkup([[InlineKeyboardButton("Go", callback_data="go")]])
    sent = await bot.send_message(WREN, "x", reply_markup=keyboard)
    standin.phones.press(WREN, sent.message_id, place=(0, 0), forgotten=True)
    (update,) = await bot.get_updates()
    assert update.callback_query is not None
    assert update.callback_query.message is not None
    assert not update.callback_query.message.is_accessible
    assert update.callback_query.message.message_id == sent.message_id


async def test_in_a_group_the_bot_hears_commands_and_replies_to_it_only(bot: Bot, standin: StandIn) -> None:
    sent = await bot.send_message(GROUP, "x")
    standin.phones.say(GROUP, "just talk", person=TOVE)
    standin.phones.say(GROUP, "/help", person=TOVE)
    standin.phones.say(GROUP, "to you", person=WREN, reply_to=sent.message_id)
    heard = await bot.get_updates()
    assert [one.message.text for one in heard if one.message] == ["/help", "to you"]
    assert [one.effective_user.first_name for one in heard if one.effective_user] == ["Tove", "Wren"]


async def test_being_added_to_a_group_is_told_twice(bot: Bot, standin: StandIn) -> None:
    standin.phones.take_out_bot(GROUP, TOVE)
    standin.phones.add_bot(GROUP, TOVE)
    out, back, message = await bot.get_updates()
    assert out.my_chat_member is not None and out.my_chat_member.new_chat_member.status == "left"
    assert back.my_chat_member is not None and back.my_chat_member.new_chat_member.status == "member"
    assert message.message is not None and message.message.new_chat_members[0].id == bot.id
