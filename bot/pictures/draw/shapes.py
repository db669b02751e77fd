"""Flat shapes with lengths. Known lengths shape the drawing; where one is unknown it is drawn in a fair middle."""

from __future__ import annotations

from collections.abc import Sequence
from math import acos, cos, degrees, hypot, radians, sin, sqrt, tan

from bot.course.figures.reading import BARE, Drawn, leading_number
from bot.pictures.canvas import MARGIN, TEAL, WIDTH, Canvas, Point, fit, on_circle
from bot.pictures.labels import room

_FULL = WIDTH - 2 * MARGIN
_SIDE_ROOM = 34.0
_FLAT, _FLAT_LEGS = (
    0.2,
    0.32,
)  # height over base, and leg over leg: flatter ones leave no room for what is written
_DRAWN_ON = 0.38  # how far a side runs on past its corner, in parts of the side


def _known(label: str) -> float | None:
    """The length a label begins with."""
    value = leading_number(label)
    return float(value) if value is not None and value > 0 else None


def _ratio(wide: str, high: str, otherwise: float = 1.6, most: float = 2.6) -> float:
    """Width over height, kept within what can be drawn and labelled."""
    w, h = _known(wide), _known(high)
    return min(max(w / h, 1 / most * 1.4), most) if w and h else otherwise


def rectangle(canvas: Canvas, drawn: Drawn) -> None:
    """A rectangle with its labels: width below, height on the right, area inside."""
    ratio = _ratio(drawn.text("width"), drawn.text("height"))
    side = max(room(drawn.text("height")).width + 14, 20)
    half = drawn.text("half-circle")
    wide_room = _FULL - side - MARGIN
    if half == "right":
        ratio = max(ratio, 1.0)
    high = min(190.0, wide_room / (ratio + (0.5 if half == "right" else 0)))
    wide = high * ratio
    if half == "top":
        high, wide = min(high, 120.0), min(wide, 200.0)
    left = (WIDTH - wide - side - (high / 2 if half == "right" else 0)) / 2
    if half == "right":  # its height is written on the left
        left += side
    top = MARGIN + 4 + (wide / 2 if half == "top" else 0)
    canvas.rectangle(left, top, wide, high, fill="light", width=2.4)
    if half == "top":
        canvas.arc((left + wide / 2, top), wide / 2, 0, 180, fill="light", width=2.4, wedge=True)
        canvas.line((left, top), (left + wide, top), 2.4, "light", "")
        canvas.line((left + 2, top), (left + wide - 2, top), 1.6, dash="dash")
    if half == "right":
        canvas.arc((left + wide, top + high / 2), high / 2, -90, 90, fill="light", width=2.4, wedge=True)
        canvas.line((left + wide, top), (left + wide, top + high), 2.4, "light", "")
        canvas.line((left + wide, top + 2), (left + wide, top + high - 2), 1.6, dash="dash")
    corners = [(left, top), (left + wide, top), (left + wide, top + high), (left, top + high)]
    for k in (2, 3) if half else range(4):
        canvas.square_corner(corners[k], corners[k - 1], corners[(k + 1) % 4])
    canvas.write(drawn.text("width"), (left + wide / 2, top + high + 10), down=0)
    if half == "right":
        canvas.write(drawn.text("height"), (left - 10, top + high / 2), across=1)
    else:
        canvas.write(drawn.text("height"), (left + wide + 10, top + high / 2), across=0)
    if drawn.has("diagonal"):
        canvas.line(corners[3], corners[1], 2, dash="dash")
        middle = (left + wide / 2, top + high / 2)
        length = hypot(wide, high)
        canvas.off(drawn.text("diagonal"), middle, (-high / length, -wide / length), gap=5)
    if drawn.has("inside"):
        y = top + high / 2 if not drawn.has("diagonal") else top + high * 0.78
        x = left + wide / 2 if not drawn.has("diagonal") else left + wide * 0.68
        canvas.write(drawn.text("inside"), (x, y))


