"""A sheet to draw on: lines, shapes, circles and labels in points, kept as plain data until they are set.

Points run from the upper left; 360 of them are the width of a small phone. Colour never carries a meaning alone:
whatever is filled has a pattern as well or a label.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import cos, hypot, pi, radians, sin, tan

from bot.pictures.labels import SIZE, Room, room, runs

WIDTH = 360.0
MARGIN = 16.0
Point = tuple[float, float]

PAPER, INK, PENCIL, FAINT = "paper", "ink", "pencil", "faint"
TEAL, CLAY = "teal", "clay"


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a label ended up."""

    label: str
    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Placed) -> bool:
        """Whether the two overlap."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )


@dataclass(frozen=True, slots=True)
class Stroke:
    """A straight line through points, closed ones back to the first; 0 wide where only a fill was drawn."""

    points: tuple[Point, ...]
    width: float
    ink: str


@dataclass(slots=True)
class Canvas:
    """What was drawn so far. `height` grows with what is drawn unless it is set at the end."""

    width: float = WIDTH
    height: float = 0.0
    marks: list[dict[str, object]] = field(default_factory=list)
    placed: list[Placed] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)

    def line(self, one: Point, other: Point, width: float = 2, ink: str = INK, dash: str = "") -> None:
        """A straight line."""
        self.shape([one, other], closed=False, width=width, ink=ink, dash=dash)

    def shape(
        self,
        points: Sequence[Point],
        *,
        closed: bool = True,
        fill: str = "",
        width: float = 2,
        ink: str = INK,
        dash: str = "",
    ) -> None:
        """A line through points, closed and filled on request. `fill` is a tint or a pattern: see picture.typ."""
        self._grow(max(y for _, y in points))
        self.strokes.append(Stroke((*points, points[0]) if closed else tuple(points), width, ink))
        self.marks.append(
            {
                "is": "shape",
                "at": [list(_round(p)) for p in points],
                "closed": closed,
                "fill": fill,
                "width": width,
                "ink": ink,
                "dash": dash,
            }
        )

    def rectangle(
        self,
        left: float,
        top: float,
        wide: float,
        high: float,
        *,
        fill: str = "",
        width: float = 2,
        ink: str = INK,
        dash: str = "",
    ) -> None:
        """A rectangle with level sides."""
        corners = [(left, top), (left + wide, top), (left + wide, top + high), (left, top + high)]
        self.shape(corners, fill=fill, width=width, ink=ink, dash=dash)

    def curve(
        self,
        start: Point,
        pieces: Sequence[tuple[Point, ...]],
        *,
        closed: bool = False,
        fill: str = "",
        width: float = 2,
        ink: str = INK,
        dash: str = "",
    ) -> None:
        """A path of straight pieces (one point) and bends (two handles and an end)."""
        self._grow(max([start[1], *(piece[-1][1] for piece in pieces)]))
        self.marks.append(
            {
                "is": "curve",
                "start": list(_round(start)),
                "pieces": [[list(_round(p)) for p in piece] for piece in pieces],
                "closed": closed,
                "fill": fill,
                "width": width,
                "ink": ink,
                "dash": dash,
            }
        )

    def disc(self, at: Point, radius: float, *, fill: str = INK, width: float = 2, ink: str = INK) -> None:
        """A dot or circle."""
        self._grow(at[1] + radius)
        self.marks.append(
            {"is": "disc", "at": list(_round(at)), "radius": radius, "fill": fill, "width": width, "ink": ink}
        )

    def oval(
        self,
        at: Point,
        rx: float,
        ry: float,
        start: float = 0,
        end: float = 360,
        *,
        dash: str = "",
        fill: str = "",
    ) -> None:
        """An oval or a piece of one, from one angle to another, counterclockwise from the right in degrees.

        A piece is filled up to the line between its ends, which isn't drawn.
        """
        first, pieces = bends(at, rx, ry, start, end)
        if fill:
            self.curve(first, pieces, fill=fill, width=0, closed=True)
        self.curve(first, pieces, dash=dash)

    def arc(
        self,
        at: Point,
        radius: float,
        start: float,
        end: float,
        *,
        width: float = 2,
        ink: str = INK,
        wedge: bool = False,
        fill: str = "",
        dash: str = "",
    ) -> None:
        """A piece of a circle, counterclockwise in degrees; as a wedge it is closed through the middle."""
        first, pieces = bends(at, radius, radius, start, end)
        if wedge:
            self.curve(at, [(first,), *pieces], closed=True, fill=fill, width=width, ink=ink, dash=dash)
        else:
            self.curve(first, pieces, width=width, ink=ink, dash=dash)

    def arrow(self, one: Point, other: Point, width: float = 2, ink: str = INK, head: float = 8) -> None:
        """A line with a head at its end."""
        length = hypot(other[0] - one[0], other[1] - one[1])
        self.line(one, _toward(one, other, max(length - head / 2, 0)), width, ink)
        self.head(one, other, ink, head)

    def head(self, one: Point, other: Point, ink: str = INK, size: float = 8) -> None:
        """An arrow head at `other`, coming from `one`."""
        length = hypot(other[0] - one[0], other[1] - one[1]) or 1
        ux, uy = (other[0] - one[0]) / length, (other[1] - one[1]) / length
        back = (other[0] - size * ux, other[1] - size * uy)
        wing = 0.45 * size
        corners = [
            other,
            (back[0] - wing * uy, back[1] + wing * ux),
            (back[0] + wing * uy, back[1] - wing * ux),
        ]
        self.shape(corners, fill=ink, width=0, ink=ink)

    def write(
        self,
        label: str,
        at: Point,
        *,
        across: float = 0.5,
        down: float = 0.5,
        size: float = SIZE,
        ink: str = INK,
        bold: bool = False,
        plate: str = "",
        halo: str = "",
        turned: bool = False,
    ) -> Placed:
        """A label whose box lies at `at`: across 0 begins there, 0.5 is centred, 1 ends there; down likewise.

        `plate` is a fill that clears what lies below it; `halo` clears only a rim round the letters, so that a line
        below can still be followed. `turned` runs upwards.
        """
        taken = room(label, size)
        if turned:
            taken = Room(taken.height, taken.width)
        left, top = at[0] - across * taken.width, at[1] - down * taken.height
        # Nothing is written over the edge: a long label moves inwards.
        left = min(max(left, MARGIN / 2), max(MARGIN / 2, self.width - MARGIN / 2 - taken.width))
        placed = Placed(label, left, top, left + taken.width, top + taken.height)
        self.placed.append(placed)
        self._grow(placed.bottom)
        self.marks.append(
            {
                "is": "label",
                "at": list(_round((placed.left, placed.top))),
                "room": [round(taken.width, 2), round(taken.height, 2)],
                "runs": [[run.how, run.text, run.below] for run in runs(label)],
                "size": size,
                "ink": ink,
                "bold": bold,
                "plate": plate,
                "halo": halo,
                "turned": turned,
            }
        )
        return placed

    def beside(
        self, label: str, one: Point, other: Point, *, gap: float = 8, size: float = SIZE, plate: str = ""
    ) -> Placed | None:
        """A label beside the middle of a line, on the right-hand side of one who walks from `one` to `other`."""
        if label in ("none", ""):
            return None
        length = hypot(other[0] - one[0], other[1] - one[1]) or 1
        out = (-(other[1] - one[1]) / length, (other[0] - one[0]) / length)
        middle = ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
        return self.off(label, middle, out, gap=gap, size=size, plate=plate)

    def off(
        self, label: str, at: Point, out: Point, *, gap: float = 8, size: float = SIZE, plate: str = ""
    ) -> Placed:
        """A label off a point in the direction `out` (of length 1), so far that its box clears the point."""
        taken = room(label, size)
        reach = gap + _reach(taken, out)
        return self.write(label, (at[0] + out[0] * reach, at[1] + out[1] * reach), size=size, plate=plate)

    def is_taken(self, label: str, at: Point) -> bool:
        """Whether a label written with its middle there would meet one that is written already."""
        tried = Canvas(self.width).write(label, at)
        return any(tried.meets(other) for other in self.placed)

    def square_corner(self, corner: Point, one: Point, other: Point, size: float = 11) -> None:
        """The small square that marks a right angle at a corner, between the ways to two points."""
        a, b = _toward(corner, one, size), _toward(corner, other, size)
        far = (a[0] + b[0] - corner[0], a[1] + b[1] - corner[1])
        self.shape([a, far, b], closed=False, width=1.4)

    def finish(self) -> Canvas:
        """Close the sheet below what was drawn."""
        self.height = round(self.height + MARGIN, 1)
        return self

    def _grow(self, y: float) -> None:
        self.height = max(self.height, y)


def _round(point: Point) -> Point:
    return (round(float(point[0]), 2), round(float(point[1]), 2))


def _toward(start: Point, end: Point, far: float) -> Point:
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1
    return (start[0] + (end[0] - start[0]) * far / length, start[1] + (end[1] - start[1]) * far / length)


def _reach(taken: Room, out: Point) -> float:
    """How far a box reaches back from its middle against a direction, corners a little rounded off."""
    return abs(out[0]) * taken.width / 2 + abs(out[1]) * taken.height / 2


def on_circle(at: Point, radius: float, degrees: float) -> Point:
    """The point at that angle, counterclockwise from the right."""
    return (at[0] + radius * cos(radians(degrees)), at[1] - radius * sin(radians(degrees)))


def bends(at: Point, rx: float, ry: float, start: float, end: float) -> tuple[Point, list[tuple[Point, ...]]]:
    """A piece of an oval as bends of at most a quarter turn each."""
    count = max(1, int(-(-abs(end - start) // 90)))
    turn = radians(end - start) / count
    handle = 4 / 3 * tan(turn / 4)
    pieces: list[tuple[Point, ...]] = []

    def point(angle: float) -> Point:
        return (at[0] + rx * cos(angle), at[1] - ry * sin(angle))

    for i in range(count):
        a = radians(start) + i * turn
        b = a + turn
        (ax, ay), (bx, by) = point(a), point(b)
        pieces.append(
            (
                (ax - handle * rx * sin(a), ay - handle * ry * cos(a)),
                (bx + handle * rx * sin(b), by + handle * ry * cos(b)),
                (bx, by),
            )
        )
    return point(radians(start % 360) if abs(start) >= 2 * pi else radians(start)), pieces


def fit(points: Sequence[Point], left: float, top: float, wide: float, high: float) -> list[Point]:
    """Points of a drawing whose y runs upwards, brought into a box of the sheet, kept in proportion and centred."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    across, up = max(xs) - min(xs), max(ys) - min(ys)
    scale = min(wide / (across or 1), high / (up or 1))
    dx = left + (wide - across * scale) / 2
    dy = top + (high - up * scale) / 2
    return [(dx + (x - min(xs)) * scale, dy + (max(ys) - y) * scale) for x, y in points]
