"""Graphs, plots, tables and figures of chance in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise

from bot.course.figures.curves import curve
from bot.course.figures.reading import Drawn, by_twos
from bot.course.figures.telling import Tell, Telling, plain

_CURVE_POINTS = 5


def _at(point: Sequence[Fraction]) -> str:
    return f"({plain(point[0])}, {plain(point[1])})"


def _place(telling: Telling, point: Sequence[Fraction]) -> str:
    """Where a point is, in steps from the origin: what the grid shows, not its coordinates."""
    x, y = point
    if x == 0 == y:
        return telling.say("grid.origin")
    said = []
    if x:
        said.append(telling.say("grid.right" if x > 0 else "grid.left", by=plain(abs(x))))
    if y:
        said.append(telling.say("grid.up" if y > 0 else "grid.down", by=plain(abs(y))))
    return telling.say("grid.place", across=telling.say("and").join(said))


def _grid(drawn: Drawn, telling: Telling) -> Iterator[str]:
    say = telling.say
    (left, right, _), (low, high, _) = drawn.span("x"), drawn.span("y")
    yield say("grid", left=plain(left), right=plain(right), low=plain(low), high=plain(high))
    if drawn.has("x-name") or drawn.has("y-name"):
        yield say("grid.names", x=drawn.text("x-name", "x"), y=drawn.text("y-name", "y"))
    names = drawn.labels("names")
    for n, point in enumerate(drawn.pairs("points")):
        place = _place(telling, point)
        yield say("grid.named", name=names[n], place=place) if names else say("grid.point", place=place)
    for text in drawn.labels("line"):
        yield _line(telling, text, left, right, low, high)
    for key, field in (("grid.line", "through"), ("grid.segment", "segments"), ("grid.arrow", "arrows")):
        for one, other in by_twos(drawn.pairs(field)):
            yield say(key, one=_at(one), other=_at(other))
    for key, field in (("grid.polygon", "polygons"), ("grid.image", "images")):
        for corners in drawn.pair_rows(field):
            yield say(key, points=", ".join(_at(corner) for corner in corners))
    if drawn.has("path"):
        yield say("grid.path", points=say("to").join(_at(point) for point in drawn.pairs("path")))
    for one, other in by_twos(drawn.pairs("steps")):
        yield say("grid.step", one=_at(one), other=_at(other))


def _line(telling: Telling, text: str, left: Fraction, right: Fraction, low: Fraction, high: Fraction) -> str:
    """A line by points that can be read off, not by its equation."""
    drawn = curve(text)
    if drawn is None:
        return ""
    if drawn.upright is not None:
        return telling.say("grid.upright", one=_at((drawn.upright, Fraction(0))))
    heights = [(Fraction(x), drawn.at(Fraction(x))) for x in range(int(left), int(right) + 1)]
    seen = [(x, y) for x, y in heights if y is not None and low <= y <= high]
    plainest = sorted(seen, key=lambda point: (point[1].denominator, abs(point[0])))
    slopes = {(b[1] - a[1]) / (b[0] - a[0]) for a, b in pairwise(seen)}
    if len(slopes) == 1:
        one, other = sorted(plainest[:2])
        return telling.say("grid.line", one=_at(one), other=_at(other))
    return telling.say(
        "grid.curve", points=", ".join(_at(point) for point in sorted(plainest[:_CURVE_POINTS]))
    )


def _bar_chart(drawn: Drawn, telling: Telling) -> Iterator[str]:
    names, values, second = drawn.labels("names"), drawn.labels("values"), drawn.labels("second")
    if second:
        bars = [
            telling.say("bar-chart.two", name=name, first=first, second=other)
            for name, first, other in zip(names, values, second, strict=True)
        ]
    else:
        both = zip(names, values, strict=True)
        bars = [telling.say("bar-chart.bar", name=name, value=telling.label(value)) for name, value in both]
    what = drawn.text("value-name")
    yield telling.say("bar-chart.named" if what else "bar-chart", what=what, bars=", ".join(bars))
    if second and drawn.has("keys"):
        yield telling.say("bar-chart.keys", first=drawn.labels("keys")[0], second=drawn.labels("keys")[1])
    yield from _mean(drawn, telling)


def _mean(drawn: Drawn, telling: Telling) -> Iterator[str]:
    if drawn.has("mean"):
        yield telling.say("mean", at=drawn.text("mean"))


def _keys(drawn: Drawn, telling: Telling) -> Iterator[str]:
    if drawn.has("keys"):
        yield telling.say("keys", first=drawn.labels("keys")[0], second=drawn.labels("keys")[1])


def _dot_plot(drawn: Drawn, telling: Telling) -> Iterator[str]:
    what = drawn.text("name")
    key = "dot-plot.named" if what else "dot-plot"
    yield telling.say(key, what=what, dots=_dots(telling, drawn.numbers("data")))
    if drawn.has("second"):
        yield telling.say("dot-plot.second", dots=_dots(telling, drawn.numbers("second")))
    yield from _keys(drawn, telling)
    yield from _mean(drawn, telling)


def _dots(telling: Telling, data: list[Fraction]) -> str:
    counts = sorted(Counter(data).items())
    return ", ".join(
        telling.say("dot-plot.dots" if count > 1 else "dot-plot.dot", at=plain(value), count=count)
        for value, count in counts
    )


def _histogram(drawn: Drawn, telling: Telling) -> Iterator[str]:
    low, width = drawn.number("from"), drawn.number("width")
    bars = [
        telling.say(
            "histogram.bar", low=plain(low + n * width), high=plain(low + (n + 1) * width), count=count
        )
        for n, count in enumerate(drawn.labels("counts"))
    ]
    what = drawn.text("name")
    yield telling.say("histogram.named" if what else "histogram", what=what, bars=", ".join(bars))
    if drawn.has("count-name"):
        yield telling.say("histogram.counts", what=drawn.text("count-name"))


def five_numbers(drawn: Drawn) -> list[Fraction]:
    """Lowest, lower quartile, median, upper quartile, highest of a box plot.

    A quartile is the median of a half; with an odd count the middle number belongs to neither half (common
    practice in schools, no source; other rules give slightly other numbers).
    """
    if drawn.has("five"):
        return drawn.numbers("five")
    data = sorted(drawn.numbers("data"))
    half = len(data) // 2
    return [data[0], _middle(data[:half]), _middle(data), _middle(data[-half:]), data[-1]]


def _middle(data: Sequence[Fraction]) -> Fraction:
    return (data[(len(data) - 1) // 2] + data[len(data) // 2]) / 2


def _box_plot(drawn: Drawn, telling: Telling) -> Iterator[str]:
    what = drawn.text("name")
    yield telling.say(
        "box-plot.named" if what else "box-plot", what=what, five=_five(telling, five_numbers(drawn))
    )
    if drawn.has("second"):
        yield telling.say("box-plot.second", five=_five(telling, drawn.numbers("second")))
    yield from _keys(drawn, telling)


def _five(telling: Telling, numbers: list[Fraction]) -> str:
    low, lower, median, upper, high = (plain(number) for number in numbers)
    return telling.say("box-plot.five", low=low, lower=lower, median=median, upper=upper, high=high)


def _scatter_plot(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(
        "scatter",
        x=drawn.text("x-name", "x"),
        y=drawn.text("y-name", "y"),
        points=", ".join(_at(point) for point in drawn.pairs("points")),
    )
    if drawn.has("line"):
        yield telling.say("scatter.line", line=drawn.text("line"))


def _table(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say("table")
    for n, row in enumerate(drawn.rows("rows"), 1):
        # An author leaves a cell empty by a blank between quotes.
        cells = [telling.label(cell) if cell.strip() else telling.say("tape.empty") for cell in row]
        yield telling.say("table.row", n=n, cells=", ".join(cells))


def _balance(drawn: Drawn, telling: Telling) -> Iterator[str]:
    left, right = telling.label(drawn.text("left")), telling.label(drawn.text("right"))
    yield telling.say("balance", left=left, right=right)


def _spinner(drawn: Drawn, telling: Telling) -> Iterator[str]:
    labels, sizes = drawn.labels("parts"), drawn.numbers("sizes")
    if sizes:
        shares = zip(labels, sizes, strict=True)
        said = [
            telling.say("spinner.part", label=telling.label(label), share=size / sum(sizes))
            for label, size in shares
        ]
        yield telling.say("spinner.sizes", count=len(labels), parts="; ".join(said))
    else:
        yield telling.say("spinner", count=len(labels), parts=telling.all(labels))


def _tree(drawn: Drawn, telling: Telling) -> Iterator[str]:
    stages, chances = drawn.rows("stages"), drawn.rows("chances")
    yield telling.say("tree", count=len(stages))
    for n, stage in enumerate(stages):
        said = [telling.label(what) for what in stage]
        if drawn.has("chances"):
            both = zip(said, chances[n], strict=True)
            said = [
                telling.say("tree.chance", what=what, chance=telling.label(chance)) for what, chance in both
            ]
        yield telling.say("tree.stage", n=n + 1, what=", ".join(said))


def _mapping(drawn: Drawn, telling: Telling) -> Iterator[str]:
    inputs, outputs = drawn.labels("inputs"), drawn.labels("outputs")
    arrows = [
        telling.say("mapping.arrow", start=inputs[int(start) - 1], end=outputs[int(end) - 1])
        for start, end in drawn.pairs("arrows")
    ]
    yield telling.say(
        "mapping", inputs=telling.all(inputs), outputs=telling.all(outputs), arrows=", ".join(arrows)
    )
    if drawn.has("names"):
        yield telling.say("mapping.names", first=drawn.labels("names")[0], second=drawn.labels("names")[1])


GRAPHS: Mapping[str, Tell] = {
    "grid": _grid,
    "bar-chart": _bar_chart,
    "dot-plot": _dot_plot,
    "histogram": _histogram,
    "box-plot": _box_plot,
    "scatter-plot": _scatter_plot,
    "table": _table,
    "balance": _balance,
    "spinner": _spinner,
    "tree": _tree,
    "mapping": _mapping,
}
