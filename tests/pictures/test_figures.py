"""Every kind of figure becomes a picture that can be read, the same one each time."""

from __future__ import annotations

import re
from collections import Counter
from io import BytesIO
from itertools import combinations, pairwise
from math import atan2, degrees, dist, isclose
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageChops

from bot.course.figures import KINDS, Holds, alt, check
from bot.course.figures.reading import several
from bot.pictures.canvas import Canvas, Placed
from bot.pictures.draw import DRAW
from bot.pictures.figures import CannotDraw, draw, png, sheet, svg
from bot.pictures.typeset import typeset

MARGIN_PIXELS = 12


def opened(content):
    return Image.open(BytesIO(content)).convert("RGB")


def ink_box(image):
    ground = Image.new("RGB", image.size, image.getpixel((0, 0)))
    return ImageChops.difference(image, ground).getbbox()


def overlaps(canvas):
    written = [placed for placed in canvas.placed if placed.label]
    return [
        (one.label, other.label)
        for one, other in combinations(written, 2)
        if Placed("", one.left + 0.7, one.top + 0.7, one.right - 0.7, one.bottom - 0.7).meets(other)
    ]


def shapes(canvas):
    return [mark["at"] for mark in canvas.marks if mark["is"] == "shape" and mark["closed"]]


def test_every_kind_can_be_drawn_and_has_several_samples(samples):
    counted = Counter(sample["figure"] for sample in samples)

    assert set(DRAW) == set(KINDS)
    assert {name for name in KINDS if counted[name] < 2} == set()


@pytest.mark.parametrize("name", KINDS)
def test_the_example_of_each_kind_can_be_drawn(name):
    assert check(KINDS[name].example) == []
    assert opened(png(KINDS[name].example)).width == 1080


def test_samples_are_in_order(sample):
    assert check(sample) == []


def test_a_picture_has_ink_and_keeps_it_off_the_edge(sample):
    image = opened(png(sample))
    left, top, right, bottom = ink_box(image)

    assert image.width == 1080
    assert min(left, top, image.width - right, image.height - bottom) >= MARGIN_PIXELS


def test_labels_of_a_picture_do_not_meet(sample):
    assert overlaps(draw(sample)) == []


def test_labels_stay_on_the_sheet(sample):
    canvas = draw(sample)

    for placed in canvas.placed:
        assert placed.left >= 4 and placed.right <= canvas.width - 4
        assert placed.top >= 4 and placed.bottom <= canvas.height - 4


def test_writing_is_large_enough_for_a_phone(sample):
    sizes = [mark["size"] for mark in draw(sample).marks if mark["is"] == "label"]

    # 14 points of 360 are 14 pixels on the smallest phone; scales of a protractor and dense tables may go lower.
    assert all(size >= (12 if sample["figure"] in ("angle", "tree") else 14) for size in sizes)


def test_equal_figures_give_equal_bytes(samples):
    for sample in samples[::15]:
        assert png(sample) == png(dict(reversed(sample.items())))


def test_other_numbers_give_another_picture():
    assert png({"figure": "hundred-grid", "shaded": "37"}) != png({"figure": "hundred-grid", "shaded": "38"})


def test_svg_needs_no_fonts(samples):
    for sample in samples[::10]:
        root = ElementTree.fromstring(svg(sample))
        assert root.tag.endswith("svg")
        assert not [element for element in root.iter() if element.tag.endswith("}text")]


def test_a_plate_is_light_all_round(samples):
    for sample in samples[::20]:
        image = opened(png(sample))
        corners = [(0, 0), (image.width - 1, 0), (0, image.height - 1), (image.width - 1, image.height - 1)]
        assert all(min(image.getpixel(corner)) > 220 for corner in corners)


def test_as_many_squares_are_shaded_as_the_data_say():
    fills = Counter(mark.get("fill") for mark in draw({"figure": "hundred-grid", "shaded": "37"}).marks)

    assert fills["shade"] == 37


