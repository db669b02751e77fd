"""Typed text and a key in, a fair teacher's judgement out."""

from bot.answers.around import asks_for_help
from bot.answers.examples import examples
from bot.answers.judge import FORMS, judge, taught_form
from bot.answers.key import Judgement, Key, Misstep
from bot.answers.several import split_numbered
from bot.answers.working import Looked, first_wrong_line, look_over

__all__ = [
    "FORMS",
    "Judgement",
    "Key",
    "Looked",
    "Misstep",
    "examples",
    "first_wrong_line",
    "is_help",
    "judge",
    "look_over",
    "split_numbered",
    "taught_form",
]


def is_help(typed: str) -> bool:
    """Whether a message asks for help and holds no answer."""
    return asks_for_help(taught_form(typed[:4096]))
