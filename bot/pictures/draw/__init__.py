"""Drawing: for each kind of figure a function that puts it on a canvas."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.course.figures import Drawn
from bot.pictures.canvas import Canvas
from bot.pictures.draw import (
    angles,
    chances,
    circles,
    grids,
    lines,
    nets,
    parts,
    plots,
    quadrilaterals,
    shapes,
    solids,
    tapes,
)

DRAW: Mapping[str, Callable[[Canvas, Drawn], None]] = {
    "number-line": lines.number_line,
    "double-number-line": lines.double_number_line,
    "bar": parts.bar,
    "fraction-bars": parts.fraction_bars,
    "circle-parts": parts.circle_parts,
    "hundred-grid": parts.hundred_grid,
    "square-parts": parts.square_parts,
    "place-value": parts.place_value,
    "counters": parts.counters,
    "objects": parts.objects,
    "array": parts.array,
    "clock": parts.clock,
    "tape": tapes.tape,
    "table": tapes.table,
    "balance": tapes.balance,
    "rectangle": shapes.rectangle,
    "area-model": shapes.area_model,
    "composite": shapes.composite,
    "triangle": shapes.triangle,
    "quadrilateral": quadrilaterals.quadrilateral,
    "regular-polygon": quadrilaterals.regular_polygon,
    "similar": quadrilaterals.similar,
    "angle": angles.angle,
    "angles": angles.angles,
    "parallel-lines": angles.parallel_lines,
    "circle": circles.circle,
    "solid": solids.solid,
    "net": nets.net,
    "grid": grids.grid,
    "scatter-plot": grids.scatter_plot,
    "bar-chart": plots.bar_chart,
    "dot-plot": plots.dot_plot,
    "histogram": plots.histogram,
    "box-plot": plots.box_plot,
    "spinner": chances.spinner,
    "tree": chances.tree,
    "mapping": chances.mapping,
}
