"""Typed text and a key in, a fair teacher's judgement out."""

from bot.answers.judge import judge
from bot.answers.key import Judgement, Key, Misstep

__all__ = ["Judgement", "Key", "Misstep", "judge"]
