"""Each method as the client library calls it."""

from __future__ import annotations

import io
from datetime import UTC, datetime, timedelta

import aiohttp
import pytest
from PIL import Image
from telegram import (
    Bot,
    BotCommand,
    BotCommandScopeAllPrivateChats,
    BotCommandScopeChat,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InputMediaDocument,
    InputMediaPhoto,
    MessageEntity,
    ReplyParameters,
)
from telegram.error import BadRequest, Forbidden

from bot.now import DemoClock
from bot.standin import StandIn

WREN, TOVE, GROUP = 103, 102, -1001
TOKEN = "900000001:loopback-only"
GO = InlineKeyboardMarkup([[InlineKeyboardButton("Go", callback_data="go")]])
STOP = InlineKeyboardMarkup([[InlineKeyboardButton("Stop", callback_data="stop")]])


async def test_get_me_tells_who_the_bot_is(bot: Bot) -> None:
    assert (bot.id, bot.username, bot.first_name) == (900000001, "evensum_bot", "Evensum")


async def test_a_message_comes_back_with_its_entities_buttons_and_a_whole_second(bot: Bot) -> None:
    bold = MessageEntity("bold", 3, 5)
    sent = await bot.send_message(WREN, "😀 right", entities=[bold], reply_markup=GO)
    assert sent.text == "😀 right"
    assert sent.entities == (bold,)
    assert sent.parse_entity(bold) == "right"
    assert sent.reply_markup == GO
    assert sent.chat.id == WREN
    assert sent.from_user is not None and sent.from_user.id == bot.id
    assert sent.date.microsecond == 0


async def test_dates_come_from_the_clock_that_was_passed_in(bot: Bot, clock: DemoClock) -> None:
    clock.go_to(datetime(2027, 1, 4, 8, 0, tzinfo=UTC))
    sent = await bot.send_message(WREN, "x")
    assert timedelta(0) <= sent.date - datetime(2027, 1, 4, 8, 0, tzinfo=UTC) < timedelta(seconds=5)


async def test_message_ids_grow_by_one_in_each_chat_whoever_writes(bot: Bot, standin: StandIn) -> None:
    one = await bot.send_message(WREN, "x")
    typed = standin.phones.say(WREN, "y")
    two = await bot.send_message(WREN, "z")
    elsewhere = await bot.send_message(TOVE, "x")
    assert [one.message_id, typed["message_id"], two.message_id, elsewhere.message_id] == [1, 2, 3, 1]


async def test_white_space_at_the_ends_goes_and_entities_move_with_it(bot: Bot) -> None:
    sent = await bot.send_message(WREN, "  right \n", entities=[MessageEntity("bold", 2, 5)])
    assert (sent.text, sent.entities) == ("right", (MessageEntity("bold", 0, 5),))


async def test_links_and_commands_in_a_text_are_found(bot: Bot) -> None:
    sent = await bot.send_message(WREN, "Type /today or open https://example.org/a. 3/4 is no command")
    assert [(one.type, sent.parse_entity(one)) for one in sent.entities] == [
        ("bot_command", "/today"),
        ("url", "https://example.org/a."),
    ]


async def test_a_reply_carries_the_message_and_the_quote(bot: Bot, standin: StandIn) -> None:
    typed = standin.phones.say(WREN, "x = 4 or so")
    sent = await bot.send_message(
        WREN, "Yes", reply_parameters=ReplyParameters(typed["message_id"], quote="4 or so")
    )
    assert sent.reply_to_message is not None and sent.reply_to_message.text == "x = 4 or so"
    assert sent.quote is not None and (sent.quote.text, sent.quote.position) == ("4 or so", 4)


async def test_a_reply_to_what_is_gone_may_go_without_it(bot: Bot) -> None:
    sent = await bot.send_message(
        WREN, "Yes", reply_parameters=ReplyParameters(77, allow_sending_without_reply=True)
    )
    assert sent.reply_to_message is None


async def test_an_edited_text_keeps_its_id_and_loses_buttons_left_out(bot: Bot) -> None:
    sent = await bot.send_message(WREN, "one", reply_markup=GO)
    edited = await bot.edit_message_text("two", WREN, sent.message_id)
    assert not isinstance(edited, bool)
    assert (edited.message_id, edited.text, edited.reply_markup) == (sent.message_id, "two", None)
    assert edited.edit_date is not None


