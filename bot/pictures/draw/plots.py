"""Data as pictures: bar charts, dot plots, histograms, box plots."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from math import ceil, gcd, lcm

from bot.course.figures.reading import Drawn
from bot.course.figures.scales import nice_step, outward, ticks
from bot.course.figures.spoken_graphs import five_numbers
from bot.course.figures.telling import plain
from bot.pictures.canvas import CLAY, FAINT, MARGIN, TEAL, WIDTH, Canvas
from bot.pictures.draw.lines import Place, numbered, scale
from bot.pictures.labels import room, wrap

_SMALL = 14.0
_TALL = 180.0


def _height_scale(
    canvas: Canvas, highest: Fraction, step: Fraction | None, name: str
) -> tuple[float, Place, float]:
    """Level lines with numbers on the left: where the bars begin, how high a value is, the height of 0."""
    step = step or max(
        nice_step(highest or Fraction(1), 8), Fraction(1) if highest.denominator == 1 else Fraction(0)
    )
    top_value = -(-(highest or Fraction(1)) // step) * step
    every = max(1, ceil(float(top_value / step) * 20 / _TALL))
    all_lines = ticks(Fraction(0), top_value, step)
    left = MARGIN + max(room(plain(v), _SMALL).width for v in all_lines) + 8
    top = MARGIN + (24 if name else 6)
    place = scale(Fraction(0), top_value, top + _TALL, top)
    if name:
        canvas.write(name, (MARGIN / 2, MARGIN / 2), across=0, down=0, size=_SMALL)
    for n, value in enumerate(all_lines):
        canvas.line((left, place(value)), (WIDTH - MARGIN, place(value)), 1, FAINT)
        if n % every == 0:
            canvas.write(plain(value), (left - 6, place(value)), across=1, size=_SMALL)
    return left, place, top + _TALL


def bar_chart(canvas: Canvas, drawn: Drawn) -> None:
    """A bar for each name, or two; names stand upright where they don't fit."""
    names, values, second = drawn.labels("names"), drawn.numbers("values"), drawn.numbers("second")
    highest = max([*values, *second, drawn.number("mean")])
    step = drawn.number("step") if drawn.has("step") else None
    left, place, floor = _height_scale(canvas, highest, step, drawn.text("value-name"))
    slot = (WIDTH - MARGIN - left) / len(names)
    wide = slot * (0.36 if second else 0.62)
    for n in range(len(names)):
        middle = left + (n + 0.5) * slot
        bars = [(values[n], "shade")] + ([(second[n], "stripe")] if second else [])
        for k, (value, fill) in enumerate(bars):
            x = middle + (k - len(bars) / 2) * wide
            canvas.rectangle(x, place(value), wide, floor - place(value), fill=fill)
    canvas.line((left, floor), (WIDTH - MARGIN, floor), 2.4)
    _names_below(canvas, names, left, slot, floor)
    if drawn.has("mean"):
        y = place(drawn.number("mean"))
        canvas.line((left, y), (WIDTH - MARGIN, y), 2.4, CLAY, "dash")
    if second and drawn.has("keys"):
        _key(canvas, drawn.labels("keys"))


def _names_below(canvas: Canvas, names: list[str], left: float, slot: float, floor: float) -> None:
    size = _SMALL if max(room(name).width for name in names) > slot - 4 else 16.0
    lines = [wrap(name, slot - 4, size) for name in names]
    staggered = any(room(line, size).width > slot - 2 for name in lines for line in name)
    for n, name in enumerate(lines):
        y = floor + 9 + (20 if staggered and n % 2 else 0)
        for line in [" ".join(name)] if staggered else name:
            canvas.write(line, (left + (n + 0.5) * slot, y), down=0, size=size)
            y += room(line, size).height + 5


def _key(canvas: Canvas, keys: list[str]) -> None:
    y, x = canvas.height + 20, MARGIN + 10
    for key, fill in zip(keys, ("shade", "stripe"), strict=True):
        canvas.rectangle(x, y - 8, 16, 16, fill=fill, width=1.6)
        placed = canvas.write(key, (x + 23, y), across=0, size=_SMALL)
        x = placed.right + 24


def _axis(canvas: Canvas, low: Fraction, high: Fraction, step: Fraction, y: float, name: str) -> Place:
    place = scale(low, high, MARGIN + 16, WIDTH - MARGIN - 16)
    canvas.line((MARGIN + 4, y), (WIDTH - MARGIN - 4, y), 2)
    marks = ticks(low, high, step)
    wanted = numbered(marks, place, 7, _SMALL)
    for tick in marks:
        reach = 7 if tick in wanted else 4
        canvas.line((place(tick), y), (place(tick), y + reach), 1.6)
        if tick in wanted:
            canvas.write(plain(tick), (place(tick), y + 11), down=0, size=_SMALL)
    if name:
        canvas.write(name, (WIDTH / 2, canvas.height + 8), down=0, size=_SMALL)
    return place


