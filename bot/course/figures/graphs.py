"""Graphs, plots, tables, and what belongs to chance and functions."""

from __future__ import annotations

from bot.course.figures.kind import Holds, Kind, may, need, pick

GRAPHS_AND_DATA = (
    Kind(
        "grid",
        "a coordinate plane",
        (
            need("x", Holds.SPAN, "range across, such as -5..5"),
            need("y", Holds.SPAN, "range upwards"),
            may("points", Holds.POINT_LIST, "points to mark"),
            may("names", Holds.LABELS, "a name for each point"),
            may("line", Holds.EXPRESSIONS, "one or more lines or curves, such as y = 2 x + 1 or x = 3"),
            may("through", Holds.POINT_LIST, "lines through two points each: their points, two by two"),
            may("segments", Holds.POINT_LIST, "segments: their ends, two by two"),
            may("polygons", Holds.POINT_ROWS, "closed figures, a row of corners each"),
            may("images", Holds.POINT_ROWS, "figures after a move, drawn dashed and striped"),
            may("path", Holds.POINT_LIST, "points joined one after the other, as in a graph of a journey"),
            may("arrows", Holds.POINT_LIST, "arrows: (start), (end), two by two"),
            may(
                "steps",
                Holds.POINT_LIST,
                "slope steps: two points each, run and rise drawn between",
            ),
            may("x-name", Holds.LABEL, "what is counted across"),
            may("y-name", Holds.LABEL, "what is counted upwards"),
        ),
        {
            "figure": "grid",
            "x": "-5..5",
            "y": "-5..5",
            "points": [["2", "3"], ["-4", "1"]],
            "names": ["A", "B"],
        },
    ),
    Kind(
        "bar-chart",
        "a bar chart",
        (
            need("names", Holds.LABELS, "a name for each bar"),
            need("values", Holds.NUMBERS, "how high each is"),
            may("second", Holds.NUMBERS, "a second bar for each name"),
            may("keys", Holds.LABELS, "what the first and the second bars are"),
            may("value-name", Holds.LABEL, "what is counted"),
            may("step", Holds.NUMBER, "from one line of the scale to the next"),
            may("mean", Holds.NUMBER, "a dashed line at this height"),
        ),
        {
            "figure": "bar-chart",
            "names": ["Mon", "Tue", "Wed"],
            "values": ["4", "7", "5"],
            "value-name": "loaves",
        },
    ),
    Kind(
        "dot-plot",
        "a dot for each number of a data list",
        (
            need("data", Holds.NUMBERS, "the data"),
            may("second", Holds.NUMBERS, "a second data list, drawn below on the same scale"),
            may("keys", Holds.LABELS, "what the two lists are"),
            may("from", Holds.NUMBER, "left end of the scale"),
            may("to", Holds.NUMBER, "right end of the scale"),
            may("name", Holds.LABEL, "what is measured"),
            may("mean", Holds.NUMBER, "a dashed line at this number"),
        ),
        {"figure": "dot-plot", "data": ["2", "3", "3", "4", "4", "4", "7"], "name": "books read"},
    ),
    Kind(
        "histogram",
        "bars that touch, for how many fall in each interval",
        (
            need("from", Holds.NUMBER, "where the first interval begins"),
            need("width", Holds.NUMBER, "width of every interval"),
            need("counts", Holds.NUMBERS, "how many fall in each"),
            may("name", Holds.LABEL, "what is measured"),
            may("count-name", Holds.LABEL, "what is counted"),
        ),
        {
            "figure": "histogram",
            "from": "0",
            "width": "10",
            "counts": ["3", "7", "5", "1"],
            "name": "minutes",
        },
    ),
    Kind(
        "box-plot",
        "lowest, lower quartile, median, upper quartile and highest",
        (
            may(
                "data",
                Holds.NUMBERS,
                "the data; a quartile is the median of a half without the middle number",
            ),
            may("five", Holds.NUMBERS, "instead of data: the five numbers in order"),
            may("second", Holds.NUMBERS, "five numbers of a second plot on the same scale"),
            may("keys", Holds.LABELS, "what the two plots are"),
            may("from", Holds.NUMBER, "left end of the scale"),
            may("to", Holds.NUMBER, "right end of the scale"),
            may("step", Holds.NUMBER, "from one tick to the next"),
            may("name", Holds.LABEL, "what is measured"),
        ),
        {"figure": "box-plot", "five": ["4", "7", "9", "12", "18"], "name": "minutes"},
        one_of=("data", "five"),
    ),
    Kind(
        "scatter-plot",
        "a dot for each pair",
        (
            need("points", Holds.POINT_LIST, "the pairs"),
            may("x", Holds.SPAN, "range across"),
            may("y", Holds.SPAN, "range upwards"),
            may("x-name", Holds.LABEL, "what is measured across"),
            may("y-name", Holds.LABEL, "what is measured upwards"),
            may("line", Holds.EXPRESSION, "a trend line, such as y = 2 x + 1"),
        ),
        {
            "figure": "scatter-plot",
            "points": [["1", "3"], ["2", "4"], ["3", "6"], ["5", "9"]],
            "x-name": "weeks",
            "y-name": "height in cm",
        },
    ),
    Kind(
        "table",
        "a table; a blank is written unknown",
        (
            need("rows", Holds.ROWS, "a row for each line of the table"),
            pick("headings", "which cells are headings", "column", "row", "both", "none"),
        ),
        {"figure": "table", "rows": [["hours", "1", "2", "5"], ["loaves", "12", "24", "unknown"]]},
    ),
    Kind(
        "balance",
        "a level balance with an expression on each side",
        (
            need("left", Holds.EXPRESSION, "what lies on the left"),
            need("right", Holds.EXPRESSION, "what lies on the right"),
        ),
        {"figure": "balance", "left": "3x + 5", "right": "26"},
    ),
    Kind(
        "spinner",
        "a spinner with parts",
        (
            need("parts", Holds.LABELS, "what is written in each part"),
            may("sizes", Holds.NUMBERS, "how big each part is beside the others; equal without it"),
        ),
        {"figure": "spinner", "parts": ["bee", "fox", "bee", "owl"]},
    ),
    Kind(
        "tree",
        "a tree of what can happen, stage by stage",
        (
            need("stages", Holds.ROWS, "a row for each stage with what can happen in it"),
            may("chances", Holds.ROWS, "a row for each stage with the chance of each"),
        ),
        {
            "figure": "tree",
            "stages": [["rye", "wheat"], ["round", "long", "square"]],
            "chances": [["1/2", "1/2"], ["1/3", "1/3", "1/3"]],
        },
    ),
    Kind(
        "mapping",
        "inputs and outputs with arrows between",
        (
            need("inputs", Holds.LABELS, "inputs from the top down"),
            need("outputs", Holds.LABELS, "outputs from the top down"),
            need("arrows", Holds.POINT_LIST, "which input goes to which output, by place: (1, 2), (2, 1)"),
            may("names", Holds.LABELS, "headings of the two sides"),
        ),
        {
            "figure": "mapping",
            "inputs": ["1", "2", "3"],
            "outputs": ["4", "7"],
            "arrows": [["1", "1"], ["2", "2"], ["3", "2"]],
        },
    ),
)
