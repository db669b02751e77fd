"""In which order the day's review is asked: an easy start, the hardest in the middle, a sure success at the
end.

Neighbours come from different lessons wherever that is possible, so that each item asks for its method anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.planner.table import Choice
from bot.vocabulary import Why

FIRST = (Why.TUTOR_ASKED, Why.COMEBACK, Why.YESTERDAY)


def arrange(choices: Sequence[Choice]) -> list[Choice]:
    """The same picks in the order in which they are asked; the last one's reason may become SURE."""
    first = sorted((c for c in choices if c.why in FIRST), key=lambda c: FIRST.index(c.why))
    rest = sorted((c for c in choices if c.why not in FIRST), key=lambda c: (-c.chance, c.template.id))
    last = rest[:1]
    hill = _hill(rest[1:])
    ordered = _apart([*first, *hill, *last], kept=len(first))
    if (
        last
        and ordered[-1] is last[0]
        and last[0].why in (Why.DUE, Why.MIXED_IN, Why.RECENT, Why.PREREQUISITE)
    ):
        ordered[-1] = replace(last[0], why=Why.SURE)
    return ordered


def _hill(by_chance: Sequence[Choice]) -> list[Choice]:
    """From sure to shaky and back to sure."""
    return [*by_chance[0::2], *reversed(by_chance[1::2])]


def _apart(ordered: list[Choice], kept: int) -> list[Choice]:
    """Swap forwards until no two neighbours are of one lesson or share a skill, as far as the day allows."""
    for place in range(1, len(ordered)):
        if not _alike(ordered[place - 1], ordered[place]):
            continue
        end = kept if place < kept else len(ordered) - 1
        for other in [*range(place + 1, end), *range(kept, place - 1)]:
            if _swap_helps(ordered, place, other):
                ordered[place], ordered[other] = ordered[other], ordered[place]
                break
    return ordered


def _swap_helps(ordered: Sequence[Choice], one: int, other: int) -> bool:
    swapped = list(ordered)
    swapped[one], swapped[other] = swapped[other], swapped[one]
    around = sorted({one - 1, one, other - 1, other})
    return _clashes(swapped, around) < _clashes(ordered, around)


def _clashes(ordered: Sequence[Choice], places: Sequence[int]) -> int:
    return sum(
        0 <= place < len(ordered) - 1 and _alike(ordered[place], ordered[place + 1]) for place in places
    )


def _alike(one: Choice, other: Choice) -> bool:
    return one.template.lesson == other.template.lesson or not set(one.template.skills).isdisjoint(
        other.template.skills
    )
