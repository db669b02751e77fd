"""Angles: one with a protractor, several at a point, and those at parallel lines."""

from __future__ import annotations

from collections.abc import Sequence
from math import radians, sin

from bot.course.figures.reading import BARE, Drawn
from bot.course.figures.shape_rules import arms_at_a_point
from bot.course.figures.telling import plain
from bot.pictures.canvas import MARGIN, PENCIL, TEAL, WIDTH, Canvas, Point, bends, on_circle
from bot.pictures.draw.shapes import in_opening

_SMALL = 12.0
_ARM = 140.0


def angle(canvas: Canvas, drawn: Drawn) -> None:
    """One angle: the first arm lies to the right, the second is turned counterclockwise."""
    size = float(drawn.number("degrees"))
    shown = (
        "" if drawn.figure.get("label") == BARE else drawn.text("label", f"{plain(drawn.number('degrees'))}°")
    )
    if drawn.yes("protractor"):
        _protractor(canvas, size)
        return
    arm = 132.0
    lowest = max(0.0, -min(sin(radians(a)) for a in (0.0, size) if a <= size)) if size > 180 else 0.0
    highest = 1.0 if size >= 90 else sin(radians(size))
    vertex = (WIDTH / 2 - (60 if size <= 90 else 0), MARGIN + 24 + arm * max(highest, 0.3))
    canvas.height = vertex[1] + arm * (lowest if size > 180 else 0) + 10
    ends = [on_circle(vertex, arm, 0), on_circle(vertex, arm, size)]
    for end in ends:
        canvas.line(vertex, end, 2.8)
    canvas.disc(vertex, 4, width=0)
    if size == 90:
        canvas.square_corner(vertex, ends[0], ends[1], 18)
        canvas.write(shown, on_circle(vertex, 46, 45))
    elif shown:
        in_opening(canvas, shown, vertex, 0, size, 34, arm)
    else:
        canvas.arc(vertex, 34, 0, size, width=1.6, ink=TEAL)
    if drawn.has("names"):
        first, middle, second = drawn.labels("names")
        canvas.disc(on_circle(vertex, arm - 6, 0), 3.5, width=0)
        canvas.disc(on_circle(vertex, arm - 6, size), 3.5, width=0)
        canvas.off(first, on_circle(vertex, arm - 6, 0), (0, 1), gap=10)
        canvas.off(middle, vertex, (-0.7, 0.7) if size < 180 else (-1, 0), gap=6)
        side = 1 if size < 90 else -1
        canvas.off(second, on_circle(vertex, arm - 6, size), (side, 0), gap=10)


def _protractor(canvas: Canvas, size: float) -> None:
    radius = 148.0
    at = (WIDTH / 2, MARGIN + radius + 8)
    first, rim = bends(at, radius, radius, 0, 180)
    low = at[1] + 14
    outline: list[tuple[Point, ...]] = [(first,), *rim, ((at[0] - radius, low),)]
    canvas.curve((at[0] + radius, low), outline, closed=True, fill="light", width=1.6)
    canvas.line((at[0] - radius, at[1]), (at[0] + radius, at[1]), 1)
    for degree in range(181):
        long = 16 if degree % 10 == 0 else 11 if degree % 5 == 0 else 6
        canvas.line(
            on_circle(at, radius - long, degree),
            on_circle(at, radius - 1, degree),
            1.2 if degree % 5 == 0 else 0.7,
        )
    canvas.arc(at, radius - 40, 0, 180, width=0.8, ink=PENCIL)
    canvas.line(at, on_circle(at, radius, 0), 3, TEAL)
    canvas.line(at, on_circle(at, radius + 14, size), 3, TEAL)
    # Numbers come after the arms, or an arm at 60 would strike out the 60.
    for degree in range(0, 181, 10):
        lift = 8 if degree in (0, 180) else 0
        x, y = on_circle(at, radius - 27, degree)
        canvas.write(str(degree), (x, y - lift), size=_SMALL, halo="light")
        if degree % 20 == 0:  # the second scale, for an arm that opens to the other side
            x, y = on_circle(at, radius - 54, degree)
            canvas.write(str(180 - degree), (x, y - lift), size=_SMALL, halo="light")
    canvas.disc(at, 4.5, width=0)
    canvas.height = low