def area_model(canvas: Canvas, drawn: Drawn) -> None:
    """A rectangle in parts; parts are as wide as their numbers where that leaves room for what is written."""
    across, down = drawn.labels("across"), drawn.labels("down")
    cells = drawn.rows("inside") if drawn.has("inside") else [[""] * len(across) for _ in down]
    side = max(room(label).width for label in down) + 12
    widths = _shares(
        across, _FULL - side, [max(room(row[k]).width + 12 for row in cells) for k in range(len(across))]
    )
    heights = _shares(down, min(220.0, 90.0 * len(down) + 20), [40.0] * len(down))
    top = MARGIN + max(room(label).height for label in across) + 10
    y = top
    for n, label in enumerate(down):
        canvas.write(label, (MARGIN + side - 10, y + heights[n] / 2), across=1)
        x = MARGIN + side
        for k, name in enumerate(across):
            if n == 0:
                canvas.write(name, (x + widths[k] / 2, top - 8), down=1)
            fill = (
                ("shade", "light", "back", "warm")[(n + k) % 4]
                if cells[n][k] in ("", BARE)
                else ("shade" if (n + k) % 2 == 0 else "light")
            )
            canvas.rectangle(x, y, widths[k], heights[n], fill="light" if fill == "back" else fill)
            if cells[n][k] not in ("", BARE):
                canvas.write(cells[n][k], (x + widths[k] / 2, y + heights[n] / 2))
            x += widths[k]
        y += heights[n]


def _shares(labels: Sequence[str], whole: float, least: Sequence[float]) -> list[float]:
    """Lengths in proportion where all are known, but none below its least; equal halves otherwise."""
    known = [_known(label) or 0.0 for label in labels]
    if not all(known):
        middle = [k for k in known if k]
        known = [k or (max(middle) * 1.4 if middle else 1.0) for k in known]
    floor = [max(need, whole * 0.16) for need in least]
    shares = [max(k / sum(known) * whole, need) for k, need in zip(known, floor, strict=True)]
    return [share * whole / sum(shares) for share in shares]


def composite(canvas: Canvas, drawn: Drawn) -> None:
    """Any figure by its corners, with a label at each side and dashed cuts."""
    corners = [(float(x), float(y)) for x, y in drawn.pairs("corners")]
    labels = drawn.labels("sides")
    side = max(room(label).width for label in labels) + 10
    # Cuts may leave the corners (a height drawn outside), so all points are brought in together.
    cuts = [(float(x), float(y)) for x, y in drawn.pairs("cuts")]
    spots = fit(corners + cuts, MARGIN + side, MARGIN + 26, _FULL - 2 * side, 210)
    shape, cut_spots = spots[: len(corners)], spots[len(corners) :]
    canvas.shape(shape, fill="light", width=2.4)
    turn = _turn(shape)
    for n, corner in enumerate(shape):
        before, after = shape[n - 1], shape[(n + 1) % len(shape)]
        if _is_square(corner, before, after):
            canvas.square_corner(corner, before, after, 8)
        if labels[n] != BARE:
            one, other = (corner, after) if turn > 0 else (after, corner)
            canvas.beside(labels[n], one, other, gap=8)
    cut_labels = drawn.labels("cut-labels")
    for n, (one, other) in enumerate(zip(cut_spots[::2], cut_spots[1::2], strict=True)):
        canvas.line(one, other, 1.8, dash="dash")
        if cut_labels and cut_labels[n] != BARE:
            canvas.beside(cut_labels[n], one, other, gap=6)
    if drawn.has("inside"):
        canvas.write(drawn.text("inside"), _inside_point(shape))


def _turn(points: Sequence[Point]) -> float:
    """Above 0 if the points run counterclockwise as seen on the sheet."""
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return -sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)


def _is_square(corner: Point, one: Point, other: Point) -> bool:
    ax, ay = one[0] - corner[0], one[1] - corner[1]
    bx, by = other[0] - corner[0], other[1] - corner[1]
    return abs(ax * bx + ay * by) < 0.02 * hypot(ax, ay) * hypot(bx, by)


def _inside_point(points: Sequence[Point]) -> Point:
    """A point well inside: of a few tries the one farthest from every side."""
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    best, far = (sum(xs) / len(xs), sum(ys) / len(ys)), -1.0
    for i in range(1, 16):
        for j in range(1, 16):
            spot = (min(xs) + (max(xs) - min(xs)) * i / 16, min(ys) + (max(ys) - min(ys)) * j / 16)
            if _contains(points, spot) and (away := _distance(points, spot)) > far + 0.5:
                best, far = spot, away
    return best


