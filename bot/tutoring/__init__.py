"""How the tutor steers: one line or a button for everything, shown first, done on a press, undone for a day."""

from bot.tutoring.commands import EFFECTS, FUNCTIONS, take_command, take_file, take_press, take_text
from bot.tutoring.handover import open_link

__all__ = ["EFFECTS", "FUNCTIONS", "open_link", "take_command", "take_file", "take_press", "take_text"]
