"""Circles and parts of them."""

from __future__ import annotations

from bot.course.figures.reading import Drawn
from bot.pictures.canvas import CLAY, MARGIN, WIDTH, Canvas, on_circle

_MIDDLE = WIDTH / 2


def circle(canvas: Canvas, drawn: Drawn) -> None:
    """A circle or a part of one with radius, diameter, and what is written inside and around."""
    part = drawn.text("part", "whole")
    radius = {"whole": 98.0, "half": 120.0, "quarter": 170.0}[part]
    at = {
        "whole": (_MIDDLE, MARGIN + radius + 4),
        "half": (_MIDDLE, MARGIN + radius + (34 if drawn.has("around") else 4)),
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
        else:
            middle = 90 if part == "half" else 45
            canvas.arc(at, radius + 9, middle - 25, middle + 25, width=1.4, ink=CLAY)
            canvas.head(
                on_circle(at, radius + 9, middle - 20), on_circle(at, radius + 9, middle - 28), CLAY, 8
            )
            out = on_circle((0, 0), 1, middle)
            canvas.off(drawn.text("around"), on_circle(at, radius + 9, middle), out, gap=7)
