"""All kinds of figures under their names."""

from __future__ import annotations

from collections.abc import Mapping

from bot.course.figures.graphs import GRAPHS_AND_DATA
from bot.course.figures.kind import Kind
from bot.course.figures.parts import NUMBERS_AND_PARTS
from bot.course.figures.shapes import SHAPES

KINDS: Mapping[str, Kind] = {kind.name: kind for kind in (*NUMBERS_AND_PARTS, *SHAPES, *GRAPHS_AND_DATA)}
