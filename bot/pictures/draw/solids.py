"""Solids, hidden edges dashed."""

from __future__ import annotations

from math import cos, pi, sin, sqrt, tan

from bot.course.figures.reading import Drawn, leading_number
from bot.pictures.canvas import CLAY, MARGIN, WIDTH, Canvas, Point, fit
from bot.pictures.labels import room

_MIDDLE = WIDTH / 2
_DEPTH = (0.5, 0.36)  # how an edge that runs to the back is drawn


def known(drawn: Drawn, name: str, otherwise: float) -> float:
    value = leading_number(drawn.text(name))
    return float(value) if value is not None and value > 0 else otherwise


def solid(canvas: Canvas, drawn: Drawn) -> None:
    """A solid seen from the front, a little from above and the right; what can't be seen is dashed."""
    {
        "box": _box,
        "cube": _box,
        "prism": _prism,
        "cylinder": _cylinder,
        "cone": _cone,
        "sphere": _sphere,
        "pyramid": _pyramid,
    }[drawn.text("shape")](canvas, drawn)


def _box(canvas: Canvas, drawn: Drawn) -> None:
    cube = drawn.text("shape") == "cube"
    long = known(drawn, "length", 5)
    deep = long if cube else known(drawn, "width", 3.5)
    high = long if cube else known(drawn, "height", 3)
    if not drawn.yes("cubes"):  # very flat or thin boxes can't be labelled
        most = max(long, deep, high)
        long, deep, high = (max(edge, 0.3 * most) for edge in (long, deep, high))
    dx, dy = deep * _DEPTH[0], deep * _DEPTH[1]
    corners = [(0.0, 0.0), (long, 0.0), (long, high), (0.0, high)]
    back = [(x + dx, y + dy) for x, y in corners]
    spots = fit([*corners, *back], MARGIN + 30, MARGIN + 10, WIDTH - 2 * MARGIN - 90, 200)
    front, behind = spots[:4], spots[4:]
    a, b, c, d = front
    a2, b2, c2, d2 = behind
    canvas.shape([a, b, c, d], fill="light", width=2.4)
    canvas.shape([d, c, c2, d2], fill="paper", width=2.4)
    canvas.shape([b, b2, c2, c], fill="shade", width=2.4)
    if drawn.yes("cubes"):
        _unit_cubes(canvas, front, behind, (round(long), round(deep), round(high)))
    else:
        for end in (a, b2, d2):
            canvas.line(a2, end, 1.6, dash="dash")
    _cut_box(canvas, drawn, front, behind)
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((a[0] + b[0]) / 2, a[1] + 10), down=0)
    if not cube:
        if drawn.has("width"):
            middle = ((b[0] + b2[0]) / 2, (b[1] + b2[1]) / 2)
            canvas.off(drawn.text("width"), middle, (0.58, 0.81), gap=4)
        if drawn.has("height"):
            canvas.write(drawn.text("height"), (b2[0] + 9, (b2[1] + c2[1]) / 2), across=0)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), ((a[0] + b[0]) / 2, (a[1] + d[1]) / 2), plate="light")


def _unit_cubes(
    canvas: Canvas, front: list[Point], behind: list[Point], counts: tuple[int, int, int]
) -> None:
    long, deep, high = counts
    a, b, c, d = front
    _, b2, c2, d2 = behind

    def between(one: Point, other: Point, k: int, n: int) -> Point:
        return (one[0] + (other[0] - one[0]) * k / n, one[1] + (other[1] - one[1]) * k / n)

    for k in range(1, long):
        canvas.shape(
            [between(a, b, k, long), between(d, c, k, long), between(d2, c2, k, long)],
            closed=False,
            width=1.2,
        )
    for k in range(1, high):
        canvas.shape(
            [between(a, d, k, high), between(b, c, k, high), between(b2, c2, k, high)],
            closed=False,
            width=1.2,
        )
    for k in range(1, deep):
        canvas.shape(
            [between(d, d2, k, deep), between(c, c2, k, deep), between(b, b2, k, deep)],
            closed=False,
            width=1.2,
        )


