"""What has to hold in graphs, plots, tables, and figures of chance."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from math import prod

from bot.course.figures.curves import curve
from bot.course.figures.reading import Drawn
from bot.course.figures.rules import Rule, as_many, between, by_twos, inside, wholes

MOST_UNITS = 200  # a scale longer than this needs a step


def _ranges(drawn: Drawn, *names: str) -> Iterator[str]:
    for name in names:
        if drawn.has(name):
            low, high, step = drawn.span(name)
            if low >= high:
                yield f"'{name}' goes from small to large, such as -5..5; here it is {drawn.text(name)}."
            elif step is not None and (step <= 0 or (high - low) / step > 40):
                yield f"'{name}' takes at most 40 steps; here it is {drawn.text(name)}."


def _curves(drawn: Drawn) -> Iterator[str]:
    for text in drawn.labels("line"):
        if curve(text) is None:
            yield f"A line is written like y = 2 x + 1 or x = 3; here it is '{text}'."


def _grid(drawn: Drawn) -> Iterator[str]:
    yield from (faults := [*_ranges(drawn, "x", "y")])
    if faults:
        return
    yield from _curves(drawn)
    yield from as_many(drawn, "names", "points")
    yield from by_twos(drawn, "through", "segments", "arrows", "steps")
    (left, right, _), (low, high, _) = drawn.span("x"), drawn.span("y")
    lists = [drawn.pairs(name) for name in ("points", "segments", "path", "arrows", "steps")]
    for x, y in (
        point
        for points in lists + drawn.pair_rows("polygons") + drawn.pair_rows("images")
        for point in points
    ):
        if not (left <= x <= right and low <= y <= high):
            yield f"The point ({x}, {y}) lies outside the grid, which is {drawn.text('x')} by {drawn.text('y')}."
    for one, other in zip(drawn.pairs("through")[::2], drawn.pairs("through")[1::2], strict=False):
        if one == other:
            yield f"A line needs two points; 'through' gives ({one[0]}, {one[1]}) twice."


def _bar_chart(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "names", 1, 12)
    yield from as_many(drawn, "values", "names")
    yield from as_many(drawn, "second", "names")
    yield from between(drawn, "keys", 2, 2)
    for value in drawn.numbers("values") + drawn.numbers("second"):
        if value < 0:
            yield f"A bar isn't lower than 0; here is {value}."
    if drawn.has("step") and drawn.number("step") <= 0:
        yield "'step' is above 0."


def _dot_plot(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "data", 1, 60)
    yield from between(drawn, "second", 1, 60)
    yield from between(drawn, "keys", 2, 2)
    for name in ("data", "second"):
        numbers = drawn.numbers(name)
        if numbers and max(Counter(numbers).values()) > 15:
            yield f"At most 15 dots stand on one number; '{name}' has more. A histogram shows more."
        if drawn.has("from"):
            yield from inside(drawn, name, drawn.number("from"), max(numbers, default=Fraction(0)))
        if drawn.has("to"):
            yield from inside(drawn, name, min(numbers, default=Fraction(0)), drawn.number("to"))


def _histogram(drawn: Drawn) -> Iterator[str]:
    if drawn.number("width") <= 0:
        yield "'width' is above 0."
    yield from between(drawn, "counts", 1, 12)
    yield from wholes(drawn, "counts", 0, 1000)


def _box_plot(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "keys", 2, 2)
    if drawn.has("data") and len(drawn.numbers("data")) < 4:
        yield f"A box plot needs at least 4 numbers; 'data' has {len(drawn.numbers('data'))}."
    for name in ("five", "second"):
        numbers = drawn.numbers(name)
        if drawn.has(name) and (len(numbers) != 5 or numbers != sorted(numbers)):
            yield f"'{name}' holds five numbers from small to large; here it is {drawn.text(name)}."
    lows = [*drawn.numbers("five"), *drawn.numbers("data"), *drawn.numbers("second")]
    if drawn.has("from") and drawn.number("from") > min(lows):
        yield f"'from' is at most the lowest number, {min(lows)}."
    if drawn.has("to") and drawn.number("to") < max(lows):
        yield f"'to' is at least the highest number, {max(lows)}."


def _scatter_plot(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "points", 2, 60)
    yield from (faults := [*_ranges(drawn, "x", "y")])
    yield from _curves(drawn)
    for name, place in (("x", 0), ("y", 1)):
        if drawn.has(name) and not faults:
            low, high, _ = drawn.span(name)
            for point in drawn.pairs("points"):
                if not low <= point[place] <= high:
                    yield f"The point ({point[0]}, {point[1]}) lies outside {name} = {drawn.text(name)}."


def _table(drawn: Drawn) -> Iterator[str]:
    rows = drawn.rows("rows")
    if not 1 <= len(rows) <= 12:
        yield f"A table has 1 to 12 rows; here are {len(rows)}."
    if len({len(row) for row in rows}) > 1:
        yield f"Every row of a table has as many cells; here are {', '.join(str(len(row)) for row in rows)}."
    elif rows and len(rows[0]) > 8:
        yield f"A table fits a phone with up to 8 columns; here are {len(rows[0])}. Turn it on its side?"


def _spinner(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "parts", 2, 12)
    yield from as_many(drawn, "sizes", "parts")
    if any(size <= 0 for size in drawn.numbers("sizes")):
        yield "'sizes' are above 0."


def _tree(drawn: Drawn) -> Iterator[str]:
    stages = [len(row) for row in drawn.rows("stages")]
    if not 1 <= len(stages) <= 3 or prod(stages) > 12:
        yield f"A tree has up to 3 stages and 12 ends; here are {len(stages)} and {prod(stages)}."
    if drawn.has("chances") and [len(row) for row in drawn.rows("chances")] != stages:
        yield "'chances' has a row for each stage, with a chance for each thing that can happen."


def _mapping(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "inputs", 1, 8)
    yield from between(drawn, "outputs", 1, 8)
    yield from between(drawn, "names", 2, 2)
    inputs, outputs = len(drawn.labels("inputs")), len(drawn.labels("outputs"))
    for start, end in drawn.pairs("arrows"):
        if start not in range(1, inputs + 1) or end not in range(1, outputs + 1):
            yield f"An arrow is (place of the input, place of the output), from (1, 1) to ({inputs}, {outputs})."


GRAPH_RULES: dict[str, Rule] = {
    "grid": _grid,
    "bar-chart": _bar_chart,
    "dot-plot": _dot_plot,
    "histogram": _histogram,
    "box-plot": _box_plot,
    "scatter-plot": _scatter_plot,
    "table": _table,
    "spinner": _spinner,
    "tree": _tree,
    "mapping": _mapping,
}
