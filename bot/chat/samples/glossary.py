"""Samples of what is said about words."""

from __future__ import annotations

import msgspec

from bot.chat.samples.day import TO
from bot.messages import Message, WordMeant, WordsShown

NUMERATOR = WordMeant(
    lesson="fractions-on-a-line-and-as-division",
    title="Fractions on a line and as division",
    said=(
        (
            "en",
            "numerator",
            "The number above the bar of a fraction. It counts the parts.",
            "In `3/4` the numerator is `3`.",
        ),
        (
            "es",
            "numerador",
            "El número que está arriba de la raya de una fracción. Cuenta las partes.",
            "En `3/4` el numerador es `3`.",
        ),
    ),
)
SHOWN = WordsShown(to=TO, asked="numerator", side="s", words=(NUMERATOR,))

SAMPLES: tuple[Message, ...] = (
    SHOWN,
    msgspec.structs.replace(SHOWN, side="f"),
    WordsShown(
        to=TO,
        asked="numrator",
        side="s",
        near=(("en", ("numerator",)), ("es", ("numerador", "número natural"))),
    ),
    WordsShown(to=TO, asked="xylophone", side="t"),
    WordsShown(to=TO, asked="", side="s"),
)
