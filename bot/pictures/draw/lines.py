"""Number lines, single and double."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from itertools import pairwise
from statistics import fmean

from bot.course.figures.curves import solutions
from bot.course.figures.reading import Drawn
from bot.course.figures.scales import nice_step, ticks
from bot.course.figures.spoken_parts import step_of
from bot.course.figures.telling import plain
from bot.pictures.canvas import CLAY, MARGIN, PAPER, TEAL, WIDTH, Canvas, Point
from bot.pictures.labels import SIZE, room

_LEFT, _RIGHT = 36.0, WIDTH - 36.0
_OVER = 20.0  # the line runs on a little past its last tick
_JUMP = 30.0
_SMALL = 14.0

Place = Callable[[Fraction], float]


def scale(low: Fraction, high: Fraction, start: float, end: float) -> Place:
    """Where a number lies between two ends of a sheet."""

    def place(value: Fraction) -> float:
        return start + float((value - low) / (high - low)) * (end - start)

    return place


Spell = Callable[[Fraction], str]


def numbered(
    all_ticks: list[Fraction], place: Place, gap: float = 5, size: float = SIZE, spell: Spell = plain
) -> list[Fraction]:
    """Those ticks whose numbers fit side by side: every one, or every second, fifth, tenth, 0 among them."""
    for every in (1, 2, 5, 10, 20, 25, 50, 100):
        step = all_ticks[1] - all_ticks[0] if len(all_ticks) > 1 else Fraction(1)
        chosen = [
            tick for i, tick in enumerate(all_ticks) if _counts(tick, step * every, i, every, all_ticks)
        ]
        ends = [(place(t), room(spell(t), size).width / 2) for t in chosen]
        if all(a[0] + a[1] + gap <= b[0] - b[1] for a, b in pairwise(ends)):
            return chosen
    return [all_ticks[0], all_ticks[-1]]


def _counts(tick: Fraction, step: Fraction, i: int, every: int, all_ticks: list[Fraction]) -> bool:
    if sum((one / step).denominator == 1 for one in all_ticks) > 1:
        return (tick / step).denominator == 1
    return i % every == 0


def _spelling(drawn: Drawn) -> Spell:
    """Ticks as fractions where the figure speaks in fractions, else as decimals; mixed beyond 1, as on a ruler."""
    fractions = any("/" in drawn.text(name) for name in ("from", "to", "step", "points", "numbers"))

    def spell(tick: Fraction) -> str:
        text = plain(tick) if not fractions else f"{'−' if tick < 0 else ''}{abs(tick)}"
        if "/" in text and abs(tick) > 1:
            whole, rest = divmod(abs(tick), 1)
            return f"{'−' if tick < 0 else ''}{whole} {rest}"
        return text

    return spell


def number_line(canvas: Canvas, drawn: Drawn) -> None:
    """A line with ticks, numbers, dots, jumps, and the solutions of an inequality."""
    if drawn.yes("upright"):
        _upright(canvas, drawn)
        return
    low, high, step = drawn.number("from"), drawn.number("to"), step_of(drawn)
    place = scale(low, high, _LEFT, _RIGHT)
    y = MARGIN + 14 + _above(drawn)
    canvas.arrow((WIDTH / 2, y), (_RIGHT + _OVER, y))
    canvas.arrow((WIDTH / 2, y), (_LEFT - _OVER, y))
    marks, spell = ticks(low, high, step), _spelling(drawn)
    wanted = drawn.numbers("numbers") or numbered(
        marks, place, 10 if any("/" in spell(tick) for tick in marks) else 5, spell=spell
    )
    middle = y + 15 + max(room(spell(tick)).height for tick in wanted) / 2
    for tick in sorted({*marks, *drawn.numbers("numbers")}):
        long = tick in wanted
        reach = 8 if long else 5
        canvas.line((place(tick), y - reach), (place(tick), y + reach), 2.4 if tick == 0 else 1.6)
        if long:
            canvas.write(spell(tick), (place(tick), middle))
    _jumps(canvas, drawn, place, y)
    _solutions(canvas, drawn, place, y)
    _dots(canvas, drawn, [(place(at), y) for at in drawn.numbers("points")], (0, -1))


def _above(drawn: Drawn) -> float:
    """Room above the line for what stands there."""
    if drawn.has("jumps"):
        return _JUMP * (1 + max(_levels(drawn))) + 24
    return 26.0 if drawn.has("names") else 4.0


def _dots(canvas: Canvas, drawn: Drawn, spots: list[Point], way: Point) -> None:
    names = drawn.labels("names")
    for i, spot in enumerate(spots):
        canvas.disc(spot, 6, fill=CLAY, width=1.6)
        if names:
            taken = [p for p in canvas.placed if p.label in names[:i]]
            gap = 12.0
            placed = canvas.off(names[i], spot, way, gap=gap)
            while any(placed.meets(other) for other in taken):  # two dots close together
                canvas.placed.pop()
                canvas.marks.pop()
                gap += 18
                placed = canvas.off(names[i], spot, way, gap=gap)


def _levels(drawn: Drawn) -> list[int]:
    """How high each jump goes: above every earlier jump it would cross."""
    levels: list[int] = []
    spans = [(min(jump), max(jump)) for jump in drawn.pairs("jumps")]
    for i, (low, high) in enumerate(spans):
        crossed = [levels[j] for j in range(i) if spans[j][0] < high and low < spans[j][1]]
        levels.append(max(crossed, default=-1) + 1)
    return levels


def _jumps(canvas: Canvas, drawn: Drawn, place: Place, y: float) -> None:
    labels = drawn.labels("jump-labels")
    for i, ((start, end), level) in enumerate(zip(drawn.pairs("jumps"), _levels(drawn), strict=True)):
        a, b, top = place(start), place(end), y - _JUMP * (1 + level) + 2
        shift = 3 if b > a else -3
        ink = TEAL if end > start else CLAY
        handle = y - 8 - (y - 8 - top) * 4 / 3
        canvas.curve(
            (a + shift, y - 8), [((a + shift, handle), (b - shift, handle), (b - shift, y - 12))], ink=ink
        )
        canvas.head((b - shift, y - 20), (b - shift, y - 6), ink)
        if labels:
            canvas.write(labels[i], ((a + b) / 2, top - 5), down=1, size=_SMALL, plate="paper")


def _solutions(canvas: Canvas, drawn: Drawn, place: Place, y: float) -> None:
    found = solutions(drawn.text("inequality")) if drawn.has("inequality") else None
    if found is None:
        return
    left = place(found.low) if found.low is not None else _LEFT - _OVER + 4
    right = place(found.high) if found.high is not None else _RIGHT + _OVER - 4
    canvas.line((left, y), (right, y), 6, TEAL)
    if found.low is None:
        canvas.head((right, y), (_LEFT - _OVER - 4, y), TEAL, 14)
    if found.high is None:
        canvas.head((left, y), (_RIGHT + _OVER + 4, y), TEAL, 14)
    for end, counts in ((found.low, found.low_counts), (found.high, found.high_counts)):
        if end is not None:
            canvas.disc((place(end), y), 7, fill=TEAL if counts else PAPER, ink=TEAL, width=3)


def _upright(canvas: Canvas, drawn: Drawn) -> None:
    low, high, step = drawn.number("from"), drawn.number("to"), step_of(drawn)
    tall = min(340.0, max(180.0, 24.0 * float((high - low) / step)))
    top, bottom, x = MARGIN + 26, MARGIN + 26 + tall, WIDTH / 2 - 20
    place = scale(low, high, bottom, top)
    canvas.arrow((x, bottom), (x, top - _OVER))
    canvas.arrow((x, top), (x, bottom + _OVER))
    marks = ticks(low, high, step)
    wanted = drawn.numbers("numbers")
    if not wanted:
        most = int(tall // 24)
        every = step if len(marks) <= most + 1 else nice_step(high - low, most)
        wanted = [tick for tick in marks if (tick / every).denominator == 1]
    for tick in sorted({*marks, *drawn.numbers("numbers")}):
        reach = 8 if tick in wanted else 5
        canvas.line((x - reach, place(tick)), (x + reach, place(tick)), 2.4 if tick == 0 else 1.6)
        if tick in wanted:
            canvas.write(_spelling(drawn)(tick), (x - 16, place(tick)), across=1)
    labels = drawn.labels("jump-labels")
    for i, (start, end) in enumerate(drawn.pairs("jumps")):
        a, b, out = place(start), place(end), x + 14 + 34 * (1 + _levels(drawn)[i])
        ink = TEAL if end > start else CLAY
        canvas.curve((x + 8, a), [((out, a), (out, b), (x + 14, b))], ink=ink)
        canvas.head((x + 24, b), (x + 8, b), ink)
        if labels:
            canvas.write(labels[i], (out, (a + b) / 2), across=0, size=_SMALL)
    _dots(canvas, drawn, [(x, place(at)) for at in drawn.numbers("points")], (1, 0))
    canvas.height = bottom + _OVER


def double_number_line(canvas: Canvas, drawn: Drawn) -> None:
    """Two lines with joint ticks, labels above the upper and below the lower."""
    top, bottom = drawn.labels("top"), drawn.labels("bottom")
    places = drawn.numbers("at") or [Fraction(i) for i in range(len(top))]
    place = scale(places[0], places[-1], _LEFT, _RIGHT - 6)
    xs = [place(at) for at in places]
    head = room(drawn.text("top-name"), _SMALL).height + 12 if drawn.has("top-name") else 0
    tall = max(room(label).height for label in top)
    above, below = _spread(top, xs), _spread(bottom, xs)
    y = MARGIN + head + 7 + tall + _stub(above, xs)
    lower = y + 30
    if drawn.has("top-name"):
        canvas.write(drawn.text("top-name"), (MARGIN, MARGIN), across=0, down=0, size=_SMALL)
    for line_y in (y, lower):
        canvas.arrow((_LEFT - 12, line_y), (_RIGHT + _OVER, line_y))
    for x in xs:
        canvas.line((x, y - 6), (x, lower + 6), 1.6)
    for labels, spots, edge, way in ((top, above, y, -1), (bottom, below, lower, 1)):
        stub = _stub(spots, xs)
        for label, x, spot in zip(labels, xs, spots, strict=True):
            if stub:
                canvas.line((x, edge + 6 * way), (spot, edge + (6 + stub) * way), 1.2)
            canvas.write(label, (spot, edge + (11 + stub) * way), down=1 if way < 0 else 0)
    if drawn.has("bottom-name"):
        canvas.write(drawn.text("bottom-name"), (MARGIN, canvas.height + 8), across=0, down=0, size=_SMALL)


def _spread(labels: Sequence[str], xs: Sequence[float]) -> list[float]:
    """Where labels stand that would touch above their ticks: as near to them as side by side allows."""
    halves = [room(label).width / 2 for label in labels]
    gaps = [0.0, *(a + b + 7 for a, b in pairwise(halves))]
    before = [sum(gaps[: n + 1]) for n in range(len(gaps))]
    # With the gaps taken off, labels have to come in order; those that don't share their mean.
    pools: list[list[float]] = []
    for x, shift in zip(xs, before, strict=True):
        pools.append([x - shift])
        while len(pools) > 1 and fmean(pools[-2]) > fmean(pools[-1]):
            pools[-2:] = [pools[-2] + pools[-1]]
    spots = [fmean(pool) for pool in pools for _ in pool]
    least, most = MARGIN / 2 + halves[0], WIDTH - MARGIN / 2 - halves[-1] - before[-1]
    return [min(max(spot, least), most) + shift for spot, shift in zip(spots, before, strict=True)]


def _stub(spots: Sequence[float], xs: Sequence[float]) -> float:
    """How long the lines are that lead from ticks to labels: none where every label stands at its tick."""
    return 12.0 if any(abs(spot - x) > 3 for spot, x in zip(spots, xs, strict=True)) else 0.0
