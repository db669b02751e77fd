"""Angles: one with a protractor, several at a point, and those at parallel lines."""

from __future__ import annotations

from math import radians, sin

from bot.course.figures.reading import BARE, Drawn
from bot.course.figures.telling import plain
from bot.pictures.canvas import MARGIN, PENCIL, TEAL, WIDTH, Canvas, Point, bends, on_circle
from bot.pictures.draw.shapes import in_opening

_SMALL = 12.0


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
        if degree % 10 == 0:
            x, y = on_circle(at, radius - 27, degree)
            canvas.write(str(degree), (x, y - (8 if degree in (0, 180) else 0)), size=_SMALL)
        if degree % 20 == 0:  # the second scale, for an arm that opens to the other side
            x, y = on_circle(at, radius - 54, degree)
            canvas.write(str(180 - degree), (x, y - (8 if degree in (0, 180) else 0)), size=_SMALL)
    canvas.arc(at, radius - 40, 0, 180, width=0.8, ink=PENCIL)
    canvas.line(at, on_circle(at, radius, 0), 3, TEAL)
    canvas.line(at, on_circle(at, radius + 14, size), 3, TEAL)
    canvas.disc(at, 4.5, width=0)
    canvas.height = low


def angles(canvas: Canvas, drawn: Drawn) -> None:
    """Angles side by side at one point."""
    arrangement, labels = drawn.text("arrangement"), drawn.labels("labels")
    sizes = [float(size) for size in drawn.numbers("sizes")]
    if arrangement == "crossing":
        sizes = [sizes[0], 180 - sizes[0], sizes[0], 180 - sizes[0]]
    arm = 140.0
    full = {"right": 90, "straight": 180}.get(arrangement, 360)
    below = full == 360
    at = (WIDTH / 2 - (arm / 2 if full == 90 else 0), MARGIN + arm)
    start = 0.0
    for n, (size, label) in enumerate(zip(sizes, labels, strict=False)):
        canvas.line(at, on_circle(at, arm, start), 2.4)
        radius = 30 + (n % 2) * 8
        if label != BARE:
            in_opening(canvas, label, at, start, size, radius, arm + 10)
        start += size
    if not below:
        canvas.line(at, on_circle(at, arm, full), 2.4)
    if full == 90:
        canvas.square_corner(at, on_circle(at, arm, 0), on_circle(at, arm, 90), 14)
    canvas.disc(at, 4, width=0)
    canvas.height = at[1] + (arm if below else 8)


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
