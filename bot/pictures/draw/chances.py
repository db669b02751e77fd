"""Spinners, trees of outcomes, and what goes to what."""

from __future__ import annotations

from math import hypot, prod

from bot.course.figures.reading import Drawn
from bot.pictures.canvas import INK, MARGIN, WIDTH, Canvas, Point, on_circle
from bot.pictures.labels import SIZE, room

_SMALL = 14.0
_FILLS = ("shade", "light", "stripe", "paper", "back", "dots", "warm")


def spinner(canvas: Canvas, drawn: Drawn) -> None:
    """A round board in parts with an arrow; parts of one name have one pattern."""
    labels = drawn.labels("parts")
    sizes = [float(size) for size in drawn.numbers("sizes")] or [1.0] * len(labels)
    at, radius = (WIDTH / 2, MARGIN + 118), 116.0
    names = list(dict.fromkeys(labels))
    plain_parts = len(names) == len(labels)
    start = 90.0
    places = []
    for n, (label, size) in enumerate(zip(labels, sizes, strict=True)):
        turn = 360 * size / sum(sizes)
        fill = _part_fill(n, labels) if plain_parts else _FILLS[names.index(label) % len(_FILLS)]
        canvas.arc(at, radius, start - turn, start, wedge=True, fill=fill, width=2)
        places.append((label, start - turn / 2, turn, fill))
        start -= turn
    canvas.arc(at, radius, 0, 360, width=2.8)
    for label, middle, turn, fill in places:
        size = SIZE if room(label).width < radius * 0.6 else _SMALL
        far = radius * (0.66 if turn > 40 else 0.76)
        canvas.write(
            label,
            on_circle(at, far, middle),
            size=size,
            plate="paper" if fill in ("stripe", "back", "dots") else "",
        )
    canvas.arrow(on_circle(at, 20, 215), on_circle(at, 44, 35), 4, INK, 15)
    canvas.disc(at, 6, width=0)


def _part_fill(n: int, labels: list[str]) -> str:
    """Three fills by turns, so that neighbours differ, the last and the first too."""
    last_meets_first = n == len(labels) - 1 and n % 3 == 0
    return "light" if last_meets_first else ("shade", "light", "paper")[n % 3]


def tree(canvas: Canvas, drawn: Drawn) -> None:
    """Stages from left to right, a branch for each thing that can happen, chances on the branches."""
    stages = drawn.rows("stages")
    chances = drawn.rows("chances") if drawn.has("chances") else []
    ends = prod(len(stage) for stage in stages)
    line = 46.0 if chances else 32.0
    widths = [max(room(label).width for label in stage) for stage in stages]
    gap = (WIDTH - 2 * MARGIN - 8 - sum(widths) - 8 * len(stages)) / len(stages)
    gap = min(gap, 90.0)
    start = (MARGIN + 4, MARGIN + ends * line / 2)
    canvas.disc(start, 4, width=0)
    _branches(canvas, stages, chances, widths, gap, line, 0, start, MARGIN, ends)


def _branches(
    canvas: Canvas,
    stages: list[list[str]],
    chances: list[list[str]],
    widths: list[float],
    gap: float,
    line: float,
    depth: int,
    start: Point,
    top: float,
    ends: int,
) -> None:
    if depth == len(stages):
        return
    share = ends // len(stages[depth])
    for n, label in enumerate(stages[depth]):
        y = top + (n + 0.5) * share * line
        end = (start[0] + gap, y)
        canvas.line(start, end, 1.8)
        if chances:
            length = hypot(end[0] - start[0], end[1] - start[1])
            spot = (start[0] + (end[0] - start[0]) * 0.7, start[1] + (y - start[1]) * 0.7)
            canvas.write(chances[depth][n], spot, size=_SMALL if length > 30 else 12, plate="paper")
        canvas.write(label, (end[0] + 5, y), across=0)
        after = (end[0] + 8 + widths[depth], y)
        if depth + 1 < len(stages):
            shown = (end[0] + 5 + room(label).width + 4, y)
            if after[0] - shown[0] > 6:
                canvas.line(shown, after, 1.8)
        _branches(canvas, stages, chances, widths, gap, line, depth + 1, after, top + n * share * line, share)


def mapping(canvas: Canvas, drawn: Drawn) -> None:
    """Two ovals with inputs and outputs, arrows between."""
    inputs, outputs = drawn.labels("inputs"), drawn.labels("outputs")
    rows = max(len(inputs), len(outputs))
    head = 26.0 if drawn.has("names") else 0.0
    tall = rows * 36.0 + 20
    y = MARGIN + head + tall / 2
    half = [max(34.0, max(room(label).width for label in side) / 2 + 16) for side in (inputs, outputs)]
    left, right = MARGIN + half[0] + 14, WIDTH - MARGIN - half[1] - 14
    for n, (x, side) in enumerate(((left, inputs), (right, outputs))):
        canvas.oval((x, y), half[n], tall / 2, 0, 359.9, fill="light")
        if drawn.has("names"):
            canvas.write(drawn.labels("names")[n], (x, MARGIN), down=0)
        for k, label in enumerate(side):
            canvas.write(label, (x, _row(y, k, len(side))))
    for one, other in drawn.pairs("arrows"):
        a = _row(y, int(one) - 1, len(inputs))
        b = _row(y, int(other) - 1, len(outputs))
        start = (left + room(inputs[int(one) - 1]).width / 2 + 8, a)
        end = (right - room(outputs[int(other) - 1]).width / 2 - 8, b)
        canvas.arrow(start, end, 2, INK, 10)


def _row(middle: float, k: int, count: int) -> float:
    return middle + (k - (count - 1) / 2) * 36
