"""How the digest tells an item that is still open."""

from __future__ import annotations

from bot.chat.render import render
from bot.chat.samples.evening import OPEN, TO
from bot.messages import Digest
from bot.vocabulary import DayId, StudentId

LONG = "A prism stands on a triangle with legs of nine and twelve inches. " * 4


def test_a_long_question_is_cut_between_words() -> None:
    digest = Digest(
        to=TO,
        day=DayId(1),
        student=StudentId(1),
        name="Wren",
        date="2026-09-14",
        variant="worked",
        first_try=1,
        out_of=2,
        unsolved=1,
        open_items=(type(OPEN)(item=OPEN.item, title="Prisms", ask=LONG),),
    )
    (line,) = [each for each in render(digest, "en").text.splitlines() if "Still open" in each]
    shown = line.partition(": ")[2].removesuffix(" …")
    assert line.endswith(" …")
    assert len(shown) <= 160
    assert LONG.startswith(shown + " ")
