"""What has to hold in figures of geometry."""

from __future__ import annotations

from collections.abc import Iterator

from bot.course.figures.reading import Drawn, leading_number
from bot.course.figures.rules import Rule, as_many, between, by_twos, whole


def _area_model(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "across", 1, 4)
    yield from between(drawn, "down", 1, 4)
    if drawn.has("inside"):
        shape = [len(row) for row in drawn.rows("inside")]
        if shape != [len(drawn.labels("across"))] * len(drawn.labels("down")):
            yield "'inside' has a row for each label of 'down', with a label for each of 'across'."


def _composite(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "corners", 3, 12)
    yield from as_many(drawn, "sides", "corners")
    yield from by_twos(drawn, "cuts")
    if drawn.has("cut-labels") and 2 * len(drawn.labels("cut-labels")) != len(drawn.labels("cuts")):
        yield "'cut-labels' has one label for every two points of 'cuts'."
    corners = drawn.pairs("corners")
    if len(set(corners)) != len(corners):
        yield "'corners' names each corner once; the figure closes by itself."
    elif sum(a * d - b * c for (a, b), (c, d) in zip(corners, corners[1:] + corners[:1], strict=True)) == 0:
        yield "The corners enclose no area."


def _triangle(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "angles", 3, 3)
    yield from between(drawn, "corners", 3, 3)
    if drawn.has("exterior") and drawn.text("right-angle") == "right":
        yield "'exterior' is marked at the right corner; put the right angle elsewhere."
    if drawn.has("exterior") and drawn.yes("squares"):
        yield "'exterior' and 'squares' take the same room: one of them."
    sides = [leading_number(drawn.text(name)) for name in ("base", "left", "right")]
    known = [side for side in sides if side is not None]
    if any(side <= 0 for side in known):
        yield "A side of a triangle is longer than 0."
    elif len(known) == 3 and 2 * max(known) >= sum(known):
        yield f"No triangle has the sides {', '.join(str(side) for side in known)}: two together pass the third."
    angles = [leading_number(label) for label in drawn.labels("angles")]
    sizes = [angle for angle in angles if angle is not None]
    if len(sizes) == 3 and sum(sizes) != 180:
        yield f"The angles of a triangle make 180 together; these make {sum(sizes)}."


def _quadrilateral(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "angles", 4, 4)
    yield from between(drawn, "corners", 4, 4)


def _regular_polygon(drawn: Drawn) -> Iterator[str]:
    yield from whole(drawn, "sides", 3, 12)


def _similar(drawn: Drawn) -> Iterator[str]:
    sides = 2 if drawn.text("shape") == "rectangle" else 3
    for name in ("first", "second"):
        if not 1 <= len(drawn.labels(name)) <= sides:
            yield f"'{name}' has up to {sides} sides for a {drawn.text('shape')}."
    yield from as_many(drawn, "first", "second")
    yield from between(drawn, "names", 2, 2)


def _angle(drawn: Drawn) -> Iterator[str]:
    size = drawn.number("degrees")
    most = 180 if drawn.yes("protractor") else 359
    if not 1 <= size <= most:
        yield f"'degrees' is from 1 to {most}; here it is {size}."
    yield from between(drawn, "names", 3, 3)


def arms_at_a_point(arrangement: str, sizes: int) -> int:
    """How many arms `angles` draws for so many sizes."""
    return {"crossing": 4, "point": sizes}.get(arrangement, sizes + 1)


def _angles(drawn: Drawn) -> Iterator[str]:
    sizes, arrangement = drawn.numbers("sizes"), drawn.text("arrangement")
    arms = arms_at_a_point(arrangement, len(sizes))
    if drawn.has("names") and len(drawn.labels("names")) != arms + 1:
        yield f"'names' is the vertex and then an end for each of the {arms} arms; none leaves one bare."
    if arrangement == "crossing":
        if not 15 <= sizes[0] <= 165:
            yield f"'sizes' begins with the first angle of the crossing, 15 to 165; here it is {sizes[0]}."
        yield from between(drawn, "labels", 4, 4)
        return
    full = {"right": 90, "straight": 180, "point": 360}[arrangement]
    if sum(sizes) != full or any(size < 10 for size in sizes):
        yield f"'sizes' makes {full} together, each at least 10, for '{arrangement}'; these make {sum(sizes)}."
    yield from as_many(drawn, "sizes", "labels")


def _parallel_lines(drawn: Drawn) -> Iterator[str]:
    yield from between(drawn, "labels", 8, 8)
    if not 25 <= drawn.number("degrees", 60) <= 155:
        yield f"'degrees' is from 25 to 155, so that the labels fit; here it is {drawn.number('degrees')}."


def _solid(drawn: Drawn) -> Iterator[str]:
    if drawn.text("cut") == "slanted" and drawn.text("shape") not in ("box", "cube", "cylinder", "cone"):
        yield f"A slanted cut is drawn through a box, cube, cylinder or cone, not a {drawn.text('shape')}."
    if not drawn.yes("cubes"):
        return
    if drawn.text("shape") not in ("box", "cube"):
        yield "Only a box or a cube can be cut into unit cubes."
    names = ("length",) if drawn.text("shape") == "cube" else ("length", "width", "height")
    for name in names:
        edge = leading_number(drawn.text(name))
        if edge is None or edge.denominator != 1 or not 1 <= edge <= 10:
            yield f"With 'cubes' the {name} is a whole number from 1 to 10; here it is '{drawn.text(name)}'."


SHAPE_RULES: dict[str, Rule] = {
    "area-model": _area_model,
    "composite": _composite,
    "triangle": _triangle,
    "quadrilateral": _quadrilateral,
    "regular-polygon": _regular_polygon,
    "similar": _similar,
    "angle": _angle,
    "angles": _angles,
    "parallel-lines": _parallel_lines,
    "solid": _solid,
}