def test_as_many_parts_are_shaded_as_the_data_say():
    fills = Counter(
        mark.get("fill") for mark in draw({"figure": "circle-parts", "parts": "6", "shaded": "8"}).marks
    )

    assert (fills["shade"], fills["light"]) == (8, 4)


def test_a_triangle_has_the_shape_of_its_sides():
    figure = {"figure": "triangle", "base": "8 cm", "left": "6 cm", "right": "10 cm", "right-angle": "left"}
    left, right, top = shapes(draw(figure))[0]

    assert isclose(dist(left, right) / dist(left, top), 8 / 6, rel_tol=0.01)
    assert isclose(dist(right, top) / dist(left, top), 10 / 6, rel_tol=0.01)


def test_an_unknown_side_does_not_give_itself_away_in_the_label():
    labels = [
        mark["runs"] for mark in draw({"figure": "rectangle", "width": "4 m", "height": "unknown"}).marks[-2:]
    ]

    assert [["bold", "?", ""]] in labels


def test_a_point_lies_where_its_numbers_say():
    canvas = draw({"figure": "grid", "x": "-5..5", "y": "-5..5", "points": "(5, 5), (-5, -5), (0, 0)"})
    high, low, middle = (mark["at"] for mark in canvas.marks if mark["is"] == "disc")

    assert isclose(high[0] + low[0], 2 * middle[0], abs_tol=0.1)
    assert isclose(high[1] + low[1], 2 * middle[1], abs_tol=0.1)
    assert high[0] > middle[0] > low[0] and high[1] < middle[1] < low[1]


def test_bars_are_as_high_as_their_values():
    canvas = draw({"figure": "bar-chart", "names": "a1, b1, c1", "values": "4, 7, 5"})
    heights = [at[2][1] - at[1][1] for at in shapes(canvas)]

    assert isclose(heights[1] / heights[0], 7 / 4, rel_tol=0.01)
    assert isclose(heights[2] / heights[0], 5 / 4, rel_tol=0.01)


def test_a_figure_out_of_order_is_refused_with_what_is_wrong():
    with pytest.raises(CannotDraw, match="0 to 300"):
        draw({"figure": "hundred-grid", "shaded": "301"})


def lines_of_discs(canvas):
    return sorted({mark["at"][1] for mark in canvas.marks if mark["is"] == "disc"})


def test_counters_leave_no_line_empty():
    twelve = draw({"figure": "counters", "plus": "12", "minus": "4"})
    paired = draw({"figure": "counters", "plus": "12", "minus": "4", "pairs": "yes"})
    only_minus = draw({"figure": "counters", "plus": "0", "minus": "11"})

    assert [len(lines_of_discs(one)) for one in (twelve, paired, only_minus)] == [3, 3, 2]
    for canvas in (twelve, paired, only_minus):
        lines = lines_of_discs(canvas)
        assert all(low - high <= 48 for high, low in pairwise(lines))


def test_what_each_bar_makes_and_what_all_make_stand_apart():
    canvas = draw({"figure": "tape", "parts": "2, 3", "totals": "14 kg, 21 kg", "total": "35 kg"})

    bracket = next(mark["at"] for mark in canvas.marks if mark["is"] == "shape" and not mark["closed"])
    right = {placed.label: placed.right for placed in canvas.placed}

    assert max(right["14 kg"], right["21 kg"]) < min(x for x, _ in bracket)
    assert overlaps(canvas) == []


def test_a_label_left_out_of_a_tape_is_not_written():
    canvas = draw({"figure": "tape", "boxes": [["4", "none"]], "totals": "none", "names": "none"})

    assert [placed.label for placed in canvas.placed if placed.label] == ["4"]


def test_a_balance_says_a_single_number_once():
    labels = [placed.label for placed in draw({"figure": "balance", "left": "x", "right": "26"}).placed]

    assert sorted(labels) == ["26", "x"]