def _cut_box(canvas: Canvas, drawn: Drawn, front: list[Point], behind: list[Point]) -> None:
    def on(one: Point, other: Point, part: float) -> Point:
        return (one[0] + (other[0] - one[0]) * part, one[1] + (other[1] - one[1]) * part)

    a, b, c, d = front
    a2, b2, c2, d2 = behind
    plane = {
        "level": [on(a, d, 0.5), on(b, c, 0.5), on(b2, c2, 0.5), on(a2, d2, 0.5)],
        "upright": [on(a, b, 0.5), on(d, c, 0.5), on(d2, c2, 0.5), on(a2, b2, 0.5)],
        "slanted": [on(a, d, 0.15), on(b, c, 0.85), on(b2, c2, 0.85), on(a2, d2, 0.15)],
    }.get(drawn.text("cut"))
    if plane:
        canvas.shape(plane, fill="stripe-clear", ink=CLAY, width=2.4)


def _prism(canvas: Canvas, drawn: Drawn) -> None:
    base, high = known(drawn, "length", 4), known(drawn, "height", 3)
    long = known(drawn, "width", 6)
    slant = known(drawn, "slant", 0)
    # Where the tip stands over the base follows from the lengths as given, before any is made large enough to label.
    lean = min(sqrt(slant**2 - high**2) / base, 1.0) if slant >= high else 0.5
    most = max(base, high, long)
    base, high, long = (max(edge, 0.35 * most) for edge in (base, high, long))
    top_x = lean * base
    dx, dy = long * 0.62, long * 0.3
    face = [(0.0, 0.0), (base, 0.0), (top_x, high)]
    far = [(x + dx, y + dy) for x, y in face]
    foot = (top_x, 0.0)
    spots = fit([*face, *far, foot], MARGIN + 40, MARGIN + 10, WIDTH - 2 * MARGIN - 90, 190)
    a, b, c = spots[:3]
    a2, b2, c2 = spots[3:6]
    canvas.shape([a, b, c], fill="light", width=2.4)
    canvas.shape([b, b2, c2, c], fill="shade", width=2.4)
    for end in (a, b2, c2):
        canvas.line(a2, end, 1.6, dash="dash")
    if drawn.text("cut") == "upright":
        across = [((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in ((a, a2), (b, b2), (c, c2))]
        canvas.shape(across, fill="stripe-clear", ink=CLAY, width=2.4)
    if drawn.text("cut") == "level":
        half = [((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in ((a, c), (b, c), (b2, c2), (a2, c2))]
        canvas.shape(half, fill="stripe-clear", ink=CLAY, width=2.4)
    if drawn.has("height"):
        canvas.line(c, spots[6], 1.6, dash="fine")
        canvas.square_corner(spots[6], c, b, 8)
        middle = (c[0], c[1] + (spots[6][1] - c[1]) * 0.62)
        canvas.off(drawn.text("height"), middle, (1, 0), gap=5, plate="light")
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((a[0] + b[0]) / 2, a[1] + 10), down=0)
    if drawn.has("width"):
        canvas.off(drawn.text("width"), ((b[0] + b2[0]) / 2, (b[1] + b2[1]) / 2), (0.44, 0.9), gap=5)
    if drawn.has("slant"):
        canvas.beside(drawn.text("slant"), c, a)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), ((b[0] + c2[0]) / 2, (b[1] + c2[1]) / 2), plate="shade")


def _round(drawn: Drawn) -> tuple[float, float]:
    """Radius and height as drawn, kept within what fits."""
    across = known(drawn, "diameter", 0) / 2 or known(drawn, "radius", 3)
    high = known(drawn, "height", 0) or across * 2
    ratio = min(max(high / across, 0.8), 3.2)
    radius = min(96.0, 200.0 / ratio)
    return radius, radius * ratio


def _base_lengths(canvas: Canvas, drawn: Drawn, at: Point, radius: float, below: float) -> None:
    """Radius or diameter in a round base."""
    canvas.disc(at, 3.2, width=0)
    if drawn.has("radius"):
        canvas.line(at, (at[0] + radius, at[1]), 2)
        canvas.write(drawn.text("radius"), (at[0] + radius / 2, at[1] - 6), down=1)
    if drawn.has("diameter"):
        canvas.line((at[0] - radius, at[1]), (at[0] + radius, at[1]), 2)
        canvas.write(drawn.text("diameter"), (at[0], at[1] + below), down=0)


def _cylinder(canvas: Canvas, drawn: Drawn) -> None:
    radius, high = _round(drawn)
    flat = radius * 0.3
    over = max(room(drawn.text(name)).height for name in ("radius", "diameter"))
    top, x = MARGIN + flat + over + 11, _MIDDLE
    bottom = top + high
    canvas.rectangle(x - radius, top, 2 * radius, high, fill="light", width=0)
    canvas.oval((x, bottom), radius, flat, 180, 360, fill="light")
    canvas.oval((x, bottom), radius, flat, 0, 180, dash="dash")
    canvas.oval((x, top), radius, flat, 0, 359.9, fill="shade")
    canvas.line((x - radius, top), (x - radius, bottom), 2.4)
    canvas.line((x + radius, top), (x + radius, bottom), 2.4)
    canvas.disc((x, top), 3.2, width=0)
    if drawn.has("radius"):
        canvas.line((x, top), (x + radius, top), 2)
        canvas.write(drawn.text("radius"), (x + radius / 2, top - flat - 8), down=1)
    if drawn.has("diameter"):
        canvas.line((x - radius, top), (x + radius, top), 2)
        canvas.write(drawn.text("diameter"), (x, top - flat - 8), down=1)
    if drawn.has("height"):
        canvas.write(drawn.text("height"), (x + radius + 10, (top + bottom) / 2), across=0)
    _cut_round(canvas, drawn, x, top, bottom, radius, flat, 1.0)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), (x, (top + bottom) / 2 + flat / 2), plate="light")
    canvas.height = max(canvas.height, bottom + flat)


