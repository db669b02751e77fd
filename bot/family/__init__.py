"""A household's own: joining by link, consent before the first push, what a parent asks and orders."""

from bot.family.commands import FUNCTIONS, take_command, take_press, take_text
from bot.family.join import first_tutor, start_link, take_stranger_press
from bot.school.commands import commands_for

__all__ = [
    "FUNCTIONS",
    "commands_for",
    "first_tutor",
    "start_link",
    "take_command",
    "take_press",
    "take_stranger_press",
    "take_text",
]