async def test_an_edit_that_changes_nothing_is_refused(bot: Bot) -> None:
    sent = await bot.send_message(WREN, "one", reply_markup=GO)
    with pytest.raises(BadRequest, match="Message is not modified"):
        await bot.edit_message_text("one", WREN, sent.message_id, reply_markup=GO)


async def test_a_persons_message_cannot_be_edited_by_the_bot(bot: Bot, standin: StandIn) -> None:
    typed = standin.phones.say(WREN, "x")
    with pytest.raises(BadRequest, match="Message can't be edited"):
        await bot.edit_message_text("y", WREN, typed["message_id"])


async def test_buttons_alone_are_edited(bot: Bot) -> None:
    sent = await bot.send_message(WREN, "one", reply_markup=GO)
    edited = await bot.edit_message_reply_markup(WREN, sent.message_id, reply_markup=STOP)
    assert not isinstance(edited, bool) and edited.reply_markup == STOP
    edited = await bot.edit_message_reply_markup(WREN, sent.message_id)
    assert not isinstance(edited, bool) and edited.reply_markup is None and edited.text == "one"


async def test_a_picture_is_sent_with_caption_buttons_and_words_for_those_who_do_not_see_it(
    bot: Bot, png: bytes, standin: StandIn
) -> None:
    sent = await bot.send_photo(
        WREN, png, caption="A row", reply_markup=GO, api_kwargs={"evensum_alt": "Eight sacks in a row"}
    )
    assert [(size.width, size.height) for size in sent.photo] == [(90, 45), (320, 160), (640, 320)]
    assert (sent.caption, sent.reply_markup) == ("A row", GO)
    assert standin.world.chats[WREN].messages[sent.message_id].alt == "Eight sacks in a row"


async def test_a_picture_can_be_fetched_in_each_of_its_sizes(bot: Bot, png: bytes) -> None:
    sent = await bot.send_photo(WREN, png)
    whole = await (await bot.get_file(sent.photo[-1].file_id)).download_as_bytearray()
    small = await (await bot.get_file(sent.photo[0].file_id)).download_as_bytearray()
    assert bytes(whole) == png
    assert Image.open(io.BytesIO(small)).size == (90, 45)


async def test_a_file_id_sends_the_file_again_without_an_upload(bot: Bot, png: bytes) -> None:
    first = await bot.send_photo(WREN, png)
    again = await bot.send_photo(TOVE, first.photo[-1].file_id)
    assert again.photo == first.photo


async def test_a_caption_is_edited_and_taken_away(bot: Bot, png: bytes) -> None:
    sent = await bot.send_photo(WREN, png, caption="one")
    edited = await bot.edit_message_caption(WREN, sent.message_id, caption="two")
    assert not isinstance(edited, bool) and edited.caption == "two"
    edited = await bot.edit_message_caption(WREN, sent.message_id)
    assert not isinstance(edited, bool) and edited.caption is None


async def test_media_is_replaced(bot: Bot, png: bytes) -> None:
    sent = await bot.send_photo(WREN, png, caption="one")
    edited = await bot.edit_message_media(
        InputMediaDocument(b"paper", filename="a.pdf", caption="two"), WREN, sent.message_id
    )
    assert not isinstance(edited, bool)
    assert edited.document is not None and edited.document.file_name == "a.pdf"
    assert (edited.photo, edited.caption) == ((), "two")


async def test_a_document_keeps_its_name_and_bytes(bot: Bot) -> None:
    sent = await bot.send_document(WREN, b"paper", filename="sheet.pdf", caption="On paper")
    assert sent.document is not None
    assert (sent.document.file_name, sent.document.mime_type, sent.document.file_size) == (
        "sheet.pdf",
        "application/pdf",
        5,
    )
    assert bytes(await (await bot.get_file(sent.document.file_id)).download_as_bytearray()) == b"paper"


async def test_an_album_is_several_messages_with_one_group_id(bot: Bot, png: bytes) -> None:
    sent = await bot.send_media_group(WREN, [InputMediaPhoto(png, caption="Both"), InputMediaPhoto(png)])
    assert [one.caption for one in sent] == ["Both", None]
    assert len({one.media_group_id for one in sent}) == 1 and sent[0].media_group_id


async def test_a_deleted_message_is_gone_for_everybody(bot: Bot, standin: StandIn) -> None:
    sent = await bot.send_message(WREN, "x")
    assert await bot.delete_message(WREN, sent.message_id)
    assert standin.messages(WREN) == []


