"""Circles, solids with hidden edges dashed, and nets."""

from __future__ import annotations

from math import hypot, sqrt

from bot.course.figures.reading import Drawn, leading_number
from bot.pictures.canvas import CLAY, MARGIN, WIDTH, Canvas, Point, fit, on_circle
from bot.pictures.labels import room

_MIDDLE = WIDTH / 2
_DEPTH = (0.5, 0.36)  # how an edge that runs to the back is drawn


def _known(drawn: Drawn, name: str, otherwise: float) -> float:
    value = leading_number(drawn.text(name))
    return float(value) if value is not None and value > 0 else otherwise


def circle(canvas: Canvas, drawn: Drawn) -> None:
    """A circle or a part of one with radius, diameter, and what is written inside and around."""
    part = drawn.text("part", "whole")
    radius = {"whole": 98.0, "half": 120.0, "quarter": 170.0}[part]
    at = {
        "whole": (_MIDDLE, MARGIN + radius + 4),
        "half": (_MIDDLE, MARGIN + radius + 4),
        "quarter": (_MIDDLE - radius / 2, MARGIN + radius + 4),
    }[part]
    if part == "whole":
        canvas.disc(at, radius, fill="light", width=2.4)
    else:
        end = 180 if part == "half" else 90
        canvas.arc(at, radius, 0, end, wedge=True, fill="light", width=2.4)
        if part == "quarter":
            canvas.square_corner(at, on_circle(at, radius, 0), on_circle(at, radius, 90))
    canvas.disc(at, 4, width=0)
    if drawn.has("radius"):
        end_point = on_circle(at, radius, 0)
        canvas.line(at, end_point, 2.2)
        if part == "whole":
            canvas.write(drawn.text("radius"), (at[0] + radius / 2, at[1] - 8), down=1)
        else:
            canvas.write(drawn.text("radius"), (at[0] + radius / 2, at[1] + 10), down=0)
    if drawn.has("diameter"):
        canvas.line(on_circle(at, radius, 180), on_circle(at, radius, 0), 2.2)
        if part == "half":
            canvas.write(drawn.text("diameter"), (at[0], at[1] + 10 + 26 * drawn.has("radius")), down=0)
        else:
            canvas.write(drawn.text("diameter"), (at[0], at[1] + 10), down=0)
    if drawn.has("inside"):
        lift = {"whole": 0.5 if drawn.has("radius") or drawn.has("diameter") else 0.25, "half": 0.5}.get(
            part, 0.42
        )
        x = at[0] + (radius * 0.42 if part == "quarter" else 0)
        canvas.write(drawn.text("inside"), (x, at[1] - radius * lift))
    if drawn.has("around"):
        if part == "whole":  # an arrow along the rim says what is measured
            canvas.arc(at, radius + 9, 215, 325, width=1.4, ink=CLAY)
            canvas.head(on_circle(at, radius + 9, 320), on_circle(at, radius + 9, 328), CLAY, 8)
        canvas.write(drawn.text("around"), (_MIDDLE, canvas.height + 10), down=0)


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
    long = _known(drawn, "length", 5)
    deep = long if cube else _known(drawn, "width", 3.5)
    high = long if cube else _known(drawn, "height", 3)
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
        canvas.write(drawn.text("inside"), ((a[0] + b[0]) / 2, (a[1] + d[1]) / 2), plate=True)


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
        canvas.shape(plane, fill="stripe", ink=CLAY, width=2.4)


