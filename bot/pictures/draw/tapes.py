"""Tape diagrams, tables and balances: amounts as boxes."""

from __future__ import annotations

import re

from bot.course.figures.reading import BARE, Drawn
from bot.course.figures.spoken_parts import tape_bars
from bot.pictures.canvas import INK, MARGIN, WIDTH, Canvas
from bot.pictures.labels import SIZE, room, wrap

_FULL = WIDTH - 2 * MARGIN
_BOX = 40.0
_SMALL = 14.0
_LEAST = 9.0
_MOST_X = 6  # more boxes of x than this are hard to count; then the expression is written out


def tape(canvas: Canvas, drawn: Drawn) -> None:
    """Bars of boxes; equal boxes are of one width in every bar."""
    bars, names, totals = tape_bars(drawn), _bare(drawn.labels("names")), _bare(drawn.labels("totals"))
    all_of_it = drawn.has("total")
    left = MARGIN + (max(room(name).width for name in names) + 12 if names else 0)
    right = WIDTH - MARGIN
    beside = max(room(total).width for total in totals) + 12 if totals else 0.0
    right -= beside
    if all_of_it:
        right -= (room(drawn.text("total")).width + 24) if len(bars) > 1 else 0
    most = max(len(boxes) for boxes in bars)
    wide = (right - left) / most
    over = 34.0 if all_of_it and len(bars) == 1 else 0.0
    longest = max((room(box).width for boxes in bars for box in boxes), default=0)
    size = SIZE if longest <= wide - 4 else _SMALL
    words = [word for boxes in bars for box in boxes for word in box.split()]
    while size > _LEAST and any(room(word, size).width > wide - 2 for word in words):
        size -= 1
    for n, boxes in enumerate(bars):
        top = MARGIN + over + n * (_BOX + 16)
        if names:
            canvas.write(names[n], (MARGIN, top + _BOX / 2), across=0)
        wide = (right - left) / (len(boxes) if drawn.yes("same-length") else most)
        for k, box in enumerate(boxes):
            fill = ("shade", "light", "warm", "light")[n]
            canvas.rectangle(left + k * wide, top, wide, _BOX, fill=fill)
            if box:
                lines = wrap(box, wide - 4, size)
                for i, line in enumerate(lines):
                    y = top + _BOX / 2 + (i - (len(lines) - 1) / 2) * (size + 2)
                    canvas.write(line, (left + (k + 0.5) * wide, y), size=size)
        if totals:
            canvas.write(totals[n], (left + len(boxes) * wide + 10, top + _BOX / 2), across=0)
    if all_of_it:
        # Beside several bars the bracket stands clear of what each of them makes.
        edge = right + beside if len(bars) > 1 else right
        _whole(canvas, drawn.text("total"), left, edge, wide * len(bars[0]), len(bars))


def _bare(labels: list[str]) -> list[str]:
    """Labels as they are written: one that is left out is empty."""
    return ["" if label == BARE else label for label in labels]


def _whole(canvas: Canvas, label: str, left: float, right: float, wide: float, bars: int) -> None:
    """The bracket for everything together: over a single bar, beside several."""
    if bars == 1:
        y = MARGIN + 26
        canvas.shape(
            [(left, y + 5), (left, y), (left + wide, y), (left + wide, y + 5)], closed=False, width=1.6
        )
        canvas.write(label, (left + wide / 2, y - 6), down=1)
        return
    top, bottom = MARGIN, MARGIN + bars * (_BOX + 16) - 16
    x = right + 10
    canvas.shape([(x - 5, top), (x, top), (x, bottom), (x - 5, bottom)], closed=False, width=1.6)
    canvas.write(label, (x + 8, (top + bottom) / 2), across=0)


def table(canvas: Canvas, drawn: Drawn) -> None:
    """A table with ruled lines; columns are as wide as what stands in them."""
    rows = drawn.rows("rows")
    columns = list(zip(*rows, strict=True))
    headings = drawn.text("headings", "column")
    natural = [max(room(cell).width for cell in column) + 20 for column in columns]
    size = SIZE
    if sum(natural) > _FULL:
        size = _SMALL
        natural = _squeeze([[*column] for column in columns], size)
    spare = max(0.0, min(_FULL, sum(natural) + 12 * len(natural)) - sum(natural))
    widths = [width + spare / len(natural) for width in natural]
    left = (WIDTH - sum(widths)) / 2
    lines = [[wrap(cell, widths[k] - 8, size) for k, cell in enumerate(row)] for row in rows]
    top = MARGIN
    for n, row in enumerate(lines):
        high = max(max(sum(_line(text, size) for text in cell) for cell in row) + 18, 36.0)
        x = left
        for k, cell in enumerate(row):
            heading = (headings in ("column", "both") and k == 0) or (headings in ("row", "both") and n == 0)
            canvas.rectangle(x, top, widths[k], high, fill="shade" if heading else "", width=1.6)
            y = top + (high - sum(_line(text, size) for text in cell)) / 2
            for text in cell:
                canvas.write(
                    "" if text == "none" else text, (x + widths[k] / 2, y + _line(text, size) / 2), size=size
                )
                y += _line(text, size)
            x += widths[k]
        top += high


