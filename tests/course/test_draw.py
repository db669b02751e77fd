"""Drawing: the same arguments give the same item, whole, as plain data, in any run and on any machine."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.courses import whole_course

from bot.course.draw import ATTEMPTS, Before, draw, draw_whole, prepared_of, try_once
from bot.course.item import Item, RunKind, plain_text, runs
from bot.course.load import load_with_faults
from bot.course.make_item import Drawn
from bot.course.prepare import prepare
from bot.course.vary import Chance
from bot.course.year import Course, NoSuchThing

ROOT = Path(__file__).parents[2]
COURSE = whole_course()
# A template with a fault can't be drawn; test_course names the fault.
TEMPLATES = [
    template.id
    for holder in COURSE.holders
    for template in holder.templates
    if not prepare(template, holder.file, COURSE.missteps)[1]
]


@given(st.sampled_from(TEMPLATES), st.integers(0, 2**63))
@settings(max_examples=200, deadline=None)
def test_item_is_the_same_each_time_and_survives_storage(template: str, seed: int) -> None:
    item = draw(COURSE, template, seed)

    assert draw(load_course_again(), template, seed) == item
    assert msgspec.json.decode(msgspec.json.encode(item), type=Item) == item


def load_course_again(_kept: list[Course] = []) -> Course:  # noqa: B006 - read once for all examples
    if not _kept:
        _kept.append(load_with_faults(ROOT / "content")[0])
    return _kept[0]


def test_item_is_the_same_in_another_process() -> None:
    script = (
        "from pathlib import Path\n"
        "from bot.course.draw import draw\nfrom bot.course.load import load_with_faults\n"
        "course = load_with_faults(Path('content'))[0]\n"
        "print(draw(course, 'order-of-operations/rolls-and-a-jar', 90210))\n"
    )
    outputs = {
        subprocess.run(
            [sys.executable, "-c", script],
            cwd=ROOT,
            env={"PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert outputs == {f"{draw(COURSE, 'order-of-operations/rolls-and-a-jar', 90210)}\n"}


@pytest.mark.parametrize("first", range(5))
def test_draws_that_share_what_they_worked_out_are_those_drawn_one_by_one(first: int) -> None:
    for name in TEMPLATES[first::25]:
        template = COURSE.template(name)
        prepared = prepared_of(COURSE, template)
        before = Before(None if template.recipe.form == "choice" else {})
        for seed in range(60):
            attempts = (try_once(COURSE, prepared, seed, n, before) for n in range(ATTEMPTS))
            shared = next(found for found in attempts if isinstance(found, Drawn))
            alone = draw_whole(COURSE, template, seed)

            assert alone.draw.letters == shared.draw.letters
            assert replace(shared.item, seed=seed) == alone.item


def test_chance_never_changes_between_releases() -> None:
    chance = Chance("flour-sacks/1/0")
    assert [chance.below(100) for _ in range(6)] == [47, 99, 6, 28, 2, 60]


def test_texts_hold_no_unfilled_word_or_letter_mark() -> None:
    for template in TEMPLATES:
        item = draw(COURSE, template, 5)
        for text in (item.ask, *item.hints, *(step.because for step in item.steps)):
            assert "{" not in text and text.count("`") % 2 == 0, text
            assert "`" not in plain_text(text)


def test_a_template_that_is_not_there_is_named() -> None:
    with pytest.raises(NoSuchThing, match="no 'flour/none'"):
        draw(COURSE, "flour/none", 1)


def test_former_names_still_draw() -> None:
    course = Course(
        title=COURSE.title,
        units=COURSE.units,
        lessons=COURSE.lessons,
        missteps=COURSE.missteps,
        former_names={"sums-in-order/plus": "order-of-operations/plus-and-times"},
    )
    assert draw(course, "sums-in-order/plus", 3).template == "order-of-operations/plus-and-times"


def test_text_comes_apart_into_runs() -> None:
    text = "Take the **whole** of `3/4`, then *stop*."
    assert [(run.kind, run.text) for run in runs(text)] == [
        (RunKind.WORDS, "Take the "),
        (RunKind.BOLD, "whole"),
        (RunKind.WORDS, " of "),
        (RunKind.MATHS, "3/4"),
        (RunKind.WORDS, ", then "),
        (RunKind.SLANTED, "stop"),
        (RunKind.WORDS, "."),
    ]
    assert plain_text(text) == "Take the whole of 3/4, then stop."


def test_button_that_says_its_unit_leaves_none_to_be_said() -> None:
    pressed = draw(COURSE, "area-of-parallelograms-and-triangles/same-base-same-height", 3)
    typed = draw(COURSE, "adding-subtracting-and-multiplying-whole-numbers/market-money", 3)
    assert pressed.answer_shown.endswith(" square inches")
    assert (pressed.key.unit, pressed.unit_shown) == ("square inches", "")
    assert typed.unit_shown == typed.key.unit == "coins"