def test_a_cut_does_not_run_over_the_height_of_a_prism():
    marks = draw(
        {"figure": "solid", "shape": "prism", "length": "6 cm", "height": "4 cm", "cut": "upright"}
    ).marks
    cut = next(n for n, mark in enumerate(marks) if mark.get("fill") == "stripe-clear")

    assert all(n > cut for n, mark in enumerate(marks) if mark["is"] == "label")


def test_a_low_prism_with_equal_edges_has_its_tip_in_the_middle():
    canvas = draw(
        {
            "figure": "solid",
            "shape": "prism",
            "length": "8 m",
            "height": "3 m",
            "slant": "5 m",
            "width": "12 m",
        }
    )
    left, right, tip = shapes(canvas)[0]

    assert isclose(tip[0], (left[0] + right[0]) / 2, abs_tol=0.1)


def test_a_number_has_six_places_after_the_point_in_a_chart_and_no_more():
    chart = {"figure": "place-value", "number": "0.000032"}
    written = [placed.label for placed in draw(chart).placed]

    assert written[-2:] == ["millionths", "2"]
    assert check({**chart, "number": "0.0000032"}) != []


def labels(canvas):
    return ["".join(run[1] for run in mark["runs"]) for mark in canvas.marks if mark["is"] == "label"]


def test_thousands_stand_apart_as_in_the_text():
    assert "12,500" in labels(draw({"figure": "table", "rows": [["sacks", "12500"], ["jars", "7"]]}))
    assert "2,000" in labels(draw({"figure": "grid", "x": "0..2000 step 500", "y": "0..4"}))
    assert "12,500" in alt({"figure": "table", "rows": [["sacks", "12500"], ["jars", "7"]]})


@pytest.mark.parametrize("degrees", ["30", "60", "120", "125"])
def test_no_number_of_a_protractor_lies_under_an_arm(degrees):
    marks = draw({"figure": "angle", "degrees": degrees, "label": "none", "protractor": "yes"}).marks
    arms = [n for n, mark in enumerate(marks) if mark.get("ink") == "teal"]
    numbers = [n for n, mark in enumerate(marks) if mark["is"] == "label"]

    assert len(arms) == 2 and len(numbers) == 29
    assert max(arms) < min(numbers)
    assert {marks[n]["halo"] for n in numbers} == {"light"}


def test_no_axis_number_lies_under_a_line():
    marks = draw(
        {"figure": "grid", "x": "-6..6", "y": "-6..6", "line": "y = x", "through": "(2, 0), (2, 3)"}
    ).marks
    lines = [n for n, mark in enumerate(marks) if mark.get("width") == 2.8]
    numbers = [n for n, mark in enumerate(marks) if mark["is"] == "label" and mark["runs"][0][0] == "text"]

    assert len(lines) == 2 and max(lines) < min(numbers)
    assert {marks[n]["halo"] for n in numbers} == {"paper"}


def test_a_halo_keeps_a_line_off_the_letters():
    def pixels(halo):
        canvas = Canvas()
        canvas.line((20, 40), (340, 40), 6)
        canvas.write("8", (180, 40), size=30, halo=halo)
        image = opened(typeset("picture.typ", sheet(canvas.finish())))
        return [image.getpixel((x, 120)) for x in range(490, 590)]

    light = [sum(min(pixel) > 220 for pixel in pixels(halo)) for halo in ("", "paper")]

    assert light[0] == 0 < light[1]


def meets_a_line(box, points):
    """Whether one of two hundred points along each piece lies in the box."""
    return any(
        box.left < a[0] + (b[0] - a[0]) * k / 200 < box.right
        and box.top < a[1] + (b[1] - a[1]) * k / 200 < box.bottom
        for a, b in pairwise(points)
        for k in range(201)
    )


def test_the_name_of_a_point_on_a_line_stands_off_it():
    name = "one and a half"
    figure = {"figure": "grid", "x": "0..6", "y": "0..36 step 4", "points": "(3, 4.5)", "names": name}
    canvas = draw({**figure, "through": "(0, 0), (6, 9)"})
    line = next(mark["at"] for mark in canvas.marks if mark.get("width") == 2.8)
    placed = next(one for one in canvas.placed if one.label == name)

    # Two points are left for letters that reach below the line of writing.
    assert not meets_a_line(Placed("", placed.left, placed.top - 2, placed.right, placed.bottom + 2), line)