def _prism(canvas: Canvas, drawn: Drawn) -> None:
    base, high = _known(drawn, "length", 4), _known(drawn, "height", 3)
    long = _known(drawn, "width", 6)
    most = max(base, high, long)
    base, high, long = (max(edge, 0.35 * most) for edge in (base, high, long))
    slant = leading_number(drawn.text("slant"))
    top_x = base / 2 if slant is None or float(slant) < high else min(sqrt(float(slant) ** 2 - high**2), base)
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
    if drawn.has("height"):
        canvas.line(c, spots[6], 1.6, dash="fine")
        canvas.square_corner(spots[6], c, b, 8)
        canvas.off(drawn.text("height"), (c[0], c[1] + (spots[6][1] - c[1]) * 0.62), (1, 0), gap=5)
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((a[0] + b[0]) / 2, a[1] + 10), down=0)
    if drawn.has("width"):
        canvas.off(drawn.text("width"), ((b[0] + b2[0]) / 2, (b[1] + b2[1]) / 2), (0.44, 0.9), gap=5)
    if drawn.has("slant"):
        canvas.beside(drawn.text("slant"), c, a)
    if drawn.text("cut") in ("upright", "slanted"):
        middle = [((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in ((a, a2), (b, b2), (c, c2))]
        canvas.shape(middle, fill="stripe", ink=CLAY, width=2.4)
    if drawn.text("cut") == "level":
        half = [((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in ((a, c), (b, c), (b2, c2), (a2, c2))]
        canvas.shape(half, fill="stripe", ink=CLAY, width=2.4)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), ((b[0] + c2[0]) / 2, (b[1] + c2[1]) / 2), plate=True)


def _round(drawn: Drawn) -> tuple[float, float]:
    """Radius and height as drawn, kept within what fits."""
    across = _known(drawn, "diameter", 0) / 2 or _known(drawn, "radius", 3)
    high = _known(drawn, "height", 0) or across * 2
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
    top, x = MARGIN + flat + 22, _MIDDLE
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
        canvas.write(drawn.text("inside"), (x, (top + bottom) / 2 + flat / 2))
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
            canvas.oval((x, middle), radius * at_middle, flat * at_middle, 0, 359.9, fill="stripe")
        case "upright" if at_middle == 1:
            canvas.shape(
                [(x - radius, top), (x + radius, top), (x + radius, bottom), (x - radius, bottom)],
                fill="stripe",
                ink=CLAY,
            )
        case "upright":
            canvas.shape([(x, top), (x + radius, bottom), (x - radius, bottom)], fill="stripe", ink=CLAY)
        case "slanted":
            one, other = (
                (x - radius * at_middle * 0.8, middle + 26),
                (x + radius * at_middle * 0.8, middle - 26),
            )
            lift = flat * at_middle
            canvas.curve(
                one,
                [
                    ((one[0], one[1] + lift * 1.3), (other[0], other[1] + lift * 1.3), other),
                    ((other[0], other[1] - lift * 1.3), (one[0], one[1] - lift * 1.3), one),
                ],
                closed=True,
                fill="stripe",
                ink=CLAY,
            )


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
    if cut in ("level", "upright", "slanted"):
        canvas.oval(
            at, radius if cut == "level" else 28, 28 if cut == "level" else radius, 0, 359.9, fill="stripe"
        )
    _base_lengths(canvas, drawn, at, radius, 36)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), (at[0], at[1] - 58))


