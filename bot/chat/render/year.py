"""How we say what concerns the year as a whole."""

from __future__ import annotations

from bot.chat.render.registry import button, renders, say
from bot.chat.render.shapes import examples_text
from bot.chat.rendered import Rendered
from bot.chat.words import Text, Words, bold, join
from bot.messages import PlacementDone, PlacementFound, PlacementPaused, PlacementUnread

SURE, LIKELY = 85, 65
"""Chances in percent from which a start is called sure, or likely."""


@renders(PlacementUnread)
def placement_unread(words: Words, m: PlacementUnread) -> Rendered:
    """It couldn't be read; how it can be typed."""
    lines = [words("placement-unread")]
    if m.examples:
        lines.append(words("placement-unread-examples", examples=examples_text(m.examples)))
    return say(join(lines, " "), buttons=[[button(words, "button-not-met", f"place-skip:{m.item}")]])


@renders(PlacementPaused)
def placement_paused(words: Words, m: PlacementPaused) -> Rendered:
    """Enough for today."""
    return say(words("placement-paused", asked=m.asked))


@renders(PlacementDone)
def placement_done(words: Words, m: PlacementDone) -> Rendered:
    """That was all."""
    return say(words("placement-done", name=m.name, asked=m.asked))


@renders(PlacementFound)
def placement_found(words: Words, m: PlacementFound) -> Rendered:
    """To the tutor: where to start, what to patch, how sure."""
    head = words("placement-found", name=m.name, household=m.household, asked=m.asked)
    if not m.lesson:
        return say(head, words("placement-found-all"))
    lines = [words("placement-found-start", lesson=bold(m.lesson), n=m.n)]
    lines.append(words(f"placement-{how_sure(m.sure)}", sure=m.sure))
    patch = words("placement-found-patch", titles=words.list(list(m.patch))) if m.patch else Text()
    rows = [
        [
            button(words, "button-begin-there", f"t-do:{m.change}"),
            button(words, "button-leave-it", f"t-leave:{m.change}"),
        ]
    ]
    if m.safer_n:
        lines.append(words("placement-found-safer", lesson=bold(m.safer), n=m.safer_n))
        label = button(words, "button-begin-at", f"t-run:lesson #{m.student} {m.safer_n}", n=m.safer_n)
        rows.insert(1, [label])
    return say(head, join(lines, " "), patch, words("placement-found-else", name=m.name), buttons=rows)


def how_sure(percent: int) -> str:
    """How sure a start is, as a word of the catalogue's keys."""
    return "sure" if percent >= SURE else "likely" if percent >= LIKELY else "guess"