def test_the_name_of_a_corner_stands_off_the_sides():
    corners = ["(1, 1)", "(4, 1)", "(1, 4)", "(-3, -2)"]
    figure = {
        "figure": "grid",
        "x": "-5..5",
        "y": "-5..5",
        "polygons": [corners],
        "points": ", ".join(corners),
        "names": "A, B, C, D",
    }
    canvas = draw(figure)
    polygon = next(mark["at"] for mark in canvas.marks if mark.get("fill") == "shade-clear")

    for placed in canvas.placed:
        if placed.label in ("A", "B", "C", "D"):
            assert not meets_a_line(placed, [*polygon, polygon[0]])


@pytest.mark.parametrize("spot", ["(-1, 0)", "(-2, -1)", "(2, -1)", "(-1, 3)", "(0, 0)", "(-1, -4)"])
def test_no_dot_lies_on_a_number_of_an_axis(spot):
    canvas = draw({"figure": "grid", "x": "-9..9", "y": "-9..9", "points": spot})
    dot = next(mark for mark in canvas.marks if mark["is"] == "disc")
    (x, y), r = dot["at"], dot["radius"]

    assert not [one.label for one in canvas.placed if one.meets(Placed("", x - r, y - r, x + r, y + r))]


def test_lines_stand_at_every_step_where_numbers_do_not():
    canvas = draw({"figure": "grid", "x": "-14..14 step 1", "y": "0..60 step 5"})
    upright = {
        mark["at"][0][0]
        for mark in canvas.marks
        if mark.get("ink") == "faint" and mark["at"][0][0] == mark["at"][1][0]
    }
    level = [
        mark for mark in canvas.marks if mark.get("ink") == "faint" and mark["at"][0][1] == mark["at"][1][1]
    ]

    assert (len(upright), len(level)) == (29, 13)


def test_angles_at_a_point_take_as_much_height_as_their_arms():
    def high(sizes, names="B, A, D, C"):
        figure = {"figure": "angles", "arrangement": "point", "sizes": sizes, "labels": "a, b, none"}
        return draw({**figure, "names": names}).height

    assert high("46, 38, 276") < 220 < 300 < high("120, 120, 120")


def test_arms_at_a_point_carry_their_names():
    figure = {
        "figure": "angles",
        "arrangement": "point",
        "sizes": "46, 38, 276",
        "labels": "46°, 38°, none",
        "names": "B, A, D, C",
    }
    placed = {one.label: one for one in draw(figure).placed}

    assert placed["A"].left > placed["D"].left > placed["C"].left > placed["B"].left
    assert placed["C"].top < placed["D"].top < placed["A"].top
    assert "The vertex is B. The arms, counterclockwise from the right, end at A, D, C." in alt(figure)
    assert check({**figure, "names": "B, A, C"}) != []


@pytest.mark.parametrize(("second", "times"), [("12, 9", 3), ("6, 4.5", 1.5), ("40, 30", 3), ("2, 1.5", 0.5)])
def test_similar_figures_are_drawn_in_their_ratio_as_far_as_room_allows(second, times):
    first, other = shapes(
        draw({"figure": "similar", "shape": "rectangle", "first": "4, 3", "second": second})
    )

    assert isclose((other[1][0] - other[0][0]) / (first[1][0] - first[0][0]), times, rel_tol=0.01)
    assert isclose((other[0][1] - other[2][1]) / (first[0][1] - first[2][1]), times, rel_tol=0.01)


def test_a_flat_right_triangle_is_drawn_to_scale():
    left, right, top = shapes(
        draw({"figure": "triangle", "base": "20 m", "left": "5 m", "right-angle": "left"})
    )[0]

    assert isclose(dist(left, right) / dist(left, top), 4, rel_tol=0.01)


