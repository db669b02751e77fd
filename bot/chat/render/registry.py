"""Which function renders which message, and the few shapes they share."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from bot.chat.rendered import Button, Drawing, Picture, Rendered
from bot.chat.words import Text, Words, join
from bot.messages import Message

M = TypeVar("M", bound=Message)
Says = Callable[[Words, Any], Rendered]

RENDERERS: dict[type[Message], Says] = {}
"""One function a message class."""


def renders(kind: type[M]) -> Callable[[Callable[[Words, M], Rendered]], Callable[[Words, M], Rendered]]:
    """Mark the function that renders a class."""

    def add(function: Callable[[Words, M], Rendered]) -> Callable[[Words, M], Rendered]:
        RENDERERS[kind] = function
        return function

    return add


def say(
    *texts: Text,
    buttons: list[list[Button]] | None = None,
    pictures: tuple[Picture, ...] = (),
    between: str = "\n\n",
    **rest: Any,
) -> Rendered:
    """A message of some paragraphs, with its buttons."""
    text = join(list(texts), between)
    rows = tuple(tuple(row) for row in buttons or [] if row)
    return Rendered(text=text.words(), entities=text.entities(), buttons=rows, pictures=pictures, **rest)


def button(words: Words, key: str, data: str, **holes: object) -> Button:
    """A button with a label from the catalogue."""
    return Button(words.label(key, **holes), data)


def figure_picture(figure: dict[str, Any] | None, alt: str) -> tuple[Picture, ...]:
    """A figure as a picture with its words."""
    return (Picture(Drawing("figure", figure), alt),) if figure else ()


def cut(label: str, most: int = 32) -> str:
    """A label cut to what a phone shows on a button."""
    return label if len(label) <= most else label[: most - 1].rstrip() + "…"
