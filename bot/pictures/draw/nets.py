"""Nets: the faces of a solid laid flat, folds dashed."""

from __future__ import annotations

from math import hypot, pi

from bot.course.figures.reading import Drawn
from bot.pictures.canvas import MARGIN, WIDTH, Canvas, Point, fit
from bot.pictures.draw.solids import known

_MIDDLE = WIDTH / 2


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
    long = known(drawn, "length", 5)
    deep = long if cube else known(drawn, "width", 3)
    high = long if cube else known(drawn, "height", 2)
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
    base, high, long = known(drawn, "length", 4), known(drawn, "height", 3), known(drawn, "width", 6)
    slant = known(drawn, "slant", hypot(base / 2, high))
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
        x, y = spots[-2][0] + (spots[3][0] - spots[1][0]) / 4, (spots[-2][1] + spots[-1][1]) / 2
        canvas.write(drawn.text("height"), (x + 10, y - 4), across=0)


def _pyramid_net(canvas: Canvas, drawn: Drawn) -> None:
    side, slant = known(drawn, "length", 4), known(drawn, "slant", 4)
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
        down = abs(spots[4][1] - spots[2][1]) / 4
        canvas.write(
            drawn.text("slant"), ((one[0] + other[0]) / 2 + 6, one[1] + down + 8), across=0.2, down=0
        )


def _cylinder_net(canvas: Canvas, drawn: Drawn) -> None:
    radius, high = known(drawn, "radius", 2), known(drawn, "height", 5)
    around = 2 * pi * radius
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