def _contains(points: Sequence[Point], spot: Point) -> bool:
    inside = False
    for (ax, ay), (bx, by) in zip(points, [*points[1:], points[0]], strict=True):
        if (ay > spot[1]) != (by > spot[1]) and spot[0] < ax + (spot[1] - ay) / (by - ay) * (bx - ax):
            inside = not inside
    return inside


def _distance(points: Sequence[Point], spot: Point) -> float:
    def to_side(a: Point, b: Point) -> float:
        length = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
        along = max(
            0.0, min(1.0, ((spot[0] - a[0]) * (b[0] - a[0]) + (spot[1] - a[1]) * (b[1] - a[1])) / length)
        )
        return hypot(spot[0] - a[0] - along * (b[0] - a[0]), spot[1] - a[1] - along * (b[1] - a[1]))

    return min(to_side(a, b) for a, b in zip(points, [*points[1:], points[0]], strict=True))


def triangle(canvas: Canvas, drawn: Drawn) -> None:
    """A triangle with level base, shaped by the lengths or angles that are known."""
    left, right, top = _triangle_shape(drawn)
    points = [left, right, top]
    ax, ay, wide, high = MARGIN + 46, MARGIN + 26, _FULL - 92, 200.0
    if drawn.yes("squares"):
        ax, wide, high, ay = MARGIN + 84, _FULL - 176, 120.0, MARGIN + 96
    foot = (top[0], 0.0)
    if drawn.has("exterior"):
        ax, wide = MARGIN + 24, _FULL - 48
    drawn_on = (right[0] + _DRAWN_ON * (right[0] - left[0]), 0.0)
    spots = fit(
        [*points, foot if drawn.has("height") else right, drawn_on if drawn.has("exterior") else right],
        ax,
        ay,
        wide,
        high,
    )
    # What is flat lies at the top of its room, not in the middle of an empty one.
    lift = 0.0 if drawn.yes("squares") else min(y for _, y in spots) - ay
    left, right, top, foot, drawn_on = ((x, y - lift) for x, y in spots)
    if drawn.yes("squares"):
        for one, other in ((left, top), (top, right), (right, left)):
            out = (other[1] - one[1], one[0] - other[0])
            far = [(other[0] + out[0], other[1] + out[1]), (one[0] + out[0], one[1] + out[1])]
            canvas.shape([one, other, *far], fill="shade", width=1.8)
    canvas.shape([left, right, top], fill="light", width=2.4)
    if drawn.has("exterior"):
        canvas.line(right, drawn_on, 2.4)
        outside = degrees(_direction(right, top))
        in_opening(
            canvas, drawn.text("exterior"), right, 0, outside, 26, hypot(right[0] - top[0], right[1] - top[1])
        )
    if drawn.has("right-angle"):
        at = {"left": (left, right, top), "right": (right, left, top), "top": (top, left, right)}
        canvas.square_corner(*at[drawn.text("right-angle")], 12)
    if drawn.has("height"):
        _height(canvas, drawn.text("height"), top, foot, left, right)
    sides = {"base": (right, left), "left": (left, top), "right": (top, right)}
    for name, (one, other) in sides.items():
        if drawn.has(name):
            if drawn.yes("squares"):
                canvas.write(drawn.text(name), _square_middle(one, other))
            else:
                canvas.beside(drawn.text(name), other, one, gap=12 if drawn.has("equal-sides") else 8)
    _equal_marks(canvas, drawn, left, right, top)
    _corner_labels(canvas, drawn, [left, right, top])


def _square_middle(one: Point, other: Point) -> Point:
    return ((one[0] + other[0] + other[1] - one[1]) / 2, (one[1] + other[1] + one[0] - other[0]) / 2)


def _equal_marks(canvas: Canvas, drawn: Drawn, left: Point, right: Point, top: Point) -> None:
    if drawn.has("equal-sides"):
        dash_across(canvas, left, top)
        dash_across(canvas, top, right)
        if drawn.text("equal-sides") == "three":
            dash_across(canvas, left, right)