def _pyramid(canvas: Canvas, drawn: Drawn) -> None:
    long, deep = _known(drawn, "length", 4), _known(drawn, "width", 0) or _known(drawn, "length", 4)
    high = _known(drawn, "height", 0) or long * 0.95
    high = min(max(high, long * 0.6), long * 1.4)
    dx, dy = deep * 0.45, deep * 0.34
    base = [(0.0, 0.0), (long, 0.0), (long + dx, dy), (dx, dy)]
    middle = ((long + dx) / 2, dy / 2)
    tip = (middle[0], middle[1] + high)
    spots = fit([*base, tip, middle, (long / 2, 0.0)], MARGIN + 40, MARGIN + 6, WIDTH - 2 * MARGIN - 100, 205)
    a, b, c, d, top, foot, front = spots
    canvas.shape([a, b, top], fill="light", width=2.4)
    canvas.shape([b, c, top], fill="shade", width=2.4)
    for one, other in ((a, d), (d, c), (d, top)):
        canvas.line(one, other, 1.6, dash="dash")
    match drawn.text("cut"):
        case "level":
            half = [((p[0] + top[0]) / 2, (p[1] + top[1]) / 2) for p in (a, b, c, d)]
            canvas.shape(half, fill="stripe", ink=CLAY)
        case "upright" | "slanted":
            ends = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), ((d[0] + c[0]) / 2, (d[1] + c[1]) / 2)]
            canvas.shape([ends[0], top, ends[1]], fill="stripe", ink=CLAY)
    if drawn.has("height"):
        canvas.line(top, foot, 1.6, dash="fine")
        canvas.off(
            drawn.text("height"), (top[0], top[1] + (foot[1] - top[1]) * 0.72), (-1, 0), gap=5, plate=True
        )
    if drawn.has("slant"):
        canvas.line(top, front, 1.6, CLAY, "dash")
        canvas.square_corner(front, top, b, 8)
        canvas.off(
            drawn.text("slant"),
            (front[0] + (top[0] - front[0]) * 0.3, front[1] + (top[1] - front[1]) * 0.3),
            (1, 0),
            gap=5,
        )
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((a[0] + b[0]) / 2, a[1] + 10), down=0)
    if drawn.has("width"):
        canvas.off(drawn.text("width"), ((b[0] + c[0]) / 2, (b[1] + c[1]) / 2), (0.6, 0.8), gap=4)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), (WIDTH - MARGIN, MARGIN + 20), across=1)


def net(canvas: Canvas, drawn: Drawn) -> None:
    """The faces of a solid laid flat; folds are dashed."""
    {
        "box": _box_net,
        "cube": _box_net,
        "prism": _prism_net,
        "pyramid": _pyramid_net,
        "cylinder": _cylinder_net,
    }[drawn.text("shape")](canvas, drawn)


def _faces(
    canvas: Canvas, outline: list[Point], folds: list[tuple[Point, Point]], wide: float, high: float
) -> list[Point]:
    """Outline and folds brought onto the sheet; gives back the outline's points, then those of the folds."""
    flat = [*outline, *(point for fold in folds for point in fold)]
    spots = fit(flat, (WIDTH - wide) / 2, MARGIN + 22, wide, high)
    canvas.shape(spots[: len(outline)], fill="light", width=2.4)
    for n in range(len(folds)):
        canvas.line(spots[len(outline) + 2 * n], spots[len(outline) + 2 * n + 1], 1.6, dash="dash")
    return spots


def _box_net(canvas: Canvas, drawn: Drawn) -> None:
    cube = drawn.text("shape") == "cube"
    long = _known(drawn, "length", 5)
    deep = long if cube else _known(drawn, "width", 3)
    high = long if cube else _known(drawn, "height", 2)
    most = max(long, deep, high)
    long, deep, high = (max(edge, 0.28 * most) for edge in (long, deep, high))
    # In a column from the top: back, bottom, front, top; the two ends beside the bottom.
    y1, y2, y3 = high, high + deep, 2 * high + deep
    y4 = y3 + deep
    outline: list[Point] = [
        (0, 0), (long, 0), (long, y1), (long + high, y1), (long + high, y2), (long, y2), (long, y4),
        (0, y4), (0, y2), (-high, y2), (-high, y1), (0, y1),
    ]  # fmt: skip
    folds: list[tuple[Point, Point]] = [
        ((0, y1), (long, y1)),
        ((0, y2), (long, y2)),
        ((0, y3), (long, y3)),
        ((0, y1), (0, y2)),
        ((long, y1), (long, y2)),
    ]
    spots = _faces(canvas, outline, folds, 220, 270)
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((spots[0][0] + spots[1][0]) / 2, spots[0][1] + 9), down=0)
    if not cube and drawn.has("width"):
        canvas.write(drawn.text("width"), (spots[3][0] + 8, (spots[3][1] + spots[4][1]) / 2), across=0)
    if not cube and drawn.has("height"):
        canvas.write(drawn.text("height"), (spots[1][0] + 8, (spots[1][1] + spots[2][1]) / 2 + 4), across=0)


