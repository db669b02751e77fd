"""Charts for grown-ups: the data are in them, and no sign rests on colour alone."""

from __future__ import annotations

from collections import Counter
from datetime import date, timedelta
from io import BytesIO

from PIL import Image

from bot.pictures.canvas import Canvas
from bot.pictures.charts import SIGNS, SkillMap, Week, Year, day_sign, sign_row, skill_map, week, year
from bot.pictures.recipes import make

MONDAY = date(2026, 9, 14)
WEEK = Week(MONDAY, "dptn.ff", [(MONDAY, 9, 2, 1, 0), (MONDAY + timedelta(1), 5, 1, 1, 5)])
YEAR = Year(
    date(2026, 8, 31),
    date(2027, 6, 11),
    116,
    [(date(2026, 8, 31) + timedelta(weeks=n), 3 * n) for n in range(12)],
    [(date(2026, 8, 31), 0), (date(2027, 6, 1), 116)],
    date(2027, 6, 5),
    date(2027, 7, 2),
)
MAP = SkillMap([("Fractions", ["steady", "steady", "shaky", "not met"]), ("Ratios", ["not met"] * 3)])


def labels(canvas):
    return [placed.label for placed in canvas.placed]


def test_a_week_is_a_row_of_signs():
    assert sign_row("dptn.ff") == "● ◐ ■ ○ ·"
    assert set("dptnof.") == set(SIGNS)


def test_each_sign_has_a_shape_of_its_own():
    drawn = []
    for sign in SIGNS:
        canvas = Canvas()
        day_sign(canvas, sign, (50, 50))
        drawn.append([(mark["is"], mark.get("fill"), mark.get("radius")) for mark in canvas.marks])

    assert len({str(marks) for marks in drawn}) == len(SIGNS)


def test_a_week_shows_each_day_and_how_many_items_it_had():
    written = labels(week(WEEK))

    assert written[:5] == ["Mon", "Tue", "Wed", "Thu", "Fri"]
    assert written.count("12") == 2


def test_a_week_with_a_saturday_of_school_shows_it():
    assert "Sat" in labels(week(Week(MONDAY, "fffffdf")))
    assert "Sat" in labels(week(Week(MONDAY, "", [(MONDAY + timedelta(5), 1, 0, 0, 0)])))


def test_a_week_without_items_can_be_drawn():
    assert "done" not in labels(week(Week(MONDAY, ".....ff")))


def test_words_come_from_outside():
    spoken = Week(
        MONDAY, "d....ff", words={"d": "hecho"}, day_names=("lun", "mar", "mié", "jue", "vie", "sáb", "dom")
    )

    assert {"lun", "hecho"} <= set(labels(week(spoken)))


def test_the_end_of_a_year_is_a_range():
    canvas = year(YEAR)
    band = next(mark for mark in canvas.marks if mark.get("fill") == "back")

    assert band["at"][1][0] - band["at"][0][0] > 4
    assert "probable finish" in labels(canvas)


def test_a_year_that_has_only_begun_can_be_drawn():
    assert year(Year(date(2026, 9, 1), date(2026, 9, 1), 116, [])).height > 100


def test_a_map_counts_its_skills():
    assert {"steady: 2", "shaky: 1", "not met: 4"} <= set(labels(skill_map(MAP)))


def test_charts_are_made_from_plain_data_as_well():
    plain = {"monday": "2026-09-14", "signs": "dp...ff", "days": [["2026-09-14", 9, 2, 1, 0]], "name": "Wren"}
    made = Counter(
        Image.open(BytesIO(made)).width
        for made in (make("week", plain), make("year", YEAR), make("skill-map", MAP), make("week", WEEK))
    )

    assert made == {1080: 4}
    assert make("week", WEEK) == make("week", WEEK)