def _height(canvas: Canvas, label: str, top: Point, foot: Point, left: Point, right: Point) -> None:
    canvas.line(top, foot, 1.8, dash="dash")
    outside = not left[0] - 1 <= foot[0] <= right[0] + 1
    if outside:
        near = left if foot[0] < left[0] else right
        canvas.line(near, foot, 1.6, dash="fine")
    toward = left if foot[0] > (left[0] + right[0]) / 2 else right
    canvas.square_corner(foot, top, toward, 9)
    way = (-1.0, 0.0) if (foot[0] < left[0]) or foot[0] > (left[0] + right[0]) / 2 + 1 else (1.0, 0.0)
    if foot[0] > right[0] + 1:
        way = (1.0, 0.0)
    canvas.off(label, (foot[0], top[1] + (foot[1] - top[1]) * 0.6), way, gap=6)


def _triangle_shape(drawn: Drawn) -> tuple[Point, Point, Point]:
    """Corners with y upwards. Three sides, or two at a right angle, or two angles, or base and height decide."""
    base, left, right = (_known(drawn.text(name)) for name in ("base", "left", "right"))
    corner = drawn.text("right-angle")
    if base and left and right and 2 * max(base, left, right) < base + left + right:
        return _by_sides(base, left, right)
    if corner:
        return _right_triangle(corner, base, left, right)
    if drawn.has("equal-sides"):
        if drawn.text("equal-sides") == "three":
            return _by_sides(1, 1, 1)
        leg = left or right
        if base and leg and 2 * leg > base:
            return _by_sides(base, leg, leg)
    angles = [_known(label) for label in drawn.labels("angles")]
    if len(angles) == 3 and (found := _two_angles(angles)):
        return _by_angles(*found)
    if drawn.has("equal-sides"):
        return _by_sides(1, 1.15, 1.15)
    high = _known(drawn.text("height"))
    if base and high:
        ratio = min(max(high / base, 0.45), 1.3)
        lean = _lean(left, high, base) if left else 0.36
        return (0, 0), (1, 0), (lean, ratio)
    return (0, 0), (1, 0), (0.36, 0.72)


def _lean(left: float, high: float, base: float) -> float:
    return sqrt(left**2 - high**2) / base if left > high else 0.3


def _by_sides(base: float, left: float, right: float) -> tuple[Point, Point, Point]:
    x = (base**2 + left**2 - right**2) / (2 * base)
    return (0, 0), (base, 0), (x, sqrt(max(left**2 - x**2, (0.12 * base) ** 2)))


def _right_triangle(
    corner: str, base: float | None, left: float | None, right: float | None
) -> tuple[Point, Point, Point]:
    if corner == "top":
        if left and right:
            slope = min(max(left / right, _FLAT_LEGS), 1 / _FLAT_LEGS)
        elif base and (leg := left or right) and base > leg:
            rest = sqrt(base**2 - leg**2)
            slope = min(max((left or rest) / (right or rest), _FLAT_LEGS), 1 / _FLAT_LEGS)
        else:
            slope = 0.75
        long = hypot(slope, 1)
        return (0, 0), (long, 0), (slope**2 / long, slope / long)
    upright, slanted = (left, right) if corner == "left" else (right, left)
    if not base and upright and slanted and slanted > upright:
        base = sqrt(slanted**2 - upright**2)
    if not upright and base and slanted and slanted > base:
        upright = sqrt(slanted**2 - base**2)
    high = min(max(upright / base, _FLAT), 2.6) if upright and base else 0.7
    return (0, 0), (1, 0), (0 if corner == "left" else 1, high)


def _two_angles(angles: list[float | None]) -> tuple[float, float] | None:
    left, right, top = angles
    if left and right and left + right < 180:
        return left, right
    if left and top and left + top < 180:
        return left, 180 - left - top
    if right and top and right + top < 180:
        return 180 - right - top, right
    return None


def _by_angles(left: float, right: float) -> tuple[Point, Point, Point]:
    left, right = max(left, 12.0), max(right, 12.0)
    if left == 90:
        return (0, 0), (1, 0), (0, tan(radians(min(right, 75))))
    x = sin(radians(right)) * cos(radians(left)) / sin(radians(left + right))
    y = sin(radians(right)) * sin(radians(left)) / sin(radians(left + right))
    return (0, 0), (1, 0), (x, y)