def _scale_of(drawn: Drawn, values: list[Fraction], most: int) -> tuple[Fraction, Fraction, Fraction]:
    """Ends and step: as given, else just around the data."""
    low = drawn.number("from") if drawn.has("from") else min(values)
    high = drawn.number("to") if drawn.has("to") else max(values)
    if low == high:
        low, high = low - 1, high + 1
    if drawn.has("step"):
        return low, high, drawn.number("step")
    if all(value.denominator == 1 for value in [*values, low, high]) and high - low <= 30:
        return low, high, Fraction(1)
    shared = _shared_step([*values, low, high])
    if (high - low) / shared <= 30:
        return low, high, shared
    step = nice_step(high - low, most)
    outer_low, outer_high, _ = outward([low, high], most)
    return (low if drawn.has("from") else outer_low), (high if drawn.has("to") else outer_high), step


def _shared_step(values: list[Fraction]) -> Fraction:
    """The longest step that all values are whole numbers of."""
    bottom = lcm(*(value.denominator for value in values))
    return Fraction(gcd(*(int(value * bottom) for value in values)) or 1, bottom)


def dot_plot(canvas: Canvas, drawn: Drawn) -> None:
    """A dot for each number, one above the other; a second list below on the same scale."""
    lists = [drawn.numbers("data")] + ([drawn.numbers("second")] if drawn.has("second") else [])
    keys = drawn.labels("keys")
    low, high, step = _scale_of(drawn, [value for data in lists for value in data], 20)
    slot = (WIDTH - 2 * MARGIN - 32) / max(float((high - low) / step), 1)
    for n, data in enumerate(lists):
        counts = Counter(data)
        radius = min(7.0, slot * 0.42, 200 / (2.4 * max(counts.values())))
        if keys:
            canvas.write(keys[n], (MARGIN, canvas.height + MARGIN), across=0, down=0, size=_SMALL)
        top = canvas.height + (16 if keys else MARGIN)
        floor = top + 2.4 * radius * max(counts.values()) + 10
        place = _axis(canvas, low, high, step, floor, drawn.text("name") if n == len(lists) - 1 else "")
        for value, count in counts.items():
            for k in range(count):
                canvas.disc(
                    (place(value), floor - 4 - radius * (1 + 2.3 * k)), radius, fill=(TEAL, CLAY)[n], width=0
                )
        if drawn.has("mean") and n == 0:
            canvas.line(
                (place(drawn.number("mean")), top - 6),
                (place(drawn.number("mean")), floor),
                2.4,
                CLAY,
                "dash",
            )


def histogram(canvas: Canvas, drawn: Drawn) -> None:
    """Touching bars over equal intervals, the borders numbered."""
    low, width, counts = drawn.number("from"), drawn.number("width"), drawn.numbers("counts")
    left, place, floor = _height_scale(canvas, max(counts), None, drawn.text("count-name"))
    slot = (WIDTH - MARGIN - 10 - left) / len(counts)
    for n, count in enumerate(counts):
        canvas.rectangle(left + n * slot, place(count), slot, floor - place(count), fill="shade")
    canvas.line((left, floor), (WIDTH - MARGIN, floor), 2.4)
    borders = [low + n * width for n in range(len(counts) + 1)]
    across = scale(borders[0], borders[-1], left, left + slot * len(counts))
    widest = max(room(plain(border), _SMALL).width for border in borders)
    every = 1 if widest + 6 <= slot else 2
    for n, border in enumerate(borders):
        canvas.line((across(border), floor), (across(border), floor + 6), 1.6)
        if n % every == 0:
            canvas.write(plain(border), (across(border), floor + 10), down=0, size=_SMALL)
    if drawn.has("name"):
        canvas.write(drawn.text("name"), ((left + WIDTH) / 2, canvas.height + 8), down=0, size=_SMALL)


def box_plot(canvas: Canvas, drawn: Drawn) -> None:
    """One box plot, or two on one scale."""
    plots = [five_numbers(drawn)] + ([drawn.numbers("second")] if drawn.has("second") else [])
    keys = drawn.labels("keys")
    low, high, step = _scale_of(drawn, [value for plot in plots for value in plot], 20)
    place = scale(low, high, MARGIN + 16, WIDTH - MARGIN - 16)
    tall, y = 44.0, MARGIN
    for n, (lowest, lower, median, upper, highest) in enumerate(plots):
        if keys:
            canvas.write(keys[n], (MARGIN, y), across=0, down=0, size=_SMALL)
            y += 20
        middle = y + tall / 2
        canvas.line((place(lowest), middle), (place(lower), middle), 2.4)
        canvas.line((place(upper), middle), (place(highest), middle), 2.4)
        for end in (lowest, highest):
            canvas.line((place(end), middle - 12), (place(end), middle + 12), 2.4)
        canvas.rectangle(
            place(lower), y, place(upper) - place(lower), tall, fill=("shade", "stripe")[n], width=2.4
        )
        canvas.line((place(median), y), (place(median), y + tall), 4.5)
        y += tall + 16
    _axis(canvas, low, high, step, y + 4, drawn.text("name"))
