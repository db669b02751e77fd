"""A lesson's figure as a picture: PNG for a chat, SVG for a page."""

from __future__ import annotations

from bot.course.figures import Drawn, Figure, check
from bot.pictures.canvas import Canvas
from bot.pictures.draw import DRAW
from bot.pictures.typeset import typeset


class CannotDraw(ValueError):
    """A figure isn't in order; the message says what is wrong, as `check` does."""


def draw(figure: Figure) -> Canvas:
    """The figure on a canvas. Raises CannotDraw."""
    if faults := check(figure):
        raise CannotDraw(" ".join(faults))
    canvas = Canvas()
    drawn = Drawn(figure)
    DRAW[drawn.kind](canvas, drawn)
    return canvas.finish()


def sheet(canvas: Canvas) -> dict[str, object]:
    """The canvas as data for the layout file."""
    return {"width": canvas.width, "height": canvas.height, "marks": canvas.marks}


def png(figure: Figure) -> bytes:
    """The figure as PNG, 1080 pixels wide, the same bytes each time. Raises CannotDraw."""
    return typeset("picture.typ", sheet(draw(figure)))


def svg(figure: Figure) -> bytes:
    """The figure as SVG that needs no fonts. Raises CannotDraw."""
    return typeset("picture.typ", sheet(draw(figure)), "svg")
