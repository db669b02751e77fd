"""What a word of the course means."""

from __future__ import annotations

import msgspec

from bot.messages.base import Message


class WordMeant(msgspec.Struct, frozen=True, omit_defaults=True):
    """One word: the lesson that owns it, and by language (language, term, meaning, example), English first.

    `title` is empty where that lesson isn't written yet. Texts may hold maths in backticks.
    """

    lesson: str
    title: str
    said: tuple[tuple[str, str, str, str], ...]


class WordsShown(Message, frozen=True, kw_only=True):
    """The words that were asked for; or none, with names that are near, by language. The reader's language decides.

    `asked` is as typed; empty where no word was. `side`: "s" to a student, else "t" or "f".
    """

    asked: str
    side: str
    words: tuple[WordMeant, ...] = ()
    near: tuple[tuple[str, tuple[str, ...]], ...] = ()
