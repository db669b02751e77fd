"""The coordinate plane and scatter plots."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from bot.course.figures.curves import curve
from bot.course.figures.reading import Drawn, by_twos
from bot.course.figures.scales import nice_step, outward, ticks
from bot.course.figures.telling import plain
from bot.pictures.canvas import CLAY, FAINT, INK, MARGIN, TEAL, WIDTH, Canvas, Placed, Point
from bot.pictures.labels import Room, room

_SMALL = 14.0
_DOT = 5.5
_LINES = 21  # at most so many grid lines each way
_CURVE = 60  # pieces of a curve


@dataclass(frozen=True, slots=True)
class Plane:
    """Where the coordinates of a grid lie on the sheet."""

    left: Fraction
    right: Fraction
    low: Fraction
    high: Fraction
    start: float
    top: float
    wide: float
    tall: float

    @property
    def base(self) -> Fraction:
        """The height at which the level axis lies: 0, or the edge nearest to it."""
        return min(max(Fraction(0), self.low), self.high)

    @property
    def wall(self) -> Fraction:
        """Where the upright axis stands: at 0, or at the edge nearest to it."""
        return min(max(Fraction(0), self.left), self.right)

    def spot(self, x: Fraction | float, y: Fraction | float) -> Point:
        """The place of a point."""
        across = (float(x) - float(self.left)) / float(self.right - self.left)
        up = (float(y) - float(self.low)) / float(self.high - self.low)
        return (self.start + across * self.wide, self.top + (1 - up) * self.tall)


def grid(canvas: Canvas, drawn: Drawn) -> None:
    """A coordinate plane with what the figure asks for."""
    (left, right, x_step), (low, high, y_step) = drawn.span("x"), drawn.span("y")
    x_step = x_step or _step(right - left)
    y_step = y_step or _step(high - low)
    plane = _plane(canvas, drawn, (left, right, x_step), (low, high, y_step))
    for n, corners in enumerate(drawn.pair_rows("polygons")):
        canvas.shape([plane.spot(*c) for c in corners], fill=("shade", "warm")[n % 2] + "-clear", width=2.4)
    for corners in drawn.pair_rows("images"):
        canvas.shape([plane.spot(*c) for c in corners], fill="stripe-clear", width=2.4, ink=CLAY, dash="dash")
    for n, text in enumerate(drawn.labels("line")):
        _curve(canvas, plane, text, ink=(TEAL, CLAY, INK)[n % 3], dash="" if n == 0 else "dash")
    for n, (one, other) in enumerate(by_twos(drawn.pairs("through"))):
        _through(canvas, plane, one, other, ink=(TEAL, CLAY, INK)[n % 3], dash="" if n == 0 else "dash")
    for one, other in by_twos(drawn.pairs("segments")):
        canvas.line(plane.spot(*one), plane.spot(*other), 2.8, TEAL)
    if drawn.has("path"):
        canvas.shape([plane.spot(*p) for p in drawn.pairs("path")], closed=False, width=3, ink=TEAL)
    for one, other in by_twos(drawn.pairs("arrows")):
        canvas.arrow(plane.spot(*one), plane.spot(*other), 2.6, CLAY, 10)
    for one, other in by_twos(drawn.pairs("steps")):
        _slope_step(canvas, plane, one, other)
    _numbers(canvas, drawn, plane, x_step, y_step, [plane.spot(*point) for point in drawn.pairs("points")])
    _points(canvas, plane, drawn)


def _step(length: Fraction) -> Fraction:
    return Fraction(1) if length <= _LINES - 1 and length.denominator == 1 else nice_step(length, _LINES - 1)


def _plane(
    canvas: Canvas,
    drawn: Drawn,
    across: tuple[Fraction, Fraction, Fraction],
    up: tuple[Fraction, Fraction, Fraction],
) -> Plane:
    """The grid with its axes; squares stay square where both axes have one step and that fits."""
    (left, right, x_step), (low, high, y_step) = across, up
    labels = [room(plain(y), _SMALL).width for y in ticks(low, high, y_step)]
    side = max(labels) + 10 if left >= 0 else 12.0
    wide = WIDTH - 2 * MARGIN - side - 14
    columns, rows = float((right - left) / x_step), float((high - low) / y_step)
    tall = wide * rows / columns
    if tall > 330 or tall < 150:
        square = x_step == y_step and 0.3 < rows / columns < 3
        tall = min(max(tall, 150.0), 330.0)
        if square and tall == 330:
            wide = tall * columns / rows
    start = MARGIN + side + (WIDTH - 2 * MARGIN - side - 14 - wide) / 2
    top = MARGIN + (22 if drawn.has("y-name") else 12)
    plane = Plane(left, right, low, high, start, top, wide, tall)
    for x in ticks(left, right, x_step):
        canvas.line(plane.spot(x, low), plane.spot(x, high), 1, FAINT)
    for y in ticks(low, high, y_step):
        canvas.line(plane.spot(left, y), plane.spot(right, y), 1, FAINT)
    base, wall = plane.base, plane.wall
    end, tip = plane.spot(plane.right, base), plane.spot(wall, plane.high)
    canvas.arrow(plane.spot(plane.left, base), (end[0] + 12, end[1]), 1.8)
    canvas.arrow(plane.spot(wall, plane.low), (tip[0], tip[1] - 12), 1.8)
    return plane


def _numbers(
    canvas: Canvas, drawn: Drawn, plane: Plane, x_step: Fraction, y_step: Fraction, dots: Sequence[Point]
) -> None:
    """The numbers and names of the axes. They come after the shapes, or a line through them would strike them out.

    A number that a dot would cover stands on the other side of its axis.
    """
    base, wall = plane.base, plane.wall
    end, tip = plane.spot(plane.right, base), plane.spot(wall, plane.high)
    every = _fitting(ticks(plane.left, plane.right, x_step), plane.wide, 7)
    for x in every:
        if x != wall or plane.left >= 0:
            spot = plane.spot(x, base)
            canvas.line((spot[0], spot[1] - 3), (spot[0], spot[1] + 3), 1.4)
            taken = room(plain(x), _SMALL)
            down = 6 + taken.height / 2
            over = plane.low < 0 and _only_first_is_covered(
                dots, (spot[0], spot[1] + down), (spot[0], spot[1] - down), taken
            )
            canvas.write(
                plain(x),
                (spot[0], spot[1] - 6 if over else spot[1] + 6),
                down=1 if over else 0,
                size=_SMALL,
                halo="paper",
            )
    tall_ones = ticks(plane.low, plane.high, y_step)
    gap = max(1, -(-20 * len(tall_ones) // int(plane.tall)))
    for y in tall_ones:
        if (y / (y_step * gap)).denominator == 1 and (
            y != base or (plane.low >= 0 and plane.left >= 0 and y != 0)
        ):
            spot = plane.spot(wall, y)
            canvas.line((spot[0] - 3, spot[1]), (spot[0] + 3, spot[1]), 1.4)
            taken = room(plain(y), _SMALL)
            out = 6 + taken.width / 2
            over = plane.left < 0 and _only_first_is_covered(
                dots, (spot[0] - out, spot[1]), (spot[0] + out, spot[1]), taken
            )
            canvas.write(
                plain(y),
                (spot[0] + 6 if over else spot[0] - 6, spot[1]),
                across=0 if over else 1,
                size=_SMALL,
                halo="paper",
            )
    x_name = drawn.text("x-name", "x")
    y_name = drawn.text("y-name", "y")
    if drawn.has("x-name"):
        canvas.write(x_name, (plane.start + plane.wide, canvas.height + 8), across=1, down=0, size=_SMALL)
    elif x_name:
        canvas.write(x_name, (end[0] + 10, end[1] - 8), across=0.5, down=1, size=_SMALL)
    if drawn.has("y-name"):
        canvas.write(y_name, (MARGIN / 2, MARGIN / 2), across=0, down=0, size=_SMALL)
    elif y_name:
        canvas.write(y_name, (tip[0] + 10, tip[1] - 6), across=0, size=_SMALL)


def _only_first_is_covered(dots: Sequence[Point], one: Point, other: Point, taken: Room) -> bool:
    """Whether a dot lies on what is written with its middle at the first place, and none at the other."""

    def covered(at: Point) -> bool:
        return any(
            abs(x - at[0]) < taken.width / 2 + _DOT and abs(y - at[1]) < taken.height / 2 + _DOT
            for x, y in dots
        )

    return covered(one) and not covered(other)


def _fitting(all_ticks: list[Fraction], wide: float, gap: float) -> list[Fraction]:
    """Ticks whose numbers fit side by side."""
    for every in (1, 2, 5, 10, 20):
        chosen = [t for t in all_ticks if ((t / (all_ticks[1] - all_ticks[0])) / every).denominator == 1]
        if sum(room(plain(t), _SMALL).width + gap for t in chosen) <= wide:
            return chosen
    return [all_ticks[0], all_ticks[-1]]


def _curve(canvas: Canvas, plane: Plane, text: str, *, ink: str, dash: str) -> None:
    drawn = curve(text)
    if drawn is None:
        return
    if drawn.upright is not None:
        canvas.line(
            plane.spot(drawn.upright, plane.low), plane.spot(drawn.upright, plane.high), 2.8, ink, dash
        )
        return
    xs = [plane.left + (plane.right - plane.left) * n / _CURVE for n in range(_CURVE + 1)]
    piece: list[Point] = []
    for a, b in pairwise(xs):
        clipped = _clip(plane, (a, drawn.at(a)), (b, drawn.at(b)))
        if clipped is None or (piece and piece[-1] != clipped[0]):
            _finish(canvas, piece, ink, dash)
            piece = []
        if clipped is not None:
            piece += clipped if not piece else clipped[1:]
    _finish(canvas, piece, ink, dash)


def _finish(canvas: Canvas, piece: list[Point], ink: str, dash: str) -> None:
    if len(piece) > 1:
        canvas.shape(piece, closed=False, width=2.8, ink=ink, dash=dash)


def _clip(
    plane: Plane, one: tuple[Fraction, Fraction | None], other: tuple[Fraction, Fraction | None]
) -> list[Point] | None:
    """The part of a short piece that lies inside the grid."""
    (ax, ay), (bx, by) = one, other
    if (
        ay is None
        or by is None
        or (ay < plane.low and by < plane.low)
        or (ay > plane.high and by > plane.high)
    ):
        return None
    ends = []
    for x, y, other_x, other_y in ((ax, ay, bx, by), (bx, by, ax, ay)):
        bound = plane.low if y < plane.low else plane.high if y > plane.high else None
        if bound is not None:
            x, y = x + (bound - y) / (other_y - y) * (other_x - x), bound
        ends.append(plane.spot(x, y))
    return ends


def _through(
    canvas: Canvas, plane: Plane, one: Sequence[Fraction], other: Sequence[Fraction], *, ink: str, dash: str
) -> None:
    (ax, ay), (bx, by) = one, other
    if ax == bx:
        canvas.line(plane.spot(ax, plane.low), plane.spot(ax, plane.high), 2.8, ink, dash)
        return
    slope = (by - ay) / (bx - ax)
    ends = _clip(
        plane, (plane.left, ay + slope * (plane.left - ax)), (plane.right, ay + slope * (plane.right - ax))
    )
    if ends:
        canvas.line(ends[0], ends[1], 2.8, ink, dash)


def _slope_step(canvas: Canvas, plane: Plane, one: Sequence[Fraction], other: Sequence[Fraction]) -> None:
    a, b, corner = plane.spot(*one), plane.spot(*other), plane.spot(other[0], one[1])
    canvas.line(a, corner, 2.4, CLAY, "fine")
    canvas.line(corner, b, 2.4, CLAY, "fine")


def _points(canvas: Canvas, plane: Plane, drawn: Drawn) -> None:
    names = drawn.labels("names")
    spots = [plane.spot(*point) for point in drawn.pairs("points")]
    for spot in spots:
        canvas.disc(spot, _DOT, fill=CLAY, width=1.6)
    for name, spot in zip(names, spots, strict=False):
        _name(canvas, name, spot, spots)


_PLACES = ((1, -1), (-1, -1), (1, 1), (-1, 1), (0, -1), (0, 1), (1, 0), (-1, 0))


def _name(canvas: Canvas, name: str, spot: Point, spots: list[Point]) -> None:
    """The name beside its dot, in the first of the places round it, near and a little farther, that are freest.

    Writing and dots weigh most, then lines and sides of shapes, then the axes.
    """
    taken = room(name)
    dots = [Placed("", x - 6, y - 6, x + 6, y + 6) for x, y in spots]
    strokes = _strokes(canvas)

    def cost(box: Placed) -> float:
        if box.left <= 4 or box.right >= WIDTH - 4 or box.top <= 4:
            return 1000
        met = sum(10 for other in [*canvas.placed, *dots] if box.meets(other))
        # Some letters reach below the line of writing, and a line has a width.
        wider = Placed("", box.left - 2, box.top - 2, box.right + 2, box.bottom + 4)
        return met + sum(weight for one, other, weight in strokes if _passes(one, other, wider))

    choices = []
    for farther in (0, 7, 15):
        for dx, dy in _PLACES:
            x = spot[0] + dx * (9 + farther + taken.width / 2)
            y = spot[1] + dy * (10 + farther + taken.height / 2)
            half_wide, half_high = taken.width / 2 + 1, taken.height / 2 + 1
            choices.append((Placed(name, x - half_wide, y - half_high, x + half_wide, y + half_high), (x, y)))
    canvas.write(name, min(choices, key=lambda choice: cost(choice[0]))[1], halo="paper")


def _strokes(canvas: Canvas) -> list[tuple[Point, Point, float]]:
    """The straight pieces drawn so far but the grid's own lines, and how ill a name lies on each."""
    return [
        (one, other, 2.0 if stroke.width < 2 else 4.0)
        for stroke in canvas.strokes
        if stroke.ink != FAINT
        for one, other in pairwise(stroke.points)
    ]


