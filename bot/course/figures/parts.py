"""Figures for numbers and their parts: lines, bars, grids, counters, tapes, clocks."""

from __future__ import annotations

from bot.course.figures.kind import YES_NO, Holds, Kind, may, need, pick

NUMBERS_AND_PARTS = (
    Kind(
        "number-line",
        "a number line with ticks, points, jumps or the solutions of an inequality",
        (
            need("from", Holds.NUMBER, "the left end"),
            need("to", Holds.NUMBER, "the right end"),
            may("step", Holds.NUMBER, "from one tick to the next; a fitting step is chosen without it"),
            may("numbers", Holds.NUMBERS, "the only ticks that carry a number; without it as many as fit"),
            may("points", Holds.NUMBERS, "where dots sit"),
            may("names", Holds.LABELS, "a name for each dot, such as A, B"),
            may("jumps", Holds.POINT_LIST, "arrows above the line, (start, end) each"),
            may("jump-labels", Holds.LABELS, "what is written over each jump"),
            may("inequality", Holds.EXPRESSION, "solutions to draw: x > 3, or -2 ≤ x < 5"),
            pick("upright", "stands upright, as on a wall thermometer", *YES_NO),
        ),
        {"figure": "number-line", "from": "-6", "to": "6", "points": ["-4", "3"], "names": ["A", "B"]},
    ),
    Kind(
        "double-number-line",
        "two scales on one line, such as percents above and amounts below",
        (
            need("top", Holds.LABELS, "labels above, from left to right"),
            need("bottom", Holds.LABELS, "labels below, as many"),
            may("top-name", Holds.LABEL, "what the upper scale counts"),
            may("bottom-name", Holds.LABEL, "what the lower scale counts"),
            may("at", Holds.NUMBERS, "where each pair stands, as numbers; evenly spread without it"),
        ),
        {
            "figure": "double-number-line",
            "top": ["0", "25%", "50%", "100%"],
            "bottom": ["0", "unknown", "30", "60"],
            "at": ["0", "25", "50", "100"],
            "bottom-name": "coins",
        },
    ),
    Kind(
        "bar",
        "a bar of some length cut into pieces of one size",
        (
            need("length", Holds.NUMBER, "the whole length"),
            need("pieces", Holds.NUMBER, "the size of one piece"),
            may("unit", Holds.WORDS, "what the length is measured in"),
            may("shaded", Holds.NUMBER, "how many pieces are shaded"),
        ),
        {"figure": "bar", "length": "3", "pieces": "3/4"},
    ),
    Kind(
        "fraction-bars",
        "bars under one another, each a whole cut into equal parts with some shaded",
        (
            need("bars", Holds.POINT_LIST, "(shaded, parts) for each bar, such as (2, 4), (1, 2)"),
            may("names", Holds.LABELS, "what is written beside each bar"),
        ),
        {"figure": "fraction-bars", "bars": [["2", "3"], ["8", "12"]], "names": ["2/3", "8/12"]},
    ),
    Kind(
        "circle-parts",
        "a circle cut into equal parts with some shaded",
        (
            need("parts", Holds.NUMBER, "equal parts of one circle, 2 to 24"),
            need("shaded", Holds.NUMBER, "parts shaded; more than one circle is drawn where needed"),
            may("label", Holds.LABEL, "what is written below"),
        ),
        {"figure": "circle-parts", "parts": "6", "shaded": "8"},
    ),
    Kind(
        "hundred-grid",
        "a square of ten by ten small squares with some shaded",
        (
            need("shaded", Holds.NUMBER, "small squares shaded, 0 to 300 (a grid for each hundred)"),
            may("striped", Holds.NUMBER, "small squares striped, after the shaded ones"),
            may("label", Holds.LABEL, "what is written below"),
        ),
        {"figure": "hundred-grid", "shaded": "37"},
    ),
    Kind(
        "square-parts",
        "a square cut by rows and columns, for a fraction of a fraction",
        (
            need("rows", Holds.NUMBER, "equal rows"),
            need("columns", Holds.NUMBER, "equal columns"),
            need("shaded-rows", Holds.NUMBER, "rows striped from the top"),
            need("shaded-columns", Holds.NUMBER, "columns shaded from the left"),
        ),
        {"figure": "square-parts", "rows": "3", "columns": "5", "shaded-rows": "2", "shaded-columns": "4"},
    ),
    Kind(
        "place-value",
        "a number written into a chart of places",
        (
            need("number", Holds.NUMBER, "the number, whole or decimal"),
            may("places", Holds.NUMBER, "places shown after the point"),
            may("mark", Holds.WORDS, "the place to point at, such as tenths"),
        ),
        {"figure": "place-value", "number": "3047.58", "mark": "tenths"},
    ),
    Kind(
        "counters",
        "plus and minus counters, for adding signed numbers",
        (
            need("plus", Holds.NUMBER, "counters worth 1"),
            need("minus", Holds.NUMBER, "counters worth -1"),
            pick("pairs", "rings a plus and a minus together as a zero pair", *YES_NO),
        ),
        {"figure": "counters", "plus": "3", "minus": "5", "pairs": "yes"},
    ),
    Kind(
        "objects",
        "rows of things of different shapes, for ratios and chances",
        (
            need("counts", Holds.NUMBERS, "how many of each"),
            need("names", Holds.LABELS, "what each is called"),
        ),
        {"figure": "objects", "counts": ["4", "6"], "names": ["rolls", "buns"]},
    ),
    Kind(
        "array",
        "rows and columns of unit squares",
        (need("rows", Holds.NUMBER, "rows"), need("columns", Holds.NUMBER, "squares in a row")),
        {"figure": "array", "rows": "4", "columns": "6"},
    ),
    Kind(
        "tape",
        "a tape diagram: bars cut into boxes",
        (
            may("boxes", Holds.ROWS, "a row for each bar, a label for each box; none leaves a box empty"),
            may("parts", Holds.NUMBERS, "instead of boxes: equal boxes in each bar"),
            may("each", Holds.LABEL, "what is written in each equal box"),
            may("names", Holds.LABELS, "what each bar is"),
            may("totals", Holds.LABELS, "how long each bar is"),
            may("total", Holds.LABEL, "all bars together"),
            pick("same-length", "draws all bars equally long, as for x + 7 = 19", *YES_NO),
        ),
        {"figure": "tape", "parts": ["3", "5"], "names": ["oats", "barley"], "total": "40 kg"},
        one_of=("boxes", "parts"),
    ),
    Kind(
        "clock",
        "a clock face, or two for a start and an end",
        (
            need("hour", Holds.NUMBER, "0 to 23"),
            need("minute", Holds.NUMBER, "0 to 59"),
            may("end-hour", Holds.NUMBER, "hour of the second clock"),
            may("end-minute", Holds.NUMBER, "minute of the second clock"),
        ),
        {"figure": "clock", "hour": "9", "minute": "40"},
    ),
)