def angles(canvas: Canvas, drawn: Drawn) -> None:
    """Angles side by side at one point, as high as the arms and what is written at them."""
    tried = Canvas()
    left, top, right, bottom = _fan(tried, drawn, (WIDTH / 2, 0))
    at = (WIDTH - (left + right) / 2, MARGIN - top)
    _fan(canvas, drawn, at)
    canvas.height = MARGIN - top + bottom


def _fan(canvas: Canvas, drawn: Drawn, at: Point) -> tuple[float, float, float, float]:
    """The arms, arcs and labels round a vertex; left, top, right and bottom of them all."""
    arrangement, labels = drawn.text("arrangement"), drawn.labels("labels")
    sizes = [float(size) for size in drawn.numbers("sizes")]
    if arrangement == "crossing":
        sizes = [sizes[0], 180 - sizes[0], sizes[0], 180 - sizes[0]]
    arms = [sum(sizes[:n]) for n in range(arms_at_a_point(arrangement, len(sizes)))]
    ends = [on_circle(at, _ARM, direction) for direction in arms]
    spots = [at, *ends]
    for end in ends:
        canvas.line(at, end, 2.4)
    start = 0.0
    for n, (size, label) in enumerate(zip(sizes, labels, strict=False)):
        radius = 30.0 + (n % 2) * 8
        if label != BARE:
            in_opening(canvas, label, at, start, size, radius, _ARM + 10)
            spots += [on_circle(at, radius, start + size * k / 12) for k in range(13)]
        start += size
    if arrangement == "right":
        canvas.square_corner(at, ends[0], ends[-1], 14)
    canvas.disc(at, 4, width=0)
    vertex, *names = drawn.labels("names") or [BARE] * (len(arms) + 1)
    for name, direction, end in zip(names, arms, ends, strict=True):
        if name != BARE:
            canvas.off(name, end, on_circle((0, 0), 1, direction), gap=5)
    if vertex != BARE:
        canvas.off(vertex, at, on_circle((0, 0), 1, _widest(sizes, labels)), gap=7)
    boxes = [((box.left, box.top), (box.right, box.bottom)) for box in canvas.placed]
    xs, ys = zip(*spots, *(corner for box in boxes for corner in box), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _widest(sizes: Sequence[float], labels: Sequence[str]) -> float:
    """The direction into the widest opening in which nothing is written: the vertex's name has room there."""
    around = [*sizes, 360 - sum(sizes)]
    free = [n for n in range(len(around)) if n >= len(labels) or labels[n] == BARE]
    widest = max(free, key=lambda n: around[n])
    if around[widest] < 60:  # everything is written on: the name goes out past the last arc
        widest = max(range(len(around)), key=lambda n: around[n])
    return sum(around[:widest]) + around[widest] / 2


def parallel_lines(canvas: Canvas, drawn: Drawn) -> None:
    """Two level lines with arrows and one across them; a label for each of the eight angles."""
    slope = float(drawn.number("degrees", 60))
    upper, lower = MARGIN + 62, MARGIN + 172
    run = (lower - upper) / sin(radians(slope))
    low = on_circle((0, 0), run, slope)[0]
    middle = WIDTH / 2
    tops = [(middle + low / 2, upper), (middle - low / 2, lower)]
    canvas.line(on_circle(tops[0], 62, slope), on_circle(tops[1], 62, slope + 180), 2.4)
    for n, crossing in enumerate(tops):
        y = crossing[1]
        canvas.line((MARGIN + 10, y), (WIDTH - MARGIN - 10, y), 2.4)
        canvas.head((WIDTH - 62, y), (WIDTH - 50, y), size=12)
        # In the order of the labels: upper left, upper right, lower left, lower right.
        openings = [(slope, 180 - slope), (0, slope), (180, slope), (180 + slope, 180 - slope)]
        for (start, size), label in zip(openings, drawn.labels("labels")[4 * n : 4 * n + 4], strict=True):
            if label != BARE:
                in_opening(canvas, label, crossing, start, size, 18, 90)
    canvas.height = max(canvas.height, lower + 62 * sin(radians(slope)))
