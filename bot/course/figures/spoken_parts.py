"""Figures for numbers and their parts in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import ceil

from bot.course.figures.curves import solutions
from bot.course.figures.part_rules import MOST_DECIMALS, PLACES
from bot.course.figures.reading import Drawn, number
from bot.course.figures.scales import line_step
from bot.course.figures.telling import Tell, Telling, plain

MOST_PIECES = 12  # of a bar; the rest is torn off


def step_of(drawn: Drawn) -> Fraction:
    """From one tick of a number line to the next."""
    if drawn.has("step"):
        return drawn.number("step")
    return line_step(drawn.number("from"), drawn.number("to"), *drawn.numbers("points"))


def _number_line(drawn: Drawn, telling: Telling) -> Iterator[str]:
    say, step = telling.say, step_of(drawn)
    low, high = plain(drawn.number("from")), plain(drawn.number("to"))
    every = drawn.text("step") or (str(step) if "/" in drawn.text("points") else plain(step))
    yield say("line.upright" if drawn.yes("upright") else "line", low=low, high=high, step=every)
    if drawn.has("numbers"):
        yield say("line.numbers", numbers=", ".join(drawn.labels("numbers")))
    names = drawn.labels("names")
    for i, at in enumerate(drawn.labels("points")):
        yield _dot(drawn, telling, names[i] if names else say("line.dot"), number(at))
    labels = drawn.labels("jump-labels")
    for i, (start, end) in enumerate(drawn.pairs("jumps")):
        key = "line.jump.label" if labels else "line.jump"
        yield say(key, start=plain(start), end=plain(end), label=telling.label(labels[i]) if labels else "")
    if drawn.has("inequality"):
        yield _thick(drawn, telling)


def _dot(drawn: Drawn, telling: Telling, name: str, at: Fraction | None) -> str:
    """Where a dot is, in ticks from nought or else from the nearest tick with a number: to be read off, not told."""
    step, at = step_of(drawn), at or Fraction(0)
    numbered = drawn.numbers("numbers") or [drawn.number("from"), drawn.number("to"), Fraction(0)]
    inside = [n for n in numbered if drawn.number("from") <= n <= drawn.number("to")]
    if at in inside:
        return telling.say("line.named.here", name=name, at=plain(at))
    near_nought = 0 in inside and abs(at) <= 10 * step
    nearest = Fraction(0) if near_nought else min(inside, key=lambda n: abs(n - at))
    upright = drawn.yes("upright")
    way = ("above" if upright else "right") if at > nearest else ("below" if upright else "left")
    steps = abs(at - nearest) / step
    key = "line.named.one" if steps == 1 else "line.named" if steps.denominator == 1 else "line.named.part"
    return telling.say(
        key,
        name=name,
        ticks=steps,
        distance=plain(abs(at - nearest)),
        way=telling.say(f"line.{way}"),
        at=plain(nearest),
    )


def _thick(drawn: Drawn, telling: Telling) -> str:
    found = solutions(drawn.text("inequality"))
    if found is None:
        return ""
    low = high = ""
    if found.low is not None:
        low = telling.say("line.low.closed" if found.low_counts else "line.low.open", at=plain(found.low))
    if found.high is not None:
        high = telling.say("line.low.closed" if found.high_counts else "line.low.open", at=plain(found.high))
    if low and high:
        return telling.say("line.between", low=low, high=high)
    return telling.say("line.ray.right", end=low) if low else telling.say("line.ray.left", end=high)


def _double_number_line(drawn: Drawn, telling: Telling) -> Iterator[str]:
    both = zip(drawn.labels("top"), drawn.labels("bottom"), strict=True)
    yield telling.say(
        "double",
        top=drawn.text("top-name", telling.say("double.scale")),
        bottom=drawn.text("bottom-name", telling.say("double.other")),
        pairs=", ".join(
            telling.say("double.pair", top=telling.label(t), bottom=telling.label(b)) for t, b in both
        ),
    )


def _bar(drawn: Drawn, telling: Telling) -> Iterator[str]:
    unit = f" {drawn.text('unit')}" if drawn.has("unit") else ""
    yield telling.say("bar", length=drawn.text("length") + unit, pieces=drawn.text("pieces") + unit)
    if drawn.has("shaded"):
        yield telling.say("bar.shaded", shaded=drawn.text("shaded"))
    if drawn.number("length") / drawn.number("pieces") > MOST_PIECES:
        yield telling.say("bar.more", count=MOST_PIECES)


def _fraction_bars(drawn: Drawn, telling: Telling) -> Iterator[str]:
    bars, names = drawn.pairs("bars"), drawn.labels("names")
    yield telling.say("bars" if len(bars) > 1 else "bars.one", count=len(bars))
    for n, (shaded, parts) in enumerate(bars):
        name = telling.label(names[n]) if names else telling.say("bars.name", n=n + 1)
        key = "bars.bar" if shaded <= parts else "bars.wholes"
        yield telling.say(key, name=name, shaded=plain(shaded), parts=plain(parts))


def _circle_parts(drawn: Drawn, telling: Telling) -> Iterator[str]:
    parts, shaded = drawn.count("parts"), drawn.count("shaded")
    circles = max(1, ceil(shaded / parts))
    yield telling.say(
        "circle-parts" if circles == 1 else "circle-parts.more", count=circles, parts=parts, shaded=shaded
    )
    yield from telling.parts(drawn, label="below")


def _hundred_grid(drawn: Drawn, telling: Telling) -> Iterator[str]:
    shaded, striped = drawn.count("shaded"), drawn.count("striped")
    grids = max(1, ceil((shaded + striped) / 100))
    yield telling.say(
        "hundred-grid" if grids == 1 else "hundred-grid.grids", count=grids, shaded=_columns(telling, shaded)
    )
    if striped:
        yield telling.say("hundred-grid.striped", striped=_columns(telling, striped))
    yield from telling.parts(drawn, label="below")


def _columns(telling: Telling, squares: int) -> str:
    return telling.say("hundred-grid.parts", columns=squares // 10, squares=squares % 10)


def _square_parts(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(
        "square-parts",
        rows=drawn.text("rows"),
        columns=drawn.text("columns"),
        shaded_rows=drawn.text("shaded-rows"),
        shaded_columns=drawn.text("shaded-columns"),
    )


def digits(drawn: Drawn) -> list[tuple[str, str]]:
    """The places of a place value chart with their digits, from the left."""
    value = drawn.number("number")
    decimals = drawn.count("places")
    while decimals < MOST_DECIMALS and (value * 10**decimals).denominator != 1:
        decimals += 1
    if drawn.has("mark"):
        decimals = max(decimals, PLACES.index(drawn.text("mark")) - PLACES.index("ones"))
    figures = str(int(value * 10**decimals)).zfill(decimals + 1)
    first = PLACES.index("ones") - (len(figures) - decimals - 1)
    return list(zip(PLACES[first:], figures, strict=False))


def _place_value(drawn: Drawn, telling: Telling) -> Iterator[str]:
    cells = [telling.say("place-value.digit", place=place, digit=digit) for place, digit in digits(drawn)]
    yield telling.say("place-value", digits=", ".join(cells))
    if drawn.has("mark"):
        yield telling.say("place-value.mark", place=drawn.text("mark"))


def _counters(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say("counters", plus=drawn.text("plus"), minus=drawn.text("minus"))
    if drawn.yes("pairs"):
        yield telling.say("counters.pairs", pairs=min(drawn.count("plus"), drawn.count("minus")))


def _objects(drawn: Drawn, telling: Telling) -> Iterator[str]:
    both = zip(drawn.labels("names"), drawn.labels("counts"), strict=True)
    yield telling.say(
        "objects", rows="; ".join(telling.say("objects.row", name=name, count=count) for name, count in both)
    )


def _array(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say("array", rows=drawn.text("rows"), columns=drawn.text("columns"))


def tape_bars(drawn: Drawn) -> list[list[str]]:
    """The boxes of each bar; an empty text is an empty box."""
    if drawn.has("boxes"):
        return [["" if box == "none" else box for box in row] for row in drawn.rows("boxes")]
    each = drawn.text("each")
    return [[each] * int(parts) for parts in drawn.numbers("parts")]


def _tape(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say("tape")
    names, totals = drawn.labels("names"), drawn.labels("totals")
    for n, boxes in enumerate(tape_bars(drawn)):
        name = telling.label(names[n]) if names else telling.say("tape.name", n=n + 1)
        if drawn.has("boxes"):
            said = [telling.label(box) if box else telling.say("tape.empty") for box in boxes]
            yield telling.say("tape.bar", name=name, boxes=", ".join(said))
        else:
            each = telling.label(drawn.text("each")) if drawn.has("each") else ""
            key = "tape.parts.each" if each else "tape.parts"
            yield telling.say(key, name=name, count=len(boxes), each=each)
        if totals:
            yield telling.say("tape.total", total=telling.label(totals[n]))
    yield from telling.parts(drawn, total="tape.all.label")


def _clock(drawn: Drawn, telling: Telling) -> Iterator[str]:
    for key, hour, minute in (("clock", "hour", "minute"), ("clock.second", "end-hour", "end-minute")):
        if drawn.has(hour):
            hours, minutes = drawn.count(hour) % 12 or 12, drawn.count(minute)
            past = minutes % 5
            place = minutes // 5 or 12
            yield telling.say(
                key,
                short=telling.say(
                    "clock.between" if minutes else "clock.at", hour=hours, next=hours % 12 + 1
                ),
                long=telling.say("clock.past" if past else "clock.minute", minutes=past, hour=place),
            )


PARTS: Mapping[str, Tell] = {
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
