"""Wording: a key and what belongs into it give a text with marks, in the reader's language.

The catalogues are Fluent files (`en/*.ftl`, `es/*.ftl`), English like any other language. In a catalogue
`**bold**` and `*slanted*` are marks. What people typed is put in after the marks were read, so it can never
become one.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from pathlib import Path

from babel import Locale, UnknownLocaleError
from babel.dates import format_date
from fluent.runtime import FluentBundle, FluentResource

from bot.chat.rendered import Entity, units
from bot.chat.typography import typographic
from bot.course.item import RunKind, runs

FALLBACK = "en"
HERE = Path(__file__).parent
_ENTITY = {RunKind.BOLD: "bold", RunKind.SLANTED: "italic"}
_HOLE = re.compile("\ue000(\\d+)\ue001")


@dataclass(frozen=True, slots=True)
class Text:
    """Words with marks, as (mark, words, url) pieces; "" is no mark. Texts are joined with +."""

    pieces: tuple[tuple[str, str, str], ...] = ()

    def __add__(self, other: Text | str) -> Text:
        return Text(self.pieces + (plain(other) if isinstance(other, str) else other).pieces)

    def __bool__(self) -> bool:
        return any(words for _, words, _ in self.pieces)

    def marked(self, mark: str, url: str = "") -> Text:
        """The same words, all with one mark."""
        return Text(tuple((mark, words, url) for _, words, _ in self.pieces))

    def words(self) -> str:
        """The words alone."""
        return "".join(words for _, words, _ in self.pieces)

    def entities(self) -> tuple[Entity, ...]:
        """Marks as the service wants them: offsets in UTF-16 units, neighbours of one kind joined."""
        found: list[Entity] = []
        at = 0
        for mark, words, url in self.pieces:
            length = units(words)
            if mark and length:
                last = found[-1] if found else None
                joins = (
                    last
                    and last.kind == mark
                    and last.url == (url or None)
                    and last.offset + last.length == at
                )
                if last and joins:
                    found[-1] = Entity(mark, last.offset, last.length + length, url or None)
                else:
                    found.append(Entity(mark, at, length, url or None))
            at += length
        return tuple(found)


def plain(words: str) -> Text:
    """Words without a mark, whatever they hold."""
    return Text((("", words, ""),))


def bold(words: str) -> Text:
    """Bold words, whatever they hold."""
    return Text((("bold", words, ""),))


def link(words: str, url: str) -> Text:
    """Words that open a page."""
    return Text((("text_link", words, url),))


def from_content(text: str) -> Text:
    """A lesson's text: its marks become marks, its quotes typographic; its maths is shown as it stands."""
    return Text(tuple((_ENTITY.get(run.kind, ""), run.text, "") for run in runs(typographic(text))))


def join(texts: list[Text], between: str = "\n\n") -> Text:
    """Join the texts that aren't empty."""
    full = [text for text in texts if text]
    pieces: list[tuple[str, str, str]] = []
    for n, text in enumerate(full):
        if n:
            pieces.append(("", between, ""))
        pieces += text.pieces
    return Text(tuple(pieces))


class NoSuchWording(KeyError):
    """A key that no catalogue has."""


class Words:
    """One language's catalogue, with English behind it."""

    def __init__(self, language: str) -> None:
        self.language = language
        self.locale = _locale(language)
        self._bundles = [_bundle(language)] + ([_bundle(FALLBACK)] if language != FALLBACK else [])

    def __call__(self, key: str, **holes: object) -> Text:
        """Give the wording of a key. Texts and words go in as they are, numbers by the language's rules.

        Raises NoSuchWording.
        """
        filled: dict[str, object] = {}
        kept: list[Text] = []
        for name, value in holes.items():
            if isinstance(value, bool):
                filled[name] = "yes" if value else "no"
            elif isinstance(value, int | float):
                filled[name] = value
            else:
                kept.append(value if isinstance(value, Text) else plain(str(value)))
                filled[name] = f"\ue000{len(kept) - 1}\ue001"
        return _fill(self._format(key, filled), kept)

    def case(self, key: str, **holes: object) -> Text:
        """Like a call, but words are handed to the catalogue as they are, to choose a case by.

        Only for words of our own, never for anything typed.
        """
        return _fill(self._format(key, dict(holes)), [])

    def _format(self, key: str, filled: dict[str, object]) -> str:
        for bundle in self._bundles:
            pattern = bundle.get_message(key).value if bundle.has_message(key) else None
            if pattern is not None:
                text, errors = bundle.format_pattern(pattern, filled)
                if errors:
                    raise NoSuchWording(f"{key}: {errors[0]}")
                return str(text)
        raise NoSuchWording(key)

    def has(self, key: str) -> bool:
        """Whether there is a wording of that key."""
        return any(bundle.has_message(key) for bundle in self._bundles)

    def label(self, key: str, **holes: object) -> str:
        """A button's label: the wording without marks."""
        return self(key, **holes).words()

    def date(self, iso: str, pattern: str = "EEEE d MMMM") -> str:
        """A date in words."""
        if self.language == "es":  # "14 de septiembre de 2026"
            pattern = pattern.replace("d MMMM", "d 'de' MMMM").replace("MMMM y", "MMMM 'de' y")
        return format_date(date.fromisoformat(iso), pattern, locale=self.locale)

    def list(self, items: list[str]) -> Text:
        """Things one after another, with the language's *and*."""
        if len(items) < 2:
            return plain("".join(items))
        return self("and", first=", ".join(items[:-1]), last=items[-1])


def _fill(text: str, kept: list[Text]) -> Text:
    pieces: list[tuple[str, str, str]] = []
    for run in runs(text):
        mark = _ENTITY.get(run.kind, "")
        for n, part in enumerate(_HOLE.split(run.text)):
            if n % 2:
                pieces += [(mark or own, words, url) for own, words, url in kept[int(part)].pieces]
            elif part:
                pieces.append((mark, part, ""))
    return Text(tuple(pieces))


@lru_cache
def words_for(language: str) -> Words:
    """The catalogue of a language; English where we have none."""
    return Words(language if (HERE / language).is_dir() and language.isalpha() else FALLBACK)


def languages() -> list[str]:
    """The languages that we have a catalogue of."""
    return sorted(folder.name for folder in HERE.iterdir() if folder.is_dir() and any(folder.glob("*.ftl")))


@lru_cache
def _bundle(language: str) -> FluentBundle:
    bundle = FluentBundle([language], use_isolating=False)
    for file in sorted((HERE / language).glob("*.ftl")):
        bundle.add_resource(FluentResource(file.read_text(encoding="utf-8")))
    return bundle


def _locale(language: str) -> Locale:
    try:
        return Locale.parse(language)
    except (UnknownLocaleError, ValueError):
        return Locale.parse(FALLBACK)