def _prism_net(canvas: Canvas, drawn: Drawn) -> None:
    base, high, long = _known(drawn, "length", 4), _known(drawn, "height", 3), _known(drawn, "width", 6)
    slant = _known(drawn, "slant", hypot(base / 2, high))
    most = max(base, high, long)
    base, high, long, slant = (max(edge, 0.3 * most) for edge in (base, high, long, slant))
    outline: list[Point] = [
        (0, 0), (slant, 0), (slant + base / 2, -high), (slant + base, 0), (2 * slant + base, 0),
        (2 * slant + base, long), (slant + base, long), (slant + base / 2, long + high), (slant, long), (0, long),
    ]  # fmt: skip
    folds: list[tuple[Point, Point]] = [
        ((slant, 0), (slant, long)),
        ((slant + base, 0), (slant + base, long)),
        ((slant, 0), (slant + base, 0)),
        ((slant, long), (slant + base, long)),
    ]
    tip: tuple[Point, Point] = ((slant + base / 2, long + high), (slant + base / 2, long))
    spots = _faces(canvas, outline, [*folds, tip] if drawn.has("height") else folds, 250, 260)
    if drawn.has("width"):
        canvas.write(drawn.text("width"), (spots[4][0] + 8, (spots[4][1] + spots[5][1]) / 2), across=0)
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((spots[1][0] + spots[3][0]) / 2, spots[1][1] - 7), down=1)
    if drawn.has("slant"):
        canvas.write(drawn.text("slant"), ((spots[3][0] + spots[4][0]) / 2, spots[4][1] + 9), down=0)
    if drawn.has("height"):
        x, y = (spots[-2][0] + spots[-1][0]) / 2, (spots[-2][1] + spots[-1][1]) / 2
        canvas.write(drawn.text("height"), (x + 5, y + 8), across=0, size=14)


def _pyramid_net(canvas: Canvas, drawn: Drawn) -> None:
    side, slant = _known(drawn, "length", 4), _known(drawn, "slant", 4)
    slant = min(max(slant, side * 0.6), side * 1.5)
    outline: list[Point] = [
        (0, 0), (side / 2, -slant), (side, 0), (side + slant, side / 2), (side, side),
        (side / 2, side + slant), (0, side), (-slant, side / 2),
    ]  # fmt: skip
    folds: list[tuple[Point, Point]] = [
        ((0, 0), (side, 0)),
        ((side, 0), (side, side)),
        ((side, side), (0, side)),
        ((0, side), (0, 0)),
        ((side, side / 2), (side + slant, side / 2)),
    ]
    spots = _faces(canvas, outline, folds if drawn.has("slant") else folds[:4], 270, 270)
    if drawn.has("length"):
        canvas.write(drawn.text("length"), ((spots[0][0] + spots[2][0]) / 2, spots[0][1] - 8), down=1)
    if drawn.has("slant"):
        one, other = spots[-2], spots[-1]
        canvas.write(drawn.text("slant"), ((one[0] + other[0]) / 2, one[1] + 34), down=0)


def _cylinder_net(canvas: Canvas, drawn: Drawn) -> None:
    radius, high = _known(drawn, "radius", 2), _known(drawn, "height", 5)
    around = 2 * 3.14159 * radius
    high = min(max(high, around * 0.3), around * 0.75)
    scale = min(250 / around, 150 / high)
    wide, tall, r = around * scale, high * scale, radius * scale
    left, top = (WIDTH - wide) / 2, MARGIN + 2 * r + 4
    canvas.rectangle(left, top, wide, tall, fill="light", width=2.4)
    for y in (top - r, top + tall + r):
        canvas.disc((_MIDDLE, y), r, fill="shade", width=2.4)
        canvas.disc((_MIDDLE, y), 3, width=0)
    if drawn.has("radius"):
        canvas.line((_MIDDLE, top - r), (_MIDDLE + r, top - r), 2)
        canvas.write(drawn.text("radius"), (_MIDDLE + r + 8, top - r), across=0)
    if drawn.has("height"):
        canvas.write(drawn.text("height"), (left + wide + 8, top + tall / 2), across=0)


__all__ = ["circle", "net", "room", "solid"]
