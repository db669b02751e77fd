"""What has to hold in figures for numbers and their parts."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from bot.course.figures.curves import solutions
from bot.course.figures.reading import Drawn
from bot.course.figures.rules import Rule, as_many, between, inside, whole, wholes

MOST_BOXES = 24  # more than this can't be told apart at the width of a phone
PLACES = (
    "hundred millions",
    "ten millions",
    "millions",
    "hundred thousands",
    "ten thousands",
    "thousands",
    "hundreds",
    "tens",
    "ones",
    "tenths",
    "hundredths",
    "thousandths",
    "ten thousandths",
    "hundred thousandths",
    "millionths",
)
MOST_DECIMALS = len(PLACES) - 1 - PLACES.index("ones")


def _number_line(drawn: Drawn) -> Iterator[str]:
    low, high = drawn.number("from"), drawn.number("to")
    if low >= high:
        yield f"'from' is left of 'to'; here they are {low} and {high}."
        return
    if drawn.has("step") and (drawn.number("step") <= 0 or (high - low) / drawn.number("step") > 100):
        yield "'step' is above 0 and leaves at most 100 ticks. Without it a fitting one is chosen."
    yield from inside(drawn, "points", low, high)
    yield from inside(drawn, "numbers", low, high)
    for start, end in drawn.pairs("jumps"):
        if not (low <= start <= high and low <= end <= high):
            yield f"The jump from {start} to {end} leaves the line, which goes from {low} to {high}."
    yield from as_many(drawn, "jump-labels", "jumps")
    yield from as_many(drawn, "names", "points")
    if drawn.has("inequality") and solutions(drawn.text("inequality")) is None:
        yield f"'inequality' is like x > 3 or -2 ≤ x < 5; here it is '{drawn.text('inequality')}'."


def _double_number_line(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "top", 2, 12)
    yield from as_many(drawn, "top", "bottom")
    yield from as_many(drawn, "at", "top")
    places = drawn.numbers("at")
    if any(one >= other for one, other in pairwise(places)):
        yield "'at' goes from small to large, each place once."


def _bar(drawn: Drawn) -> Iterator[str]:
    for name in ("length", "pieces"):
        if drawn.number(name) <= 0:
            yield f"'{name}' is above 0; here it is {drawn.number(name)}."


def _fraction_bars(drawn: Drawn) -> Iterator[str]:
    bars = drawn.pairs("bars")
    yield from between(drawn, "bars", 1, 5)
    yield from as_many(drawn, "names", "bars")
    for shaded, parts in bars:
        if parts.denominator != 1 or not 1 <= parts <= MOST_BOXES:
            yield f"A bar has 1 to {MOST_BOXES} parts; here it has {parts}."
        elif shaded.denominator != 1 or not 0 <= shaded <= 4 * parts:
            yield f"'bars' holds (shaded, parts), both whole, such as (2, 3); here is ({shaded}, {parts})."


def _circle_parts(drawn: Drawn) -> Iterator[str]:
    yield from whole(drawn, "parts", 1, MOST_BOXES)
    yield from whole(drawn, "shaded", 0, 4 * int(drawn.number("parts")))


def _hundred_grid(drawn: Drawn) -> Iterator[str]:
    yield from whole(drawn, "shaded", 0, 300)
    yield from whole(drawn, "striped", 0, 300 - int(drawn.number("shaded")))


def _square_parts(drawn: Drawn) -> Iterator[str]:
    yield from whole(drawn, "rows", 1, 12)
    yield from whole(drawn, "columns", 1, 12)
    yield from whole(drawn, "shaded-rows", 0, int(drawn.number("rows")))
    yield from whole(drawn, "shaded-columns", 0, int(drawn.number("columns")))


def _place_value(drawn: Drawn) -> Iterator[str]:
    value = drawn.number("number")
    if not 0 <= value < 10**9 or (value * 10**MOST_DECIMALS).denominator != 1:
        yield (
            f"'number' is 0 or above and below a thousand million, with at most {MOST_DECIMALS} places after the"
            f" point; here it is {drawn.text('number')}."
        )
    yield from whole(drawn, "places", 0, MOST_DECIMALS)
    if drawn.has("mark") and drawn.text("mark") not in PLACES:
        yield f"'mark' names a place, such as tens or tenths; here it is '{drawn.text('mark')}'."


def _counters(drawn: Drawn) -> Iterator[str]:
    yield from whole(drawn, "plus", 0, 20)
    yield from whole(drawn, "minus", 0, 20)


def _objects(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "counts", 1, 5)
    yield from wholes(drawn, "counts", 0, 20)
    yield from as_many(drawn, "names", "counts")


def _array(drawn: Drawn) -> Iterator[str]:
    yield from whole(drawn, "rows", 1, 20)
    yield from whole(drawn, "columns", 1, 20)


def _tape(drawn: Drawn) -> Iterator[str]:
    bars = [len(row) for row in drawn.rows("boxes")] if drawn.has("boxes") else drawn.numbers("parts")
    if not 1 <= len(bars) <= 4:
        yield f"A tape diagram has 1 to 4 bars; here are {len(bars)}."
    yield from wholes(drawn, "parts", 1, 20)
    for name in ("names", "totals"):
        if drawn.has(name) and len(drawn.labels(name)) != len(bars):
            yield f"'{name}' has one label a bar; here are {len(drawn.labels(name))} for {len(bars)} bars."


def _clock(drawn: Drawn) -> Iterator[str]:
    for hour, minute in (("hour", "minute"), ("end-hour", "end-minute")):
        yield from whole(drawn, hour, 0, 23)
        yield from whole(drawn, minute, 0, 59)
    if drawn.has("end-hour") != drawn.has("end-minute"):
        yield "A second clock needs both 'end-hour' and 'end-minute'."


PART_RULES: dict[str, Rule] = {
    "number-line": _number_line,
    "double-number-line": _double_number_line,
    "bar": _bar,
    "fraction-bars": _fraction_bars,
    "circle-parts": _circle_parts,
    "hundred-grid": _hundred_grid,
    "square-parts": _square_parts,
    "place-value": _place_value,
    "counters": _counters,
    "objects": _objects,
    "array": _array,
    "tape": _tape,
    "clock": _clock,
}
