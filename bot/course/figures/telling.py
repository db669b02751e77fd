"""Sentences about figures from the table of words, and numbers and labels as they are said."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from bot.course.figures.reading import BARE, UNKNOWN, Drawn
from bot.course.figures.words import TEXTS

_MINUS = re.compile(r"(?<![\w)])-(?=[\d.(])")


@dataclass(frozen=True, slots=True)
class Telling:
    """Says things in one language."""

    language: str = "en"

    def say(self, key: str, **blanks: object) -> str:
        """The sentence of that key with its blanks filled."""
        return TEXTS[self.language][key].format(**blanks)

    def label(self, text: str) -> str:
        """A label as it is said: unknown is not given."""
        if text == UNKNOWN:
            return self.say("not given")
        return self.say("bare") if text in (BARE, "") else _MINUS.sub("−", text)

    def all(self, labels: Sequence[str]) -> str:
        """Labels one after the other."""
        return ", ".join(self.label(label) for label in labels)

    def parts(self, drawn: Drawn, **keys: str) -> Iterator[str]:
        """A sentence for each field that is there; the keyword is the field, its value the key of the sentence."""
        for field, key in keys.items():
            name = field.replace("_", "-")
            if drawn.has(name):
                yield self.say(key, label=self.label(drawn.text(name)))


def plain(value: Fraction | int) -> str:
    """A number as people write it: a whole number, a short decimal, else a fraction."""
    value = Fraction(value)
    if value.denominator == 1:
        return str(value.numerator).replace("-", "−")
    if 10000 % value.denominator == 0:
        whole, rest = divmod(abs(int(value * 10000)), 10000)  # exact, however long the number is
        return f"{'−' if value < 0 else ''}{whole}.{rest:04}".rstrip("0")
    return f"{value.numerator}/{value.denominator}".replace("-", "−")


Tell = Callable[[Drawn, Telling], Iterator[str]]
