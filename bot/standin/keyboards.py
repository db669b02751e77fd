"""Buttons under a message: what the service accepts, and how it refuses the rest."""

from __future__ import annotations

from typing import Any

from bot.standin import limits
from bot.standin.model import Json
from bot.standin.refusal import bad

_ACTIONS = (
    "callback_data", "url", "copy_text", "web_app", "login_url", "switch_inline_query",
    "switch_inline_query_current_chat", "switch_inline_query_chosen_chat", "callback_game", "pay",
)  # fmt: skip


def read_markup(markup: Any) -> Json | None:
    """Return a checked reply_markup, or None if there is none or it says nothing."""
    if markup is None or markup == "":
        return None
    if not isinstance(markup, dict):
        raise bad("object expected as reply markup")
    if "inline_keyboard" in markup:
        return _inline(markup["inline_keyboard"])
    if "keyboard" in markup:
        return _keys(markup)
    if markup.get("remove_keyboard") or markup.get("force_reply"):
        _placeholder(markup)
        return markup
    return None


def _inline(rows: Any) -> Json | None:
    if not isinstance(rows, list):
        raise bad('field "inline_keyboard" of the InlineKeyboardMarkup must be an Array of Arrays')
    kept: list[list[Json]] = []
    for row in rows:
        if not isinstance(row, list):
            raise bad('field "inline_keyboard" of the InlineKeyboardMarkup must be an Array of Arrays')
        # What the service does with a row of nine is not published; to refuse it finds the fault.
        if len(row) > limits.BUTTONS_A_ROW:
            raise bad("reply markup is too long")
        if row:
            kept.append([_button(one) for one in row])
    if sum(map(len, kept)) > limits.BUTTONS:
        raise bad("reply markup is too long")
    return {"inline_keyboard": kept} if kept else None


def _button(button: Any) -> Json:
    fault = "can't parse inline keyboard button: "
    if not isinstance(button, dict):
        raise bad(fault + "expected an Object")
    text = button.get("text")
    if text is None:
        raise bad(fault + 'Can\'t find field "text"')
    if not isinstance(text, str):
        raise bad(fault + 'Field "text" must be of type String')
    if not text.strip():
        raise bad(fault + "button text must be non-empty")
    action = next((name for name in _ACTIONS if button.get(name) not in (None, "")), None)
    if action is None:
        raise bad(fault + "Text buttons are unallowed in the inline keyboard")
    data = button[action]
    if action == "callback_data" and (
        not isinstance(data, str) or len(data.encode()) > limits.CALLBACK_DATA_BYTES
    ):
        raise bad("BUTTON_DATA_INVALID")
    if action == "url" and not str(data).startswith(("http://", "https://", "tg://", "t.me/")):
        raise bad(f"inline keyboard button URL '{data}' is invalid: Unsupported URL protocol")
    if action == "copy_text":
        copied = data.get("text") if isinstance(data, dict) else None
        if not isinstance(copied, str) or not 1 <= len(copied) <= limits.COPY_TEXT_CHARACTERS:
            raise bad("BUTTON_COPY_TEXT_INVALID")
    return {"text": text, action: data}


def _keys(markup: Json) -> Json:
    rows = markup["keyboard"]
    if not isinstance(rows, list) or not all(isinstance(row, list) for row in rows):
        raise bad('field "keyboard" of the ReplyKeyboardMarkup must be an Array of Arrays')
    for row in rows:
        for key in row:
            text = key if isinstance(key, str) else key.get("text") if isinstance(key, dict) else None
            if not isinstance(text, str) or not text:
                raise bad("can't parse keyboard button: Can't find field \"text\"")
    _placeholder(markup)
    return markup


def _placeholder(markup: Json) -> None:
    shown = markup.get("input_field_placeholder")
    if shown is not None and not 1 <= len(str(shown)) <= limits.PLACEHOLDER_CHARACTERS:
        raise bad("input field placeholder is too long")


def button_at(
    markup: Json | None, *, data: str | None = None, place: tuple[int, int] | None = None
) -> Json | None:
    """Return the inline button with this callback data, or in this row and column, or None."""
    rows: list[list[Json]] = (markup or {}).get("inline_keyboard", [])
    for at_row, row in enumerate(rows):
        for at_column, button in enumerate(row):
            if place == (at_row, at_column) or (data is not None and button.get("callback_data") == data):
                return button
    return None
