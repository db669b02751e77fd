"""Figures of geometry in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from bot.course.figures.reading import BARE, Drawn
from bot.course.figures.telling import Tell, Telling, plain

_SMALL_MARK = 1  # degrees from one small mark of a protractor to the next


def _rectangle(drawn: Drawn, telling: Telling) -> Iterator[str]:
    width, height = telling.label(drawn.text("width")), telling.label(drawn.text("height"))
    yield telling.say("rectangle", width=width, height=height)
    yield from telling.parts(drawn, inside="rectangle.inside", diagonal="rectangle.diagonal")
    if drawn.has("half-circle"):
        yield telling.say(f"rectangle.half.{drawn.text('half-circle')}")


def _area_model(drawn: Drawn, telling: Telling) -> Iterator[str]:
    across, down = telling.all(drawn.labels("across")), telling.all(drawn.labels("down"))
    yield telling.say("area-model", across=across, down=down)
    if drawn.has("inside"):
        for n, row in enumerate(drawn.rows("inside"), 1):
            yield telling.say("area-model.row", n=n, cells=telling.all(row))


def _composite(drawn: Drawn, telling: Telling) -> Iterator[str]:
    corners = drawn.pairs("corners")
    # A point where two sides run straight on parts the lengths of one side; nobody sees a corner there.
    flat = [
        (x - before_x) * (next_y - y) == (y - before_y) * (next_x - x)
        for (before_x, before_y), (x, y), (next_x, next_y) in zip(
            corners[-1:] + corners[:-1], corners, corners[1:] + corners[:1], strict=True
        )
    ]
    sides = []
    for (x, y), (next_x, next_y), label, straight_on in zip(
        corners, corners[1:] + corners[:1], drawn.labels("sides"), flat, strict=True
    ):
        if straight_on:
            way = "straight-on"
        elif x != next_x and y != next_y:
            way = "slanted"
        elif y == next_y:
            way = "right" if next_x > x else "left"
        else:
            way = "up" if next_y > y else "down"
        sides.append(
            telling.say("composite.side", way=telling.say(f"composite.{way}"), label=telling.label(label))
        )
    yield telling.say("composite", count=flat.count(False), sides=", ".join(sides))
    labels = drawn.labels("cut-labels")
    for n in range(len(drawn.pairs("cuts")) // 2):
        if labels and labels[n] != BARE:
            yield telling.say("composite.cut", label=telling.label(labels[n]))
        else:
            yield telling.say("composite.cut.bare")
    yield from telling.parts(drawn, inside="part.inside")


def _triangle(drawn: Drawn, telling: Telling) -> Iterator[str]:
    if drawn.has("right-angle"):
        yield telling.say("triangle.right", where=telling.say(f"where.{drawn.text('right-angle')}"))
    else:
        yield telling.say("triangle")
    yield from telling.parts(
        drawn, base="part.base", left="part.left", right="part.right", height="part.height"
    )
    for name in ("angles", "corners"):
        if drawn.has(name):
            left, right, top = (telling.label(label) for label in drawn.labels(name))
            yield telling.say(f"triangle.{name}", left=left, right=right, top=top)
    if drawn.has("equal-sides"):
        yield telling.say(f"triangle.equal.{drawn.text('equal-sides')}")
    yield from telling.parts(drawn, exterior="triangle.exterior")
    if drawn.yes("squares"):
        yield telling.say("triangle.squares")


def _quadrilateral(drawn: Drawn, telling: Telling) -> Iterator[str]:
    shape = drawn.text("shape")
    yield telling.say(f"quadrilateral.{shape}")
    yield from telling.parts(
        drawn,
        base="part.base",
        top="part.top",
        left="part.left",
        right="part.right",
        height="part.height",
        inside="part.inside",
    )
    for name in ("angles", "corners"):
        if drawn.has(name):
            yield telling.say(f"quadrilateral.{name}", **{name: telling.all(drawn.labels(name))})
    if drawn.yes("marks"):
        yield telling.say(f"quadrilateral.marks.{shape}")


def _regular_polygon(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say("regular-polygon", count=drawn.text("sides"))
    yield from telling.parts(drawn, side="regular-polygon.side", angle="regular-polygon.angle")


def _similar(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(f"similar.{drawn.text('shape')}")
    names = drawn.labels("names") or [telling.say("similar.first"), telling.say("similar.second")]
    for name, field in zip(names, ("first", "second"), strict=True):
        sides = zip(("base", "right", "left"), drawn.labels(field), strict=False)
        said = [telling.say(f"similar.{side}", label=telling.label(label)) for side, label in sides]
        yield telling.say("similar.sides", name=name, sides=", ".join(said))


def _angle(drawn: Drawn, telling: Telling) -> Iterator[str]:
    degrees = drawn.number("degrees")
    if drawn.text("label", f"{plain(degrees)}°") and drawn.figure.get("label") != BARE:
        yield telling.say("angle", label=telling.label(drawn.text("label", f"{plain(degrees)}°")))
    else:
        yield telling.say("angle.bare")
    if drawn.has("names"):
        first, vertex, second = drawn.labels("names")
        yield telling.say("angle.names", first=first, vertex=vertex, second=second)
    if drawn.yes("protractor"):
        tens, marks = int(degrees // 10) * 10, degrees % 10 / _SMALL_MARK
        yield telling.say(
            "angle.protractor" if marks else "angle.protractor.at", tens=tens, marks=plain(marks)
        )
    elif drawn.figure.get("label") == BARE:
        yield telling.say("angle.sort", sort=telling.say(f"angle.{_sort(float(degrees))}"))


def _sort(degrees: float) -> str:
    if degrees == 90:
        return "right"
    if degrees == 180:
        return "straight"
    return "acute" if degrees < 90 else "obtuse" if degrees < 180 else "reflex"


def _angles(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(f"angles.{drawn.text('arrangement')}", labels=telling.all(drawn.labels("labels")))
    if drawn.has("names"):
        vertex, *ends = drawn.labels("names")
        yield telling.say("angles.names", vertex=telling.label(vertex), ends=telling.all(ends))


def _parallel_lines(drawn: Drawn, telling: Telling) -> Iterator[str]:
    labels = drawn.labels("labels")
    places = ("upper left", "upper right", "lower left", "lower right")
    told = []
    for four in (labels[:4], labels[4:]):
        said = [
            telling.say(f"parallel.{place}", label=telling.label(label))
            for place, label in zip(places, four, strict=True)
            if label != BARE
        ]
        told.append(", ".join(said) or telling.say("parallel.none"))
    yield telling.say("parallel", upper=told[0], lower=told[1])


def _circle(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(f"circle.{drawn.text('part', 'whole')}")
    yield from telling.parts(
        drawn, radius="part.radius", diameter="part.diameter", around="part.around", inside="part.inside"
    )


def _edges(drawn: Drawn) -> dict[str, str]:
    """What length, width, height and slant are called in this solid."""
    match drawn.text("shape"):
        case "cube":
            return {"length": "part.edge"}
        case "prism":
            return {
                "length": "part.base edge",
                "height": "part.triangle height",
                "slant": "part.other edge",
                "width": "part.length",
            }
        case "pyramid":
            return {
                "length": "part.base edge",
                "width": "part.width",
                "height": "part.high",
                "slant": "part.slant",
            }
    return {
        "length": "part.length",
        "width": "part.width",
        "height": "part.high",
        "radius": "part.radius",
        "diameter": "part.diameter",
        "slant": "part.slant",
    }


def _solid(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(f"solid.{drawn.text('shape')}")
    yield from telling.parts(drawn, **_edges(drawn), inside="part.volume")
    if drawn.yes("cubes"):
        yield telling.say("solid.cubes")
    if drawn.has("cut"):
        yield telling.say(f"solid.cut.{drawn.text('cut')}")


def _net(drawn: Drawn, telling: Telling) -> Iterator[str]:
    yield telling.say(f"net.{drawn.text('shape')}")
    yield from telling.parts(drawn, **_edges(drawn))


SHAPES: Mapping[str, Tell] = {
    "rectangle": _rectangle,
    "area-model": _area_model,
    "composite": _composite,
    "triangle": _triangle,
    "quadrilateral": _quadrilateral,
    "regular-polygon": _regular_polygon,
    "similar": _similar,
    "angle": _angle,
    "angles": _angles,
    "parallel-lines": _parallel_lines,
    "circle": _circle,
    "solid": _solid,
    "net": _net,
}
