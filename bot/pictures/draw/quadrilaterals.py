"""Figures with four sides, regular figures, and two figures of one shape."""

from __future__ import annotations

from math import cos, hypot, radians, sin, sqrt

from bot.course.figures.reading import BARE, Drawn, leading_number
from bot.pictures.canvas import MARGIN, WIDTH, Canvas, Point, fit, on_circle
from bot.pictures.draw.shapes import angle_label, dash_across
from bot.pictures.labels import room

_FULL = WIDTH - 2 * MARGIN
_SLANT = 62.0


def _known(drawn: Drawn, name: str) -> float | None:
    value = leading_number(drawn.text(name))
    return float(value) if value is not None and value > 0 else None


def quadrilateral(canvas: Canvas, drawn: Drawn) -> None:
    """One of the figures with four sides; corners run from the lower left, counterclockwise."""
    shape = drawn.text("shape")
    points = _corners(shape, drawn)
    side = (
        max([room(drawn.text(name)).width for name in ("left", "right") if drawn.has(name)], default=20) + 14
    )
    foot = (points[3][0], 0.0)
    outside = foot[0] < 0
    if outside:
        side = max(side, room(drawn.text("height")).width + 14)
    every = fit([*points, foot], MARGIN + side, MARGIN + 28, _FULL - 2 * side, 176)
    spots, bottom = every[:4], every[4]
    canvas.shape(spots, fill="light", width=2.4)
    low_left, low_right, high_right, high_left = spots
    names = {
        "base": (low_right, low_left),
        "right": (high_right, low_right),
        "top": (high_left, high_right),
        "left": (low_left, high_left),
    }
    for name, (one, other) in names.items():
        if drawn.has(name):
            canvas.beside(drawn.text(name), other, one, gap=12 if drawn.yes("marks") else 8)
    if drawn.has("height"):
        canvas.line(high_left, bottom, 1.8, dash="dash")
        canvas.square_corner(bottom, high_left, low_right, 9)
        if outside:
            canvas.line(bottom, low_left, 1.6, dash="fine")
        middle = (bottom[0], (bottom[1] + high_left[1]) / 2)
        canvas.off(drawn.text("height"), middle, (-1, 0) if outside else (1, 0), gap=6)
    if drawn.has("inside"):
        shift = 34 if drawn.has("height") else 0
        canvas.write(
            drawn.text("inside"),
            (sum(p[0] for p in spots) / 4 + shift, sum(p[1] for p in spots) / 4 + 30 * (shift > 0)),
        )
    _marks(canvas, drawn, shape, spots)
    middle = (sum(p[0] for p in spots) / 4, sum(p[1] for p in spots) / 4)
    for n, corner in enumerate(spots):
        if drawn.has("corners"):
            length = hypot(corner[0] - middle[0], corner[1] - middle[1])
            out = ((corner[0] - middle[0]) / length, (corner[1] - middle[1]) / length)
            canvas.off(drawn.labels("corners")[n], corner, out, gap=6)
        if drawn.has("angles") and drawn.labels("angles")[n] != BARE:
            angle_label(canvas, drawn.labels("angles")[n], corner, spots[n - 1], spots[(n + 1) % 4])


def _corners(shape: str, drawn: Drawn) -> list[Point]:
    """Corners with y upwards, shaped by the lengths that are known."""
    base, top, height = _known(drawn, "base"), _known(drawn, "top"), _known(drawn, "height")
    right = _known(drawn, "right") or _known(drawn, "left")
    match shape:
        case "square":
            return [(0, 0), (1, 0), (1, 1), (0, 1)]
        case "rectangle":
            high = min(max(right / base, 0.4), 1.2) if base and right else 0.6
            return [(0, 0), (1, 0), (1, high), (0, high)]
        case "parallelogram":
            high = min(max(height / base, 0.35), 0.9) if base and height else 0.55
            lean = high * 0.5
            return [(0, 0), (1, 0), (1 + lean, high), (lean, high)]
        case "rhombus":
            return [
                (0, 0),
                (1, 0),
                (1 + cos(radians(_SLANT)), sin(radians(_SLANT))),
                (cos(radians(_SLANT)), sin(radians(_SLANT))),
            ]
        case "trapezoid":
            upper = min(max(top / base, 0.3), 1.9) if base and top else 0.55
            if 0.9 < upper < 1.1:
                upper = 0.9 if upper <= 1 else 1.1
            high = min(max(height / base, 0.35), 0.9) if base and height else 0.5
            start = (1 - upper) * 0.4
            return [(0, 0), (1, 0), (start + upper, high), (start, high)]
        case "kite":
            return [(0, 0), (0.62, 0.62 * 1.1), (0, 1.02), (-0.62, 0.62 * 1.1)]
    return [(0, 0), (1, 0.1), (0.86, 0.72), (0.12, 0.58)]