def test_an_exterior_angle_is_as_large_as_the_two_far_ones():
    canvas = draw({"figure": "triangle", "angles": "50°, none, 60°", "exterior": "unknown"})
    (_, right, top), drawn_on = shapes(canvas)[0], canvas.marks[1]["at"]
    outside = degrees(atan2(right[1] - top[1], top[0] - right[0]))

    assert drawn_on[0] == right and drawn_on[1][0] > right[0] and drawn_on[1][1] == right[1]
    assert isclose(outside, 110, abs_tol=0.5)
    assert "past the right corner" in alt({"figure": "triangle", "base": "4 m", "exterior": "x"})


def test_the_label_of_a_flat_angle_stands_off_the_side_across():
    canvas = draw({"figure": "triangle", "angles": "15°, 20°, unknown"})
    left, right, _ = shapes(canvas)[0]
    asked = next(one for one in canvas.placed if one.label == "unknown")

    assert not meets_a_line(
        Placed("", asked.left, asked.top - 4, asked.right, asked.bottom + 4), [left, right]
    )


@pytest.mark.parametrize("a", range(25, 91, 13))
@pytest.mark.parametrize("b", range(25, 91, 13))
def test_labels_of_an_exterior_angle_do_not_meet(a, b):
    figure = {
        "figure": "triangle",
        "angles": f"{a}°, none, {b}°",
        "corners": "A, C, B",
        "exterior": "unknown",
    }

    assert overlaps(draw(figure)) == []


@pytest.mark.parametrize("second", ["1", "3", "5", "95", "99"])
def test_labels_of_a_double_number_line_stand_side_by_side(second):
    figure = {
        "figure": "double-number-line",
        "top": f"0, {second}%, 100%",
        "bottom": "0, unknown, 60",
        "at": f"0, {second}, 100",
    }
    canvas = draw(figure)
    bottoms = {placed.label: placed.bottom for placed in canvas.placed if placed.label.endswith("%")}

    assert overlaps(canvas) == []
    assert bottoms[f"{second}%"] == bottoms["100%"]


LONG = {
    "triangle": {
        "base": "128.5 cm",
        "left": "120.25 cm",
        "right": "118 1/2 cm",
        "angles": "none, none, 3x + 25",
    },
    "rectangle": {
        "width": "1,234 1/2 cm",
        "height": "1,234 1/2 cm",
        "inside": "1,000,000 square centimetres",
    },
    "table": {
        "rows": [
            ["what was counted at the canal", "before the flood", "afterwards"],
            ["boats going up", "unknown", "1,250"],
        ]
    },
    "bar-chart": {
        "names": "bakery bench, tram stop, canal bridge, mill yard, honey shed",
        "values": "1, 2, 3, 4, 5",
    },
    "objects": {"names": "jars of plum jam, sacks of spelt flour", "counts": "12, 20"},
    "number-line": {"from": "-1000", "to": "1000"},
    "similar": {"shape": "rectangle", "first": "128.5 cm, 96.25 cm", "second": "1,285 m, unknown"},
    "solid": {"shape": "cylinder", "radius": "3 1/2 cm", "height": "128.5 cm", "inside": "unknown"},
    "net": {
        "shape": "prism",
        "length": "16.5 cm",
        "height": "14.4 cm",
        "width": "20.25 cm",
        "slant": "18 1/2 cm",
    },
    "quadrilateral": {
        "shape": "trapezoid",
        "base": "128 cm",
        "top": "64.5 cm",
        "left": "70.25 cm",
        "right": "71 1/2 cm",
    },
    "spinner": {"parts": "liquorice, peppermint, raspberry, blackcurrant, elderflower, aniseed"},
    "mapping": {
        "inputs": "flour sacks, honey jars",
        "outputs": "bakery, canal boat",
        "arrows": "(1, 2), (2, 1)",
    },
    "tape": {"boxes": [["12.5 kg", "12.5 kg", "12.5 kg", "unknown"]], "total": "1,250.75 kg"},
    "area-model": {"across": "1,200, 34, 5", "down": "6 1/2", "inside": [["7,800", "unknown", "32 1/2"]]},
}


