"""Pieces that several messages share: the word on the answer before, questions, choices, steps."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.render.registry import button, cut
from bot.chat.rendered import Button
from bot.chat.typography import typographic
from bot.chat.words import Text, Words, bold, from_content, join, plain
from bot.course.item import plain_text
from bot.messages import Lead
from bot.vocabulary import ItemId, Part

ID_START = 40
"""So many letters of a lesson's id go into a button, which holds 64 bytes; no two lessons begin alike."""
VARIANTS = {"right": 3, "right-later": 2}
"""Wordings of one lead, by turns, so that it doesn't sound like a machine."""


def lead_text(words: Words, lead: Lead | None) -> Text:
    """A word on what was just answered; what was read only where it wasn't plain."""
    if lead is None:
        return Text()
    turn = lead.place % VARIANTS.get(lead.kind, 1)
    text = words(f"lead-{lead.kind}" + (f"-{turn + 1}" if turn else ""))
    return text + " " + words("read-as", read=bold(lead.read_as)) if lead.read_as else text


def choice_rows(item: ItemId, choices: Sequence[str]) -> list[list[Button]]:
    """Buttons of an item that is answered by choosing: short ones side by side, long ones one a row."""
    labels = [plain_text(typographic(choice)) for choice in choices]
    buttons = [Button(label, f"choose:{item}:{n}") for n, label in enumerate(labels)]
    widest = max((len(label) for label in labels), default=0)
    in_row = 1 if widest > 14 else 2 if widest > 8 else 4
    return [buttons[n : n + in_row] for n in range(0, len(buttons), in_row)]


def steps_text(steps: Sequence[tuple[str, str]], first: int = 1) -> Text:
    """Steps one a line: the maths, and the words on it."""
    lines = [
        plain(f"{n}. ") + join([bold(maths) if maths else Text(), from_content(because)], "  ")
        for n, (maths, because) in enumerate(steps, start=first)
    ]
    return join(lines, "\n")


def examples_text(examples: Sequence[str]) -> Text:
    """Examples of what can be typed, in slanted letters."""
    return join([plain(example).marked("italic") for example in examples], ",  ")


def answer_rows(
    words: Words, item: ItemId, *, part: Part | None = None, has_picture: bool = False, steps: bool = False
) -> list[list[Button]]:
    """The buttons under a question."""
    first = [button(words, "button-next-step", f"step:{item}")] if steps else []
    first.append(button(words, "button-hint", f"hint:{item}"))
    if part is Part.WARM_UP:
        first.append(button(words, "button-leave", f"leave:{item}"))
    elif part is not Part.GUIDED:
        first.append(button(words, "button-later", f"later:{item}"))
    second = [button(words, "button-about", f"about:{item}")]
    if has_picture:
        second.append(button(words, "button-in-words", f"words:{item}"))
    return [first, second]


def lesson_button(words: Words, lesson: str, title: str, item: ItemId | None = None) -> Button:
    """The button that opens a lesson's card."""
    ref = f"card:{item}" if item else f"lesson:{lesson[:ID_START]}"
    return Button(cut(words.label("button-card", title=title), 40), ref)