def _line(text: str, size: float) -> float:
    return room(text, size).height + 6


def _squeeze(columns: list[list[str]], size: float) -> list[float]:
    """Widths for columns that don't fit on one line each: the longest words first, then what is left by need."""
    least = [
        max(room(word, size).width for cell in column for word in cell.split() or [""]) + 14
        for column in columns
    ]
    wanted = [max(room(cell, size).width for cell in column) + 14 for column in columns]
    spare = _FULL - sum(least)
    need = sum(w - m for w, m in zip(wanted, least, strict=True)) or 1
    if spare < 0:
        return [m * _FULL / sum(least) for m in least]
    return [m + (w - m) * min(1.0, spare / need) for w, m in zip(wanted, least, strict=True)]


_SIMPLE = re.compile(
    r"(?P<count>\d*) ?(?P<letter>[a-z])(?: ?\+ ?(?P<more>\d+(?:\.\d+)?))?|(?P<only>\d+(?:\.\d+)?)"
)


def balance(canvas: Canvas, drawn: Drawn) -> None:
    """A level balance. A few equal unknowns lie there as boxes, numbers as weights; the rest is written out."""
    middle, beam, reach = WIDTH / 2, MARGIN + 92, 92.0
    canvas.shape([(middle, beam), (middle + 22, beam + 62), (middle - 22, beam + 62)], fill="light")
    canvas.line((MARGIN + 20, beam), (WIDTH - MARGIN - 20, beam), 4)
    canvas.disc((middle, beam), 5, width=0)
    canvas.line((middle - 60, beam + 62), (middle + 60, beam + 62), 3)
    for side, x in (("left", middle - reach), ("right", middle + reach)):
        canvas.line((x, beam), (x, beam - 10), 3)
        canvas.line((x - 64, beam - 10), (x + 64, beam - 10), 3)
        _load(canvas, drawn.text(side), x, beam - 12)
        # Several boxes and weights are written below as well; a single one carries its own name.
        if len(_things(drawn.text(side))) > 1:
            canvas.write(drawn.text(side), (x, beam + 16), down=0)


def _things(expression: str) -> list[str]:
    """The boxes and the weight for "3x + 5" or "26"; nothing for what can't lie on a balance, such as x/2 − 5."""
    found = _SIMPLE.fullmatch(expression)
    if found is None or int(found["count"] or 1) > _MOST_X:
        return []
    if found["only"]:
        return [found["only"]]
    return [found["letter"]] * int(found["count"] or 1) + ([found["more"]] if found["more"] else [])


def _load(canvas: Canvas, expression: str, x: float, y: float) -> None:
    things = _things(expression)
    if not things:
        canvas.rectangle(x - 56, y - 44, 112, 43, fill="dots")
        canvas.rectangle(x - 48, y - 36, 96, 27, fill="paper", width=0)
        size = SIZE if room(expression).width <= 92 else _SMALL
        canvas.write(expression, (x, y - 22), size=size)
        return
    boxes = [thing for thing in things if thing.isalpha()]
    columns = 2 if len(boxes) == 4 else 3
    rows = [boxes[i : i + columns] for i in range(0, len(boxes), columns)]
    weight = [thing for thing in things if not thing.isalpha()]
    high = 26.0
    wide = columns_wide = min(len(boxes), columns) * 28.0
    total = wide + (40 if weight and boxes else 0)
    left = x - total / 2
    for n, row in enumerate(reversed(rows)):
        for k, letter in enumerate(row):
            spot = left + k * 28
            canvas.rectangle(spot, y - (n + 1) * high, 27, high - 1, fill="shade", width=1.8)
            canvas.write(letter, (spot + 13.5, y - (n + 0.5) * high))
    if weight:
        centre = left + columns_wide + 22 if boxes else x
        half = max(16.0, room(weight[0]).width / 2 + 7)
        corners = [
            (centre - half, y),
            (centre - half + 5, y - 34),
            (centre + half - 5, y - 34),
            (centre + half, y),
        ]
        canvas.rectangle(centre - 6, y - 41, 12, 8, fill=INK, width=0)
        canvas.shape(corners, fill="warm", width=1.8)
        canvas.write(weight[0], (centre, y - 15))
