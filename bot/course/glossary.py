"""The words of the course: what each means in short words, with an example and the lesson it belongs to."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from rapidfuzz import fuzz, process

from bot.course.lesson_file import shown_text
from bot.course.recipes import split_commas
from bot.course.source import Entry, Source
from bot.vocabulary import LessonId

ENGLISH = "en"
NEAR = 70
"""Likeness, 0 to 100, from which on a word may be what a mistyped one was meant to be."""
_KEYS = ("lesson", "also", "meaning", "example")
_OTHER_KEYS = ("term", "also", "meaning", "example")


@dataclass(frozen=True, slots=True)
class Said:
    """A word in one language. Maths in its texts stands in backticks, as people read it."""

    term: str
    meaning: str
    example: str
    also: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """The term and the other forms of it."""
        return (self.term, *self.also)


@dataclass(frozen=True, slots=True)
class GlossaryWord:
    """One word with the lesson that owns it, by language; English is always there."""

    lesson: LessonId
    said: Mapping[str, Said]
    file: str = ""
    line: int = 0

    @property
    def term(self) -> str:
        """The English word, which is that of the lessons."""
        return self.said[ENGLISH].term

    def in_language(self, language: str) -> Said:
        """The word in a language, in English where it isn't written in that."""
        return self.said.get(language, self.said[ENGLISH])


@dataclass(frozen=True, slots=True)
class Found:
    """What a word that was asked for may be: those of that name, or else names that are near."""

    words: tuple[GlossaryWord, ...]
    near: tuple[str, ...] = ()


def read_words(source: Source, entries: Mapping[str, Entry]) -> Iterator[GlossaryWord]:
    """Read one file of words. Faults are noted in `source`; a word without its English meaning is left out."""
    for term, entry in entries.items():
        where = f"word {term}"
        own = entry.value if isinstance(entry.value, Mapping) else {}
        said: dict[str, Said] = {}
        for language, row, known in _languages(term, entry, own):
            for key in row:
                if key not in known and not isinstance(row[key].value, Mapping):
                    fix = f"A word has: {', '.join(known)}."
                    source.fault("glossary", row[key].line, f"A word has no '{key}'.", fix, where, key)
            missing = [key for key in known if key != "also" and not (row.get(key) and row[key].text)]
            if missing:
                what = f"This word lacks in '{language}': {', '.join(missing)}."
                source.fault("glossary", entry.line, what, "Each is a line of its own.", where)
                continue
            said[language] = Said(
                term=term if language == ENGLISH else row["term"].text or "",
                meaning=shown_text(source, row["meaning"].text or "", row["meaning"].line),
                example=shown_text(source, row["example"].text or "", row["example"].line),
                also=tuple(split_commas(row["also"].text or "")) if "also" in row else (),
            )
        if ENGLISH in said:
            yield GlossaryWord(LessonId(own["lesson"].text or ""), said, source.file, entry.line)


def _languages(
    term: str, entry: Entry, own: Mapping[str, Entry]
) -> Iterator[tuple[str, Mapping[str, Entry], Sequence[str]]]:
    yield ENGLISH, own, _KEYS
    for language, there in own.items():
        if isinstance(there.value, Mapping):
            yield language, there.value, _OTHER_KEYS


def look_up(words: Sequence[GlossaryWord], asked: str, language: str = ENGLISH) -> Found:
    """Find a word by any of its names in any language, or name up to three that are near, in `language` first.

    Case, accents and an article in front don't matter. Nothing asked finds nothing.
    """
    wanted = _plain(asked)
    if not wanted:
        return Found(())
    exact = [word for word in words if any(_plain(said.term) == wanted for said in word.said.values())]
    others = [word for word in words if any(wanted in map(_plain, said.names) for said in word.said.values())]
    if exact or others:
        return Found((*exact, *(word for word in others if word not in exact)))
    return Found((), tuple(_near(words, wanted, language)))


def _near(words: Sequence[GlossaryWord], wanted: str, language: str) -> list[str]:
    near: list[str] = []
    for one in dict.fromkeys((language, ENGLISH)):
        terms = {word.in_language(one).term: _plain(word.in_language(one).term) for word in words}
        matches = process.extract(wanted, terms, scorer=fuzz.ratio, score_cutoff=NEAR, limit=3)
        near += [str(match[2]) for match in matches]
        near += [term for term, plain in terms.items() if re.search(rf"\b{re.escape(wanted)}", plain)]
    return list(dict.fromkeys(near))[:3]


_ARTICLE = re.compile(r"^(?:an?|the|el|la|los|las|una?) +(?=\S)")


def _plain(text: str) -> str:
    """Small letters without accents, one space between words, no article and no quotation marks."""
    bare = "".join(one for one in unicodedata.normalize("NFKD", text) if not unicodedata.combining(one))
    words = " ".join(re.sub(r"[\"'“”‘’«»?¿!¡.]", "", bare.casefold()).split())
    return _ARTICLE.sub("", words)