def dash_across(canvas: Canvas, one: Point, other: Point, count: int = 1) -> None:
    """Short strokes across the middle of a side: sides with as many are equal."""
    length = hypot(other[0] - one[0], other[1] - one[1]) or 1
    ux, uy = (other[0] - one[0]) / length, (other[1] - one[1]) / length
    for n in range(count):
        shift = (n - (count - 1) / 2) * 5
        x, y = (one[0] + other[0]) / 2 + shift * ux, (one[1] + other[1]) / 2 + shift * uy
        canvas.line((x - 6 * uy, y + 6 * ux), (x + 6 * uy, y - 6 * ux), 2)


def _corner_labels(canvas: Canvas, drawn: Drawn, points: list[Point]) -> None:
    """Angles inside the corners, names outside."""
    angles, names = drawn.labels("angles"), drawn.labels("corners")
    middle = (sum(p[0] for p in points) / len(points), sum(p[1] for p in points) / len(points))
    for n, corner in enumerate(points):
        if angles and angles[n] != BARE:
            angle_label(canvas, angles[n], corner, points[n - 1], points[(n + 1) % len(points)])
    for n, corner in enumerate(points):
        if names and names[n] != BARE:
            length = hypot(corner[0] - middle[0], corner[1] - middle[1]) or 1
            out = ((corner[0] - middle[0]) / length, (corner[1] - middle[1]) / length)
            if drawn.has("exterior") and n < 2:
                out = (0.0, 1.0)  # the base runs on there
            away = room(names[n])
            reach = abs(out[0]) * away.width / 2 + abs(out[1]) * away.height / 2
            gap = 6.0
            while gap < 40 and canvas.is_taken(
                names[n], (corner[0] + out[0] * (gap + reach), corner[1] + out[1] * (gap + reach))
            ):
                gap += 4
            canvas.off(names[n], corner, out, gap=gap)


def angle_label(canvas: Canvas, label: str, corner: Point, one: Point, other: Point) -> None:
    """An arc between two arms with its label."""
    a = degrees(_direction(corner, one)) % 360
    b = degrees(_direction(corner, other)) % 360
    start, end = (a, b) if (b - a) % 360 <= 180 else (b, a)
    arm = min(
        hypot(one[0] - corner[0], one[1] - corner[1]), hypot(other[0] - corner[0], other[1] - corner[1])
    )
    size = (end - start) % 360
    # The bisector meets the line between the two ends there; a label has to stay on this side of it.
    across = hypot(one[0] - corner[0], one[1] - corner[1]) + hypot(other[0] - corner[0], other[1] - corner[1])
    middle, need = radians(start + size / 2), room(label)
    wall = 2 * arm * (across - arm) / (across or 1) * cos(radians(size / 2))
    reach = abs(cos(middle)) * need.width / 2 + abs(sin(middle)) * need.height / 2 + 5
    in_opening(canvas, label, corner, start, size, 20, wall - reach)


def in_opening(
    canvas: Canvas, label: str, at: Point, start: float, size: float, radius: float, most: float
) -> None:
    """An arc between two arms and its label, as near as it clears both; beyond the corner if that is too far out."""
    if size < 35:
        radius = max(radius, 28.0)
    canvas.arc(at, radius, start, start + size, width=1.6, ink=TEAL)
    need, middle = room(label), radians(start + size / 2)
    far = radius + 6 + abs(cos(middle)) * need.width / 2 + abs(sin(middle)) * need.height / 2
    if size < 180:
        for arm in (radians(start), radians(start + size)):
            reach = abs(sin(arm)) * need.width / 2 + abs(cos(arm)) * need.height / 2 + 4
            far = max(far, reach / sin(radians(size) / 2))
    spot = on_circle(at, far, start + size / 2)
    if far > most or canvas.is_taken(label, spot):
        canvas.off(label, at, (-cos(middle), sin(middle)), gap=5)
    else:
        canvas.write(label, spot)


def _direction(corner: Point, point: Point) -> float:
    dx, dy = point[0] - corner[0], corner[1] - point[1]
    angle = acos(max(-1.0, min(1.0, dx / (hypot(dx, dy) or 1))))
    return angle if dy >= 0 else -angle