def _passes(one: Point, other: Point, box: Placed) -> bool:
    """Whether a straight piece enters a box: what is left of it after cutting at the four sides isn't nothing."""
    start, end = 0.0, 1.0
    for a, b, low, high in (
        (one[0], other[0], box.left, box.right),
        (one[1], other[1], box.top, box.bottom),
    ):
        if a == b:
            if not low < a < high:
                return False
            continue
        near, far = sorted(((low - a) / (b - a), (high - a) / (b - a)))
        start, end = max(start, near), min(end, far)
    return start < end


def scatter_plot(canvas: Canvas, drawn: Drawn) -> None:
    """Dots for pairs, scales chosen to hold them, a trend line on request."""
    points = drawn.pairs("points")
    left, right, x_step = _range(drawn, "x", [x for x, _ in points])
    low, high, y_step = _range(drawn, "y", [y for _, y in points])
    plane = _plane(canvas, drawn, (left, right, x_step), (low, high, y_step))
    _numbers(canvas, drawn, plane, x_step, y_step, [plane.spot(*point) for point in points])
    for point in points:
        canvas.disc(plane.spot(*point), 5, fill=CLAY, width=1.2)
    if drawn.has("line"):
        _curve(canvas, plane, drawn.text("line"), ink=TEAL, dash="")


def _range(drawn: Drawn, name: str, values: list[Fraction]) -> tuple[Fraction, Fraction, Fraction]:
    if drawn.has(name):
        low, high, step = drawn.span(name)
        return low, high, step or nice_step(high - low, 10)
    low, high, step = outward([*values, Fraction(0)] if 0 < min(values) * 2 <= max(values) else values, 8)
    return low, high, step