@pytest.mark.parametrize("name", LONG)
def test_long_labels_do_not_meet_either(name):
    figure = {"figure": name, **LONG[name]}

    assert check(figure) == []
    assert overlaps(draw(figure)) == []
    assert all(placed.left >= 4 and placed.right <= 356 for placed in draw(figure).placed)


HOSTILE = [
    "#panic()",
    "$ x $ *bold* _it_ [a] <b> @ref",
    '"; #import "x"',
    "\\u{41}\\",
    "</svg><script>1</script>",
    "{who} %s {0}",
    "`code` // /* note",
    "نص עברית 文字 🙂",
]


@pytest.mark.parametrize("text", HOSTILE)
def test_what_is_written_stays_writing(text):
    figure = {"figure": "rectangle", "width": text, "height": "3 m"}
    runs = [run for mark in draw(figure).marks if mark["is"] == "label" for run in mark["runs"]]

    assert re.sub(r"\s", "", "".join(run[1] for run in runs[:-1])).startswith(re.sub(r"\s", "", text)[:3])
    assert opened(png(figure)).width == 1080
    assert b"script" not in svg(figure)
    assert text.split()[0] in alt(figure)


@settings(max_examples=25, deadline=None)
@given(st.text(st.characters(codec="utf-8", exclude_categories=["Cc"]), min_size=1, max_size=40))
def test_any_label_can_be_set(text):
    figure = {"figure": "tape", "boxes": [[text or "x", "7"]], "same-length": "yes"}

    assert png(figure)[:4] == b"\x89PNG"


def together(text):
    """Thousands no longer apart; a list as it is."""
    return re.sub(r"(?<=\d),(?=\d{3})", "", text) if isinstance(text, str) else text


def told(sample):
    """Numbers of a figure that have to be heard: those of labels and lists, not where something is read off."""
    for field in KINDS[sample["figure"]].fields:
        value = sample.get(field.name)
        if value is None or (sample["figure"], field.name) in READ_OFF:
            continue
        if field.holds in (Holds.LABEL, Holds.LABELS, Holds.EXPRESSION):
            yield from re.findall(r"\d+(?:[./]\d+)?", " ".join(several(together(value))))
        if field.holds is Holds.ROWS:
            yield from re.findall(
                r"\d+(?:[./]\d+)?", together(" ".join(cell for row in value for cell in row))
            )
        if field.holds in (Holds.POINT_LIST, Holds.POINT_ROWS):
            yield from (number for number in re.findall(r"\d+", str(value)) if number != "0")
        if field.holds in (Holds.NUMBER, Holds.NUMBERS) and sample["figure"] not in COUNTED:
            yield from re.findall(r"\d+", " ".join(several(together(value))))


COUNTED = {
    "hundred-grid",
    "clock",
    "place-value",
    "number-line",
    "double-number-line",
    "spinner",
    "angles",
    "grid",
}
"""Figures whose numbers are heard as counts, ticks or places."""
READ_OFF = {
    ("scatter-plot", "line"),
    ("angle", "degrees"),
    ("histogram", "width"),
    ("parallel-lines", "degrees"),
    ("number-line", "inequality"),
    ("box-plot", "data"),
    ("box-plot", "from"),
    ("box-plot", "to"),
    ("dot-plot", "from"),
    ("dot-plot", "to"),
    ("bar-chart", "step"),
    ("mapping", "arrows"),
    ("composite", "corners"),
    ("composite", "cuts"),
}


def test_every_number_of_a_figure_is_heard(sample):
    said = together(alt(sample))
    heard = set(re.findall(r"\d+(?:[./]\d+)?", said)) | set(re.findall(r"\d+", said))

    assert [number for number in told(sample) if number not in heard] == []
