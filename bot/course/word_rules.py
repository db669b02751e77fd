"""Rules for the glossary: each term that a card sets in bold has its meaning there, said kindly and in short words."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from bot.course.faults import Fault
from bot.course.glossary import ENGLISH, GlossaryWord
from bot.course.item import RunKind, plain_text, runs
from bot.course.rules import kind_words
from bot.course.year import Course

MEANING_WORDS = 30
TERM_WORDS = 4
"""Bold text of more words than that is a sentence to lean on, and no term."""


def glossary_faults(course: Course) -> Iterator[Fault]:
    """What is wrong with the words, and with cards whose terms they lack."""
    yield from _terms_of_cards(course)
    seen: dict[tuple[str, str], GlossaryWord] = {}
    for word in course.glossary:
        where = f"word {word.term}"
        for language, said in word.said.items():
            first = seen.setdefault((language, said.term.casefold()), word)
            if first is not word:
                what = f"'{said.term}' has a meaning already, in {first.file}:{first.line}."
                yield Fault("word-twice", word.file, word.line, what, "Make one of the two.", where)
            if len(plain_text(said.meaning).split()) > MEANING_WORDS:
                what = f"The meaning in '{language}' has more than {MEANING_WORDS} words."
                yield Fault("word-long", word.file, word.line, what, "Say it in fewer.", where)
        english = word.said[ENGLISH]
        yield from kind_words(word.file, word.line, where, plain_text(f"{english.meaning} {english.example}"))


def _terms_of_cards(course: Course) -> Iterator[Fault]:
    place = {lesson: n for n, lesson in enumerate(one for unit in course.units for one in unit.lessons)}
    first: dict[str, int] = defaultdict(lambda: len(place))
    for word in course.glossary:
        for name in word.said[ENGLISH].names:
            first[name.casefold()] = min(first[name.casefold()], place.get(word.lesson, len(place)))
    for lesson in course.lessons:
        for card in lesson.cards:
            for term in terms_of(card.text):
                if term in course.stressed:
                    continue
                if term not in first:
                    yield Fault(
                        "not-in-glossary",
                        lesson.file,
                        card.line,
                        f"The term '{term}' is bold here and has no meaning in glossary/.",
                        "Add it there; or, if it is bold only to lean on it, in glossary/stressed.txt.",
                        "card",
                        mark=term,
                    )
                elif first[term] > place.get(lesson.id, -1):
                    yield Fault(
                        "glossary-lesson",
                        lesson.file,
                        card.line,
                        f"The term '{term}' is bold here, but the glossary gives it to a later lesson.",
                        "The lesson that has it first owns it.",
                        "card",
                        mark=term,
                    )


def terms_of(text: str) -> Iterator[str]:
    """The bold pieces of a card that may be terms, in small letters: no sentences, nothing with maths."""
    for run in runs(text):
        words = run.text.strip()
        sentence = re.search(r"[.?!:]$", words) or len(words.split()) > TERM_WORDS or re.search(r"\d", words)
        if run.kind is RunKind.BOLD and not sentence:
            yield words.casefold()