async def test_nothing_older_than_48_hours_is_deleted(bot: Bot, clock: DemoClock, standin: StandIn) -> None:
    old = await bot.send_message(WREN, "x")
    clock.go_on(timedelta(hours=48, seconds=1))
    fresh = await bot.send_message(WREN, "y")
    with pytest.raises(BadRequest, match="Message can't be deleted"):
        await bot.delete_message(WREN, old.message_id)
    assert await bot.delete_messages(WREN, [old.message_id, fresh.message_id, 99])
    assert [one["text"] for one in standin.messages(WREN)] == ["x"]


async def test_a_chat_action_reaches_the_page(bot: Bot, standin: StandIn) -> None:
    before = standin.world.changes.revision
    assert await bot.send_chat_action(WREN, "typing")
    changed = standin.world.changes.since(before)
    assert changed is not None
    assert [(one.what, one.data) for one in changed] == [("action", {"action": "typing", "seconds": 5})]


async def test_commands_are_kept_by_scope_and_the_narrowest_is_shown(
    bot: Bot, web: aiohttp.ClientSession
) -> None:
    everyone, parents, wren = (BotCommand(name, "does it") for name in ("help", "digest", "today"))
    await bot.set_my_commands([everyone])
    await bot.set_my_commands([parents], scope=BotCommandScopeAllPrivateChats())
    await bot.set_my_commands([wren], scope=BotCommandScopeChat(WREN))
    assert await bot.get_my_commands(scope=BotCommandScopeChat(WREN)) == (wren,)
    assert await bot.get_my_commands() == (everyone,)

    async def shown() -> dict[int, str]:
        desk = await (await web.get("/phone/desk")).json()
        return {chat["id"]: chat["commands"][0]["command"] for chat in desk["chats"]}

    assert (await shown()) == {WREN: "today", TOVE: "digest", 109: "digest", GROUP: "help"}
    await bot.delete_my_commands(scope=BotCommandScopeChat(WREN))
    assert (await shown())[WREN] == "digest"


async def test_the_bots_own_texts_are_kept_by_language(bot: Bot) -> None:
    await bot.set_my_name("Evensum")
    await bot.set_my_description("Maths by message")
    await bot.set_my_description("Mates por mensaje", language_code="es")
    await bot.set_my_short_description("Maths")
    assert (await bot.get_my_name()).name == "Evensum"
    assert (await bot.get_my_description()).description == "Maths by message"
    assert (await bot.get_my_description("es")).description == "Mates por mensaje"
    assert (await bot.get_my_description("de")).description == "Maths by message"
    assert (await bot.get_my_short_description()).short_description == "Maths"


async def test_get_chat_tells_who_it_is(bot: Bot) -> None:
    tove, group = await bot.get_chat(TOVE), await bot.get_chat(GROUP)
    assert (tove.first_name, tove.last_name, tove.username, tove.type) == (
        "Tove",
        "Bramble",
        "tove_b",
        "private",
    )
    assert (group.title, group.type) == ("Mill Lane", "group")
    assert (await bot.get_chat_member(GROUP, WREN)).user.first_name == "Wren"
    assert await bot.get_chat_member_count(GROUP) == 3


async def test_a_group_that_was_left_hears_nothing_more(bot: Bot, standin: StandIn) -> None:
    assert await bot.leave_chat(GROUP)
    with pytest.raises(Forbidden, match="bot is not a member of the group chat"):
        await bot.send_message(GROUP, "x")
    (update,) = await bot.get_updates()
    assert update.my_chat_member is not None
    assert update.my_chat_member.new_chat_member.status == "left"


@pytest.mark.parametrize("how", ["query", "form", "multipart", "json"])
async def test_parameters_are_read_however_they_come(how: str, web: aiohttp.ClientSession) -> None:
    what = {"chat_id": str(WREN), "text": "1 + 1 & 2", "entities": '[{"type":"bold","offset":0,"length":1}]'}
    path = f"/bot{TOKEN}/SENDmessage"
    if how == "query":
        answer = await web.get(path, params=what)
    elif how == "form":
        answer = await web.post(path, data=what)
    elif how == "multipart":
        form = aiohttp.FormData(what, default_to_multipart=True)
        answer = await web.post(path, data=form)
    else:
        answer = await web.post(path, json=what)
    result = (await answer.json())["result"]
    assert (result["text"], result["entities"]) == ("1 + 1 & 2", [{"type": "bold", "offset": 0, "length": 1}])
