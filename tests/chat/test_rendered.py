"""Messages that the service would refuse or cut are found before they are sent."""

from __future__ import annotations

import pytest
from telegram.constants import (
    InlineKeyboardButtonLimit,
    InlineKeyboardMarkupLimit,
    MediaGroupLimit,
    MessageLimit,
)

from bot.chat import rendered
from bot.chat.rendered import Button, Drawing, Entity, Picture, Rendered, faults, units


def test_our_limits_are_those_that_the_client_library_publishes():
    """python-telegram-bot 22.8, telegram.constants, which restates the Bot API's own page."""
    assert rendered.TEXT == MessageLimit.MAX_TEXT_LENGTH
    assert rendered.CAPTION == MessageLimit.CAPTION_LENGTH
    assert rendered.ENTITIES == MessageLimit.MESSAGE_ENTITIES
    assert rendered.BUTTON_DATA == InlineKeyboardButtonLimit.MAX_CALLBACK_DATA
    assert rendered.BUTTONS == InlineKeyboardMarkupLimit.TOTAL_BUTTON_NUMBER
    assert rendered.BUTTONS_IN_ROW == InlineKeyboardMarkupLimit.BUTTONS_PER_ROW
    assert rendered.ALBUM == MediaGroupLimit.MAX_MEDIA_LENGTH


@pytest.mark.parametrize(
    "good",
    [
        Rendered(text="x" * 4096),
        Rendered(text="🐝", entities=(Entity("bold", 0, 2),)),
        Rendered(text="x", buttons=((Button("y", "z" * 64),),)),
        Rendered(text="x", buttons=((Button("y", url="https://example.org"),),)),
        Rendered(delete=(1, 2)),
        Rendered(text="x" * 2000, pictures=(Picture(b"", "alt"),)),  # follows the picture
    ],
)
def test_what_is_within_the_limits_has_no_fault(good):
    assert faults(good) == []


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        (Rendered(text="🐝" * 2049), "4098 units"),
        (Rendered(text="x", entities=(Entity("bold", 0, 2),)), "outside the text"),
        (Rendered(text="x", entities=(Entity("bold", 0, 1),) * 101), "101 entities"),
        (Rendered(text="x", buttons=((Button("y", "é" * 33),),)), "over 64 bytes"),
        (Rendered(text="x", buttons=((Button("y"),),)), "either data or url"),
        (Rendered(text="x", buttons=((Button(" ", "a"),),)), "without a label"),
        (Rendered(text="x", buttons=((Button("y", "a"),) * 9,)), "9 buttons in a row"),
        (Rendered(text="x", buttons=((Button("y", "a"),) * 8,) * 13), "too many buttons"),
        (Rendered(buttons=((Button("y", "a"),),)), "without a message"),
        (Rendered(text="x", pictures=(Picture(b"", ""),) * 11), "more than 10 files"),
    ],
)
def test_what_is_beyond_a_limit_is_named(bad, says):
    assert says in " ".join(faults(bad))


def test_units_count_what_lies_beyond_the_basic_plane_twice():
    assert [units("a½🐝")] == [4]


def test_equal_drawings_have_equal_keys_whatever_the_order_of_their_data():
    one, other = Drawing("bar", {"a": 1, "b": 2}), Drawing("bar", {"b": 2, "a": 1})
    assert one.key == other.key != Drawing("bar", {"a": 1, "b": 3}).key
