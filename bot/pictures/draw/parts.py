"""Bars, circles, grids and counters: numbers and their parts to be counted."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

from bot.course.figures.reading import Drawn
from bot.course.figures.spoken_parts import MOST_PIECES, digits
from bot.course.figures.telling import plain
from bot.pictures.canvas import CLAY, FAINT, INK, MARGIN, TEAL, WIDTH, Canvas, Point, on_circle
from bot.pictures.labels import SIZE, room, wrap

_SMALL = 14.0
_FULL = WIDTH - 2 * MARGIN
_BAR = 46.0


def bar(canvas: Canvas, drawn: Drawn) -> None:
    """A bar cut into pieces of one size, whole numbers marked below, pieces measured above."""
    length, piece = drawn.number("length"), drawn.number("pieces")
    count = length / piece
    torn = count > MOST_PIECES
    shown = min(length, piece * MOST_PIECES)
    left, wide = MARGIN + 6, _FULL - 12 - (18 if torn else 0)
    unit = wide / float(shown)
    top = MARGIN + 44
    shaded = drawn.count("shaded")
    for k in range(ceil(shown / piece)):
        start, stop = k * piece, min((k + 1) * piece, shown)
        fill = "shade" if k < shaded or (not shaded and k % 2 == 0) else "light"
        canvas.rectangle(left + float(start) * unit, top, float(stop - start) * unit, _BAR, fill=fill)
    first = float(min(piece, shown)) * unit
    _brace(canvas, left, left + first, top - 8)
    canvas.write(drawn.text("pieces"), (left + first / 2, top - 20), down=1)
    if torn:
        _torn(canvas, left + wide, top)
    below = top + _BAR
    wholes = [Fraction(n) for n in range(floor(shown) + 1)]
    every = next(k for k in (1, 2, 5, 10, 20, 50, 100) if k * unit >= 24 or k == 100)
    for n in wholes:
        canvas.line((left + float(n) * unit, below), (left + float(n) * unit, below + 7), 1.6)
        if n % every == 0:
            canvas.write(plain(n), (left + float(n) * unit, below + 25))
    if not torn and length.denominator != 1:
        end = left + float(length) * unit
        canvas.line((end, below), (end, below + 7), 1.6)
        if end - left - float(wholes[-1]) * unit > 26:
            canvas.write(drawn.text("length"), (end, below + 25))
    if drawn.has("unit"):
        canvas.write(drawn.text("unit"), (WIDTH / 2, canvas.height + 8), down=0, size=_SMALL)


def _brace(canvas: Canvas, left: float, right: float, y: float) -> None:
    middle, up = (left + right) / 2, 7.0
    bend = min(6.0, (right - left) / 4)
    canvas.curve(
        (left, y),
        [
            ((left, y - up), (left + bend, y - up / 2), (middle - bend, y - up / 2)),
            ((middle - bend / 2, y - up / 2), (middle, y - up / 2), (middle, y - up - 3)),
            ((middle, y - up / 2), (middle + bend / 2, y - up / 2), (middle + bend, y - up / 2)),
            ((right - bend, y - up / 2), (right, y - up), (right, y)),
        ],
        width=1.4,
    )


def _torn(canvas: Canvas, x: float, top: float) -> None:
    zigzag = [(x + (6 if n % 2 else -2), top + n * _BAR / 6) for n in range(7)]
    canvas.shape([(x - 4, top), *zigzag, (x - 4, top + _BAR)], closed=False, fill="light", width=2)
    canvas.write("…", (x + 16, top + _BAR / 2), size=20)


def fraction_bars(canvas: Canvas, drawn: Drawn) -> None:
    """Bars of one length under one another, equal parts, some shaded; more wholes follow on the right."""
    bars, names = drawn.pairs("bars"), drawn.labels("names")
    wholes = max(max(1, ceil(shaded / parts)) for shaded, parts in bars)
    side = max((room(name).width for name in names), default=0) + (12 if names else 0)
    gap = 8.0
    left, wide = MARGIN + side, (_FULL - side - gap * (wholes - 1)) / wholes
    for n, (shaded, parts) in enumerate(bars):
        top = MARGIN + n * (_BAR + 14)
        if names:
            canvas.write(names[n], (MARGIN, top + _BAR / 2), across=0)
        for whole in range(max(1, ceil(shaded / parts))):
            for part in range(int(parts)):
                x = left + whole * (wide + gap) + part * wide / float(parts)
                fill = "shade" if whole * parts + part < shaded else "light"
                canvas.rectangle(x, top, wide / float(parts), _BAR, fill=fill, width=1.6)
            canvas.rectangle(left + whole * (wide + gap), top, wide, _BAR, width=2.6)


def circle_parts(canvas: Canvas, drawn: Drawn) -> None:
    """Circles cut into equal parts."""
    parts, shaded = drawn.count("parts"), drawn.count("shaded")
    circles = max(1, ceil(shaded / parts))
    across = min(circles, 2)
    radius = 84.0 if circles == 1 else 72.0
    for n in range(circles):
        row, column = divmod(n, across)
        in_row = min(across, circles - row * across)
        middle = (
            WIDTH / 2 + (column - (in_row - 1) / 2) * (2 * radius + 18),
            MARGIN + radius + row * (2 * radius + 14),
        )
        for part in range(parts):
            start = 90 - part * 360 / parts
            fill = "shade" if n * parts + part < shaded else "light"
            if parts == 1:
                canvas.disc(middle, radius, fill=fill)
            else:
                canvas.arc(middle, radius, start - 360 / parts, start, wedge=True, fill=fill, width=1.6)
        canvas.arc(middle, radius, 0, 360, width=2.6)
    _label_below(canvas, drawn)


def _label_below(canvas: Canvas, drawn: Drawn) -> None:
    if drawn.has("label"):
        canvas.write(drawn.text("label"), (WIDTH / 2, canvas.height + 12), down=0)


def hundred_grid(canvas: Canvas, drawn: Drawn) -> None:
    """Ten by ten small squares, filled column by column from the left."""
    shaded, striped = drawn.count("shaded"), drawn.count("striped")
    grids = max(1, ceil((shaded + striped) / 100))
    cell = {1: 23.0, 2: 15.0}.get(grids, 10.0)
    gap = 14.0
    start = (WIDTH - grids * 10 * cell - (grids - 1) * gap) / 2
    for grid in range(grids):
        left, top = start + grid * (10 * cell + gap), MARGIN
        for name, first, last in (("shade", 0, shaded), ("stripe", shaded, shaded + striped)):
            for n in range(max(first, grid * 100), min(last, grid * 100 + 100)):
                column, row = divmod(n - grid * 100, 10)
                canvas.rectangle(left + column * cell, top + row * cell, cell, cell, fill=name, width=0)
        for k in range(11):
            width = 2.4 if k in (0, 10) else 1.0
            canvas.line((left + k * cell, top), (left + k * cell, top + 10 * cell), width)
            canvas.line((left, top + k * cell), (left + 10 * cell, top + k * cell), width)
    _label_below(canvas, drawn)


def square_parts(canvas: Canvas, drawn: Drawn) -> None:
    """A square cut both ways: shaded columns, striped rows, both where they cross."""
    rows, columns = drawn.count("rows"), drawn.count("columns")
    across, down = drawn.count("shaded-columns"), drawn.count("shaded-rows")
    side, top = 240.0, MARGIN
    left = (WIDTH - side) / 2
    wide, high = side / columns, side / rows
    for row in range(rows):
        for column in range(columns):
            fill = {(True, True): "both", (True, False): "shade", (False, True): "stripe"}.get(
                (column < across, row < down), "light"
            )
            canvas.rectangle(left + column * wide, top + row * high, wide, high, fill=fill, width=1.4)
    canvas.rectangle(left, top, side, side, width=2.6)


def place_value(canvas: Canvas, drawn: Drawn) -> None:
    """A chart of places; names stand upright where the columns are narrow."""
    cells = digits(drawn)
    wide = min(72.0, _FULL / len(cells))
    start = (WIDTH - wide * len(cells)) / 2
    upright = any(room(word, _SMALL).width > wide - 4 for place, _ in cells for word in place.split())
    head = max(room(place, _SMALL).width for place, _ in cells) + 16 if upright else 40.0
    mark = 20.0 if drawn.has("mark") else 0.0
    top = MARGIN + mark + head
    for n, (place, digit) in enumerate(cells):
        left = start + n * wide
        canvas.rectangle(left, top - head, wide, head, fill="light", width=1.6)
        if upright:
            canvas.write(place, (left + wide / 2, top - 8), down=1, size=_SMALL, turned=True)
        else:
            for k, word in enumerate(lines := wrap(place, wide - 4, _SMALL)):
                middle = top - head / 2 + (k - (len(lines) - 1) / 2) * (_SMALL + 2)
                canvas.write(word, (left + wide / 2, middle), size=_SMALL)
        canvas.rectangle(left, top, wide, 44, width=1.6)
        canvas.write(digit, (left + wide / 2, top + 22), size=24)
        if place == "ones" and n < len(cells) - 1:
            canvas.disc((left + wide, top + 34), 3.2, width=0)
        if drawn.text("mark") == place:
            x = left + wide / 2
            canvas.arrow((x, MARGIN - 6), (x, MARGIN + mark - 4), 2.4, CLAY, 9)


def counters(canvas: Canvas, drawn: Drawn) -> None:
    """Plus counters over minus counters, ten to a line, zero pairs ringed; a line that would be empty is left out."""
    plus, minus = drawn.count("plus"), drawn.count("minus")
    radius, step = 13.0, 35.0
    left = WIDTH / 2 - (min(10, max(plus, minus, 1)) - 1) * step / 2
    y = MARGIN + 18
    for first, count, positive in _counter_lines(plus, minus, paired=drawn.yes("pairs")):
        for n in range(count):
            x = left + n * step
            if drawn.yes("pairs") and positive and first + n < min(plus, minus):
                canvas.oval((x, y + 18), 16.5, 37, dash="fine")
            _counter(canvas, (x, y), radius, positive=positive)
        y += 36 if positive and drawn.yes("pairs") and first < minus else 48 if drawn.yes("pairs") else 36


def _counter_lines(plus: int, minus: int, *, paired: bool) -> list[tuple[int, int, bool]]:
    """Lines from the top: the first counter, how many, and whether they are plus. Pairs stand plus over minus."""
    lines = [
        (first, min(10, count - first), positive)
        for positive, count in ((True, plus), (False, minus))
        for first in range(0, count, 10)
    ]
    return sorted(lines, key=lambda line: line[0]) if paired else lines


def _counter(canvas: Canvas, at: Point, radius: float, *, positive: bool) -> None:
    canvas.disc(at, radius, fill="shade" if positive else "warm")
    x, y = at
    canvas.line((x - 6, y), (x + 6, y), 2.6)
    if positive:
        canvas.line((x, y - 6), (x, y + 6), 2.6)


def objects(canvas: Canvas, drawn: Drawn) -> None:
    """A row for each kind of thing, each with a shape and a pattern of its own."""
    names, counts = drawn.labels("names"), [int(n) for n in drawn.numbers("counts")]
    side = max(room(name).width for name in names) + 14
    step = min(30.0, (_FULL - side) / min(10, max([*counts, 1])))
    top = MARGIN + 12
    for n, (name, count) in enumerate(zip(names, counts, strict=True)):
        canvas.write(name, (MARGIN, top), across=0)
        for i in range(count):
            row, column = divmod(i, 10)
            _thing(canvas, n, (MARGIN + side + step * (column + 0.5), top + row * 30), step * 0.38)
        top += 30 * max(1, ceil(count / 10)) + 8
    canvas.height = top - 24


def _thing(canvas: Canvas, kind: int, at: Point, size: float) -> None:
    x, y = at
    match kind:
        case 0:
            canvas.disc(at, size, fill="shade")
        case 1:
            canvas.rectangle(x - size * 0.9, y - size * 0.9, size * 1.8, size * 1.8, fill="stripe")
        case 2:
            canvas.shape(
                [(x, y - size), (x + size, y + size * 0.8), (x - size, y + size * 0.8)], fill="light"
            )
        case 3:
            corners = [(x, y - size), (x + size, y), (x, y + size), (x - size, y)]
            canvas.shape(corners, fill="back")
        case _:
            canvas.shape([on_circle(at, size, 90 + 60 * k) for k in range(6)], fill="dots")


def array(canvas: Canvas, drawn: Drawn) -> None:
    """Unit squares in rows and columns."""
    rows, columns = drawn.count("rows"), drawn.count("columns")
    cell = min(34.0, _FULL / columns, 300 / rows)
    left = (WIDTH - cell * columns) / 2
    for row in range(rows):
        for column in range(columns):
            canvas.rectangle(left + column * cell, MARGIN + row * cell, cell, cell, fill="light", width=1.4)


def clock(canvas: Canvas, drawn: Drawn) -> None:
    """A clock face for the start, and one for the end if there is one."""
    two = drawn.has("end-hour")
    radius = 76.0 if two else 104.0
    y = MARGIN + radius
    if two:
        _face(canvas, (MARGIN + radius, y), radius, drawn.count("hour"), drawn.count("minute"))
        right = (WIDTH - MARGIN - radius, y)
        canvas.arrow((WIDTH / 2 - 6, y), (WIDTH / 2 + 8, y), 2.4)
        _face(canvas, right, radius, drawn.count("end-hour"), drawn.count("end-minute"))
    else:
        _face(canvas, (WIDTH / 2, y), radius, drawn.count("hour"), drawn.count("minute"))


def _face(canvas: Canvas, at: Point, radius: float, hour: int, minute: int) -> None:
    canvas.disc(at, radius, fill="light", width=2.6)
    for n in range(60):
        long = n % 5 == 0
        inner = radius - (9 if long else 5)
        canvas.line(
            on_circle(at, inner, 6 * n),
            on_circle(at, radius - 2, 6 * n),
            2 if long else 1,
            INK if long else FAINT,
        )
    for n in range(1, 13):
        canvas.write(str(n), on_circle(at, radius - 21, 90 - 30 * n), size=SIZE if radius > 90 else _SMALL)
    canvas.line(at, on_circle(at, radius * 0.48, 90 - 30 * (hour % 12 + minute / 60)), 5.5)
    canvas.line(at, on_circle(at, radius * 0.68, 90 - 6 * minute), 3, TEAL)
    canvas.disc(at, 4.5, width=0)
