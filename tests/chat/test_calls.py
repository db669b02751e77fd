"""A rendered message becomes the right calls, over real HTTP; what can't be done any more holds up nothing."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from bot.chat.rendered import Button, Document, Drawing, Entity, Picture, Rendered
from bot.messages import Help
from bot.records import outbox
from bot.records.base import transaction
from bot.records.outbox import State

A, B = 1001, 1002
pytestmark = pytest.mark.sqlite_is_enough("test_side sends through the outbox of both; this is about calls")


def png(colour="white"):
    buffer = io.BytesIO()
    Image.new("RGB", (40, 30), colour).save(buffer, "PNG")
    return buffer.getvalue()


@pytest.fixture
def tell(open_house):
    """Send one rendered message after the other to a chat and give what stands there then."""

    class Told:
        def __init__(self, house):
            self.house = house
            self.n = 0

        async def __call__(self, *what, to=A):
            for one in what:
                self.n += 1
                rendered[str(self.n)] = one
                self.house.put(Help(to=to, key=str(self.n), role="student", topic=str(self.n)))
                await self.house.until(lambda: not self.states().keys() & {State.WAITING, State.SENDING})
            return [one for one in self.house.standin.messages(to) if one["from"]["is_bot"]]

        def states(self):
            with transaction(self.house.engine) as s:
                return outbox.count(s)

    rendered: dict[str, Rendered] = {}
    drawn: list[Drawing] = []

    async def draw(drawing):
        drawn.append(drawing)
        if drawing.recipe == "broken":
            raise LookupError("no such recipe")
        return png(str(drawing.data))

    saying = {"render": lambda message, language: rendered[message.topic], "draw": draw}
    Told.drawn = drawn
    return lambda: open_house(people=2, saying=saying), Told


@pytest.fixture
async def told(tell):
    opened, kind = tell
    async with opened() as house:
        yield kind(house)


async def test_text_goes_out_plain_with_its_marks_and_buttons(told):
    [one] = await told(
        Rendered(
            text="<b>2 × 🐝</b> see",
            entities=(Entity("bold", 0, 5), Entity("text_link", 13, 3, "https://example.org/")),
            buttons=((Button("Hint", "hint:7"), Button("Page", url="https://example.org/")),),
        )
    )
    assert one["text"] == "<b>2 × 🐝</b> see"
    assert [(e["type"], e["offset"], e["length"]) for e in one["entities"]] == [
        ("bold", 0, 5),
        ("text_link", 13, 3),
    ]
    row = one["reply_markup"]["inline_keyboard"][0]
    assert [(b["text"], b.get("callback_data"), b.get("url")) for b in row] == [
        ("Hint", "hint:7", None),
        ("Page", None, "https://example.org/"),
    ]


async def test_a_picture_carries_its_words_its_buttons_and_its_alternative_text(told):
    picture = Picture(Drawing("figure", "red"), "a red bar")
    [one] = await told(Rendered(text="card", pictures=(picture,), buttons=((Button("Go", "go:1"),),)))
    assert one["caption"] == "card" and one["photo"] and "reply_markup" in one
    kept = next(kept for kept in told.house.standin.world.chats[A].messages.values() if kept.from_bot)
    assert kept.alt == "a red bar"


async def test_words_too_long_for_a_caption_follow_the_picture(told):
    long = "x" * 1025
    messages = await told(Rendered(text=long, pictures=(Picture(png(), "white"),)))
    assert ["photo" in messages[0], messages[1]["text"]] == [True, long]


async def test_a_drawing_is_made_and_uploaded_once(told):
    card = Rendered(text="card", pictures=(Picture(Drawing("figure", "blue"), "blue"),))
    await told(card, card)
    other = await told(card, to=B)
    assert len(told.drawn) == 1
    assert other[0]["photo"][-1]["file_id"]


async def test_several_pictures_are_one_album_and_the_words_follow(told):
    pictures = tuple(Picture(png(colour), colour) for colour in ("red", "blue"))
    messages = await told(Rendered(text="both", pictures=pictures))
    assert [one.get("media_group_id") is not None for one in messages] == [True, True, False]
    assert messages[2]["text"] == "both"


async def test_a_file_keeps_its_name(told):
    [one] = await told(Rendered(text="sheet", documents=(Document("sheet.pdf", b"%PDF-1.4 x"),)))
    assert (one["document"]["file_name"], one["caption"]) == ("sheet.pdf", "sheet")


async def test_a_picture_that_cannot_be_made_is_left_out_and_told_in_words(told):
    broken = Picture(Drawing("broken", ""), "a red bar")
    [one] = await told(Rendered(text="What now?", pictures=(broken,), missing="No picture just now."))
    assert one["text"] == "What now?\n\nNo picture just now.\n\na red bar"


async def test_a_file_that_cannot_be_made_is_not_announced_as_if_it_were_there(told):
    broken = Document("sheet.pdf", Drawing("broken", ""))
    [one] = await told(Rendered(text="The sheet.", documents=(broken,), missing="No file just now."))
    assert one["text"] == "The sheet.\n\nNo file just now." and "document" not in one


async def test_words_that_are_told_already_are_not_told_twice_and_no_message_grows_too_long(told):
    broken = Picture(Drawing("broken", ""), "said")
    said = await told(Rendered(text="said", pictures=(broken,)))
    assert [one["text"] for one in said] == ["said"]
    said = await told(Rendered(text="x" * 4095, pictures=(broken,), missing="No picture just now."))
    assert "x" * 4095 in [one["text"] for one in said]


async def test_a_message_is_changed_in_place_or_sent_anew_if_it_is_gone(told):
    [first] = await told(Rendered(text="one"))
    changed = await told(Rendered(text="two", replace=first["message_id"]))
    assert [(one["message_id"], one["text"]) for one in changed] == [(first["message_id"], "two")]
    same = await told(Rendered(text="two", replace=first["message_id"]))
    assert same == changed
    anew = await told(Rendered(text="three", replace=999_999))
    assert [one["text"] for one in anew] == ["two", "three"]
    assert told.states() == {State.SENT: 4}


async def test_earlier_messages_are_taken_away_or_lose_their_buttons(told):
    hint = ((Button("Hint", "hint:1"),),)
    first, second, third = await told(*(Rendered(text=word, buttons=hint) for word in ("a", "b", "c")))
    gone = (first["message_id"], 999_999)
    left = await told(Rendered(delete=gone, strip=(second["message_id"], 999_998)))
    assert [(one["text"], "reply_markup" in one) for one in left] == [("b", False), ("c", True)]
    assert third["message_id"] == left[-1]["message_id"]


async def test_a_reply_to_a_message_that_is_gone_still_arrives(told):
    mine = told.house.standin.phones.say(A, "mine")
    await told.house.until(lambda: told.states())
    rendered = Rendered(text="yours", reply_to=mine["message_id"])
    *_, one = await told(rendered, Rendered(text="none", reply_to=999_999))
    answers = [m for m in await told() if m.get("text") in ("yours", "none")]
    assert answers[0]["reply_to_message"]["message_id"] == mine["message_id"]
    assert "reply_to_message" not in answers[1] and one["text"] == "none"


async def test_a_chat_is_offered_its_own_commands_and_loses_them(told):
    await told(Rendered(commands=(("today", "What today holds"),)))
    standin = told.house.standin
    offered = [listed for (scope, chat, *_), listed in standin.world.commands.items() if chat == A]
    assert offered == [[{"command": "today", "description": "What today holds"}]]
    await told(Rendered(commands=()))
    assert not [
        listed for (scope, chat, *_), listed in standin.world.commands.items() if chat == A and listed
    ]
