"""Spelling of all English that people read in the course, by a kept dictionary and a list of its own words."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from spellchecker import SpellChecker

from bot.course.faults import Fault
from bot.course.glossary import ENGLISH
from bot.course.lesson import HandsOn, Lesson
from bot.course.year import Course

SHORTEST = 3
"""Shorter words are units, letters and the like."""
_WORD = re.compile(r"[^\W\d_²³]+(?:['’][^\W\d_]+)?")
_NO_PROSE = re.compile(r"`[^`]*`|\{[^}]*\}|https?://\S+")

Piece = tuple[str, int]
"""A text as an author wrote it, and its line."""


def misspelt(course: Course) -> Iterator[Fault]:
    """Words that neither the dictionary nor known-words.txt has, once a file each."""
    for holder in course.holders:
        yield from _faults(course, holder.file, pieces_of(holder))
    for word in course.glossary:
        said = word.said[ENGLISH]
        texts = [(text, word.line) for text in (*said.names, said.meaning, said.example)]
        yield from _faults(course, word.file, texts)
    for part in course.formulas:
        for row in part.rows:
            yield from _faults(
                course, row.file, [(row.what[ENGLISH], row.line), (row.formula[ENGLISH], row.line)]
            )


def pieces_of(holder: Lesson | HandsOn) -> Iterator[Piece]:
    """Every text of a lesson that people read."""
    yield f"{holder.title}. {holder.objective}", 2
    if isinstance(holder, HandsOn):
        yield from ((text, 1) for text in (*holder.materials, holder.safety, holder.idea, *holder.checklist))
    else:
        yield from ((card.text, card.line) for card in holder.cards)
        for example in holder.examples:
            yield example.ask, example.line
            yield from ((step.because, example.line) for step in example.steps)
        yield from ((note.say, note.line) for note in holder.missteps)
    for template in holder.templates:
        recipe = template.recipe
        for written in (template.ask, *template.hints, *(because for _, because in template.steps)):
            yield written.text, written.line
        yield from ((word, template.line) for rows in recipe.words for row in rows for word in row.values())
        if recipe.form in ("choice", "words"):
            yield from (
                (_words_alone(choice.text), choice.line) for choice in (*recipe.choices, recipe.answer)
            )
            yield from ((_words_alone(wrong.text), wrong.line) for wrong in recipe.missteps.values())


def _words_alone(text: str) -> str:
    """The text of a button, unless it is a formula (`max(a/b, c/d)`)."""
    return "" if re.search(r"[a-z]\(", text) else text


def _faults(course: Course, file: str, pieces: Iterable[Piece]) -> Iterator[Fault]:
    first: dict[str, int] = {}
    for text, line in pieces:
        for word in words_of(text):
            first.setdefault(word, line)
    for word in sorted(_dictionary().unknown(first) - course.known_words if first else ()):
        if _known_otherwise(course, word):
            continue
        yield Fault(
            "spelling",
            file,
            first[word],
            f"'{word}' isn't in the dictionary.",
            "If it is spelt as it should be, add it to known-words.txt.",
            mark=word,
        )


def words_of(text: str) -> Iterator[str]:
    """The words of a text in small letters; maths, slots and links are left out, and a name's 's."""
    for found in _WORD.finditer(_NO_PROSE.sub(" ", text)):
        word = re.sub(r"'s?$", "", found[0].replace("’", "'").casefold())
        if len(word) >= SHORTEST:
            yield word


def _known_otherwise(course: Course, word: str) -> bool:
    """Plurals of listed words, and words joined from two that the dictionary has (n't, 'll)."""
    if word.endswith("s") and {word[:-1], word.removesuffix("es")} & course.known_words:
        return True
    stem, apostrophe, _ = word.partition("'")
    return bool(apostrophe) and not _dictionary().unknown([stem])


@lru_cache
def _dictionary() -> SpellChecker:
    return SpellChecker(language=ENGLISH)