def _marks(canvas: Canvas, drawn: Drawn, shape: str, spots: list[Point]) -> None:
    if not drawn.yes("marks"):
        return
    sides = [(spots[n], spots[(n + 1) % 4]) for n in range(4)]
    counts = {
        "square": (1, 1, 1, 1),
        "rhombus": (1, 1, 1, 1),
        "rectangle": (1, 2, 1, 2),
        "parallelogram": (1, 2, 1, 2),
        "kite": (1, 2, 2, 1),
    }.get(shape, (0, 0, 0, 0))
    for (one, other), count in zip(sides, counts, strict=True):
        if count:
            dash_across(canvas, one, other, count)
    if shape in ("square", "rectangle"):
        for n in range(4):
            canvas.square_corner(spots[n], spots[n - 1], spots[(n + 1) % 4])
    if shape == "trapezoid":
        for one, other in ((spots[0], spots[1]), (spots[3], spots[2])):
            middle = ((one[0] + other[0]) / 2 + 6, one[1])
            canvas.head((middle[0] - 10, middle[1]), middle, size=12)


def regular_polygon(canvas: Canvas, drawn: Drawn) -> None:
    """Equal sides and angles, one side level at the bottom."""
    sides = drawn.count("sides")
    at, radius = (WIDTH / 2, MARGIN + 104), 96.0
    start = -90 - 180 / sides
    spots = [on_circle(at, radius, start + 360 * n / sides) for n in range(sides)]
    canvas.shape(spots, fill="light", width=2.4)
    if drawn.has("side"):
        canvas.write(drawn.text("side"), ((spots[0][0] + spots[1][0]) / 2, spots[0][1] + 9), down=0)
    if drawn.has("angle"):
        angle_label(canvas, drawn.text("angle"), spots[1], spots[0], spots[2])


def similar(canvas: Canvas, drawn: Drawn) -> None:
    """Two figures of one shape side by side, the one with the smaller base drawn smaller."""
    first, second = drawn.labels("first"), drawn.labels("second")
    names = drawn.labels("names") or ["", ""]
    ratio = _ratio(first, second)
    shape = _similar_shape(drawn.text("shape"), first, second)
    outer = max(room(label).width for label in [*first, *second]) + 12
    triangle = drawn.text("shape") == "triangle"
    left_room = outer if triangle and len(first) > 2 else 4.0
    free = _FULL - 2 * (outer + left_room)
    # The two widths share the room in the ratio of their sides; a tall shape is held by the height instead.
    across, up = (max(point[k] for point in shape) - min(point[k] for point in shape) for k in (0, 1))
    high = 150.0
    unit = min(free / across / (1 + ratio), high / up / max(1.0, ratio))
    x = MARGIN + left_room + (free - unit * across * (1 + ratio)) / 2
    for n, labels in enumerate((first, second)):
        scale = unit * (ratio if n == 1 else 1.0)
        wide = scale * across
        spots = fit(shape, x, MARGIN + 6, wide, scale * up)
        lowest = max(y for _, y in spots)
        spots = [(px, py + (MARGIN + 6 + high - lowest)) for px, py in spots]
        canvas.shape(spots, fill="shade" if n == 0 else "light", width=2.4)
        sides = (
            [(spots[1], spots[0]), (spots[2], spots[1])]
            if not triangle
            else [
                (spots[1], spots[0]),
                (spots[2], spots[1]),
                (spots[0], spots[2]),
            ]
        )
        for (one, other), label in zip(sides, labels, strict=False):
            canvas.beside(label, other, one)
        if names[n]:
            middle = (spots[0][0] + spots[1][0]) / 2
            canvas.write(names[n], (middle, MARGIN + high + 46), size=14, down=0.5)
        x += wide + outer + left_room


_MOST = 3.0  # a figure more than so many times as large leaves the other no room for its labels
_METRES = {"mm": 0.001, "cm": 0.01, "in": 0.0254, "ft": 0.3048, "m": 1.0, "km": 1000.0}


def _ratio(first: list[str], second: list[str]) -> float:
    """How many times as long as the first the second is drawn: as true as the room allows.

    Different units (a plan in cm, a room in m) count as well; where no side is known in both, the second is larger.
    """
    for one, other in zip(first, second, strict=True):
        a, b = leading_number(one), leading_number(other)
        if a and b:
            unit_a, unit_b = (_METRES.get(label.split()[-1], 1.0) for label in (one, other))
            return min(max(float(b) * unit_b / (float(a) * unit_a), 1 / _MOST), _MOST)
    return 1.6


def _similar_shape(kind: str, first: list[str], second: list[str]) -> list[Point]:
    for labels in (first, second):
        known = [leading_number(label) for label in labels]
        numbers = [float(k) for k in known if k]
        if len(numbers) == len(labels):
            if kind == "rectangle" and len(numbers) == 2:
                high = min(max(numbers[1] / numbers[0], 0.4), 1.4)
                return [(0, 0), (1, 0), (1, high), (0, high)]
            if kind == "triangle" and len(numbers) == 3 and 2 * max(numbers) < sum(numbers):
                base, right, left = numbers
                x = (base**2 + left**2 - right**2) / (2 * base)
                return [(0, 0), (base, 0), (x, sqrt(left**2 - x**2))]
    if kind == "rectangle":
        return [(0, 0), (1, 0), (1, 0.66), (0, 0.66)]
    return [(0, 0), (1, 0), (0.36, 0.8)]