def _cut_round(
    canvas: Canvas,
    drawn: Drawn,
    x: float,
    top: float,
    bottom: float,
    radius: float,
    flat: float,
    at_middle: float,
) -> None:
    """A flat cut through a cylinder (`at_middle` 1) or a cone (a half)."""
    middle = (top + bottom) / 2
    match drawn.text("cut"):
        case "level":
            canvas.oval((x, middle), radius * at_middle, flat * at_middle, 0, 359.9, fill="stripe-clear")
        case "upright" if at_middle == 1:
            canvas.shape(
                [(x - radius, top), (x + radius, top), (x + radius, bottom), (x - radius, bottom)],
                fill="stripe-clear",
                ink=CLAY,
            )
        case "upright":
            canvas.shape(
                [(x, top), (x + radius, bottom), (x - radius, bottom)], fill="stripe-clear", ink=CLAY
            )
        case "slanted":
            long = radius * (1 if at_middle == 1 else 0.42)
            _tilted_oval(canvas, (x, middle), (long, -0.4 * long), flat * at_middle)


def _tilted_oval(canvas: Canvas, at: Point, long: Point, short: float) -> None:
    """An oval whose long half-axis is `long` and whose short one stands upright."""

    def point(turn: float, lead: float = 0.0) -> Point:
        along, up = cos(turn) - lead * sin(turn), sin(turn) + lead * cos(turn)
        return (at[0] + along * long[0], at[1] + along * long[1] - up * short)

    quarter, handle = pi / 2, 4 / 3 * tan(pi / 8)
    pieces = [
        (point(n * quarter, handle), point((n + 1) * quarter, -handle), point((n + 1) * quarter))
        for n in range(4)
    ]
    canvas.curve(point(0), pieces, closed=True, fill="stripe-clear", ink=CLAY)


