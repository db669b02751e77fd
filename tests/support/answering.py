"""What a student would type or press for an item, right or not, from the item's own key."""

from __future__ import annotations

from bot.answers import judge
from bot.course.item import plain_text
from bot.records.days import Sent
from bot.vocabulary import Verdict


def right_choice(sent: Sent) -> int:
    """The number of the right button."""
    for n, choice in enumerate(sent.item.choices):
        if judge(plain_text(choice), sent.item.key).verdict is Verdict.RIGHT:
            return n
    raise AssertionError(f"no choice of {sent.template} is right")


def right_text(sent: Sent) -> str:
    """The key as a student would type it, with its unit."""
    unit = f" {sent.item.key.unit}" if sent.item.key.unit else ""
    return f"{sent.item.key.answer.split('|')[0]}{unit}"


def wrong_text(sent: Sent) -> str:
    """The first misstep's answer, as a student would type it."""
    for misstep in sent.item.key.missteps:
        text = plain_text(misstep.answer)
        if judge(text, sent.item.key).verdict is Verdict.WRONG:
            return text
    return "123454321"
