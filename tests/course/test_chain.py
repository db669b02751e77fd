"""How maths is shown and what counts as the last step."""

from __future__ import annotations

from fractions import Fraction

import pytest

from bot.answers.key import Key
from bot.course.chain import chain_faults
from bot.course.draw import draw
from bot.course.fill import Draw
from bot.course.item import Step
from bot.course.prepare import read_once
from bot.course.year import Course


@pytest.mark.parametrize(
    ("last", "answer", "kinds"),
    [
        ("$15", "15.00", []),
        ("$1,250", "1250.00", []),
        ("15.00", "15.00", []),
        ("$15.50", "15.00", ["last-step"]),
        ("7 R 2", "7 R 2", []),
    ],
)
def test_money_is_the_answer_however_its_cents_are_written(course: Course, last, answer, kinds) -> None:
    template = course.template("unit-rates/price-of-one")
    item = draw(course, template.id, 1)
    ending = (*item.steps[:-1], Step("", f"It is `{last}`."))
    changed = type(item)(
        **{
            **{name: getattr(item, name) for name in item.__dataclass_fields__},
            "steps": ending,
            "key": Key(answer, "money"),
        }
    )
    assert [problem.kind for problem in chain_faults(changed, template)] == kinds


NUMBERS = Draw(
    {"a": Fraction(9), "n": Fraction(2), "b": Fraction(-2), "p": Fraction(5, 2)}, {}, frozenset("p"), {}
)


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("a^(n - 1)", "9^(2 − 1)"),
        ("x^(n + 3)", "x^(2 + 3)"),
        ("a^value(n + 1)", "9³"),
        ("value(p) + 3", "2.5 + 3"),
        ("3 × value(p a)", "3 × 22.5"),
        ("value(p a) + x = 4", "22.5 + x = 4"),
        ("value(a/n) + x", "9/2 + x"),
        ("value(a + b) x + value(b) y", "7x − 2y"),
        ("value(b) x - 3", "−2x − 3"),
    ],
)
def test_a_number_worked_out_is_shown_like_any_other(written: str, shown: str) -> None:
    assert NUMBERS.show(read_once(written)) == shown