def _cone(canvas: Canvas, drawn: Drawn) -> None:
    radius, high = _round(drawn)
    flat = radius * 0.28
    x, top = _MIDDLE, MARGIN + 6
    bottom = top + high
    canvas.shape([(x - radius, bottom), (x, top), (x + radius, bottom)], closed=True, fill="light", width=0)
    canvas.oval((x, bottom), radius, flat, 180, 360, fill="light")
    canvas.oval((x, bottom), radius, flat, 0, 180, dash="dash")
    canvas.shape([(x - radius, bottom), (x, top), (x + radius, bottom)], closed=False, width=2.4)
    _cut_round(canvas, drawn, x, top, bottom, radius, flat, 0.5)
    if drawn.has("height"):
        canvas.line((x, top), (x, bottom), 1.6, dash="dash")
        canvas.square_corner((x, bottom), (x, top), (x + radius, bottom), 9)
        canvas.off(drawn.text("height"), (x, top + high * 0.6), (-1, 0), gap=5)
    if drawn.has("slant"):
        canvas.beside(drawn.text("slant"), (x + radius, bottom), (x, top))
    canvas.disc((x, bottom), 3.2, width=0)
    if drawn.has("radius"):
        canvas.line((x, bottom), (x + radius, bottom), 2)
        canvas.write(drawn.text("radius"), (x + radius / 2, bottom + flat + 9), down=0)
    if drawn.has("diameter"):
        canvas.line((x - radius, bottom), (x + radius, bottom), 2)
        canvas.write(drawn.text("diameter"), (x, bottom + flat + 9), down=0)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), (x - radius - 10, top + high * 0.4), across=1)
    canvas.height = max(canvas.height, bottom + flat)


def _sphere(canvas: Canvas, drawn: Drawn) -> None:
    radius, at = 100.0, (_MIDDLE, MARGIN + 104)
    canvas.disc(at, radius, fill="light", width=2.4)
    canvas.oval(at, radius, 28, 180, 360)
    canvas.oval(at, radius, 28, 0, 180, dash="dash")
    cut = drawn.text("cut")
    if cut in ("level", "upright"):
        canvas.oval(
            at,
            radius if cut == "level" else 28,
            28 if cut == "level" else radius,
            0,
            359.9,
            fill="stripe-clear",
        )
    _base_lengths(canvas, drawn, at, radius, 36)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), (at[0], at[1] - 58))


def _pyramid(canvas: Canvas, drawn: Drawn) -> None:
    long, deep = known(drawn, "length", 4), known(drawn, "width", 0) or known(drawn, "length", 4)
    high = known(drawn, "height", 0) or long * 0.95
    high = min(max(high, long * 0.6), long * 1.4)
    dx, dy = deep * 0.45, deep * 0.34
    base = [(0.0, 0.0), (long, 0.0), (long + dx, dy), (dx, dy)]
    middle = ((long + dx) / 2, dy / 2)
    tip = (middle[0], middle[1] + high)
    spots = fit(
        [*base, tip, middle, (long + dx / 2, dy / 2)], MARGIN + 40, MARGIN + 6, WIDTH - 2 * MARGIN - 100, 205
    )
    a, b, c, d, top, foot, side = spots
    canvas.shape([a, b, top], fill="light", width=2.4)
    canvas.shape([b, c, top], fill="shade", width=2.4)
    for one, other in ((a, d), (d, c), (d, top)):
        canvas.line(one, other, 1.6, dash="dash")
    match drawn.text("cut"):
        case "level":
            half = [((p[0] + top[0]) / 2, (p[1] + top[1]) / 2) for p in (a, b, c, d)]
            canvas.shape(half, fill="stripe-clear", ink=CLAY)
        case "upright":
            ends = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), ((d[0] + c[0]) / 2, (d[1] + c[1]) / 2)]
            canvas.shape([ends[0], top, ends[1]], fill="stripe-clear", ink=CLAY)
    if drawn.has("height"):
        canvas.line(top, foot, 1.6, dash="fine")
        canvas.off(
            drawn.text("height"), (top[0], top[1] + (foot[1] - top[1]) * 0.66), (-1, 0), gap=5, plate="light"
        )
    if drawn.has("slant"):
        canvas.line(top, side, 2, CLAY, "dash")
        canvas.square_corner(side, top, c, 8)
        middle = (side[0] + (top[0] - side[0]) * 0.36, side[1] + (top[1] - side[1]) * 0.36)
        canvas.off(drawn.text("slant"), middle, (1, 0), gap=5, plate="shade")
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((a[0] + b[0]) / 2, a[1] + 10), down=0)
    if drawn.has("width"):
        canvas.off(drawn.text("width"), ((b[0] + c[0]) / 2, (b[1] + c[1]) / 2), (0.6, 0.8), gap=4)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), (WIDTH - MARGIN, MARGIN + 20), across=1)
