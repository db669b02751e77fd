"""A figure in plain words: enough for a student who can't see it to work the item.

What a picture leaves to be read off (a dot between ticks, the hands of a clock, a protractor) is told so that it is
still read off: where the dot sits from a numbered tick, not which number it is.
"""

from __future__ import annotations

from bot.course.figures.kind import Figure
from bot.course.figures.reading import Drawn
from bot.course.figures.spoken_graphs import GRAPHS
from bot.course.figures.spoken_parts import PARTS
from bot.course.figures.spoken_shapes import SHAPES
from bot.course.figures.telling import Telling
from bot.course.item import grouped

_TELL = {**PARTS, **SHAPES, **GRAPHS}


def alt(figure: Figure, language: str = "en") -> str:
    """The figure in words, thousands apart as in the picture. It has to be in order (`check`)."""
    drawn = Drawn(figure)
    return grouped(" ".join(_TELL[drawn.kind](drawn, Telling(language))))
