"""One or more samples of every message, in our own scenario: read aloud by `evensum say-all`, held by tests."""

from __future__ import annotations

from bot.chat.samples import day, evening, family, glossary, own, papers, reply, tutoring, year
from bot.messages import Message

SAMPLES: tuple[Message, ...] = (
    *day.SAMPLES,
    *reply.SAMPLES,
    *evening.SAMPLES,
    *family.SAMPLES,
    *glossary.SAMPLES,
    *tutoring.SAMPLES,
    *own.SAMPLES,
    *year.SAMPLES,
    *papers.SAMPLES,
)
"""In the order of the day."""
