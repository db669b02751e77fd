"""Somebody asks what a word means: it is looked up in the course's glossary, in whatever language it was typed."""

from __future__ import annotations

from bot.course.glossary import ENGLISH, GlossaryWord, look_up
from bot.messages import Message, WordMeant, WordsShown
from bot.school.asking import Asked
from bot.school.school import School
from bot.vocabulary import ChatId

LONGEST = 60
"""Letters of a word that was asked for; no term of the course is near that."""


def define(asked: Asked) -> list[Message]:
    """What a grown-up's word means."""
    return [word_shown(asked.school, asked.person.chat, asked.text, asked.side)]


def word_shown(school: School, to: ChatId, typed: str, side: str) -> WordsShown:
    """What a word means, or which words are near it."""
    words = school.course.glossary
    wanted = typed.strip()[:LONGEST]
    found = look_up(words, wanted)
    languages = dict.fromkeys((ENGLISH, *(language for word in words for language in word.said)))
    near = {} if found.words or not wanted else {one: look_up(words, wanted, one).near for one in languages}
    return WordsShown(
        to=to,
        asked=wanted,
        side=side,
        words=tuple(_meant(school, word) for word in found.words),
        near=tuple((language, names) for language, names in near.items() if names),
    )


def _meant(school: School, word: GlossaryWord) -> WordMeant:
    written = any(lesson.id == word.lesson for lesson in school.course.lessons)
    return WordMeant(
        lesson=word.lesson,
        title=school.title(word.lesson) if written else "",
        said=tuple((language, one.term, one.meaning, one.example) for language, one in word.said.items()),
    )
